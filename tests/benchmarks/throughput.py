"""How long extraction takes, and what it finds beside quantulum3 on the same talks.

    python -m tests.benchmarks.throughput

Needs quantulum3 (the extra `compare`). The long narrations are the talks of tests/narrations one behind the other, over
and over, at 150 words a minute: 9,000 words an hour. Both programs have their models loaded; times are of the
processor. A measure of quantulum3's counts where its value and unit agree with a marked one at most one cue away.
"""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Iterator
from functools import cache, partial
from itertools import cycle

import pint
from quantulum3 import classifier, parser

from capture import read_captions
from extract.pipeline import Extractor
from tests.benchmarks.narrations import HERE, pairs, same_measure, same_quantity
from tests.extract.narrations import transcript_of

WORDS_AN_HOUR = 9000
HOURS = (1, 2, 4, 8)


def main() -> None:
    """Print two Markdown tables."""
    classifier.USE_CLF = False  # its stored classifier loads with one old version of scikit-learn only
    extractor = Extractor()
    extractor.record(transcript_of(["The action is 5/64 inch."]))
    parser.parse("5 mm")
    print("| hours of talk | Spokeshave, s | an hour, s | quantulum3, s |\n|---|---|---|---|")
    for hours in HOURS:
        lines = _lines(hours * WORDS_AN_HOUR)
        transcript = transcript_of(lines)
        ours = _seconds(partial(extractor.record, transcript))
        theirs = _seconds(partial(_parse_all, lines))
        print(f"| {hours} | {ours:.1f} | {ours / hours:.1f} | {theirs:.1f} |", flush=True)
    print("\n| talks | measures | F1, Spokeshave | F1, quantulum3 |\n|---|---|---|---|")
    for folder in sorted(path for path in HERE.iterdir() if path.is_dir()):
        if not folder.name.startswith("faults"):  # only their faults are marked
            print(_found(extractor, folder.name))


def _parse_all(lines: list[str]) -> None:
    for line in lines:
        parser.parse(line)


def _found(extractor: Extractor, folder: str) -> str:
    marked = ours = theirs = got_ours = got_theirs = 0
    for path in sorted((HERE / folder).rglob("gold.json")):
        gold = json.loads(path.read_text("utf-8"))["measures"]
        talk = read_captions(path.parent / "narration.vtt")
        record = json.loads(extractor.record(talk).to_json())["measures"]
        other = list(_by_quantulum([cue.text for cue in talk.cues]))
        marked, got_ours, got_theirs = marked + len(gold), got_ours + len(record), got_theirs + len(other)
        ours += len(pairs(gold, record, same_measure))
        theirs += len(pairs(gold, other, lambda g, p: abs(g["cue"] - p["cue"]) <= 1 and same_quantity(g, p)))
    shares = [2 * right / (marked + got) for right, got in ((ours, got_ours), (theirs, got_theirs))]
    return f"| {folder} | {marked} | {shares[0]:.2f} | {shares[1]:.2f} |"


def _by_quantulum(lines: list[str]) -> Iterator[dict[str, object]]:
    """Its quantities as the record has them; those without a unit are left out, since it takes every number for one."""
    registry = _registry()
    for cue, line in enumerate(lines):
        for one in parser.parse(line):
            name = one.unit.name.replace("degree ", "degree_").replace("-", " ")
            if name == "dimensionless":
                continue
            try:
                registry.parse_units(name.replace(" ", " * ") if " " in name else name)
            except (pint.UndefinedUnitError, pint.DefinitionSyntaxError, ValueError):
                continue
            yield {"cue": cue, "value": one.value, "low": None, "high": None, "unit": name}


@cache
def _registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()


def _lines(count: int) -> list[str]:
    found: list[str] = []
    words = 0
    talks = [read_captions(path) for path in sorted(HERE.rglob("narration.vtt"))]
    for cue in cycle([cue for talk in talks for cue in talk.cues]):
        found.append(cue.text)
        words += len(cue.text.split())
        if words >= count:
            return found
    return found


def _seconds(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


if __name__ == "__main__":
    main()
