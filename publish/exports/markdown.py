"""Records as Markdown: a heading a session, then figures, procedure, errata, cautions and what is open.

Words from a talk are escaped, so that they stay words whatever they hold.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Protocol

from extract.record import Correction, Measure, Mention, Record, Ruled, Step
from publish.kit.naming import said_otherwise
from publish.moments import clock
from publish.said import said_figure
from publish.source import SessionSource
from publish.wording import MODES, PHASES, STANDING_CAUTION, sentence


class _Ruled(Protocol):
    @property
    def ruling(self) -> Ruled | None: ...


_SPECIAL = re.compile(r"([\\`*_{}\[\]#|])")
_AT_START = re.compile(r"^(\d*)([-+.)])")
_ENTITIES = {"&": "&amp;", "<": "&lt;", ">": "&gt;", "~": "&#126;"}


def as_markdown(sources: Sequence[SessionSource]) -> str:
    """All sessions, the oldest first."""
    return "\n".join(line for one in sources for line in _session(one.record)) + "\n"


def escaped(text: str) -> str:
    """A text as Markdown that shows just that text, on one line."""
    one_line = _SPECIAL.sub(r"\\\1", " ".join(text.split()))
    one_line = "".join(_ENTITIES.get(letter, letter) for letter in one_line)
    return _AT_START.sub(r"\1\\\2", one_line)


def struck(item: _Ruled) -> bool:
    """A person struck it out."""
    return item.ruling is not None and item.ruling.verdict == "strike"


def _session(record: Record) -> Iterator[str]:
    facts = record.session
    yield f"# {escaped(facts.title)}"
    yield ""
    told = (facts.date, facts.subject, facts.trade, f"from {facts.source}, {clock(facts.duration)}")
    yield escaped(", ".join(part for part in told if part))
    yield ""
    yield from _figures(record)
    yield from _listed("Procedure", (_step(one) for one in record.steps if not struck(one)), numbered=True)
    yield from _listed("Errata", (_erratum(one) for one in record.corrections if not struck(one)))
    yield from _listed(
        "Cautions", (*(_told(one.start, one.text) for one in record.cautions), escaped(STANDING_CAUTION))
    )
    yield from _listed("To settle, to check", (_told(one.start, one.message) for one in record.findings))
    yield from _listed("Left for later", (_told(one.start, one.text) for one in record.follow_ups))
    yield from _listed("To look up", (_told(one.start, one.text) for one in record.doubts))
    for title, named in (("Tools", record.tools), ("Materials", record.materials)):
        yield from _listed(title, (_named(one) for one in named))


def _figures(record: Record) -> Iterator[str]:
    if not record.measures:
        return
    yield "## Figures"
    yield ""
    yield "| At | What | Of | Figure | |"
    yield "| --- | --- | --- | --- | --- |"
    for one in record.measures:
        of = ", ".join(part for part in (one.item, one.where) if part)
        cells = (clock(one.start), one.attribute or "", of, _figure(one), PHASES[one.phase])
        yield f"| {' | '.join(escaped(cell) if at != 3 else cell for at, cell in enumerate(cells))} |"
    yield ""


def _figure(measure: Measure) -> str:
    about = "about " if measure.hedged else ""
    said = escaped(f"{about}{said_figure(measure)}")
    if struck(measure):
        return f"~~{said}~~ (struck)"
    return said if measure.stands else f"~~{said}~~ (taken back)"


def _step(step: Step) -> str:
    mode = f" ({MODES[step.mode]})" if MODES[step.mode] else ""
    return f"{escaped(sentence(step.text))}{mode} [{clock(step.start)}]"


def _erratum(one: Correction) -> str:
    told = f"For “{escaped(one.withdraws.text)}” read “{escaped(one.replacement)}” [{clock(one.start)}]"
    later = one.ruling.later if one.ruling else None
    if later is not None:
        return f"{told}, put right in “{escaped(later.title)}” [{clock(later.start)}]"
    if one.earlier is not None:
        return f"{told}, said in “{escaped(one.earlier.title)}” [{clock(one.earlier.start)}]"
    return told


def _named(one: Mention) -> str:
    other = said_otherwise(one)
    return escaped(f"{one.name} (said {', '.join(f'“{said.name}”' for said in other)})" if other else one.name)


def _told(start: float, text: str) -> str:
    return f"{escaped(sentence(text))} [{clock(start)}]"


def _listed(title: str, lines: Sequence[str] | Iterator[str], numbered: bool = False) -> Iterator[str]:
    listed = list(lines)
    if not listed:
        return
    yield f"## {title}"
    yield ""
    for number, line in enumerate(listed, 1):
        yield f"{number}. {line}" if numbered else f"- {line}"
    yield ""
