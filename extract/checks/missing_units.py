"""A figure that measures something and whose unit nothing settles.

Takes "oven at 200, till it smells" and "the paint wants 24 to dry"; "torque it to 12, then a quarter turn" and "forty
some years" pass. Source: NIST SP 811 (2008) chapter 7: a value of a quantity is a number and a unit.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.checks.finding import Suspicion, figure_text
from extract.checks.talk import Said, Talk, words_of
from extract.checks.units import SOURCE, choices, first_kind
from extract.checks.vocabulary import check_words

_WAIT, _SETTLES = 7, 4
"""Words before a wait among which it must be said to be one, and cues up to which another time gives it its unit."""
_WAITED = 3
_STEM = 4
_SOME = (("some",), ("odd",), ("something",))


def find_missing_units(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that measures something and has no unit that anything settles."""
    kinds = {attribute.name: attribute.kind for attribute in talk.trade.attributes}
    for one in talk.said:
        measure = one.measure
        if measure.unit not in (None, "dimensionless") and not _is_unsettled_time(talk, one):
            continue
        if one.before[-2:] == (measure.quote.lower(), "for") or _is_settled_elsewhere(talk, one):
            continue  # "six for six" tells of strokes that came out
        if _counts_some(one):
            continue
        kind = kinds.get(measure.attribute or "", measure.kind) or first_kind(one)
        message = f"{figure_text(one.figure.value)} has no unit, and nothing near it settles one; {_asked(one, kind)}"
        yield Suspicion("unit_missing", "stop", (measure,), message, SOURCE)


def _asked(one: Said, kind: str | None) -> str:
    """What is to be said: of what the record supposes only what the words name too."""
    measure, near = one.measure, {word[:_STEM] for word in one.before[-_WAIT:]}
    named = any(word[:_STEM] in near for word in words_of(measure.attribute or ""))
    waits = one.before[-1:] == ("for",) or bool(check_words().waits[0] & {*one.before[-_WAITED:]})
    told = named or (kind == "time" and waits) or kind == first_kind(one)
    if measure.attribute and told and kind in check_words().usual_units:
        return f"say the {measure.attribute} in {choices(kind)}"
    return "say which unit is meant"


def _counts_some(one: Said) -> bool:
    """ "Forty some years", "thirty odd spokes": a count of what follows."""
    some, things = one.after[:1], one.after[1:2]
    return some in _SOME and things != () and not {*things} & (check_words().between | check_words().clause_borders)


def _is_settled_elsewhere(talk: Talk, one: Said) -> bool:
    """What is measured was said with its unit before, by the same word: "compression, cold, 45 psi"."""
    name = {*words_of(one.measure.attribute or "")} & {*one.before[-_WAIT:]}
    return any(
        name & {*other.before[-_WAIT:]} and other.measure.unit_said and other.place < one.place for other in talk.said
    )


def _is_unsettled_time(talk: Talk, one: Said) -> bool:
    """ "The paint wants 24 to dry": a wait without its unit, and none said of a time near it."""
    measure, (waiting, ending) = one.measure, check_words().waits
    if measure.kind != "time" or measure.unit_said or len(one.figures) > 1:
        return False
    if not (waiting & {*one.before[-_WAIT:]} and (one.after[:2] == () or one.after[0] in ending)):
        return False
    return not any(
        other.kind == "time" and other.unit_said and abs(other.cue - measure.cue) <= _SETTLES
        for other in talk.record.measures
    )
