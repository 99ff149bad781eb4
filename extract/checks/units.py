"""A figure without a unit, and a unit of the wrong kind.

Takes "oven at 200, till it smells" (missing), "torque it to twelve millimeters" and "humidity at 45 degrees" (wrong
kind); "torque it to 12, then a quarter turn" and "two inches long" pass.

Source: NIST SP 811 (2008) chapter 7: a value of a
quantity is a number and a unit of that quantity's kind.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.checks.finding import Suspicion
from extract.checks.talk import Said, Talk
from extract.checks.vocabulary import check_words
from extract.units import unit_rows

SOURCE = "NIST SP 811 (2008) chapter 7: a number and a unit of that quantity's kind"
_REACH = 6
"""Words before a figure among which the word that settles its kind must stand."""

_NOUNS = {"mass": "a weight", "torque": "torque", "pressure": "pressure"}
"""How the kind is called in a message where the telling word is a verb."""


def find_missing_units(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that measures something and has no unit that anything settles."""
    kinds = {attribute.name: attribute.kind for attribute in talk.trade.attributes}
    for one in talk.said:
        measure = one.measure
        if measure.unit not in (None, "dimensionless"):
            continue
        kind = kinds.get(measure.attribute or "", measure.kind) or (_kind_before(one) or (None, None))[1]
        of = f" of {measure.attribute}" if measure.attribute else ""
        message = f"{measure.display}{of} has no unit, and nothing near it settles one; say {_choices(kind)}"
        yield Suspicion("unit_missing", "stop" if measure.attribute else "look", (measure,), message, SOURCE)


def find_wrong_kinds(talk: Talk) -> Iterator[Suspicion]:
    """Each figure whose unit is of another kind than the word beside it calls for."""
    for one in talk.said:
        measure = one.measure
        if measure.kind is None or measure.unit == "dimensionless" or not measure.unit_said:
            continue
        for word, kind in filter(None, (_kind_before(one), _kind_behind(one))):
            if measure.kind in _allowed(kind, word):
                continue
            message = f"{measure.display} is {_a(measure.kind)}, but {word} is given in {_choices(kind)}"
            yield Suspicion("dimension", "stop", (measure,), message, SOURCE)
            break


def _allowed(kind: str, name: str) -> frozenset[str]:
    kinds = check_words().unit_kinds
    return frozenset({kind, *kinds.get(kind, ()), *kinds.get(name, ())})


def _kind_before(one: Said) -> tuple[str, str] | None:
    """The last telling word before a figure, where only small words stand between, and the kind it calls for."""
    words, spare = one.before[-_REACH:], check_words().between
    for at in range(len(words) - 1, -1, -1):
        for length in (2, 1):
            phrase = words[max(0, at - length + 1) : at + 1]
            kind = check_words().kind_before.get(phrase)
            if kind is not None:
                return _NOUNS.get(kind, " ".join(phrase)), kind
        if words[at] not in spare:
            return None
    return None


def _kind_behind(one: Said) -> tuple[str, str] | None:
    for length in (2, 1):
        kind = check_words().kind_behind.get(one.after[:length])
        if kind is not None:
            return kind, kind
    return None


def _a(kind: str) -> str:
    return f"an {kind}" if kind[0] in "aeiou" else f"a {kind}"


def _choices(kind: str | None) -> str:
    """The two commonest units of a kind: "°F or °C"."""
    symbols = [row.unit.symbol for row in unit_rows().values() if row.unit.kind == kind]
    metric = [row.unit.symbol for row in unit_rows().values() if row.unit.kind == kind and row.system == "metric"]
    chosen = list(dict.fromkeys([*symbols[:1], *metric[:1], *symbols[1:2]]))[:2]
    return " or ".join(chosen) if chosen else "which unit is meant"
