"""A figure as a person types it: "7/64 in", "about 0.012", "2 to 3 thou", "24 mm ± 1 mm", "seven sixty-fourths".

Refuses "5 parsecs", whose unit is not on the list, and "7/64 in the nut", which says more than a figure. It is read by
the grammar that reads speech, so both take the same words.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from extract.rulings.errors import FigureError, UnitKindError
from extract.rulings.model import Figure
from extract.trade import Trade
from extract.units import interval_to_unit, unit_data, unit_rows

if TYPE_CHECKING:
    from fractions import Fraction

    from extract.numbers.figure import Tape
    from extract.quantities.draft import Draft
    from extract.spans import Unit

_SIGNS = {"~": "about ", "≈": "about ", "≤": "at most ", "≥": "at least ", "−": "-", "\N{NO-BREAK SPACE}": " "}
"""Mathematical signs that nobody speaks."""
_LIMITS: tuple[Literal["at_most", "at_least"], ...] = ("at_most", "at_least")


@dataclass(frozen=True, slots=True)
class _Around:
    """What is said about a figure beside number and unit."""

    hedged: bool = False
    limit: Literal["at_most", "at_least"] | None = None
    tolerance: Fraction | None = None


def read_figure(text: str, unit: str | None = None) -> Figure:
    """The figure that a text gives; a bare number takes `unit`, the name of a unit.

    Raises `FigureError` where the text is not one figure, or its unit is not on the list.
    """
    from extract.display import show
    from extract.spans import Quantity

    tape, drafts = _drafts(text)
    if not drafts:
        raise FigureError(f"“{text.strip()}” holds no figure", "write one such as 7/64 in, 0.012 in or 2 to 3 thou")
    around = _around(text, tape, drafts)
    number, named = drafts[0].number, _unit(drafts, unit_rows()[unit].unit if unit in unit_rows() else None)
    quantity = Quantity(0, 0, number.value, number.low, number.high, named, True, number, tolerance=around.tolerance)
    return Figure(
        text=text.strip(),
        value=number.value,
        low=number.low,
        high=number.high,
        unit=named.name if named else None,
        hedged=around.hedged,
        limit=around.limit,
        tolerance=around.tolerance,
        display=show(quantity),
    )


def check_unit(figure: Figure, attribute: str | None, trade: Trade) -> None:
    """Raise `UnitKindError` where a figure's unit measures another kind of thing than the attribute is."""
    row = unit_rows().get(figure.unit or "")
    wanted = next((one for one in trade.attributes if one.name == attribute), None)
    if row is None or wanted is None or row.unit.kind == wanted.kind:
        return
    raise UnitKindError(
        f"{figure.display} is a {row.unit.kind}, but {wanted.name} is a {wanted.kind}",
        "mend the unit or what is measured, or give the ruling again as meant",
    )


def _drafts(text: str) -> tuple[Tape, tuple[Draft, ...]]:
    from extract.heard import plain_language
    from extract.numbers.grammar import parse
    from extract.quantities.join import join

    plain = text
    for sign, words in _SIGNS.items():
        plain = plain.replace(sign, words)
    tape, parsed = parse(plain_language().make_doc(" ".join(plain.split())))
    return tape, join(tape, parsed)


def _unit(drafts: tuple[Draft, ...], usual: Unit | None) -> Unit | None:
    """The unit written; `usual` where none is, or where the written word may mean it: "22 degrees" of heat."""
    written = drafts[0].unit or drafts[-1].unit
    if written is None or usual is None:
        return written or usual
    said = drafts[0].said or drafts[-1].said
    meanings = {
        row["take"][written.name]
        for row in unit_data()["choice"]
        if written.name in row["units"] and said in row.get("said", [said])
    }
    return usual if usual.name in meanings or ("temperature" in meanings and usual.kind == "temperature") else written


def _around(text: str, tape: Tape, drafts: tuple[Draft, ...]) -> _Around:
    from extract.quantities.knowledge import knowledge

    manner, draft = knowledge().manner, drafts[0]
    hedged, limit = False, None
    if draft.start > 0:
        hedged = manner["hedged"]["before"].before(tape, draft.start) == 0
        limit = next((one for one in _LIMITS if manner[one]["before"].before(tape, draft.start) == 0), None)
        if not hedged and limit is None:
            raise _more(text, tape, 0, draft.start)
    end, tolerance = draft.end, None
    if len(drafts) == 2 and manner["tolerance"]["before"].before(tape, drafts[1].start) == draft.end:
        tolerance, end = _slack(text, draft, drafts[1]), drafts[1].end
    elif (
        behind := manner["hedged"]["after"].at(tape, end) or manner["hedged"]["after_at_end"].at(tape, end)
    ) is not None:
        hedged, end = True, behind
    if end < len(tape):
        raise _more(text, tape, end, len(tape))
    return _Around(hedged, limit, tolerance)


def _slack(text: str, draft: Draft, slack: Draft) -> Fraction:
    if slack.unit is None or draft.unit is None or slack.unit.name == draft.unit.name:
        return slack.number.value
    if slack.unit.kind != draft.unit.kind:
        raise FigureError(f"“{text.strip()}” is off by another kind of thing", "give both in one unit")
    return interval_to_unit(slack.number.value, slack.unit, draft.unit)


def _more(text: str, tape: Tape, start: int, end: int) -> FigureError:
    rest = " ".join(tape.text(at) for at in range(start, end))
    if start == 0:
        problem = "stands alone before the figure"
    elif any(tape.kind(at) not in ("word", "mark", "name", "and", "article") for at in range(start, end)):
        problem = "is one figure too many"
    else:
        problem = "is no unit on the list"
    remedy = "write a figure and its unit alone, such as 7/64 in or 2 to 3 thou"
    return FigureError(f"“{rest}” in “{text.strip()}” {problem}", remedy)
