"""A figure beside all that the shop has measured of the same thing: the drawing, in a file of its own, and the words.

A session's page only shows the file, with a fragment by which its own figures stand out; so a figure that changes
makes one drawing anew, not every page that shows it. The words that a page has of the others' figures hold exact
numbers where few sessions measured the thing; where many did, only that they are many.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from hashlib import blake2b

from slugify import slugify

from extract.record import Phase
from extract.units import unit_rows
from publish.addresses import SESSION_HOME
from publish.context import Comparison, Link, OwnFigure
from publish.context.plots import Own, ShopPlot, Spot
from publish.context.reference import Tally
from publish.library.common import Ends, Scale, common_scale
from publish.library.lanes import Frame, draw_lanes, graduated, lanes_of, spots_of
from publish.library.reference import FOLDER, Key, Subject, key_of
from publish.library.statements import Quoted, Statement
from publish.library.tallies import tallies_of
from publish.library.usual import bands_for, ends_in, usual
from publish.library.works import folded
from publish.wording import PHASES, count, with_other

_FEWEST_FIGURES, _FEWEST_SESSIONS = 3, 2
_FEW = 8
"""Sessions up to which their pages tell exact numbers: no more pages than that hang on one figure."""
WIDTH, HEIGHT = 360, 132
"""Of every drawing, however many phases it has: a page need not know what others measured to make room for it."""
_FOOT, _HEAD = 34, 22


@dataclass(frozen=True, slots=True)
class Compared:
    """What a page is told of the drawing of one thing."""

    plot: str
    """Name of the file on the site."""
    shop: str
    """What all figures come to, in words; empty where there are no others."""
    page: Link | None
    """The page of all figures, from the front page's folder; null where there is none."""


Comparable = Mapping[Key, Compared]
"""The things that a page may compare."""


def plot_file(key: Key) -> str:
    """Name of a thing's drawing on the site; it is the thing's alone, whatever other things there are."""
    return f"{FOLDER}/plot-{slugify(' '.join(key[:2]), max_length=50)}-{_mark(*key)[:8]}.svg".replace("--", "-")


def own_anchor(slug: str) -> str:
    """The fragment of a drawing by which a session's figures stand out: letters and digits, whatever its name is."""
    return f"s-{_mark(slug)}"


def compared(subject: Subject, page: str | None) -> tuple[ShopPlot, Compared] | None:
    """The drawing, and what pages are told of it; `page` is the name of the thing's page on the site.

    None where there is nothing to compare: no usual range, and too few figures or sessions.
    """
    scale = common_scale(one.measure for one in subject.statements)
    placed = _placed(subject, scale) if scale else []
    if scale is None or not placed:
        return None
    trades = [folded(one.trade) for one in subject.statements]
    bands = bands_for(trades, subject.attribute, subject.item, subject.kind)
    drawn = [(band, trade, ends) for trade, band in bands if (ends := ends_in(band, scale.unit))]
    sessions = len({one.slug for one, *_ in placed})
    if not drawn and (len(placed) < _FEWEST_FIGURES or sessions < _FEWEST_SESSIONS):
        return None
    figures = [(phase, ends) for _, phase, ends in placed]
    frame = _frame(len(lanes_of(figures)), headed=sessions > 1)
    within = [ends for *_, ends in drawn]
    plot = draw_lanes(subject.what, figures, scale, within, frame)
    if plot is None:
        return None
    tallies = tallies_of(figures, scale)
    spots = spots_of(figures, graduated(figures, scale, within), frame)
    own: dict[str, dict[Spot, None]] = {}
    for (one, *_), spot in zip(placed, spots, strict=True):
        own.setdefault(one.slug, {})[spot] = None
    usuals = [usual(trade, band) for band, trade, _ in drawn]
    drawing = ShopPlot(
        title=subject.what,
        desc="; ".join((*map(_in_words, tallies), *(f"usual in the trade “{one.trade}”: {one.text}" for one in usuals)))
        + ".",
        told=_told(len(placed), sessions, tallies[-1]),
        plot=plot,
        own=tuple(Own(own_anchor(slug), tuple(of)) for slug, of in sorted(own.items())),
    )
    key = (subject.attribute, subject.item, subject.kind)
    others = _of_others(len(placed), sessions, tallies[-1])
    return drawing, Compared(plot_file(key), others, Link(page, "Every figure") if page else None)


def _of_others(figures: int, sessions: int, over_all: Tally) -> str:
    """What all figures come to; exact only where few sessions measured the thing."""
    if sessions > _FEW:
        return f"more than {_FEW} sessions; the drawing tells how many, and their median"
    if sessions < 2:
        return ""
    median = with_other(over_all.median, over_all.median_other)
    number = f"{count(figures, 'figure')} of {count(sessions, 'session')}"
    return f"{number}, {over_all.span}, median {median}"


def comparisons(statements: Sequence[Statement], told: Comparable) -> tuple[Comparison, ...]:
    """What a session's page shows, in the order of speaking; `statements` are the session's own."""
    own: dict[Key, list[Statement]] = {}
    for one in statements:
        key = key_of(one.measure)
        if key in told and key is not None and _drawn(one):
            own.setdefault(key, []).append(one)
    return tuple(_comparison(key, of, told[key]) for key, of in own.items())


def _comparison(key: Key, of: list[Statement], told: Compared) -> Comparison:
    page = None if told.page is None else Link(f"{SESSION_HOME}{told.page.href}", told.page.text)
    bands = bands_for([folded(of[0].trade)], *key)
    return Comparison(
        what=Subject("", *key, tuple(of)).what,
        plot=f"{SESSION_HOME}{told.plot}#{own_anchor(of[0].slug)}",
        width=WIDTH,
        height=HEIGHT,
        own=tuple(OwnFigure(one.row, PHASES[one.measure.phase]) for one in of),
        shop=told.shop,
        page=page,
        usual=tuple(usual(trade, band) for trade, band in bands),
    )


def _frame(lanes: int, *, headed: bool) -> Frame:
    top = _HEAD if headed else 8
    return Frame(width=WIDTH, left=84, right=24, top=top, foot=_FOOT, lane=(HEIGHT - top - _FOOT) / lanes)


def _placed(subject: Subject, scale: Scale) -> list[tuple[Quoted, Phase, Ends]]:
    kept = (one for one in subject.statements if _drawn(one))
    return [(one, one.measure.phase, ends) for one in kept if (ends := scale.ends(one.measure)) is not None]


def _drawn(one: Quoted) -> bool:
    """As for median and range: settled, and no one-sided limit."""
    return one.settled and one.measure.limit is None and one.measure.unit in unit_rows()


def _in_words(tally: Tally) -> str:
    median = f", median {tally.median}" if tally.number > 1 else ""
    return f"{tally.phase}: {count(tally.number, 'figure')}, {tally.span}{median}"


def _told(figures: int, sessions: int, over_all: Tally) -> str:
    median = f", median {over_all.median}" if figures > 1 else ""
    return f"{count(figures, 'figure')}, {count(sessions, 'session')}{median}" if sessions > 1 else ""


def _mark(*parts: str) -> str:
    """Letters and digits that tell one name from another."""
    return blake2b("\n".join(parts).encode("utf-8", "surrogatepass"), digest_size=6).hexdigest()
