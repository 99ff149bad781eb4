"""Makes records from lines of talk with the figures marked, for the tests of the checks.

A figure stands in brackets: what was said, how it is displayed, and what else is known of it:
`[two foot | 2 ft | attribute=width, item=shelf, hedged]`. The unit and its kind come from the symbol. `!` before a
display tells that the unit was not said, `?` that there is none; `^` that the figure is taken back later.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from typing import Any

from extract.record import Measure, Record, SessionFacts

_MARK = re.compile(r"\[(?P<quote>[^|\]]+)\|(?P<display>[^|\]]+)(?:\|(?P<facts>[^\]]+))?\]")
_SPACE = "\N{NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True)
class Case:
    title: str
    lines: tuple[str, ...]
    expected: tuple[str, ...]


def cases(path: Path) -> list[Case]:
    """Cases of a fixture file: `## title`, lines of talk, `->` and the findings due, one a line."""
    found = []
    for block in path.read_text(encoding="utf-8").split("\n## ")[1:]:
        title, *lines = [line for line in block.splitlines() if line and not line.startswith("# ")]
        talk = tuple(line for line in lines if not line.startswith("->"))
        due = tuple(line.removeprefix("->").strip() for line in lines if line.startswith("->"))
        found.append(Case(title, talk, tuple(line for line in due if line != "nothing")))
    return found


def trade_of(path: Path) -> str:
    """The trade that a fixture file is of: `# trade NAME` at its head."""
    named = re.search(r"^# trade (\w+)$", path.read_text(encoding="utf-8"), re.MULTILINE)
    return named[1] if named else "general"


def _units() -> dict[str, dict[str, Any]]:
    rows = tomllib.loads((files("extract") / "data" / "units.toml").read_text(encoding="utf-8"))["unit"]
    return {row["symbol"]: row for row in rows}


def _value(text: str) -> float:
    whole, _, part = text.strip().rpartition(" ")
    top, _, bottom = part.partition("/")
    return float(whole or 0) + (float(top) / float(bottom) if bottom else float(top))


def _measure(place: int, cue: int, found: re.Match[str], before: str, after: str) -> Measure:
    units = _units()
    display = found["display"].strip()
    unsaid, stands = "!" in display[:2] or "?" in display[:2], "^" not in display[:2]
    bare = "?" in display[:2]
    display = display.lstrip("!?^ ")
    parts = re.fullmatch(r"(?P<figure>-?[\d./]+(?: [\d./]+| to [\d./]+)*)(?P<symbol>.*)", display)
    assert parts is not None, display
    figure, symbol = parts["figure"], parts["symbol"].strip()
    ends = [_value(end) for end in figure.split(" to ")]
    facts: dict[str, Any] = {}
    for fact in filter(None, (piece.strip() for piece in (found["facts"] or "").split(","))):
        key, _, value = fact.partition("=")
        facts[key] = value or True
    unit = units[symbol] if symbol else None
    gap = "" if symbol == "°" else _SPACE
    return Measure(
        id=f"m-{place}",
        cue=cue,
        start=float(place),
        end=place + 0.5,
        quote=found["quote"].strip(),
        value=sum(ends) / len(ends),
        low=ends[0] if len(ends) > 1 else None,
        high=ends[1] if len(ends) > 1 else None,
        unit=None if bare or unit is None else unit["name"],
        unit_said=not unsaid,
        kind=unit["kind"] if unit else None,
        phase=facts.pop("phase", "general"),
        hedged=bool(facts.pop("hedged", False)),
        difference=bool(facts.pop("difference", False)),
        stands=stands,
        display=f"{figure}{gap}{symbol}" if symbol else figure,
        before=before.strip(),
        after=after.strip(),
        **facts,
    )


def record_of(lines: tuple[str, ...]) -> Record:
    """The record of marked lines, one cue a line."""
    spans = [(cue, found) for cue, line in enumerate(lines) for found in _MARK.finditer(line)]
    text = " ".join(lines)
    places = list(_MARK.finditer(text))
    measures = []
    for place, ((cue, found), at) in enumerate(zip(spans, places, strict=True)):
        begin = places[place - 1].end() if place else 0
        end = places[place + 1].start() if place + 1 < len(places) else len(text)
        before = " ".join(text[begin : at.start()].split()[-22:])
        after = " ".join(text[at.end() : end].split()[:9])
        measures.append(_measure(place, cue, found, before, after))
    return Record(session=SessionFacts(title="made up", source="made up.vtt", duration=60), measures=tuple(measures))
