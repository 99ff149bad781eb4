"""Volts beside volts, or amperes beside amperes, that multiplied come to the watts said with them.

Takes "the tag says 110 volts and 0.9 volts, figure a hundred watts" (0.9 A meant); refuses "12 volts in and 5 volts
out, 10 watts". Source: SI Brochure, 9th edition (2019), Table 4: a volt is a watt an ampere.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.finding import Suspicion, figure_text
from extract.checks.linear import conversion
from extract.checks.talk import Said, Talk

SOURCE = "SI Brochure, 9th edition (2019), Table 4: a volt is a watt an ampere"
_MEANT = {"voltage": ("volt", "current", "A"), "current": ("ampere", "voltage", "V")}
"""The unit a kind is reckoned in, and the kind that the odd one should be of, with its symbol."""
_ASIDE = Fraction(12, 100)
"""How far the watts may be rounded."""
_FEW, _FAR = 4, 8
"""Words between the two, and before the watts."""


def find_unlike_powers(talk: Talk) -> Iterator[Suspicion]:
    """Each of two figures of one unit that makes the watts said behind them only as a figure of the other kind."""
    for power in talk.said:
        second = talk.by_place.get(power.place - 1)
        first = talk.by_place.get(power.place - 2)
        if first is not None and second is not None and _are_said_together(first, second, power):
            kind = first.measure.kind or ""
            unit, other, symbol = _MEANT[kind]
            one, two = (_reckoned(said, unit) for said in (first, second))
            watts = _reckoned(power, "watt")
            if watts and abs(one * two - watts) <= _ASIDE * watts:
                low, high = sorted((first, second), key=lambda said: _reckoned(said, unit))
                odd, kept = (low, high) if kind == "voltage" else (high, low)
                meant = f"{figure_text(odd.figure.value)} {symbol}"
                message = (
                    f"{odd.measure.display} is no second {kind}: with {kept.measure.display} "
                    f"it makes {power.measure.display} as a {other}, {meant}"
                )
                yield Suspicion("dimension", "stop", (odd.measure,), message, SOURCE)


def _are_said_together(first: Said, second: Said, power: Said) -> bool:
    kinds = first.measure.kind, second.measure.kind, power.measure.kind
    if kinds[0] not in _MEANT or kinds[0] != kinds[1] or kinds[2] != "power":
        return False
    said = first.measure.unit_said and second.measure.unit_said and power.measure.unit_said
    single = all(len(one.figures) == 1 for one in (first, second, power))
    return said and single and len(second.before) <= _FEW and len(power.before) <= _FAR


def _reckoned(said: Said, unit: str) -> Fraction:
    convert = conversion(said.measure.unit or "", unit)
    return convert(said.figure.value) if convert is not None else Fraction(0)
