"""Working a sum out, exactly and in the unit of its result.

Every function gives None where the units of the terms don't go together.
"""

from __future__ import annotations

from fractions import Fraction

from extract.checks.arithmetic.terms import Terms
from extract.checks.linear import conversion
from extract.checks.talk import Said
from extract.units import UnitError, to_unit

_FAR_APART = 200


def in_unit(one: Said, unit: str | None) -> Fraction | None:
    """A figure in another unit of its kind; None where it measures something else, or on a scale with another zero."""
    if one.measure.unit is None or unit is None:
        return None
    convert = conversion(one.measure.unit, unit)
    if convert is None or (one.measure.unit != unit and convert.offset):
        return None
    return convert(one.figure.value)


def _both(terms: Terms) -> tuple[Fraction, Fraction] | None:
    first, second = (in_unit(one, terms.result.measure.unit) for one in (terms.first, terms.second))
    same_kind = terms.first.measure.kind == terms.second.measure.kind == terms.result.measure.kind
    return (first, second) if first is not None and second is not None and same_kind else None


def total(terms: Terms) -> Fraction | None:
    """The sum of two; nobody adds seconds to milliseconds."""
    both = _both(terms)
    if both is None or max(both) > _FAR_APART * min(both):
        return None
    return sum(both, Fraction(0))


def difference(terms: Terms) -> Fraction | None:
    """How far two lie apart."""
    both = _both(terms)
    return None if both is None else abs(both[0] - both[1])


def middle(terms: Terms) -> Fraction | None:
    """The middle of two."""
    both = _both(terms)
    return None if both is None else sum(both, Fraction(0)) / 2


def _multiple(terms: Terms, factor: Fraction) -> Fraction | None:
    value = in_unit(terms.first, terms.result.measure.unit)
    return None if value is None or terms.first.measure.kind != terms.result.measure.kind else value * factor


def double(terms: Terms) -> Fraction | None:
    """Twice the one before."""
    return _multiple(terms, Fraction(2))


def half(terms: Terms) -> Fraction | None:
    """Half the one before."""
    return _multiple(terms, Fraction(1, 2))


def abreast(terms: Terms) -> Fraction | None:
    """Two in parallel: half the resistance of one, twice the capacitance."""
    kind = terms.first.measure.kind
    return half(terms) if kind == "resistance" else double(terms) if kind == "capacitance" else None


def half_of_it(terms: Terms) -> Fraction | None:
    """Half the one before, where what was said may be meant as one: "300 mm, so 10 mm each side" is an overhang."""
    exact = half(terms)
    said = terms.result.figure.value
    return exact if exact and Fraction(1, 2) < said / exact < Fraction(8, 5) else None


def double_of_it(terms: Terms) -> Fraction | None:
    """Twice the one before, where what was said may be meant as that: "5 mm each side, so the axle is 141" is not."""
    exact = double(terms)
    said = terms.result.figure.value
    same = terms.first.measure.unit == terms.result.measure.unit
    return exact if exact and same and Fraction(3, 5) < said / exact < Fraction(8, 5) else None


def part(terms: Terms) -> Fraction | None:
    """So many percent of the other."""
    second = in_unit(terms.second, terms.result.measure.unit)
    if (
        terms.first.measure.unit != "percent"
        or second is None
        or terms.second.measure.kind != terms.result.measure.kind
    ):
        return None
    return second * terms.first.figure.value / 100


def said_share(terms: Terms) -> Fraction | None:
    """A quarter of the other, where the quarter was read as a figure without a unit."""
    share, whole = terms.first, in_unit(terms.second, terms.result.measure.unit)
    bare = share.figure.fraction and share.figure.value < 1 and not share.measure.unit_said
    same = terms.second.measure.kind == terms.result.measure.kind
    return whole * share.figure.value if whole is not None and bare and same else None


def joined_half(terms: Terms) -> Fraction | None:
    """Half of the whole part of "17 inches and half", of which the next words say "of that"."""
    value = in_unit(terms.first, terms.result.measure.unit)
    inner = terms.first.figure.value
    whole = Fraction(int(inner))
    if value is None or not whole or inner - whole != Fraction(1, 2):
        return None
    return value * whole / inner / 2


def third(terms: Terms) -> Fraction | None:
    """A third of the one before."""
    return _multiple(terms, Fraction(1, 3))


def quarter(terms: Terms) -> Fraction | None:
    """A quarter of the one before."""
    return _multiple(terms, Fraction(1, 4))


def many(terms: Terms) -> Fraction | None:
    """So many times the one before."""
    return _multiple(terms, Fraction(terms.count))


def shared(terms: Terms) -> Fraction | None:
    """The one before divided into so many."""
    return _multiple(terms, Fraction(1, terms.count))


def _derived(terms: Terms, unit: str) -> Fraction | None:
    value = terms.first.figure.value
    other = terms.second.figure.value
    goal = terms.result.measure.unit
    if goal is None or other == 0:
        return None
    try:
        return to_unit(value * other if " * (" in unit else value / other, unit, goal)
    except UnitError:
        return None


def product(terms: Terms) -> Fraction | None:
    """One times the other: volts times milliamperes in watts."""
    return _derived(terms, f"({terms.first.measure.unit}) * ({terms.second.measure.unit})")


def times_bare(terms: Terms) -> Fraction | None:
    """So many times the first, where the count was read as a figure without a unit."""
    value, count = in_unit(terms.first, terms.result.measure.unit), terms.second
    whole = count.figure.value.denominator == 1 and not count.measure.unit_said
    same = terms.first.measure.kind == terms.result.measure.kind
    return value * count.figure.value if value is not None and whole and same else None


def bare_total(terms: Terms) -> Fraction | None:
    """The sum of two figures without units, in the unit of the result."""
    if any(one.measure.unit_said for one in terms.operands):
        return None
    return sum((one.figure.value for one in terms.operands), Fraction(0))


def quotient(terms: Terms) -> Fraction | None:
    """One over the other: volts across ohms in milliamperes."""
    return _derived(terms, f"({terms.first.measure.unit}) / ({terms.second.measure.unit})")


def over_time(terms: Terms) -> Fraction | None:
    """So much a period, for so many periods."""
    periods = in_unit(terms.second, terms.period)
    rate = in_unit(terms.first, terms.result.measure.unit)
    if periods is None or rate is None or terms.first.measure.kind != terms.result.measure.kind:
        return None
    return periods * rate


def percent(terms: Terms) -> Fraction | None:
    """How much the second has changed from the first, in percent of the first."""
    if terms.result.measure.unit != "percent" or terms.first.figure.value == 0:
        return None
    second = in_unit(terms.second, terms.first.measure.unit)
    if second is None or terms.first.measure.kind != terms.second.measure.kind:
        return None
    return abs(1 - second / terms.first.figure.value) * 100


def strength(terms: Terms) -> Fraction | None:
    """Grams in a hundred millilitres, in percent: the usual strength of a bath."""
    grams, volume = in_unit(terms.first, "gram"), in_unit(terms.second, "milliliter")
    if terms.result.measure.unit != "percent" or grams is None or not volume:
        return None
    return grams / volume * 100
