"""The signs of a breath: which words it has, also those of data/remark_signs.toml, and how it is built.

The breaths beside it count too, under names of their own: what happens otherwise often follows in the next one.
"""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files

from extract.clauses.phrases import Phrases
from extract.remarks.breaths import Breath
from extract.remarks.reading import Reading

_LATE, _LAST = 0.8, 0.93
"""Shares of the narration behind which things are left for later, and people take their leave."""
_FIRST_PERSON = frozenset({"i", "we"})
_BESIDE = 1


@cache
def sign_words() -> dict[str, Phrases]:
    """The phrases of each sign, read once."""
    data = tomllib.loads(files("extract").joinpath("data/remark_signs.toml").read_text(encoding="utf-8"))
    return {name: Phrases(row["phrases"]) for name, row in data.items()}


def said_signs(reading: Reading, breath: Breath) -> dict[str, tuple[int, int]]:
    """Each sign whose words are said in a breath, with the tokens of the first that says it."""
    lower = reading.bench.lower
    found = {}
    for name, phrases in sign_words().items():
        at = phrases.first_in(lower, breath.start, breath.end)
        if at is not None and not (name == "forbids" and _states(reading, at)):
            found[name] = at
    if "talk" in found and found.get("forbids", (-1,))[0] == found["talk"][0]:
        del found["forbids"]
    return found


def _states(reading: Reading, at: tuple[int, int]) -> bool:
    """ "or the thread never grips", "it'll never close": says what happens, and forbids nothing."""
    bench = reading.bench
    if bench.word(at[0]) != "never":
        return False
    before, behind = bench.tag(at[0] - 1), bench.tag(at[1])
    return before in {"PRP", "MD"} or bench.word(at[0] - 1) == "'ll" or behind in {"VBZ", "VBD"}


def signs_of(reading: Reading, breaths: tuple[Breath, ...], said: list[frozenset[str]], index: int) -> frozenset[str]:
    """All signs of one breath. `said` holds the names of the signs said in each."""
    here = said[index]
    signs = set(here) | _form(reading, breaths[index]) | _words(reading, breaths[index])
    signs.update(f"{one} + {other}" for one, other in _PAIRS if one in here and other in here)
    for step, word in ((-_BESIDE, "before"), (_BESIDE, "behind")):
        if 0 <= index + step < len(breaths) and _near(reading, breaths[index], breaths[index + step]):
            signs.update(f"{word}: {name}" for name in said[index + step])
    return frozenset(signs)


_PAIRS = (
    ("halting", "harm"),
    ("otherwise", "harm"),
    ("limit", "harm"),
    ("limit", "otherwise"),
    ("forbids", "harm"),
    ("forbids", "talk"),
    ("forbids_a_thing", "harm"),
    ("hedged", "to_look_up"),
    ("hedged", "unknowing"),
    ("hedged", "unvouched"),
    ("asks", "unknowing"),
    ("asks", "to_look_up"),
    ("heard_said", "unknowing"),
    ("later", "puts_off"),
    ("later", "wants_work"),
    ("puts_off", "wants_work"),
    ("danger", "harm"),
    ("danger", "guarding_gear"),
    ("minding", "keeping_clear"),
)


def _form(reading: Reading, breath: Breath) -> set[str]:
    bench, piece = reading.bench, reading.pieces[breath.first]
    span = range(breath.start, breath.end)
    tags = {bench.tag(at) for at in span}
    share = breath.start / max(1, len(bench))
    words = sum(bench.doc[at].is_alpha for at in span)
    verb = bench.verb(piece.lead)
    facts = {
        "told of another job": any(reading.told[at] for at in range(breath.first, breath.last)),
        "begins with a command": verb is not None and verb.form == "base" and bench.words.kind(verb.lemma) != "idle",
        "first person": bench.word(piece.lead) in _FIRST_PERSON,
        "second person": "you" in bench.lower[breath.start : breath.end],
        "past": "VBD" in tags,
        "present or future": bool(tags & {"VBZ", "VBP", "MD"}),
        "no verb": not any(tag.startswith("VB") or tag == "MD" for tag in tags),
        "forbids by a bare noun": any(_bare_noun_forbidden(reading, at) for at in span),
        "or of two": sum(bench.lower[at : at + 2] == ("could", "be") for at in span) > 1,
        "asked": bench.word(breath.end - 1) == "?",
        "figure": "CD" in tags,
        "short": words < 5,
        "long": words > 12,
        "late": share > _LATE,
        "last words": share > _LAST,
    }
    return {name for name, holds in facts.items() if holds}


def _words(reading: Reading, breath: Breath) -> set[str]:
    """The words of the breath, each by its lemma: those that the fit saw often enough have a weight."""
    doc = reading.bench.doc
    return {f"said {doc[at].lemma_.lower()}" for at in range(breath.start, breath.end) if doc[at].is_alpha}


def _bare_noun_forbidden(reading: Reading, at: int) -> bool:
    """ "no pliers", "not brake cleaner", "not sandpaper": a thing that is not to be used."""
    bench = reading.bench
    if bench.word(at) not in {"no", "not"} or bench.tag(at + 1) not in {"NN", "NNS"}:
        return False
    return bench.words.nouns.get(bench.word(at + 1)) not in {"abstract", "people", "time"} and bench.tag(at - 1) != "MD"


def _near(reading: Reading, breath: Breath, other: Breath) -> bool:
    return abs(reading.bench.cue[breath.start] - reading.bench.cue[other.start]) <= 1
