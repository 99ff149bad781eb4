"""Two figures for one thing, in two units, that don't agree.

Takes "two foot, so 450 millimeters"; "two foot, call it 600 millimeters" and "5/8, so 16 mm near enough" pass.
Source: the rounding rules of NIST SP 811 (2008) B.7 and NIST SP 1038 (2006) section 4.4, with caps of our own.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.agreement import Verdict, agreement
from extract.checks.figure import Figure
from extract.checks.finding import Suspicion, decimal, figure_text, symbol_of, with_unit
from extract.checks.linear import Linear, conversion
from extract.checks.rounding import converted_step
from extract.checks.talk import Said, Talk, names_attribute, words_of
from extract.checks.vocabulary import check_words, holds
from extract.record import Measure
from extract.units import system_of, unit_named

SOURCE = "NIST SP 811 (2008) B.7 and SP 1038 (2006) section 4.4: rounding of converted figures"
_FAR = 9
"""Words between two figures from which on they are no restatement, unless the record says so."""
_FEW = 3
_OR = frozenset({"about", "so", "roughly", "call", "it", "say", "around", "that", "nearly", "just", "under", "over"})
_HEDGES = frozenset({"about", "roughly", "around", "nearly", "just", "under", "over", "near", "say"})
_A = (("a",), ("an",), ("any",), ("either",))
"""Before a figure these let "or" offer another thing: "a two inch or 120 mm brush"."""
_BY = ("by",)
_AT = ("at",)
_SIDES: dict[tuple[str, ...], int] = {("over",): 1, ("above",): 1, ("under",): -1, ("below",): -1}
_OTHER_SIDE = Fraction(5, 100)
"""How far on the other side a figure said to be just over or under may lie, as a part of the exact one."""
_FAR_SIDE = 4
"""Words between two sides of a thing: "1.5 mm thick and 3 mm wide, so 1/16 by 1/8"."""
_POURED = ("mass", "volume")
_WEAKLY, _STRONGLY, _RIGHT_BEHIND, _PLAINLY = 2, 5, 12, 1000
"""Figures further apart than so many times may be of two things: no stop, only a look."""
_GRADES: dict[Verdict, int] = {"agrees": 0, "close": 1, "disagrees": 2}


def find_conversions(talk: Talk) -> Iterator[Suspicion]:
    """Each restatement that disagrees, and each that is only close and was not hedged."""
    for second in talk.said:
        pair = _restated(talk, second)
        if pair is not None and (found := _judge(*pair)) is not None:
            yield found


def _restated(talk: Talk, second: Said) -> tuple[Said, Said, int] | None:
    """The figure that `second` says again, `second`, and how many times apart they may lie to be one thing for sure."""
    linked = talk.by_id.get(second.measure.same_as or "")
    if (
        linked is not None
        and (pair := _counterpart(talk, second)) is not None
        and _BY in (pair.after[:1], second.after[:1])
    ):
        linked = pair
    if linked is not None and second.after[:1] == _BY and linked.after[:1] != _BY and linked.before[-1:] == _BY:
        return None  # the second side of a pair, and the first one of another
    if linked is not None and second.measure.kind == "time" and not holds(second.before, check_words().strong):
        return None
    if linked is not None:
        first, later = sorted((linked, second), key=lambda one: one.place)
        return first, later, _reach(first, later)
    first_said = _counterpart(talk, second)
    if first_said is None or not _same_kind(first_said.measure, second.measure) or not _may_restate(first_said, second):
        return None
    words = _between(talk, first_said, second)
    if first_said.clause[-1:] == ("from",) and "to" in words[:3]:
        return None
    if len(words) > _FAR or not second.measure.unit_said or any(word[0].isdigit() for word in words):
        return None
    if _tells_of_more(words):
        return None
    if holds(words, check_words().strong) is not None:
        return first_said, second, _reach(first_said, second)
    if second.measure.kind == "time":
        return None
    if holds(words, check_words().weak) is None and not _are_of_two_systems(first_said, second):
        return None
    item = words_of(first_said.measure.item or "")
    passing = check_words().beside.union(item, (word.rstrip("s") for word in item))
    if any(word not in passing for word in words):
        return None
    return first_said, second, _reach(first_said, second)


def _tells_of_more(words: tuple[str, ...]) -> bool:
    """ "984 thou, so that's metric in an American casting, outside is 52 mm": behind "that's" comes another matter."""
    found = holds(words, check_words().strong)
    if found is None:
        return False
    at = next(at for at in range(len(words)) if words[at : at + len(found)] == found)
    return len([word for word in words[at + len(found) :] if word not in check_words().beside]) >= _FEW


def _are_of_two_systems(first: Said, second: Said) -> bool:
    """Inches and millimetres, degrees of the two scales: one of them is for those who think in the other."""
    systems = {_system(one.measure.unit) for one in (first, second)}
    return systems == {"imperial", "metric"}


def _system(unit: str | None) -> str | None:
    if unit in ("degF", "degC"):
        return "imperial" if unit == "degF" else "metric"
    return system_of(unit_named(unit)) if unit else None


def _is_for_others(second: Said) -> bool:
    """ "900 grams, for the rest of you"."""
    return second.after[:1] == ("for",) or second.after[:1] == ("if",) or second.after[:1] == ("in",)


def _between(talk: Talk, first: Said, second: Said) -> tuple[str, ...]:
    """The words between, without those of what there is so much of: "four pounds of clay, so about"."""
    words = second.before
    before = talk.previous(second)
    if before is not None and before is not first and before.place > first.place:
        words = (*before.before, *words)
    return words[2:] if words[:1] == ("of",) and first.measure.kind in _POURED else words


def _counterpart(talk: Talk, second: Said) -> Said | None:
    """The figure before; of "222 by 140 mm, so 8 3/4 by 5 1/2 in" the one at the same place among its fellows."""
    before = talk.previous(second)
    if before is None:
        return None
    joined = len(before.before) < _FAR_SIDE and ("and" in before.before or before.before[-1:] == _BY)
    widths = second.after[:1] == _BY and joined
    heights = second.before == _BY and (middle := talk.previous(before)) is not None and middle.before == _BY
    return talk.previous(before) if widths else middle if heights else before


def _reach(first: Said, second: Said) -> int:
    """With "that's" and hardly a word more nothing else can be meant; with "so" or "or" another thing may be."""
    words = second.before[-_FAR:]
    if holds(words, check_words().strong) is None:
        joined = holds(words, check_words().weak) is not None or _is_for_others(second)
        passing = _OR if first.before[-1:] in _A else _OR | {"or"}
        plain = joined and {*words} <= passing and _are_of_two_systems(first, second)
        return _STRONGLY if plain else _WEAKLY
    if len(second.before) <= _FEW:
        return _PLAINLY
    hedges = next((at for at, word in enumerate(reversed(words)) if word not in _HEDGES), 0)
    link = words[-hedges - _FEW : len(words) - hedges]
    return _RIGHT_BEHIND if any(link[-at:] in check_words().strong for at in range(1, _FEW + 1)) else _STRONGLY


def _same_kind(first: Measure, second: Measure) -> bool:
    return first.kind is not None and first.kind == second.kind and first.unit != second.unit


def _may_restate(first: Said, second: Said) -> bool:
    one, other = first.measure, second.measure
    if one.difference != other.difference or len(first.figures) != len(second.figures):
        return False
    if (
        one.attribute
        and other.attribute
        and one.attribute != other.attribute
        and (_is_named(second) or not _are_of_two_systems(first, second))
    ):
        return False
    return not second.after or second.after[0] not in check_words().comparing


def _is_named(second: Said) -> bool:
    """What the second measures is said beside it, or no words are known; else the record only supposes it."""
    if not second.before:
        return True
    return names_attribute((*second.before, *second.after[:_FEW]), second.measure.attribute or "")


def _judge(first: Said, second: Said, reach: int) -> Suspicion | None:
    one, other = first.measure, second.measure
    if one.unit is None or other.unit is None or len(first.figures) != len(second.figures):
        return None
    convert = conversion(one.unit, other.unit, one.difference)
    if convert is None:
        return None
    pairs = list(zip(first.figures, second.figures, strict=True))
    if _agrees_elsewhere(first, second, convert):
        return None
    verdict = max((agreement(a, b, convert) for a, b in pairs), key=_GRADES.__getitem__)
    strict = max((agreement(a, b, convert, limit=one.limit or other.limit) for a, b in pairs), key=_GRADES.__getitem__)
    exact = convert(first.figure.value)
    beyond = _is_beyond(second, exact)
    if not beyond and (strict == "agrees" or (strict == "close" and (one.hedged or other.hedged))):
        return None
    loose = strict != verdict
    verdict = "disagrees" if beyond else verdict
    far = exact and not Fraction(1, reach) < second.figure.value / exact < reach
    if _is_at_a_place(first, second) and not _is_shifted(first, second, convert):
        return None
    if far and not _is_shifted(first, second, convert):
        verdict = "close"
    if verdict == "disagrees" and _is_nominal(first, second):
        verdict = "close"
    worked = " to ".join(figure_text(convert(a.value)) if loose else worked_out(a, b, convert) for a, b in pairs)
    message = f"{one.display} is {with_unit(worked, symbol_of(other))}, not {other.display}"
    return Suspicion("conversion", "stop" if verdict == "disagrees" else "look", (one, other), message, SOURCE)


def _is_beyond(second: Said, exact: Fraction) -> bool:
    """ "A shade over 2 inches" of what is 1.70: plainly on the other side."""
    side = _SIDES.get(second.before[-1:], 0)
    if not side or not check_words().hairs & {*second.before[-2:-1]}:
        return False
    return side * (second.figure.value - exact) > abs(exact) * _OTHER_SIDE


def _is_at_a_place(first: Said, second: Said) -> bool:
    """ "At 6.2 metres that's 325 mm": what there is of something at that place, in the units of one system."""
    return first.before[-1:] == _AT and not _are_of_two_systems(first, second)


def _is_nominal(first: Said, second: Said) -> bool:
    """ "Half an inch, so 12 mm ply": the same board is sold under both sizes."""
    if len(first.figures) > 1:
        return False
    pair = (first, second) if first.measure.unit in ("inch", "foot", "yard") else (second, first)
    to_inch = conversion(pair[0].measure.unit or "", "inch")
    to_millimeter = conversion(pair[1].measure.unit or "", "millimeter")
    if to_inch is None or to_millimeter is None:
        return False
    return (to_inch(pair[0].figure.value), to_millimeter(pair[1].figure.value)) in check_words().nominal


def _is_shifted(first: Said, second: Said, convert: Linear) -> bool:
    """ "1 1/8 inch, 286 mm": the right digits with the point out of place are no other thing."""
    if convert.offset or len(first.figures) > 1:
        return False
    moved = (Linear(convert.factor * power) for power in (10, 100, Fraction(1, 10), Fraction(1, 100)))
    return any(agreement(first.figure, second.figure, way) == "agrees" for way in moved)


def _agrees_elsewhere(first: Said, second: Said, convert: Linear) -> bool:
    """Hundredweights, tons, gallons and pints differ from country to country: any that agrees will do."""
    there = check_words().elsewhere.get(first.measure.unit or "", Fraction(1))
    there /= check_words().elsewhere.get(second.measure.unit or "", Fraction(1))
    other = Linear(convert.factor * there, convert.offset, convert.floor)
    pairs = zip(first.figures, second.figures, strict=True)
    return there != 1 and all(agreement(a, b, other) != "disagrees" for a, b in pairs)


def worked_out(first: Figure, second: Figure, convert: Linear) -> str:
    """The exact conversion of `first`, rounded by the published rule or as finely as `second` was said."""
    exact = convert(first.value)
    text = decimal(exact, min(converted_step(first, exact), second.step))
    short = text.rstrip("0").rstrip(".") if "." in text else text
    return short if Fraction(short) == exact else text
