"""What is kept of pint's conversions is what pint gives: exactly, for every unit of the list."""

from __future__ import annotations

import subprocess
import sys
import tomllib
from fractions import Fraction

from tests.extract.units.lines import FILE, lines


def test_every_kept_line_is_pints() -> None:
    kept = tomllib.loads(FILE.read_text(encoding="utf-8"))
    wanted = {name: [base, str(factor), str(offset)] for name, (base, factor, offset) in lines().items()}
    assert kept == wanted


def test_a_figure_is_converted_without_loading_pint() -> None:
    asked = (
        "import sys; from fractions import Fraction; from extract.units import to_unit; "
        "print(to_unit(Fraction(1), 'inch', 'millimeter'), to_unit(Fraction(212), 'degF', 'degC'), "
        "'pint' in sys.modules)"
    )
    told = subprocess.run([sys.executable, "-c", asked], check=True, capture_output=True, text=True)
    # NIST SP 811, B.8: 1 in = 25.4 mm exactly; water boils at 212 °F, 100 °C.
    assert told.stdout.split() == [str(Fraction(127, 5)), "100", "False"]
