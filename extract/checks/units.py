"""A unit of the wrong kind.

Takes "torque it to twelve millimeters" and "humidity at 45 degrees"; "two inches long" passes.
Source: NIST SP 811 (2008) chapter 7: a value of a quantity is a number and a unit of that quantity's kind.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from extract.checks.agreement import agreement
from extract.checks.finding import Suspicion
from extract.checks.linear import conversion
from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import Phrase, check_words, holds
from extract.record import Measure
from extract.trade import Trade
from extract.units import unit_rows

SOURCE = "NIST SP 811 (2008) chapter 7: a number and a unit of that quantity's kind"
_REACH = 9
"""Words before a figure among which the word that settles its kind must stand."""

_LINKED, _DIGITS = 5, 2
"""Words between a figure and the same in the other system, and digits that don't come again by chance."""
_RECORDED = 14
_NOT_SAID = frozenset({"and", "then"})
_VERB = 7
"""Words before a figure among which the verb that calls for its kind must stand."""
_LONGEST = 4
_SHORTEST = 6
"""Letters of an attribute's name: "set" and "gap" are said for too many things."""
_PITCH = frozenset({"pitch"})
""" "Flat" and "sharp" are of pitch only where the talk speaks of pitch."""
_NOUNS = {
    "mass": "a weight",
    "torque": "torque",
    "pressure": "pressure",
    "temperature": "a temperature",
    "time": "a time",
}
"""How the kind is called in a message where the telling word is a verb."""


_ENDS_OF_VERBS = frozenset({"by", "with", "at", "in", "to", "says", "say", "reads", "read"})


def find_wrong_kinds(talk: Talk) -> Iterator[Suspicion]:
    """Each figure whose unit is of another kind than the word or attribute beside it calls for."""
    names = _attribute_names(talk.trade)
    for one in talk.said:
        measure = one.measure
        if measure.kind is None or measure.unit == "dimensionless" or not measure.unit_said:
            continue
        behind = _kind_behind(talk, one)
        if behind is not None and measure.kind in allowed(behind[1], behind[0]):
            continue  # a thermometer "3 mm thick"
        told = (
            _kind_before(one),
            behind,
            _named_before(one, names),
            _done_before(one),
            _named_behind(one, names),
            _firm_before(one),
            _loosely_before(one),
            _restated(talk, one),
            _recorded(one, names),
        )
        for word, kinds in filter(None, told):
            if measure.kind not in allowed(kinds, word):
                yield wrong_kind(measure, word, kinds)
                break


def wrong_kind(measure: Measure, word: str, kinds: frozenset[str]) -> Suspicion:
    """That a figure is of a kind in which what the word names is not given."""
    message = f"{measure.display} is {a_kind(measure.kind or '')}, but {word} is given in {choices(min(kinds))}"
    return Suspicion("dimension", "stop", (measure,), message, SOURCE)


def _attribute_names(trade: Trade) -> dict[Phrase, frozenset[str]]:
    """Every telling name of an attribute, with all kinds that bear it."""
    found: dict[Phrase, set[str]] = {}
    for attribute in trade.attributes:
        for said in attribute.said:
            if said not in check_words().vague and len(said) >= _SHORTEST:
                found.setdefault(tuple(said.split()), set()).add(attribute.kind)
    return {name: frozenset(kinds) for name, kinds in found.items()}


def allowed(kinds: frozenset[str], name: str) -> frozenset[str]:
    """Those kinds, with all in which what bears the name, or is of such a kind, is given too."""
    known = check_words().unit_kinds
    return kinds.union(known.get(name, ()), *(known.get(kind, ()) for kind in kinds))


def _before(one: Said, known: Mapping[Phrase, frozenset[str]]) -> tuple[str, frozenset[str]] | None:
    """The last known phrase before a figure, where only small words stand between, and the kinds it calls for."""
    spare, words = check_words().between, one.clause[-_REACH:]
    if "of" in words:
        spare |= {*words_of(one.measure.item or "")}
    for at in range(len(words) - 1, -1, -1):
        for length in range(min(_LONGEST, at + 1), 0, -1):
            phrase = words[at - length + 1 : at + 1]
            if phrase in known and _is_of_last(one, at - length + 1):
                return None
            if phrase in known:
                return " ".join(phrase), known[phrase]
        if words[at] not in spare and len(words[at]) > 1:
            return None
    return None


def _is_of_last(one: Said, start: int) -> bool:
    """ "30 cm in diameter, 5 kg of it": the words right behind a figure are of that figure."""
    return len(one.before) <= _REACH and one.before[:start] == ("in",)


def _kind_before(one: Said) -> tuple[str, frozenset[str]] | None:
    found = _before(one, check_words().kind_before)
    if found is None:
        return None
    phrase, kinds = found
    kind = min(kinds)
    is_verb = phrase.split()[-1] in _ENDS_OF_VERBS
    return _NOUNS.get(kind, a_kind(kind) if is_verb else phrase), kinds


def _named_before(one: Said, names: Mapping[Phrase, frozenset[str]]) -> tuple[str, frozenset[str]] | None:
    return _before(one, names)


def _kind_behind(talk: Talk, one: Said) -> tuple[str, frozenset[str]] | None:
    for length in (4, 3, 2, 1):
        kinds = check_words().kind_behind.get(one.after[:length])
        if kinds is not None and (kinds != _PITCH or talk.tells_pitch):
            behind = " ".join(one.after[:length])
            return behind.removeprefix("of ") if behind.startswith("of ") else min(kinds), kinds
    return None


def _done_before(one: Said) -> tuple[str, frozenset[str]] | None:
    """ "Heat the plate to", "leave the lot for": a verb, a few words and the small word that calls for a figure."""
    words = one.before[-_REACH:]
    vocabulary = check_words()
    if not words:
        return None
    things, small, other = vocabulary.fastened
    if words[-1] in small and things & {*words} and not other & {*words}:
        return "torque", frozenset({"torque"})
    for at in range(len(words) - 2, max(-1, len(words) - _VERB), -1):
        if words[at] in vocabulary.clause_borders:
            return None
        kind = vocabulary.doing.get((words[at], words[-1]))
        if kind is not None:
            return _NOUNS.get(kind, kind), frozenset({kind})
    return None


def _firm_before(one: Said) -> tuple[str, frozenset[str]] | None:
    """ "Shell width, measured on the calliper: 68 newton metres": a noun of length somewhere in the clause."""
    nouns, kinds, unless = check_words().firm
    words = one.clause[-_REACH:]
    noun = next((word for word in reversed(words) if word in nouns), None)
    if noun is None or one.measure.kind not in kinds or unless & {*words, *one.after[:3]}:
        return None
    return "length", frozenset({"length"})


def _loosely_before(one: Said) -> tuple[str, frozenset[str]] | None:
    """ "Thread tension, with the case hung by its thread, 25 mm": a word that calls for a kind, and none nearer."""
    kinds, unless = check_words().loose
    words = one.clause[-_REACH:]
    at = next((at for at in range(len(words) - 1, -1, -1) if words[at] in check_words().loosely), None)
    if at is None or one.measure.kind not in kinds or unless & {*words[at + 1 :], *one.after[:2]}:
        return None
    kind = check_words().loosely[words[at]]
    if check_words().kind_before.get(words[max(0, at - 1) : at + 1], {kind}) != {kind}:
        return None  # "high tension"
    return _NOUNS.get(kind, words[at]), frozenset({kind})


def _restated(talk: Talk, one: Said) -> tuple[str, frozenset[str]] | None:
    """ "16 1/4 inches, or 413 newton metres": the right number for the same in the other system, in no unit of it."""
    first = talk.previous(one)
    if first is None or first.measure.kind in (None, one.measure.kind) or len(one.before) > _LINKED:
        return None
    if not first.measure.unit_said or one.figure.digits < _DIGITS or not holds(one.before, _links()):
        return None
    for unit in check_words().counterparts.get(first.measure.unit or "", ()):
        convert = conversion(first.measure.unit or "", unit)
        if convert is not None and agreement(first.figure, one.figure, convert) == "agrees":
            kind = first.measure.kind or ""
            return f"what is {first.measure.display}", frozenset({kind})
    return None


def _recorded(one: Said, names: Mapping[Phrase, frozenset[str]]) -> tuple[str, frozenset[str]] | None:
    """What the record has it measure, where a word of that stands before: "Tension. I'm bringing it up to 110 psi"."""
    attribute = one.measure.attribute or ""
    kinds = names.get(tuple(attribute.split()))
    near = {*one.before[-_RECORDED:]}
    if kinds is None or " " not in attribute or not _NOT_SAID.isdisjoint(near) or not {*words_of(attribute)} & near:
        return None
    return attribute, kinds


def _links() -> frozenset[Phrase]:
    return check_words().strong | check_words().weak


def _named_behind(one: Said, names: Mapping[Phrase, frozenset[str]]) -> tuple[str, frozenset[str]] | None:
    """ "Three kilograms of clearance": what the figure is of."""
    if one.after[:1] != ("of",):
        return None
    for length in (3, 2, 1):
        phrase = one.after[1 : 1 + length]
        if phrase in names:
            return " ".join(phrase), names[phrase]
        kinds = check_words().kind_of.get(phrase)
        if kinds is not None:
            return " ".join(phrase), kinds
    return None


def first_kind(one: Said) -> str | None:
    """The kind that the words right before a figure call for."""
    found = _kind_before(one)
    return min(found[1]) if found else None


def a_kind(kind: str) -> str:
    """A kind of unit with its article."""
    return f"an {kind}" if kind[0] in "aeiou" else f"a {kind}"


def choices(kind: str | None) -> str:
    """The usual units of a kind: "°F or °C"."""
    usual = check_words().usual_units.get(kind or "", ())
    symbols = usual or tuple(row.unit.symbol for row in unit_rows().values() if row.unit.kind == kind)[:1]
    return " or ".join(symbols) if symbols else "which unit is meant"
