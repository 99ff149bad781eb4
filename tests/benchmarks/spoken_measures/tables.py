"""The tables of the benchmark, each as lines of Markdown."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from difflib import SequenceMatcher
from functools import partial
from itertools import pairwise
from statistics import median

from capture.model_files import cache_folder
from capture.prime import compose_prime, ingredients
from capture.transcript import Cue, Transcript, Word
from extract.record import Measure
from tests.benchmarks.spoken_measures import hearings
from tests.benchmarks.spoken_measures.bench import Bench
from tests.benchmarks.spoken_measures.figures import PARTS
from tests.benchmarks.spoken_measures.sound import Recording, samples_of, write_sound
from tests.benchmarks.spoken_measures.tally import Tally, share
from tests.benchmarks.spoken_measures.tools import tool_noise, under
from tests.benchmarks.spoken_measures.voices import SPEAKERS

STEPS = (0.0, 0.3, 0.5, 0.7, 0.85, 0.95, 1.001)
"""Ends of the bins of confidence."""


def rows(heads: Sequence[str], lines: Iterable[Sequence[object]]) -> list[str]:
    """A Markdown table."""
    table = ["| " + " | ".join(heads) + " |", "|" + " --- |" * len(heads)]
    return table + ["| " + " | ".join(str(cell) for cell in line) + " |" for line in lines] + [""]


def measures(bench: Bench) -> list[str]:
    """Of 100 measures, how many are right, by way of hearing and by kind; and what becomes of corrections."""
    found = {name: bench.heard(name) for name in bench.ways()}
    kinds = list(next(iter(found.values())).by_kind())
    count = len(next(iter(found.values())).measures())
    title = f"### Of 100 measures, right ({bench.side} half, {count} measures, {len(bench.recordings())} voices)"
    lines = [
        (name, f"{one.right():.1f}", *(f"{one.by_kind()[kind]:.0f}" for kind in kinds), *_corrected(one))
        for name, one in found.items()
    ]
    heads = ("heard", "all", *kinds, "corrections: final right", "withdrawn kept")
    voices = [(name, *_by_voice(one)) for name, one in found.items()]
    speakers = [one.speaker.name for one in bench.recordings()]
    by_voice = ["By voice:", "", *rows(("heard", *speakers), voices)]
    return [title, "", *rows(heads, lines), *by_voice, *_apart(found)]


def _apart(found: dict[str, Tally]) -> list[str]:
    """Voices like a person's and formant or diphone voices, each by themselves."""
    lines = []
    for name, one in found.items():
        cells: list[str] = []
        for robot in (False, True):
            part = one.of_voices(robot=robot)
            corrections = part.corrections()
            right, kept = (sum(getattr(v, what) for _, v in corrections) for what in ("right", "withdrawn"))
            cells += [f"{part.right():.1f} of {len(part.measures())}", f"{right} of {len(corrections)}", str(kept)]
        lines.append((name, *cells))
    heads = ["heard"]
    for kind in ("persons", "robots"):
        heads += [f"{kind}: of 100 measures, right", "corrections: final right", "withdrawn kept"]
    return ["Voices like a person's, and robots:", "", *rows(heads, lines)]


def _corrected(one: Tally) -> tuple[str, str]:
    said = one.corrections()
    right, kept = share([v.right for _, v in said]), share([v.withdrawn for _, v in said])
    return f"{right:.0f}", f"{kept:.0f}"


def _by_voice(one: Tally) -> list[str]:
    inside = {id(said): verdict for said, verdict in one.measures()}
    return [
        f"{share([inside[id(said)].right for said in recording.said if id(said) in inside]):.0f}"
        for recording, _, _ in one.records
    ]


def ablation(bench: Bench) -> list[str]:
    """What each ingredient of the prime is worth: the prime without it, and without all."""
    bench = bench.small()
    ways = {"whole": compose_prime(), "none": ""}
    ways |= {f"without {name}": compose_prime(leave_out=(name,)) for name in ingredients()}
    lines = []
    for name, prime in ways.items():
        one = bench.keep(name, partial(_with_prime, bench, prime))
        lines.append((name, f"{one.right():.1f}", *_corrected(one), bench.model.count_tokens(prime)))
    heads = ("prime", "of 100 measures, right", "corrections: final right", "withdrawn kept", "tokens")
    title = f"### Ingredients of the prime, first hearing only, {len(bench.heard('primed').measures())} measures"
    return [title, "", *rows(heads, lines)]


def _with_prime(bench: Bench, prime: str, recording: Recording) -> Transcript:
    return hearings.primed(recording.path, bench.model, bench.options, prime)


def leaks(bench: Bench) -> list[str]:
    """Whether figures that the prime names are heard where they were not said.

    The prime is held against a twin with other figures in the same places: a leak would show as more false hearings of
    a prime's own figures under that prime than under the other.
    """
    own, other = compose_prime(), twin(compose_prime())
    tallies = {
        "own": bench.heard("primed"),
        "twin": bench.keep("twin", partial(_with_prime, bench, other)),
    }
    sets = {"own": _figures_of(bench, own), "twin": _figures_of(bench, other)}
    lines = []
    for under_prime, one in tallies.items():
        lines.append((under_prime, f"{one.right():.1f}", *(_false(one, sets[name]) for name in ("own", "twin"))))
    heads = ("prime", "of 100 measures, right", "false hearings of the prime's figures", "of the twin's figures")
    return ["### Figures of the prime heard where nobody said them", "", f"Twin: “{other}”", "", *rows(heads, lines)]


def twin(prime: str) -> str:
    """The prime with every figure in it moved on by one or two: same shape, other figures."""
    ones = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "eleven", "thirteen", "seventeen"]
    teens = ["ten", "twelve", "fourteen", "fifteen", "sixteen", "eighteen", "nineteen"]
    tens = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty"]
    after = {word: row[(at + 2) % len(row)] for row in (ones, teens, tens) for at, word in enumerate(row)}
    after["one"] = "three"
    # The names of parts stay: they are what the prime is for.
    held = "|".join(sorted((f"{name}s?" for name in PARTS.values()), key=len, reverse=True))
    return re.sub(
        rf"\b({held})\b|\b({'|'.join(after)})\b",
        lambda found: found[0] if found[1] else after[found[2].casefold()],
        prime,
    )


def _figures_of(bench: Bench, prime: str) -> set[tuple[float, str | None]]:
    words = tuple(Word(text=text, start=at / 2, end=at / 2 + 0.5) for at, text in enumerate(prime.split()))
    cue = Cue(start=0, end=words[-1].end, text=prime, words=words)
    record = bench.extractor.record(Transcript(source="prime", duration=words[-1].end, cues=(cue,)))
    return {_key(one) for one in record.measures}


def _key(measure: Measure) -> tuple[float, str | None]:
    return round(measure.value, 5), measure.unit


def _false(one: Tally, figures: set[tuple[float, str | None]]) -> int:
    said = {
        (round(float(verdict_said.sentence.figure.value), 5), verdict_said.sentence.figure.unit)
        for verdict_said, _ in one.verdicts
    }
    return sum(_key(measure) in figures - said for _, record, _ in one.records for measure in record.measures)


def calibration(bench: Bench) -> list[str]:
    """Of the measures given a confidence, how many are right."""
    lines = []
    names = [name for name in bench.ways() if name.startswith("primed")]
    for low, high in pairwise(STEPS):
        cells = []
        for name in names:
            inside = [
                verdict
                for _, verdict in bench.heard(name).measures()
                if verdict.confidence is not None and low <= verdict.confidence < high
            ]
            mean = sum(verdict.confidence or 0 for verdict in inside) / len(inside) if inside else 0
            cells += [len(inside), f"{100 * mean:.0f}", f"{share([one.right for one in inside]):.0f}"]
        lines.append((f"{low:.2f} to {min(high, 1):.2f}", *cells))
    heads = ["confidence"]
    for name in names:
        heads += [f"{name}: measures", "mean confidence", "of 100 right"]
    return ["### Confidence", "", *rows(heads, lines)]


def word_times(bench: Bench) -> list[str]:
    """How far the start of a word strays from where the voice began it."""
    lines = []
    for recording, _, transcript in bench.heard(list(bench.ways())[-1]).records:
        off = _strays(recording, transcript)
        if off:
            ordered = sorted(off)
            lines.append((recording.speaker.name, len(off), f"{median(off):.3f}", f"{ordered[len(off) * 9 // 10]:.3f}"))
    heads = ("voice", "words", "median, s", "nine in ten within, s")
    return ["### Word times", "", *rows(heads, lines)]


def _strays(recording: Recording, transcript: Transcript) -> list[float]:
    true = [
        (_bare(text), start)
        for said in recording.said
        for text, start in zip(said.sentence.text.split(), said.word_starts, strict=False)
    ]
    heard = [(_bare(word.text), word.start) for cue in transcript.cues for word in cue.words]
    same = SequenceMatcher(None, [text for text, _ in true], [text for text, _ in heard], autojunk=False)
    return [
        abs(true[block.a + at][1] - heard[block.b + at][1])
        for block in same.get_matching_blocks()
        for at in range(block.size)
    ]


def _bare(text: str) -> str:
    return re.sub(r"[^\w]+", "", text.casefold())


def noise(bench: Bench) -> list[str]:
    """What is heard where nobody speaks, and measures with tools under them."""
    best = list(bench.ways())[-1]
    lines: list[Sequence[object]] = []
    for name, samples in (("ten minutes of tools", tool_noise(600)), ("five minutes of silence", tool_noise(300) * 0)):
        path = cache_folder() / "spoken_measures" / f"{name.replace(' ', '-')}.wav"
        write_sound(path, samples)
        transcript = bench.ways()[best](Recording(SPEAKERS[0], path, ()))
        lines.append((name, sum(len(cue.words) for cue in transcript.cues), transcript.text[:80]))
    found = ["### Where nobody speaks", "", *rows(("sound", "words heard", "which"), lines)]
    names = ("plain faster-whisper", "primed") if best == "primed" else ("plain faster-whisper", "primed", best)
    small = bench.small()
    lines = []
    for decibels in (20, 10, 5):
        heard = [_noisy(small, name, decibels) for name in names]
        lines.append((f"{decibels} dB", *(f"{one.right():.0f}" for one in heard)))
    title = "### Of 100 measures, right, with tools under the speech"
    return [*found, title, "", *rows(("speech over noise", *names), lines)]


def _noisy(bench: Bench, name: str, decibels: int) -> Tally:
    way = bench.ways()[name]
    return bench.keep(f"{name}, {decibels} dB", lambda one: way(_with_noise(one, decibels)))


def _with_noise(recording: Recording, decibels: int) -> Recording:
    path = recording.path.with_name(f"{recording.path.stem}-{decibels}dB.wav")
    if not path.exists():
        write_sound(path, under(samples_of(recording.path), decibels))
    return Recording(recording.speaker, path, recording.said)
