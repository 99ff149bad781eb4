"""How many seeded faults the checks stop, and how many right statements they stop as well.

    python -m tests.benchmarks.seeded_faults [FOLDER ...] [--sample N] [--missed]

`--sample N` takes every Nth fault and right statement only; `--missed` prints what was not found, and what was stopped
wrongly. A line on standard error tells how far it is.

Folders of marked narrations as in tests/narrations; `read` where none is given. A fault counts as found where a stop
that the untouched talk hasn't stands at most two cues away.
"""

from __future__ import annotations

import json
import sys
from collections import Counter
from pathlib import Path

from capture import read_captions
from extract.pipeline import Extractor
from extract.record import Finding, Record
from extract.trade import load_trade
from extract.units import unit_rows
from tests.benchmarks.seeded_faults.seeds import Seeded, seed
from tests.extract.narrations import transcript_of

_HERE = Path(__file__).parents[2] / "narrations" / "read"
_NEAR = 2


def main() -> None:
    """Print a Markdown table, a row a kind of fault."""
    given, every, missed = _arguments(sys.argv[1:])
    folders = given or [_HERE]
    extractor = Extractor()
    kinds = {name: row.unit.kind for name, row in unit_rows().items()}
    counts: Counter[tuple[str, str]] = Counter()
    for path in (gold for folder in folders for gold in sorted(folder.rglob("gold.json"))):
        gold = json.loads(path.read_text("utf-8"))
        lines = tuple(cue.text for cue in read_captions(path.parent / "narration.vtt").cues)
        untouched = extractor.record(transcript_of(lines))
        trade = load_trade(untouched.session.trade or "general")
        known = {_figure(untouched, one) for one in _stops(untouched)}
        seeded = list(seed(lines, gold, trade, kinds))[::every]
        print(f"{path.parent.name}: {len(seeded)}", file=sys.stderr)
        for one in seeded:
            record = extractor.record(transcript_of(one.lines), trade=trade)
            fresh = [found for found in _stops(record) if _figure(record, found) not in known]
            _count(counts, one, fresh)
            if missed and _is_wrong(one, fresh):
                print(f"{one.kind or 'trap'} ({one.how}): {one.lines[one.cue]} -> {[found.message for found in fresh]}")
    print("| seeded | faults | found | of the right kind |\n|---|---|---|---|")
    for kind in ("conversion", "arithmetic", "conflict", "implausible", "dimension", "unit_missing"):
        print(_row(counts, kind))
    print(f"\nRight statements put in: {counts['trap', 'all']}; stopped: {counts['trap', 'stopped']}.")


def _arguments(given: list[str]) -> tuple[list[Path], int, bool]:
    """The folders, every how manieth seed is tried, and whether what was missed is printed."""
    every = int(given.pop(given.index("--sample") + 1)) if "--sample" in given else 1
    return [Path(name) for name in given if not name.startswith("-")], every, "--missed" in given


def _stops(record: Record) -> list[Finding]:
    return [one for one in record.findings if one.severity == "stop"]


def _figure(record: Record, found: Finding) -> tuple[str, str]:
    """A stop by its kind and the figure it is of: a line put in before may only change its wording."""
    quotes = {one.id: one.quote for one in record.measures}
    return found.kind, quotes[found.measures[-1]]


def _near(one: Seeded, fresh: list[Finding]) -> list[Finding]:
    return [found for found in fresh if any(abs(cue - one.cue) <= _NEAR for cue in found.cues)]


def _is_wrong(one: Seeded, fresh: list[Finding]) -> bool:
    return bool(fresh) if one.kind is None else not _near(one, fresh)


def _count(counts: Counter[tuple[str, str]], one: Seeded, fresh: list[Finding]) -> None:
    if one.kind is None:
        counts.update({("trap", "all"): 1, ("trap", "stopped"): bool(fresh)})
        return
    near = _near(one, fresh)
    right = any(found.kind == one.kind for found in near)
    counts.update({(one.kind, "all"): 1, (one.kind, "found"): bool(near), (one.kind, "right"): right})


def _row(counts: Counter[tuple[str, str]], kind: str) -> str:
    every, found, right = (counts[kind, name] for name in ("all", "found", "right"))
    return f"| {kind} | {every} | {found / (every or 1):.2f} | {right / (found or 1):.2f} |"


if __name__ == "__main__":
    main()
