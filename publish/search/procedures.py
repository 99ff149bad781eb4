"""What a procedure over all sessions gives to the search: its name, its steps in everyone's words, its figures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from publish.context.procedures import Measured
from publish.find.items import measured_span
from publish.find.scale import Span
from publish.procedures.measured import Owned, things_of
from publish.procedures.procedure import Procedure, Stage
from publish.search.items import Row, Searched, searched_as
from publish.wording import count, sentence, with_other

FOLDER = "procedures"
"""Before the slug of a procedure, where a session's slug stands for a session."""
_TOP = "main"


def place_of(slug: str) -> str:
    """The name by which the search knows a procedure, which no session can have."""
    return f"{FOLDER}/{slug}"


def searched_procedure(one: Procedure, figures: Sequence[Measured]) -> Searched:
    """What the search takes of a procedure and of what was measured in it; its seconds are its sessions'."""
    return searched_as(one.name, "", one.name, tuple(_rows(one, figures)))


def _rows(one: Procedure, figures: Sequence[Measured]) -> Iterator[Row]:
    named = (name for version in one.versions for step in version.steps for name in (*step.tools, *step.materials))
    words = " ".join(dict.fromkeys((one.name, *named)))
    yield "procedure", None, _TOP, f"{one.name}, done in {count(one.sessions, 'session')}", words, None, None, None
    for number, stage in enumerate(one.stages, 1):
        if one.many and stage.versions == 1:
            continue
        yield "step", None, f"step-{number}", sentence(stage.typical.deed.text), _words(stage), None, None, None
    owned = [(version.work, told) for version in one.versions for told in version.told]
    for measured, of in zip(figures, things_of(owned), strict=True):
        if not measured.tallies or (one.many and measured.sessions == 1):
            continue
        over_all = measured.tallies[-1]
        median = with_other(over_all.median, over_all.median_other)
        span = f", {over_all.span}" if over_all.number > 1 else ""
        told = f"{measured.what}: median {median} of {count(over_all.number, 'figure')}{span}"
        covered = _covered(of)
        figure = (covered.kind, covered.low, covered.high) if covered else (None, None, None)
        yield "figure", None, measured.anchor, told, "", *figure


def _words(stage: Stage) -> str:
    return " ".join(dict.fromkeys(doing.deed.text for doing in stage.doings))


def _covered(owned: Sequence[Owned]) -> Span | None:
    """From the least to the most that was measured."""
    spans = [span for _, told in owned if told.settled and (span := measured_span(told.measure)) is not None]
    if not spans:
        return None
    return Span(spans[0].kind, min(one.low for one in spans), max(one.high for one in spans))
