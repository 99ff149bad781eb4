"""How much of marked narrations the extractor gets right.

    python -m tests.benchmarks.narrations [FOLDER ...]

Each narration is a folder with narration.vtt and gold.json: what a careful reader finds in it. Those in
tests/narrations are inventions of ours in many trades. `read` were looked at while rules were written, `blind`
were not: the difference between the two tells how far the rules carry.

A measure counts when value and unit are exact and its cue is at most one away; a correction when its value (or two of
its words) and its cue, at most two away, agree; a step when the cues meet and verb or object share a word; a caution
said, a doubt or a thing left for later when its cue is at most one away.
"""

from __future__ import annotations

import json
import re
import sys
from collections import Counter
from collections.abc import Callable, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import pint

from capture import read_captions
from extract.pipeline import Extractor
from extract.record import Record

HERE = Path(__file__).parent.parent / "narrations"
COLUMNS = (
    "measures",
    "attribute",
    "phase",
    "stands",
    "corrections",
    "faults",
    "right kind",
    "false stops / 10 min",
    "steps",
    "cautions",
    "doubts",
    "follow-ups",
)
_REMARKS = ("cautions", "doubts", "follow_ups")
_SMALL_WORDS = {"the", "a", "an", "of", "at", "on", "in", "to", "and", "for"}

Marked = dict[str, Any]


def main() -> None:
    """Print a Markdown table, a row a folder of narrations."""
    folders = [Path(name) for name in sys.argv[1:]] or sorted(path for path in HERE.iterdir() if path.is_dir())
    extractor = Extractor()
    print("| narrations | " + " | ".join(COLUMNS) + " |\n|" + "---|" * (len(COLUMNS) + 1))
    for folder in folders:
        counts: Counter[str] = Counter()
        golds = sorted(folder.rglob("gold.json"))
        for gold in golds:
            narration = read_captions(gold.parent / "narration.vtt")
            counts += tally(json.loads(gold.read_text("utf-8")), extractor.record(narration))
        print(f"| {folder.name} ({len(golds)}) | " + " | ".join(shares(counts)) + " |")


def tally(gold: Marked, record: Record) -> Counter[str]:
    """Counts of what is marked, found and right in one narration."""
    got = json.loads(record.to_json())
    counts: Counter[str] = Counter(minutes=round(record.session.duration / 60 * 100))
    counts["unmarked"] = not gold["measures"]  # only the faults are marked
    measures = pairs(
        gold["measures"], got["measures"], lambda g, p: abs(g["cue"] - p["cue"]) <= 1 and same_quantity(g, p)
    )
    _count(counts, "measures", gold["measures"], got["measures"], measures)
    for g, p in measures:
        counts["phase"] += p["phase"] == g["phase"]
        counts["stands"] += p["stands"] == g["stands"]
        if g["attribute"]:
            counts["attribute of"] += 1
            counts["attribute"] += bool(words(p["attribute"]) & words(" ".join(g["attribute"])))
    corrections = pairs(gold["corrections"], got["corrections"], _same_correction)
    _count(counts, "corrections", gold["corrections"], got["corrections"], corrections)
    stops = [one for one in got["findings"] if one["severity"] == "stop"]
    faults = pairs(gold["faults"], stops, lambda g, p: abs(g["cue"] - p["cue"]) <= 2)
    _count(counts, "faults", gold["faults"], stops, faults)
    counts["kind"] += sum(g["kind"] == p["kind"] for g, p in faults)
    _count(counts, "steps", gold["steps"], got["steps"], pairs(gold["steps"], got["steps"], same_step))
    for kind in _REMARKS:
        found = [one for one in got[kind] if one.get("said", True)]
        _count(counts, kind, gold[kind], found, pairs(gold[kind], found, lambda g, p: abs(g["cue"] - p["cue"]) <= 1))
    return counts


def shares(counts: Counter[str]) -> list[str]:
    """The columns of a row: F1 for what is found, shares for what is said of it."""
    right = counts["measures right"]
    return [
        _f1(counts, "measures"),
        _share(counts["attribute"], counts["attribute of"]),
        _share(counts["phase"], right),
        _share(counts["stands"], right),
        _f1(counts, "corrections"),
        _share(counts["faults right"], counts["faults marked"]),
        _share(counts["kind"], counts["faults right"]),
        f"{(counts['faults found'] - counts['faults right']) * 1000 / (counts['minutes'] or 1):.1f}",
        _f1(counts, "steps"),
        *(_f1(counts, kind) for kind in _REMARKS),
    ]


def _share(part: int, of: int) -> str:
    return f"{part / of:.2f}" if of else "–"


def _count(counts: Counter[str], name: str, marked: Sequence[Any], found: Sequence[Any], right: Sequence[Any]) -> None:
    counts.update({f"{name} marked": len(marked), f"{name} found": len(found), f"{name} right": len(right)})


def _f1(counts: Counter[str], name: str) -> str:
    if counts["unmarked"]:
        return "–"
    both = counts[f"{name} marked"] + counts[f"{name} found"]
    return f"{2 * counts[f'{name} right'] / (both or 1):.2f}"


def pairs(
    golds: list[Marked], gots: list[Marked], match: Callable[[Marked, Marked], bool]
) -> list[tuple[Marked, Marked]]:
    """One to one, the nearest cues first."""

    def cue(one: Marked) -> int:
        return int(one["cue"] if "cue" in one else one["cue_from"])

    options = sorted(
        (abs(cue(g) - cue(p)), i, k) for i, g in enumerate(golds) for k, p in enumerate(gots) if match(g, p)
    )
    taken_golds: set[int] = set()
    taken_gots: set[int] = set()
    pairs = []
    for _, i, k in options:
        if i not in taken_golds and k not in taken_gots:
            taken_golds.add(i)
            taken_gots.add(k)
            pairs.append((golds[i], gots[k]))
    return pairs


def same_measure(gold: Marked, got: Marked) -> bool:
    """Value and unit agree, at most one cue away."""
    return abs(gold["cue"] - got["cue"]) <= 1 and same_quantity(gold, got)


def same_quantity(gold: Marked, got: Marked) -> bool:
    ends = ("low", "high") if gold["low"] is not None else ("value",)
    if (got["low"] is None) != (gold["low"] is None):
        return False
    return all(same_value(gold[end], gold["unit"], got[end], got["unit"] or "dimensionless") for end in ends)


def same_value(want: float | None, unit: str, got: float | None, got_unit: str) -> bool:
    """Two values agree to 0.2 per cent, in whatever units they are."""
    if want is None or got is None:
        return False
    if unit != got_unit:
        try:
            got = float(_registry().Quantity(got, got_unit).to(unit).magnitude)
        except (pint.DimensionalityError, pint.UndefinedUnitError):
            return False
    return abs(want - got) <= 2e-3 * max(abs(want), abs(got))


def _same_correction(gold: Marked, got: Marked) -> bool:
    if abs(gold["cue"] - got["cue"]) > 2:
        return False
    if gold["value"] is not None and gold["unit"]:
        return bool(got["unit"]) and same_value(gold["value"], gold["unit"], got["value"], got["unit"])
    said = words(f"{got['withdraws']['text']} {got['replacement']} {got['quote']}")
    want = words(f"{gold['withdraws']} {gold['replacement']}")
    return len(said & want) >= 2 or (len(want) < 4 and bool(said & want))


def same_step(gold: Marked, got: Marked) -> bool:
    """The cues meet, give or take one, and verb or object share a word."""
    meet = got["cue_from"] <= gold["cue_to"] + 1 and got["cue_to"] >= gold["cue_from"] - 1
    return meet and bool(words(gold["verb"]) & words(got["verb"]) or words(gold["object"]) & words(got["object"]))


def words(text: str | None) -> set[str]:
    found = re.findall(r"[a-z0-9]+", (text or "").lower())
    return {w[:-1] if len(w) > 3 and w.endswith("s") and not w.endswith("ss") else w for w in found} - _SMALL_WORDS


@cache
def _registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()


if __name__ == "__main__":
    main()
