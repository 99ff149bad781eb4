"""Working out sums that are only hinted at: a result far from every way of working it out is of something else.

Takes "8 mm, wants to be 6, so that's 3 to come off" (2); refuses "the slot is 40 mm, 3 wide, so 1 mm to take off".
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from extract.checks.arithmetic import work
from extract.checks.arithmetic.terms import PARTS, Terms
from extract.checks.linear import conversion

Work = Callable[[Terms], Fraction | None]
_NEAR = Fraction(5, 2)
NEAREST = Fraction(8, 5)


def one_of(*ways: Work, near: Fraction = _NEAR) -> Work:
    """What was said where a way gives it, else what the first way within `near` times of it gives; None without one."""

    def worked(terms: Terms) -> Fraction | None:
        said = abs(terms.result.figure.value)
        results = [exact for way in ways if (exact := way(terms)) is not None]
        if said in results:
            return said
        close = [exact for exact in results if exact and said and 1 / near < said / abs(exact) < near]
        return close[0] if close else None

    return worked


def half_difference(terms: Terms) -> Fraction | None:
    """Half of how far two lie apart: a pin in a hole, in the middle."""
    apart = work.difference(terms)
    return None if apart is None else apart / 2


def with_both_ends(terms: Terms) -> Fraction | None:
    """The one and twice the other: an axle that sticks out on both sides."""
    first, second = (work.in_unit(one, terms.result.measure.unit) for one in (terms.first, terms.second))
    kinds = {one.measure.kind for one in (*terms.operands, terms.result)}
    return first + 2 * second if first is not None and second is not None and len(kinds) == 1 else None


def without_both_ends(terms: Terms) -> Fraction | None:
    """The one less twice the other: between the shoulders of a stretcher with a tenon at each end."""
    first, second = (work.in_unit(one, terms.result.measure.unit) for one in (terms.first, terms.second))
    kinds = {one.measure.kind for one in (*terms.operands, terms.result)}
    return first - 2 * second if first is not None and second is not None and len(kinds) == 1 else None


def and_so_many(terms: Terms) -> Fraction | None:
    """The one and so many times the other: "68 and two lots of 15"."""
    first, second = (work.in_unit(one, terms.result.measure.unit) for one in (terms.first, terms.second))
    kinds = {one.measure.kind for one in (*terms.operands, terms.result)}
    return first + terms.count * second if first is not None and second is not None and len(kinds) == 1 else None


def grand_total(terms: Terms) -> Fraction | None:
    """The sum of three."""
    values = [work.in_unit(one, terms.result.measure.unit) for one in terms.operands]
    kinds = {one.measure.kind for one in (*terms.operands, terms.result)}
    return sum((value for value in values if value is not None), Fraction(0)) if len(kinds) == 1 else None


def part_of_it(terms: Terms) -> Fraction | None:
    """A third, a quarter, half of the one before."""
    value = work.in_unit(terms.first, terms.result.measure.unit)
    return None if value is None or terms.first.measure.kind != terms.result.measure.kind else value * PARTS[terms.part]


def turned(terms: Terms) -> Fraction | None:
    """So many turns of a thread's pitch."""
    turns = [one for one in terms.operands if one.measure.kind == "rotation"]
    pitches = [one for one in terms.operands if one.measure.kind == terms.result.measure.kind != "rotation"]
    if len(turns) != 1 or len(pitches) != 1:
        return None
    pitch = work.in_unit(pitches[0], terms.result.measure.unit)
    return None if pitch is None else pitch * turns[0].figure.value


def turns_needed(terms: Terms) -> Fraction | None:
    """How many turns make so much, where one turn, or so many, make so much."""
    kinds = [one.measure.kind for one in (*terms.operands, terms.result)]
    if len(kinds) != 4 or kinds[0] != "rotation" or kinds[3] != "rotation" or kinds[1] != kinds[2]:
        return None
    step = work.in_unit(terms.second, terms.operands[2].measure.unit)
    return terms.operands[2].figure.value / step * terms.first.figure.value if step else None


def over_one_period(terms: Terms) -> Fraction | None:
    """So much a day, said for a week."""
    periods = conversion(terms.over, terms.period)
    rate = work.in_unit(terms.first, terms.result.measure.unit)
    if periods is None or rate is None or terms.first.measure.kind != terms.result.measure.kind:
        return None
    return rate * periods.factor


def between_fellows(terms: Terms) -> Fraction | None:
    """From the first to the last of so many: one gap fewer than there are."""
    value = work.in_unit(terms.first, terms.result.measure.unit)
    same = terms.first.measure.kind == terms.result.measure.kind
    return value * (terms.count - 1) if value is not None and same else None


def share_of_other(terms: Terms) -> Fraction | None:
    """One in percent of the other."""
    second = work.in_unit(terms.second, terms.first.measure.unit)
    same = terms.first.measure.kind == terms.second.measure.kind
    if terms.result.measure.unit != "percent" or not second or not same:
        return None
    return terms.first.figure.value / second * 100


def share_of_first(terms: Terms) -> Fraction | None:
    """The other in percent of the one."""
    share = share_of_other(terms)
    return 10_000 / share if share else None


def percent_off(terms: Terms) -> Fraction | None:
    """So many percent less than the other."""
    part = work.part(terms)
    whole = work.in_unit(terms.second, terms.result.measure.unit)
    return None if part is None or whole is None else whole - part


def percent_on(terms: Terms) -> Fraction | None:
    """So many percent more than the other."""
    part = work.part(terms)
    whole = work.in_unit(terms.second, terms.result.measure.unit)
    return None if part is None or whole is None else whole + part


def electrical(terms: Terms) -> Fraction | None:
    """Volts, amperes, ohms and watts: the one that the two others make."""
    kinds = {one.measure.kind for one in (*terms.operands, terms.result)}
    if len(kinds) != 3 or not kinds < {"voltage", "current", "resistance", "power"}:
        return None
    first, second = (one.measure.kind for one in (terms.first, terms.second))
    goal = terms.result.measure.kind
    if (goal == "power" and {first, second} == {"voltage", "current"}) or (
        goal == "voltage" and {first, second} == {"current", "resistance"}
    ):
        return work.product(terms)
    if goal in ("current", "resistance") and first == "voltage":
        return work.quotient(terms)
    if goal in ("voltage", "current") and first == "power":
        return work.quotient(terms)
    return None


def near(way: Work, times: Fraction = _NEAR) -> Work:
    """What one way gives, where what was said is within so many times of it."""
    return one_of(way, near=times)


def scaled(terms: Terms) -> Fraction | None:
    """So many times the one before, where that is no whole number."""
    value = work.in_unit(terms.first, terms.result.measure.unit)
    same = terms.first.measure.kind == terms.result.measure.kind
    return value * terms.factor if value is not None and same else None


def whole_multiple(terms: Terms) -> Fraction | None:
    """Two, three or more of one: the number that comes nearest, where nobody says how many there are."""
    value = work.in_unit(terms.first, terms.result.measure.unit)
    if not value or terms.first.measure.kind != terms.result.measure.kind:
        return None
    return max(2, round(terms.result.figure.value / value)) * value


def so_many_of_it(terms: Terms) -> str:
    """The wording of that."""
    value = work.in_unit(terms.first, terms.result.measure.unit)
    count = max(2, round(terms.result.figure.value / value)) if value else 2
    return f"{count} times {terms.first.measure.display}"


def at_a_rate(terms: Terms) -> Fraction | None:
    """How long so much takes at so much a period."""
    amount, rate = terms.operands[0], terms.operands[-1]
    whole = work.in_unit(amount, rate.measure.unit)
    per = conversion(terms.period, terms.result.measure.unit or "")
    if whole is None or not rate.figure.value or per is None or terms.result.measure.kind != "time":
        return None
    return per(whole / rate.figure.value) if amount.measure.kind == rate.measure.kind else None


def between_at_a_rate(terms: Terms) -> Fraction | None:
    """How long it takes from the one to the other at so much a period."""
    first, second, rate = terms.operands
    per = conversion(terms.period, terms.result.measure.unit or "")
    units = {one.measure.unit for one in terms.operands}
    if len(units) != 1 or not rate.figure.value or per is None or terms.result.measure.kind != "time":
        return None
    return per(abs(second.figure.value - first.figure.value) / rate.figure.value)
