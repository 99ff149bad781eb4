"""Figures set as a printer would: raised and lowered fractions, thin spaces before units, true minus and times signs.

What is copied from the page still reads 5/64 and 1 3/8: the fraction is made by style, not by other characters.
"""

from __future__ import annotations

import re

from markupsafe import Markup, escape

NARROW_SPACE = "\N{NARROW NO-BREAK SPACE}"

_LARGEST_DENOMINATOR = 128
_FRACTION = re.compile(
    r"(?<![\w/.,])(?P<open>\(?)(?:(?P<whole>\d{1,4})[ \u202f])?(?P<above>\d{1,3})/(?P<below>\d{1,3})(?![\w/]|\.\d)"
    r"(?P<unit>\u202f[^\s<&]+)?"
)
_MINUS = re.compile(r"(?<![\w.)\]-])-(?=\d)")
_POWER = re.compile(r"(?<=/m)[23](?!\w)")
_TIMES = re.compile(r"(?<=\d) ?x ?(?=\d)")


def typeset(text: str) -> Markup:
    """A sentence as safe markup, its figures set: `Cut it 1 3/8 in` gives a mixed number with a small fraction."""
    return Markup(_FRACTION.sub(_set_fraction, str(escape(plain(text)))))  # noqa: S704 (escaped before it is set)


def plain(text: str) -> str:
    """The same signs and spaces without markup, for titles and captions."""
    signs = _TIMES.sub(" × ", _MINUS.sub("−", text)).replace("\N{NO-BREAK SPACE}", NARROW_SPACE)
    return _POWER.sub(lambda power: "²³"[int(power.group(0)) - 2], signs)


def _set_fraction(match: re.Match[str]) -> str:
    opened, whole, above, below, unit = match.groups(default="")
    if not 0 < int(above) < int(below) <= _LARGEST_DENOMINATOR:
        return match.group(0)
    part = f'<span class="frac"><span>{above}</span>/<span>{below}</span></span>'
    if not (opened or whole or unit):
        return part
    before = f"{whole}{NARROW_SPACE}" if whole else ""
    return f'<span class="nobreak">{opened}{before}{part}{unit}</span>'
