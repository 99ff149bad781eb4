"""The items of a record that a person may rule on."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator

from extract.record import Correction, Finding, Measure, Mention, Record, Remark, Step
from extract.rulings.made import PREFIXES
from extract.rulings.model import Item, Kind


def items_of(record: Record) -> dict[str, Item]:
    """Every item of a record that can be ruled on, by its id. Ids of different kinds never agree."""
    return {item.id: item for item in _all(record)}


def remark_id(kind: Kind, text: str) -> str:
    """An id for a remark of a record that was made before remarks had any."""
    words = " ".join(text.lower().split())
    return f"{PREFIXES[kind]}-{hashlib.sha256(f'{PREFIXES[kind]}{chr(31)}{words}'.encode()).hexdigest()[:8]}"


def kit_id(kind: Kind, name: str) -> str:
    """The id of a tool or material: a record names each one once."""
    return remark_id(kind, name)


def digest_of(record: Record) -> str:
    """A digest of all that a page shows of a record, which tells one record from another.

    It leaves out how findings are worded, and fields that nobody reads on a page.
    """
    told = "\x1e".join("\x1f".join(str(part) for part in parts) for parts in _shown(record))
    return hashlib.sha256(told.encode()).hexdigest()[:16]


def _shown(record: Record) -> Iterator[tuple[object, ...]]:
    for measure in record.measures:
        yield measure.id, measure.display, measure.attribute, measure.item, measure.where, measure.phase, measure.stands
    for correction in record.corrections:
        yield correction.id, correction.withdraws.text, correction.replacement
    for finding in record.findings:
        yield finding.id, finding.severity
    for step in record.steps:
        yield step.id, step.text, step.mode
    for caution in record.cautions:
        yield caution.text, caution.source
    for remark in (*record.follow_ups, *record.doubts):
        yield (remark.text,)
    for named in (*record.tools, *record.materials):
        yield (named.name,)


def _all(record: Record) -> Iterator[Item]:
    shown = {one.id: one.display for one in record.measures}
    for measure in record.measures:
        yield item_of_measure(measure)
    for correction in record.corrections:
        yield _correction(correction)
    for finding in record.findings:
        yield _finding(finding, tuple(shown[one] for one in finding.measures if one in shown))
    for step in record.steps:
        yield item_of_step(step)
    yield from _remarks("follow_up", record.follow_ups)
    yield from _remarks("doubt", record.doubts)
    yield from _kit("tool", record.tools)
    yield from _kit("material", record.materials)


def item_of_measure(one: Measure) -> Item:
    """A measure as it can be ruled on."""
    return Item(kind="measure", id=one.id, words=one.quote, start=one.start, cue=one.cue, figures=(one.display,))


def _correction(one: Correction) -> Item:
    return Item(kind="correction", id=one.id, words=one.quote, start=one.start, cue=one.cue)


def _finding(one: Finding, figures: tuple[str, ...]) -> Item:
    return Item(kind="finding", id=one.id, words=one.message, start=one.start, cue=one.cue, figures=figures)


def item_of_step(one: Step) -> Item:
    """A step as it can be ruled on."""
    return Item(kind="step", id=one.id, words=one.quote, start=one.start, cue=one.cue_from)


def _remarks(kind: Kind, remarks: tuple[Remark, ...]) -> Iterator[Item]:
    for one in remarks:
        yield Item(kind=kind, id=one.id or remark_id(kind, one.text), words=one.text, start=one.start, cue=one.cue)


def _kit(kind: Kind, mentions: tuple[Mention, ...]) -> Iterator[Item]:
    for one in mentions:
        cue = min(one.cues, default=0)
        yield Item(kind=kind, id=one.id or kit_id(kind, one.name), words=one.name, start=0.0, cue=cue)
