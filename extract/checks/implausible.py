"""A figure outside the band where that attribute of that thing usually lies, with the likeliest slip.

Takes "63 volts" across a heater (6.3 V) and a relief of "twelve sixty-fourths" (12 thou); an unusual figure that no
slip explains, or one that lies just outside, is only worth a look. Source: the band's own, in the trade file.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.finding import Suspicion, figure_text, symbol_of, with_unit
from extract.checks.linear import Linear, conversion
from extract.checks.slips import SLIPS
from extract.checks.talk import Said, Talk, words_of
from extract.record import Measure
from extract.trade import Band, Trade

_FAR = 2
"""A figure this many times above or below its band is past what a strange instrument explains."""


def find_implausible(talk: Talk) -> Iterator[Suspicion]:
    """Each figure outside every band that holds for it."""
    for one in talk.said:
        measure = one.measure
        if measure.unit is None or measure.difference:
            continue
        bands = [(band, convert) for band, convert in _bands(talk.trade, measure) if convert is not None]
        if not bands or any(_inside(band, convert(figure.value)) for band, convert in bands for figure in one.figures):
            continue
        yield _suspect(one, *min(bands, key=lambda pair: _distance(pair[0], pair[1](one.figure.value))))


def _bands(trade: Trade, measure: Measure) -> list[tuple[Band, Linear | None]]:
    """The bands of the attribute that name the item; where none does, those that hold for every item."""
    found = next((one for one in trade.attributes if one.name == measure.attribute), None)
    if found is None or measure.kind != found.kind or measure.unit is None:
        return []
    item = tuple(words_of(measure.item or ""))
    named = [band for band in found.bands if any(_names(item, name) for name in band.items)]
    chosen = named or [band for band in found.bands if not band.items]
    return [(band, conversion(measure.unit, band.unit)) for band in chosen]


def _names(item: tuple[str, ...], name: str) -> bool:
    """The item is what the band names or a kind of it: "old mainspring" is a mainspring."""
    words = tuple(name.split())
    return bool(words) and item[-len(words) :] == words


def _inside(band: Band, value: Fraction) -> bool:
    return band.low <= value <= band.high


def _distance(band: Band, value: Fraction) -> float:
    """How many times over the band a value lies; infinite where that makes no sense."""
    size = float(value)
    if size > band.high:
        return size / band.high if band.high > 0 else float("inf")
    return band.low / size if size > 0 else float("inf")


def _suspect(one: Said, band: Band, convert: Linear) -> Suspicion:
    measure = one.measure
    back = convert.inverse
    low, high = (figure_text(back(Fraction(end).limit_denominator(10**9))) for end in (band.low, band.high))
    usual = with_unit(f"{low} to {high}", symbol_of(measure))
    of = f" of {measure.item}" if measure.item else ""
    message = f"{measure.display} lies outside {usual}, where the {measure.attribute}{of} usually lies"
    meant = _meant(one, band)
    if meant is not None:
        message += f"; {meant}"
    far = _distance(band, convert(one.figure.value)) >= _FAR
    return Suspicion("implausible", "stop" if far and meant is not None else "look", (measure,), message, band.source)


def _meant(one: Said, band: Band) -> str | None:
    """What the first slip that leads into the band would have meant."""
    for slip in SLIPS:
        meant = slip(one)
        if meant is None:
            continue
        convert = conversion(meant.unit, band.unit)
        if convert is not None and _inside(band, convert(meant.value)):
            return f"{meant.text} if {meant.reason}"
    return None
