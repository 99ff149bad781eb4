"""The session in a few lines, worked out from the record."""

from __future__ import annotations

from extract.record import Phase, Record, Step
from publish.context import Link, Pair, Row, Summary
from publish.rows import Rows
from publish.wording import count

_MOST_FIGURES = 4
_MOST_STEPS = 5


def summarise(record: Record, rows: Rows, pairs: tuple[Pair, ...]) -> Summary:
    """What was on the bench, the main figures, what was done and what is open."""
    shown = {row.anchor for pair in pairs for row in (*pair.found, *pair.left)}
    room = max(_MOST_FIGURES - len(pairs), 0)
    return Summary(
        bench=(record.session.subject or record.session.title).rstrip(".") + ".",
        pairs=pairs[:_MOST_FIGURES],
        found=_unpaired(rows, "as_found", shown)[:room],
        left=_unpaired(rows, "as_left", shown)[:room],
        done=_done(record),
        open=_open(record),
    )


def _unpaired(rows: Rows, phase: Phase, shown: set[str]) -> tuple[Row, ...]:
    return tuple(
        row
        for measure, row in rows.all
        if measure.phase == phase
        and measure.stands
        and measure.attribute
        and not measure.difference
        and row.anchor not in shown
    )


def _done(record: Record) -> str:
    steps = [step for step in record.steps if step.mode in ("done", "doing")]
    if not steps:
        return ""
    told = "; ".join(_begin_low(step.text) for step in _main(steps))
    whole = f" ({count(len(steps), 'step')} in all)" if len(steps) > _MOST_STEPS else ""
    return f"{told}{whole}."


def _main(steps: list[Step]) -> list[Step]:
    """The first and last step and, between them, those with the most figures, in their order."""
    if len(steps) <= _MOST_STEPS:
        return steps
    inner = sorted(steps[1:-1], key=lambda step: (-len(step.measures), step.number))[: _MOST_STEPS - 2]
    return [steps[0], *sorted(inner, key=lambda step: step.number), steps[-1]]


def _begin_low(text: str) -> str:
    bare = text.strip().rstrip(".")
    return bare if bare[1:2].isupper() else bare[:1].lower() + bare[1:]


def _open(record: Record) -> tuple[Link, ...]:
    musts = sum(one.severity == "stop" for one in record.findings)
    looks = len(record.findings) - musts
    listed = (
        (musts, "#queries", count(musts, "statement") + " to settle"),
        (looks, "#queries", count(looks, "statement") + " to check"),
        (len(record.follow_ups), "#follow-ups", count(len(record.follow_ups), "job") + " left for later"),
        (len(record.doubts), "#doubts", count(len(record.doubts), "doubt") + " to look up"),
    )
    return tuple(Link(href, text) for number, href, text in listed if number)
