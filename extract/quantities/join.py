"""Numbers joined with the units said beside them, and figures that belong together made one.

Takes "five foot two", "an inch and three quarters", "a thou or two", "two mil to two and a half"; leaves
"two inches or 50 mm" two figures, since the units differ.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import Any

from extract.numbers.figure import Figure, Tape
from extract.numbers.grammar import Parsed, figure
from extract.numbers.parts import fraction
from extract.numbers.ranges import behind_link, is_change
from extract.quantities.draft import Draft
from extract.quantities.ones import bare_unit, may_be_one, one_of
from extract.quantities.splits import count_before, said_again, without_count
from extract.quantities.unit_phrases import UnitMatch, unit_at, unit_behind
from extract.spans import Number, Unit
from extract.units import to_unit, unit_data, unit_named


def join(tape: Tape, parsed: tuple[Parsed, ...]) -> tuple[Draft, ...]:
    """All numbers in order, with the unit where one is said, articles that mean one included."""
    starts = {one.start: one for one in parsed}
    found: list[Draft] = []
    at = 0
    while at < len(tape):
        draft = _number(tape, starts[at]) if at in starts else _one(tape, at, found)
        if draft is None:
            at += 1
            continue
        if (first := said_again(tape, draft)) is not None:
            found.append(first[0])
            draft = first[1]
        if (count := count_before(tape, draft)) is not None:
            found.append(count)
            draft = replace(draft, start=count.end, number=without_count(tape, draft), grouped=False)
        draft = _grow(tape, draft)
        found.append(draft)
        at = max(draft.end, at + 1)
    return tuple(found)


def _number(tape: Tape, parsed: Parsed) -> Draft:
    match = unit_behind(tape, parsed.end, parsed.number.form != "integer")
    if match is not None and _is_verb(tape, match):
        match = None
    parsed = _without_sigh(tape, parsed, match)
    stock = match is not None and parsed.number.form == "fraction" and match.said in _no_fraction()
    if match is None or stock:
        return Draft(parsed.start, parsed.end, parsed.number, None, grouped=parsed.grouped)
    return _with(Draft(parsed.start, parsed.end, parsed.number, None, grouped=parsed.grouped), match)


def _is_verb(tape: Tape, match: UnitMatch) -> bool:
    """True for the "turns" of "five hundredths / turns smooth now", which begins a breath."""
    begins = tape.lexemes[match.start].breath and not tape.is_noun(match.start)
    return begins and match.unit.kind == "rotation"


def _without_sigh(tape: Tape, parsed: Parsed, match: UnitMatch | None) -> Parsed:
    """The "five inches" of "by oh five inches": thousandths are told by "oh" of an inch left out or single."""
    sighed = tape.kind(parsed.start) == "oh" and tape.kind(parsed.start + 1) not in ("point", "oh", "zero")
    if not sighed or match is None or match.said in _SINGLE_INCH:
        return parsed
    rest = figure(tape, parsed.start + 1)
    if rest is None or rest.end != parsed.end:
        return parsed
    token = tape.lexemes[rest.start].token
    number = Number(token, parsed.number.end, rest.value, rest.form, denominator=rest.denominator)
    return replace(parsed, number=number, start=rest.start, grouped=rest.grouped)


_SINGLE_INCH = ("inch", "in", '"', "″", "”")


def _with(draft: Draft, match: UnitMatch) -> Draft:
    return replace(draft, end=match.end, unit=match.unit, said=match.said)


@cache
def _no_fraction() -> frozenset[str]:
    return frozenset(unit_data()["between"]["no_fraction"])


def _one(tape: Tape, at: int, before: list[Draft]) -> Draft | None:
    """ "an inch", and the "inch" of "every inch and a half"; "a minute" only where it is measured."""
    if before and before[-1].end == at and not tape.lexemes[at].breath:
        return None
    draft = one_of(tape, at) or bare_unit(tape, at)
    if draft is not None and _is_rate(tape, draft):
        return None
    if draft is None or may_be_one(tape, draft):
        return draft
    return draft if _grow(tape, draft).end > draft.end else None


def _is_rate(tape: Tape, draft: Draft) -> bool:
    """True for the "an hour" of "a cup an hour" and of "an hour an inch"."""
    if draft.unit is None or draft.unit.kind != "time":
        return False
    each = tape.kind(draft.end) == "article" and unit_at(tape, draft.end + 1) is not None
    counted = tape.kind(draft.start - 2) == "article" and tape.is_noun(draft.start - 1) and draft.unit.name == "hour"
    return each or counted


def _grow(tape: Tape, draft: Draft) -> Draft:
    """The draft with the figures behind it that belong to it."""
    if draft.unit is None:
        return _to_one(tape, draft) or draft
    for rule in (_compound, _and_part, _or_two, _to_more):
        grown = rule(tape, draft, draft.unit)
        if grown is not None:
            return grown
    return draft


@cache
def _compounds() -> dict[str, list[dict[str, Any]]]:
    found: dict[str, list[dict[str, Any]]] = {}
    for row in unit_data()["compound"]:
        found.setdefault(row["large"], []).append(row)
    return found


def _compound(tape: Tape, draft: Draft, unit: Unit) -> Draft | None:
    """ "five foot two", "four pounds twelve ounces", "an hour and ten minutes"."""
    if draft.number.low is not None or draft.number.value.denominator != 1:
        return None
    at = draft.end + 1 if tape.kind(draft.end) in ("and", "dash") or tape.text(draft.end) == "," else draft.end
    one = one_of(tape, at) if at > draft.end else None
    second = Figure(at, at + 1, Fraction(1), "integer") if one else figure(tape, at)
    if second is None or second.value < 0:
        return None
    match = unit_behind(tape, second.end)
    for row in _compounds().get(unit.name, ()):
        small, result = unit_named(row["small"]), unit_named(row["result"])
        bare = row["bare"] and at == draft.end and _may_be_bare(tape, draft, second)
        if match is None and not bare:
            continue
        if match and match.unit.name != small.name:
            continue
        if second.value >= to_unit(Fraction(1), unit, small):
            continue
        value = to_unit(draft.number.value, unit, result) + to_unit(second.value, small, result)
        end = match.end if match else second.end
        number = Number(
            start=draft.number.start,
            end=tape.lexemes[second.end - 1].token + 1,
            value=value,
            form="integer" if value.denominator == 1 else "mixed" if second.denominator else "decimal",
            denominator=second.denominator,
            decimals=second.decimals,
            large=draft.number.value,
            large_unit=unit.name,
        )
        return replace(draft, end=end, number=number, unit=result, said=draft.said, compound=True)
    return None


def _may_be_bare(tape: Tape, draft: Draft, inches: Figure) -> bool:
    """Inches may go unnamed in "five foot two", but not in "eight foot two by fours" or before a counted thing."""
    feet = draft.said in ("foot", "'", "′", "’", "ft")
    return feet and inches.value < 12 and tape.text(inches.end) not in ("by", "x") and not _is_counted(tape, inches.end)


def _is_counted(tape: Tape, at: int) -> bool:
    """True for the "boards" of "five foot two boards"; the "nock" of "six foot four nock to nock" is not counted."""
    return tape.is_noun(at) and tape.text(at).endswith("s")


def _and_part(tape: Tape, draft: Draft, unit: Unit) -> Draft | None:
    """ "an inch and three quarters", "a millimetre and a half"."""
    if draft.number.low is not None or draft.number.value.denominator != 1 or tape.kind(draft.end) != "and":
        return None
    part = fraction(tape, draft.end + 1)
    if part is None or not 0 < part.value < 1:
        return None
    behind = unit_behind(tape, part.end, fraction=True)
    if behind and behind.unit.name != unit.name:
        if behind.unit.kind in (unit.kind, "rotation", "time"):
            return None
        behind = None  # "an inch and a quarter bar" is bar stock
    number = Number(
        start=draft.number.start,
        end=tape.lexemes[part.end - 1].token + 1,
        value=draft.number.value + part.value,
        form="mixed",
        denominator=part.denominator,
    )
    return replace(draft, end=behind.end if behind else part.end, number=number)


def _or_two(tape: Tape, draft: Draft, _: Unit) -> Draft | None:
    """ "a thou or two": a range from one to two."""
    if tape.kind(draft.start) != "article" and draft.number.value != 1:
        return None
    if tape.text(draft.end) != "or" or draft.number.low is not None:
        return None
    second = figure(tape, draft.end + 1)
    if second is None or second.value <= draft.number.value or second.value > 3:
        return None
    if unit_behind(tape, second.end) is not None:
        return None
    return _range(tape, draft, second.value, second.end, second.end)


def _one_and_part(tape: Tape, at: int, unit: Unit) -> Draft | None:
    """The "thou and a half" of "a thou to a thou and a half"."""
    one = one_of(tape, at)
    if one is None or one.unit is None or one.unit.name != unit.name:
        return None
    return _and_part(tape, one, unit)


def _to_more(tape: Tape, draft: Draft, unit: Unit) -> Draft | None:
    """ "two mil to two and a half mil", "a thou to a thou and a half": a range whose first end has the unit too."""
    if draft.number.low is not None or is_change(tape, draft.start):
        return None
    at = behind_link(tape, draft.end)
    listed = (
        tape.text(draft.end) == "," and tape.kind(draft.end + 1) == "article" and tape.kind(draft.start) == "article"
    )
    if listed and (more := _one_and_part(tape, draft.end + 1, unit)) is not None:
        return _range(tape, draft, more.number.value, more.end, more.end)
    if at is not None and (more := _one_and_part(tape, at, unit)) is not None:
        return _range(tape, draft, more.number.value, more.end, more.end)
    second = figure(tape, at) if at is not None else None
    if second is None or second.value <= draft.number.value:
        return None
    match = unit_behind(tape, second.end)
    if match is None or match.unit.name != unit.name:
        return None
    return _range(tape, draft, second.value, second.end, match.end)


def _to_one(tape: Tape, draft: Draft) -> Draft | None:
    """ "seven eighths to an inch": a fraction of the unit whose one ends the range."""
    if draft.number.form != "fraction" or draft.number.low is not None or draft.number.value >= 1:
        return None
    at = behind_link(tape, draft.end)
    one = one_of(tape, at) if at is not None else None
    if one is None or one.unit is None or one.unit.kind != "length" or is_change(tape, draft.start):
        return None
    return replace(_range(tape, draft, Fraction(1), one.start + 1, one.end), unit=one.unit, said=one.said)


def _range(tape: Tape, draft: Draft, high: Fraction, number_end: int, end: int) -> Draft:
    low = draft.number.value
    number = replace(
        draft.number, end=tape.lexemes[number_end - 1].token + 1, value=(low + high) / 2, low=low, high=high
    )
    return replace(draft, end=end, number=number)
