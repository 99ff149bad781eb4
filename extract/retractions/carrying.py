"""A traced retraction carried out on the earlier session, as an amendment of what was said wrong there.

An amendment is what a person would have given at that session's proof, so captions, steps, errata, card and medians
follow by the one way there is. It stands in no log: it comes and goes with the retraction that it is made from.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator
from datetime import UTC, datetime
from fractions import Fraction

from extract.convert import quantity_in_other_system
from extract.record import Correction, Earlier, Later, Measure, Record
from extract.retractions.sitting import Sitting
from extract.retractions.tracing import Traced
from extract.rulings.figures import read_figure
from extract.rulings.model import Amend, Changes, Figure, Item, Ruling
from extract.spans import Number, Quantity
from extract.units import unit_rows

_FINEST = 10**6
_MOST_PLACES = 6


def amendments(traced: Traced, here: Sitting, spoken: Record, there: Record) -> tuple[Amend, ...]:
    """What a retraction of session `here` changes in the earlier record `there`; `spoken` is the record of `here`."""
    chosen = traced.chosen
    if chosen is None:
        return ()
    facts = here.record.session
    correction = traced.correction
    later = Later(
        session=here.slug,
        title=facts.title,
        date=facts.date,
        correction=correction.id,
        start=correction.start,
        replacement=correction.replacement,
        proposed=traced.state == "proposed",
    )
    at = traced.ruling.at if traced.ruling else datetime.min.replace(tzinfo=UTC)
    said = tuple(_changed(traced, spoken, there))
    return tuple(
        Amend(id=_id(here.slug, correction.id, n), at=at, on=item, to=to, because="said_wrong", later=later)
        for n, (item, to) in enumerate(said)
    )


def merged(rulings: Iterable[Ruling], made: Iterable[Amend]) -> tuple[Ruling, ...]:
    """A session's own rulings with what later sessions change, in the order of time: a person's last word holds."""
    own = list(rulings)
    for one in sorted(made, key=lambda amend: amend.at):
        place = next((at for at, ruling in enumerate(own) if ruling.at > one.at), len(own))
        own.insert(place, one)
    return tuple(own)


def traced_in(record: Record, traced: Iterable[Traced]) -> Record:
    """A record whose corrections name the earlier statements that they take back."""
    known = {one.correction.id: one for one in traced if one.chosen is not None}
    if not known:
        return record
    corrections = tuple(_named(one, known[one.id]) if one.id in known else one for one in record.corrections)
    return record.model_copy(update={"corrections": corrections})


def _named(correction: Correction, traced: Traced) -> Correction:
    chosen = traced.chosen
    if chosen is None:
        return correction
    earlier = Earlier(
        session=chosen.session,
        title=chosen.title,
        date=chosen.date,
        item=chosen.item.id,
        start=chosen.item.start,
        quote=chosen.item.words,
        proposed=traced.state == "proposed",
    )
    return correction.model_copy(update={"earlier": earlier})


def _id(slug: str, correction: str, number: int) -> str:
    digest = hashlib.sha256(f"{slug}\x1f{correction}\x1f{number}".encode()).hexdigest()[:16]
    return f"later-{digest}"


def _changed(traced: Traced, spoken: Record, there: Record) -> Iterator[tuple[Item, Changes]]:
    chosen = traced.chosen
    if chosen is None:
        return
    if chosen.item.kind != "measure":
        steps = {one.id: one.text for one in there.steps}
        told = f"{steps.get(chosen.item.id, chosen.item.words)} (taken back: read “{traced.correction.replacement}”)"
        yield chosen.item, Changes(text=told)
        return
    measures = {one.id: one for one in there.measures}
    figure = _figure(traced.correction, spoken, measures.get(chosen.item.id))
    if figure is None:
        return
    said = (chosen.item, *chosen.also)
    for item in said:
        yield item, Changes(figure=figure)
    names = {item.id for item in said}
    for one in there.measures:
        other = _in_other_units(figure) if one.same_as in names and one.id not in names else None
        if other is not None and other.unit == one.unit:
            yield _item(one), Changes(figure=other)


def _item(one: Measure) -> Item:
    return Item(kind="measure", id=one.id, words=one.quote, start=one.start, cue=one.cue, figures=(one.display,))


def _figure(correction: Correction, spoken: Record, wrong: Measure | None) -> Figure | None:
    """The figure that holds instead: that of the measure which says it, else of the correction alone."""
    right = next((one for one in spoken.measures if one.id == correction.replacement_measure), None)
    usual = wrong.unit if wrong else None
    if right is not None:
        unit = right.unit if right.unit in unit_rows() else usual
        return Figure(
            text=right.quote,
            value=_exact(right.value),
            low=None if right.low is None else _exact(right.low),
            high=None if right.high is None else _exact(right.high),
            unit=unit if unit in unit_rows() else None,
            hedged=right.hedged,
            limit=right.limit,
            tolerance=None if right.tolerance is None else _exact(right.tolerance),
            display=right.display or right.quote,
        )
    if correction.value is None:
        return None
    unit = correction.unit if correction.unit in unit_rows() else usual
    unit = unit if unit in unit_rows() else None
    return Figure(
        text=correction.replacement, value=_exact(correction.value), unit=unit, display=correction.replacement
    )


def _in_other_units(figure: Figure) -> Figure | None:
    """The figure for who said the wrong one in two units, rounded by the published rules."""
    row = unit_rows().get(figure.unit or "")
    if row is None:
        return None
    number = _number(figure)
    quantity = Quantity(0, 0, figure.value, figure.low, figure.high, row.unit, True, number, hedged=figure.hedged)
    other = quantity_in_other_system(quantity)
    return read_figure(other) if other else None


def _number(figure: Figure) -> Number:
    """The number, as finely as its value needs: 7/64 to the 64th, 2.5 to the tenth."""
    below = figure.value.denominator
    if below == 1:
        return Number(0, 0, figure.value, "integer", low=figure.low, high=figure.high)
    if below & (below - 1) == 0 and figure.unit == "inch":
        return Number(0, 0, figure.value, "fraction", low=figure.low, high=figure.high, denominator=below)
    places = next((n for n in range(1, _MOST_PLACES) if 10**n % below == 0), _MOST_PLACES)
    return Number(0, 0, figure.value, "decimal", low=figure.low, high=figure.high, decimals=places)


def _exact(value: float) -> Fraction:
    return Fraction(repr(value)).limit_denominator(_FINEST)
