"""Every two units of the list are turned into one another, or told to be of different things; nothing else happens."""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations

import pytest

from extract.units import UnitError, to_unit, unit_rows

NAMES = [name for name, row in unit_rows().items() if row.in_pint]


@pytest.mark.parametrize("name", NAMES)
def test_a_unit_against_every_other(name: str) -> None:
    for one, other in permutations((name, *NAMES), 2):
        if name not in (one, other):
            continue
        try:
            there = to_unit(Fraction(3, 2), one, other)
        except UnitError:
            continue
        assert to_unit(there, other, one) == Fraction(3, 2)


def test_a_level_is_no_share() -> None:
    with pytest.raises(UnitError, match="different things"):
        to_unit(Fraction(3), "decibel", "percent")
