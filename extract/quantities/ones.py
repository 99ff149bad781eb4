"""One of a unit, said without a numeral: "an inch", "a pint of enamel", "every inch and a half".

Refuses "wait a minute" and "twice a day".
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from extract.numbers.figure import Tape
from extract.numbers.parts import fraction
from extract.quantities.draft import Draft
from extract.quantities.phrases import Phrases
from extract.quantities.unit_phrases import unit_at
from extract.spans import Number, Unit
from extract.units import unit_data


def one_of(tape: Tape, at: int) -> Draft | None:
    """An article and a unit: "an inch", "a full inch"."""
    if tape.kind(at) != "article":
        return None
    match = unit_at(tape, at + 1 + (tape.text(at + 1) in unit_data()["article"]["whole"]))
    return _draft(tape, at, match.end, match.said, match.unit) if match else None


def bare_unit(tape: Tape, at: int) -> Draft | None:
    """The "inch" of "every inch and a half", where the article was swallowed."""
    match = unit_at(tape, at)
    if match is None or tape.kind(match.end) != "and":
        return None
    rules = unit_data()["article"]
    recurs = tape.text(at - 1) in ("every", "each") and match.said in rules["recurring"]
    if not recurs and match.said not in rules["swallowed"]:
        return None
    part = fraction(tape, match.end + 1)
    whole = _draft(tape, at, match.end, match.said, match.unit)
    return whole if part is not None and part.value < 1 and tape.kind(match.end + 1) != "digits" else None


def _draft(tape: Tape, start: int, end: int, said: str, unit: Unit) -> Draft:
    token = tape.lexemes[start].token
    number = Number(start=token, end=token + 1, value=Fraction(1), form="integer")
    return Draft(start, end, number, unit, said=said)


@cache
def _phrases(name: str) -> Phrases:
    return Phrases(unit_data()["article"][name])


def ends_clause(tape: Tape, at: int) -> bool:
    """True where a mark or a breath ends what stands before a lexeme."""
    return at >= len(tape) or tape.is_stop(at) or tape.lexemes[at].breath or tape.text(at) in ("and", "so", "but")


def may_be_one(tape: Tape, draft: Draft) -> bool:
    """True where one of the unit is measured, by the unit, by what is said before it, or by what follows."""
    rules = unit_data()["article"]
    name = draft.unit.name if draft.unit else ""
    if name in rules["units"]:
        return True
    if name in rules["alone"]:
        return not tape.is_noun(draft.end)
    if name in rules["filled"] and tape.text(draft.end) == "of":
        return True
    if draft.unit and draft.unit.kind == "volume" and tape.text(draft.start - 1) == "for":
        return False  # "fifty hours, for a pint"
    if name in rules["sized"]:
        sized = _phrases("size").at(tape, draft.end) is not None
        return sized or (ends_clause(tape, draft.end) and _phrases("naming").before(tape, draft.start) is not None)
    if name in rules["turned"] and _phrases("turning").before(tape, draft.start) is not None:
        return not tape.is_noun(draft.end)
    if _phrases("behind").before(tape, draft.start) is not None:
        return True
    return name in rules["long"] and _phrases("ahead").at(tape, draft.end) is not None
