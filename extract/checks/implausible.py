"""A figure outside the band where that attribute of that thing usually lies, with the likeliest slip.

Takes "63 volts" across a heater (6.3 V) and a relief of "twelve sixty-fourths" (12 thou); an unusual figure that no
slip explains, or one that lies just outside, is only worth a look. Source: the band's own, in the trade file.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.finding import Suspicion
from extract.checks.linear import Linear, conversion
from extract.checks.offsets import SIZES, is_no_size, is_off
from extract.checks.said_in import holding
from extract.checks.slips import SLIPS, Meant
from extract.checks.span_text import span_text
from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import check_words
from extract.record import Measure
from extract.trade import Attribute, Band, Trade

Bands = list[tuple[Band, Linear]]
_NEAR = 16
"""Words before a figure among which the thing it is of may be named."""
_BEHIND = 4
_OFF = (("high",), ("low",), ("out",), ("off",), ("proud",))
_SPOKEN = 9
"""Words before a figure among which its attribute must be said to be sure of it."""
_PLACED = frozenset({"at", "over", "above", "behind", "past", "under", "below"})
"""Before a part these tell where a figure was taken, not what it is of."""
_FAR = 1.5
"""A figure this many times above or below its band is past what a strange instrument explains."""
_MILLI = 1000
_FAR_UNSAID = 5
"""Where the unit was not said, it may be ours that is wrong."""


def find_implausible(talk: Talk) -> Iterator[Suspicion]:
    """Each figure outside every band that holds for it."""
    for one in talk.said:
        measure = one.measure
        if measure.unit is None or measure.difference or _is_off(one) or _is_other(talk.trade, one):
            continue
        by_words = _by_words(talk.trade, one)
        name, bands = by_words or _by_attribute(talk.trade, measure)
        loosely = by_words is None or name.removeprefix("the ") in check_words().not_own
        own = by_words is None or name.removeprefix("the ") == measure.attribute
        sure = not loosely or (own and _is_spoken_of(talk.trade, one))
        values = [(band, convert(one.figure.value)) for band, convert in bands]
        if bands and not any(_inside(band, value) for band, value in values):
            yield _suspect(one, name, sure, *min(bands, key=lambda pair: _distance(pair[0], pair[1](one.figure.value))))


def _by_attribute(trade: Trade, measure: Measure) -> tuple[str, Bands]:
    """The bands of the attribute that name the item; where none does, those that hold for every item."""
    found = next((one for one in trade.attributes if one.name == measure.attribute), None)
    if found is None or measure.kind != found.kind:
        return "", []
    item = tuple(words_of(measure.item or ""))
    named = [band for band in found.bands if any(_names(item, name) for name in band.items)]
    chosen = named or [band for band in found.bands if not band.items]
    of = f" of the {measure.item}" if measure.item else ""
    return f"the {found.name}{of}", _with_ways(chosen, measure)


def _by_words(trade: Trade, one: Said) -> tuple[str, Bands] | None:
    """The bands of what is named nearest before the figure; None where nothing with a band is.

    Of a length the attribute itself must be named, since most parts have many; "heaters", of a voltage, says enough.
    """
    measure = one.measure
    words = (one.clause if measure.kind == "length" else one.before)[-_NEAR:]
    best: tuple[int, str, list[Band]] = (-1, "", [])
    behind = " ".join(one.after[:1])
    others = {other.name for other in trade.attributes if other.kind == measure.kind and behind in other.adjectives}
    for attribute in trade.attributes:
        if attribute.kind != measure.kind or _is_another(attribute, others):
            continue
        named = max((_last(words, tuple(said.split())) for said in attribute.said), default=-1)
        for band in attribute.bands:
            telling = measure.kind != "length" or named >= 0
            items = [(_of(words, tuple(item.split())), item) for item in band.items if telling]
            place, item = max(items, default=(-1, "")) if band.items else (named, "")
            if place > best[0]:
                best = (place, f"the {attribute.name} of the {item}" if item else f"the {attribute.name}", [])
            if place == best[0] >= 0:
                best[2].append(band)
    return (best[1], _with_ways(best[2], measure)) if best[2] else None


def _is_another(attribute: Attribute, behind: set[str]) -> bool:
    """ "The bow is 730 mm long": what is said right behind the figure is measured, whatever was named before."""
    return bool(behind) and attribute.name not in behind


def _is_off(one: Said) -> bool:
    """ "5 degrees low" is how far it is out, as is a small length that stands high or proud."""
    return is_off(one) if one.measure.kind == "length" else one.measure.kind == "temperature" and one.after[:1] in _OFF


def _is_other(trade: Trade, one: Said) -> bool:
    """Taken off or a clearance, and its attribute is that of a size."""
    attribute = next((known for known in trade.attributes if known.name == one.measure.attribute), None)
    return attribute is not None and attribute.name in SIZES and is_no_size(one)


def _of(words: tuple[str, ...], name: tuple[str, ...]) -> int:
    """Where a part was named last as what a figure is of; -1 where it only tells the place: "at the twelfth fret"."""
    at = _last(words, name)
    return -1 if at > 0 and _PLACED & {*words[max(0, at - 3) : at]} else at


def _last(words: tuple[str, ...], name: tuple[str, ...]) -> int:
    """Where a name, in the singular or plural, was said last among words; -1 where it was not."""
    head = name[-1]
    if not any(form in words for form in (head, f"{head}s", f"{head}'s", f"{head}s's")):
        return -1
    for at in range(len(words) - len(name), -1, -1):
        said = words[at : at + len(name)]
        if said[:-1] == name[:-1] and said[-1].removesuffix("'s") in (name[-1], f"{name[-1]}s"):
            return at
    return -1


def _with_ways(bands: list[Band], measure: Measure) -> Bands:
    ways = [(band, conversion(measure.unit or "", band.unit)) for band in bands]
    return [(band, way) for band, way in ways if way is not None]


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


def _is_spoken_of(trade: Trade, one: Said) -> bool:
    """The attribute of a length or share is said in so many words: "thick", "the relief", "humidity"."""
    measure = one.measure
    if measure.kind not in ("length", "ratio"):
        return True
    found = next((attribute for attribute in trade.attributes if attribute.name == measure.attribute), None)
    if found is None or one.after[:1] in _OFF:
        return False
    names = [tuple(said.split()) for said in (*found.said, *found.adjectives, *found.verbs)]
    if any(_last(one.after[:_BEHIND], name) >= 0 for name in names):
        return True
    between = check_words().between | {*words_of(measure.item or "")}
    words = one.clause[-_SPOKEN:]
    at = max((place + len(name) for name in names if (place := _last(words, name)) >= 0), default=len(words) + 1)
    return at <= len(words) and all(word in between for word in words[at:])


def _suspect(one: Said, name: str, spoken: bool, band: Band, convert: Linear) -> Suspicion:
    measure = one.measure
    usual = span_text(band.low, band.high, band.unit, measure)
    message = f"{measure.display} lies outside {usual}, where {name} usually lies"
    meant = _meant(one, band)
    if meant is not None:
        message += f"; {meant.text} if {meant.reason}"
    sure = spoken and meant is not None and (measure.unit_said or not (meant.other_unit or _may_be_ours(one, band)))
    sure = sure and holding("totals", "said").search(" ".join(one.clause[-_NEAR:])) is None
    away = _distance(band, convert(one.figure.value))
    enough = _FAR if measure.unit_said else _FAR_UNSAID if measure.kind != "temperature" else float("inf")
    return Suspicion("implausible", "stop" if sure and away >= enough else "look", (measure,), message, band.source)


def _may_be_ours(one: Said, band: Band) -> bool:
    """A thousandth of its unit puts the figure inside: milliseconds, where nobody said that these aren't seconds."""
    way = conversion(one.measure.unit or "", band.unit)
    return way is not None and not way.offset and _inside(band, way(one.figure.value / _MILLI))


def _meant(one: Said, band: Band) -> Meant | None:
    """What the first slip that leads into the band would have meant."""
    for slip in SLIPS:
        meant = slip(one)
        if meant is None:
            continue
        convert = conversion(meant.unit, band.unit)
        if convert is not None and _inside(band, convert(meant.value)):
            return meant
    return None
