"""What of a session can be found: figures, steps, errata, remarks, cautions, its kit, and what was said."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from capture.shop import ShopSettings
from extract.record import Measure, Mention
from publish.find.scale import Span, span_of
from publish.galley import Galley
from publish.kit.naming import mentions, said_otherwise
from publish.moments import clock
from publish.other_units import in_other_units
from publish.parts import PARTS
from publish.said import said_figure
from publish.source import SessionSource
from publish.wording import PHASES, with_other
from publish.written import exact


@dataclass(frozen=True, slots=True)
class Item:
    """One thing that can be found."""

    sort: str
    """figure, step, erratum, to look up, left for later, caution, tool, material, or said."""
    start: float
    anchor: str
    """Its id on the session's page."""
    told: str
    """How it is shown."""
    words: str
    """What it is found by."""
    span: Span | None = None


def items_of(source: SessionSource) -> Iterator[Item]:
    """Everything of a session that can be found, struck and withdrawn figures told as such."""
    galley = Galley(source, ShopSettings(), taken=PARTS.reserved())
    record = source.record
    for measure in record.measures:
        yield _figure(galley, measure)
    for step in record.steps:
        named = " ".join((*step.tools, *step.materials))
        yield Item("step", step.start, galley.anchor("step", step.id), step.text, f"{step.text} {named} {step.quote}")
    for one in record.corrections:
        told = f"for “{one.withdraws.text}” read “{one.replacement}”"
        yield Item("erratum", one.start, galley.anchor("correction", one.id), told, f"{told} {one.quote}")
    for sort, part, remarks in (
        ("to look up", "doubts", record.doubts),
        ("left for later", "follow-ups", record.follow_ups),
        ("caution", "cautions", record.cautions),
    ):
        for remark in remarks:
            yield Item(sort, remark.start, part, remark.text, remark.text)
    for kind, thing in mentions(record):
        yield from _kit(galley, kind, thing)
    for number, cue in enumerate(source.transcript.cues if source.transcript else ()):
        yield Item("said", cue.start, galley.cue_anchor(number) or "transcript", cue.text, cue.text)


def _kit(galley: Galley, sort: str, one: Mention) -> Iterator[Item]:
    """A tool or material by each name that is said for it, where that is said first; unsaid, it leads nowhere."""
    other = said_otherwise(one)
    own = tuple(cue for said in one.said if said not in other for cue in said.cues) if one.said else one.cues
    for told, cues in ((one.name, own), *((f"{one.name}, said “{said.name}”", said.cues) for said in other)):
        cue = next((cue for cue in cues if galley.second_of(cue) is not None), None)
        if cue is not None:
            yield Item(sort, galley.second_of(cue) or 0.0, galley.cue_anchor(cue) or "kit", told, told)


def _figure(galley: Galley, measure: Measure) -> Item:
    of = ", ".join(part for part in (measure.attribute, measure.item, measure.where) if part)
    about = "about " if measure.hedged else ""
    other = in_other_units(measure) if measure.stands else None
    figure = f"{about}{with_other(said_figure(measure), other)}"
    state = PHASES[measure.phase]
    if measure.ruling is not None and measure.ruling.verdict == "strike":
        state = "struck"
    elif not measure.stands:
        state = "taken back"
    told = f"{of or measure.quote}: {figure}, {state}{_put_right(measure)}"
    # A struck figure is on no page: it leads to where it was said.
    anchor = galley.anchor("measure", measure.id) if state != "struck" else galley.cue_anchor(measure.cue)
    return Item(
        "figure",
        measure.start,
        anchor or "figures",
        told,
        f"{of} {measure.quote} {state} {figure}",
        measured_span(measure) if state not in ("struck", "taken back") else None,
    )


def _put_right(measure: Measure) -> str:
    """What was said instead, and where that was put right, of a figure that a later session did."""
    ruled = measure.ruling
    if ruled is None or ruled.later is None or ruled.was is None:
        return ""
    later = ruled.later
    when = f" of {later.date}" if later.date else ""
    where = f"“{later.title}”{when} at {clock(later.start)}"
    return f"; said was {ruled.was.display or measure.quote}, put right in {where}"


def measured_span(measure: Measure) -> Span | None:
    """What a figure covers; None where it has no unit of the list."""
    if measure.unit is None:
        return None
    value = exact(measure.value)
    ends = None
    if measure.low is not None and measure.high is not None:
        ends = (exact(measure.low), exact(measure.high))
    return span_of(value, measure.unit, measure.display or f"{measure.value:g}", ends)
