"""Makes up reference figures: all that the sessions say of one attribute of one thing, with median and range.

Takes the string heights of four guitars; leaves alone what one session measured twice. Kinds of unit are never mixed.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup

from capture.shop import ShopSettings
from extract.record import Phase
from publish.addresses import absolute
from publish.context import Link
from publish.context.reference import ReferenceEntry, ReferenceIndex, ReferencePage
from publish.library.common import Ends, Measured, Scale, common_scale
from publish.library.lanes import draw_lanes
from publish.library.statements import Quoted
from publish.library.tallies import tallies_of
from publish.library.usual import bands_for, ends_in, usual
from publish.library.works import folded, slugs_of
from publish.wording import count, sentence

FOLDER = "figures"
ROOT = "../"
"""From these pages to the front page's folder."""
_FEWEST_SESSIONS, _FEWEST_FIGURES = 2, 3

Key = tuple[str, str, str]
"""What is measured, of what (both folded), and the kind of unit."""


@dataclass(frozen=True, slots=True)
class Subject:
    """What is measured, of what."""

    slug: str
    attribute: str
    item: str
    kind: str
    statements: tuple[Quoted, ...]

    @property
    def what(self) -> str:
        """Its name."""
        measure = self.statements[0].measure
        return sentence(", ".join(one for one in (measure.attribute, measure.item) if one)).rstrip(".")

    @property
    def sessions(self) -> int:
        """How many sessions speak of it."""
        return len({one.slug for one in self.statements})

    def counted(self, scale: Scale) -> list[tuple[Phase, Ends]]:
        """The figures that median and range are of: settled, and no one-sided limits."""
        kept = (one.measure for one in self.statements if one.settled and one.measure.limit is None)
        return [(one.phase, ends) for one in kept if (ends := scale.ends(one)) is not None]


def key_of(measure: Measured) -> Key | None:
    """What makes figures those of one thing; None where it isn't known what was measured."""
    if not measure.attribute or not measure.kind:
        return None
    return folded(measure.attribute), folded(measure.item), measure.kind


def names_of(spoken: Iterable[tuple[Key, str]]) -> dict[Key, str]:
    """The slug of each thing that at least two sessions or three figures speak of, in the order of its page's name.

    `spoken` is each figure with its session, in the order of sessions and of speaking: who comes first gets the name.
    """
    found: dict[Key, list[str]] = {}
    for key, session in spoken:
        found.setdefault(key, []).append(session)
    kept = [key for key, of in found.items() if len(of) >= _FEWEST_FIGURES or len(set(of)) >= _FEWEST_SESSIONS]
    slugs = slugs_of([f"{attribute} {item}" for attribute, item, _ in kept], "figure")
    named = sorted(zip(kept, slugs, strict=True), key=lambda one: (one[0][:2], one[1]))
    return dict(named)


def reference_entry(subject: Subject, page: ReferencePage) -> ReferenceEntry:
    """Its line in the list."""
    contents = f"{count(len(subject.statements), 'figure')}, {count(subject.sessions, 'session')}"
    over_all = page.tallies[-1] if page.tallies else None
    return ReferenceEntry(Link(f"{subject.slug}.html", subject.what), contents, over_all)


def reference_page(subject: Subject, shop: ShopSettings, rows: Markup | None = None) -> ReferencePage:
    """The page of one thing; `rows` are those of all its figures, where they were set before."""
    scale = common_scale(one.measure for one in subject.statements)
    counted = subject.counted(scale) if scale else []
    trades = [folded(one.trade) for one in subject.statements]
    bands = bands_for(trades, subject.attribute, subject.item, subject.kind)
    drawn = [ends for _, band in bands if scale and (ends := ends_in(band, scale.unit))]
    return ReferencePage(
        title=shop.title,
        what=subject.what,
        author=shop.author,
        licence=shop.licence,
        assets=f"{ROOT}assets/",
        address=_web(shop, f"{subject.slug}.html"),
        front=Link(f"{ROOT}index.html", shop.title),
        index=Link("index.html", "All reference figures"),
        tallies=tallies_of(counted, scale) if scale else (),
        usual=tuple(usual(trade, band) for trade, band in bands),
        plot=draw_lanes(subject.what, counted, scale, drawn) if scale else None,
        left_out=_left_out(subject, len(counted)),
        tellings=(rows,) if rows is not None else tuple(one.telling(ROOT) for one in subject.statements),
    )


def _left_out(subject: Subject, counted: int) -> tuple[str, ...]:
    open_ones = sum(not one.settled for one in subject.statements)
    limits = sum(one.settled and one.measure.limit is not None for one in subject.statements)
    others = len(subject.statements) - counted - open_ones - limits
    listed = (
        (open_ones, "that has to be settled first", "that have to be settled first"),
        (limits, "that gives a limit only", "that give a limit only"),
        (others, "in a unit that can’t be turned into the others’", "in units that can’t be turned into the others’"),
    )
    return tuple(f"{count(number, 'figure')} {one if number == 1 else many}" for number, one, many in listed if number)


def reference_index(entries: tuple[ReferenceEntry, ...], shop: ShopSettings) -> ReferenceIndex:
    """The list of all."""
    return ReferenceIndex(
        title=shop.title,
        author=shop.author,
        licence=shop.licence,
        assets=f"{ROOT}assets/",
        address=_web(shop, "index.html"),
        front=Link(f"{ROOT}index.html", shop.title),
        entries=entries,
    )


def _web(shop: ShopSettings, name: str) -> str | None:
    folder = absolute(shop.site_address, FOLDER)
    return f"{folder}{name}" if folder else None
