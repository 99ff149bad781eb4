"""The lines that voices say for teaching: measures in sentences, talk at a bench, and what only sounds like figures."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from random import Random

import webvtt
from num2words import num2words

from tests.benchmarks.spoken_measures import figures as asked
from tests.benchmarks.spoken_measures.figures import cardinal as words
from tests.benchmarks.teach_ear.figures import SLOTS, Line

_HERE = Path(__file__).parent
_TALKS = _HERE.parents[1] / "narrations"
_PARTS = {str(bottom): name for bottom, name in asked.PARTS.items()}


def lines(count: int, seed: int) -> list[Line]:
    """`count` lines, the same ones for one seed: three in five hold measures."""
    random = Random(seed)  # noqa: S311 (nothing secret is drawn)
    carriers, rows, traps, talk = _carriers(), _tuning_rows(), _traps(), _talk()
    found: list[Line] = []
    while len(found) < count:
        share = random.random()
        if share < 0.52:
            text = _filled(random.choice(carriers), random)
            found.append(Line(text, text))
        elif share < 0.66:
            kind = random.choice(list(asked.KINDS))
            said = asked.KINDS[kind](random).said
            carrier = random.choice(rows[kind])
            text = carrier.format(m=said.replace(" to ", " and ") if "between {m}" in carrier else said)
            found.append(Line(text, text))
        elif share < 0.78:
            found.append(random.choice(traps))
        else:
            found.append(random.choice(talk))
    return found


def _filled(carrier: str, random: Random) -> str:
    text = re.sub(r"\{(\w+)\}", lambda slot: SLOTS[slot[1]](random), carrier)
    return re.sub(r"^\W*(\w)", lambda first: first[0].upper(), text)


def _carriers() -> list[str]:
    return [line for line in _rows_of("carriers.txt") if "{" in line]


def _traps() -> list[Line]:
    return [Line(*(line.split("|") * 2)[:2]) for line in _rows_of("traps.txt")]


def _rows_of(name: str) -> list[str]:
    rows = (_HERE / name).read_text("utf-8").splitlines()
    return [row.strip() for row in rows if row.strip() and not row.startswith("#")]


def _tuning_rows() -> dict[str, list[str]]:
    rows = tomllib.loads((_HERE.parent / "spoken_measures" / "carriers.toml").read_text("utf-8"))
    return {kind: rows[kind]["rows"] for kind in asked.KINDS}


def _talk() -> list[Line]:
    """Sentences of the marked talks that are written with marks, their figures put into words."""
    found: list[Line] = []
    for path in sorted(_TALKS.glob("*/*/*.vtt")):
        if path.parts[-3] not in ("read", "fitted"):
            continue
        text = " ".join(cue.text.replace("\n", " ") for cue in webvtt.read(str(path)).captions)
        if text.count(".") < 40:
            continue
        for sentence in re.split(r"(?<=[.?!]) ", text):
            line = _said(sentence)
            if line is not None and 4 <= len(line.spoken.split()) <= 32:
                found.append(line)
    return found


def _said(sentence: str) -> Line | None:
    """The sentence with its digits in words; null where that takes guessing."""
    text = re.sub(r"(\d+)[ -](\d+)/(\d+)", lambda one: f"{words(int(one[1]))} and {_over(one[2], one[3])}", sentence)
    text = re.sub(r"(\d+)/(\d+)", lambda one: _over(one[1], one[2]), text)
    text = re.sub(r"(\d+)ths\b", lambda one: f"{_PARTS.get(one[1], one[1])}s", text)
    text = re.sub(r"\b(\d+)(?:th|st|nd|rd)\b", lambda one: str(num2words(int(one[1]), to="ordinal")), text)
    written = text
    text = re.sub(r"\b(1[6-9]\d\d|20[0-2]\d)\b", lambda one: str(num2words(int(one[1]), to="year")), text)
    for kept in ("text", "written"):
        changed = re.sub(r"(?<![\d.])(\d*)\.(\d+)\b", _point, text if kept == "text" else written)
        if kept == "text":
            text = re.sub(r"\b\d{1,3}\b", lambda one: words(int(one[0])), changed)
        else:
            written = re.sub(r"\b\d{1,3}\b", lambda one: words(int(one[0])), changed)
    if re.search(r"\d|[^\w\s.,?!'’:;\"-]", text):
        return None
    return Line(text, written)


def _point(figure: re.Match[str]) -> str:
    whole = words(int(figure[1])) + " " if figure[1] else ""
    return whole + "point " + " ".join("oh" if one == "0" else words(int(one)) for one in figure[2])


def _over(top: str, bottom: str) -> str:
    if bottom not in _PARTS:
        return f"{top}/{bottom}"
    return f"one {_PARTS[bottom]}" if top == "1" else f"{words(int(top))} {_PARTS[bottom]}s"
