"""The words of data/checks.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from importlib.resources import files

Phrase = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CommonBand:
    """Where a figure said beside one of these words lies at any bench."""

    words: frozenset[Phrase]
    name: str
    low: float
    high: float
    unit: str
    source: str
    behind: bool
    """The words may stand behind the figure too: "0.94 in on the micrometer"."""
    difference: bool
    """A comparison is held against it too: "runs out by 2 mm"."""


@dataclass(frozen=True, slots=True)
class CheckWords:
    """Words and phrases by what they tell of the figures about them; the reasons stand in the data file."""

    strong: frozenset[Phrase]
    weak: frozenset[Phrase]
    beside: frozenset[str]
    hairs: frozenset[str]
    comparing: frozenset[str]
    unit_kinds: dict[str, frozenset[str]]
    usual_units: dict[str, tuple[str, ...]]
    between: frozenset[str]
    kind_before: dict[Phrase, frozenset[str]]
    kind_behind: dict[Phrase, frozenset[str]]
    kind_of: dict[Phrase, frozenset[str]]
    doing: dict[tuple[str, str], str]
    """The kind that a verb and the small word right before the figure call for: ("heat", "to")."""
    fastened: tuple[frozenset[str], frozenset[str], frozenset[str]]
    """What is fastened, the small words before its torque, and the verbs with which it is something else."""
    firm: tuple[frozenset[str], frozenset[str], frozenset[str]]
    """Nouns of length, kinds that are never of length, and words beside which both may be."""
    loosely: dict[str, str]
    """Words that call for a kind wherever they stand before a figure."""
    loose: tuple[frozenset[str], frozenset[str]]
    """Kinds that are told by those, and words beside which they tell nothing."""
    waits: tuple[frozenset[str], frozenset[str]]
    """Words before a figure that make it a wait, and words behind it that leave it one."""
    contrast: frozenset[Phrase]
    contrast_between: frozenset[str]
    """Words that may stand beside one of those between a figure and what it should have been."""
    clause_borders: frozenset[str]
    common: tuple[CommonBand, ...]
    total: frozenset[Phrase]
    adding: frozenset[str]
    gaining: frozenset[Phrase]
    vague: frozenset[str]
    telling_apart: tuple[frozenset[str], ...]
    ways: frozenset[Phrase]
    """Phrases that tell a direction: "front to back" is of no front."""
    frame_found: frozenset[Phrase]
    frame_aimed: frozenset[Phrase]
    frame_empty: frozenset[str]
    counterparts: dict[str, tuple[str, ...]]
    """The units of the other system in which a figure is usually said again."""
    nominal: frozenset[tuple[Fraction, Fraction]]
    """Inches and millimetres under which the same thing is sold."""
    elsewhere: dict[str, Fraction]
    """How many of the unit of data/units.toml the one of the same name holds in another country."""
    placing: frozenset[str]
    taking: frozenset[str]
    not_own: frozenset[str]
    no_size: frozenset[str]
    no_size_pairs: frozenset[Phrase]
    offsets: dict[str, frozenset[str]]
    """Words by which a length is no size, by what they say of it."""


def holds(words: tuple[str, ...], phrases: frozenset[Phrase]) -> Phrase | None:
    """The longest of the phrases that occurs among the words, the last one of equals."""
    found: Phrase | None = None
    for at in range(len(words)):
        for length in range(min(4, len(words) - at), 0, -1):
            piece = words[at : at + length]
            if piece in phrases and (found is None or length >= len(found)):
                found = piece
    return found


def _phrases(rows: list[str]) -> frozenset[Phrase]:
    return frozenset(tuple(row.split()) for row in rows)


def _by_phrase(table: dict[str, list[str]]) -> dict[Phrase, frozenset[str]]:
    return {tuple(row.split()): frozenset({kind}) for kind, rows in table.items() for row in rows}


@cache
def check_words() -> CheckWords:
    """Read once, at the first check."""
    data = tomllib.loads((files("extract") / "data" / "checks.toml").read_text(encoding="utf-8"))
    restating, dimension = data["restating"], data["dimension"]
    return CheckWords(
        strong=_phrases(restating["strong"]),
        weak=_phrases(restating["weak"]),
        beside=frozenset(data["beside"]["words"]),
        hairs=frozenset(data["hairs"]["words"]),
        comparing=frozenset(data["comparing"]["words"]),
        unit_kinds={name: frozenset(kinds) for name, kinds in data["unit_kinds"].items()},
        usual_units={kind: tuple(symbols) for kind, symbols in data["usual_units"].items()},
        between=frozenset(dimension["between"]),
        kind_before=_by_phrase(dimension["words"]),
        kind_behind=_by_phrase(dimension["behind"]),
        kind_of=_by_phrase(dimension["of"]),
        doing={
            (verb, small): kind
            for kind, row in dimension["doing"].items()
            for verb in row["verbs"]
            for small in row["before"]
        },
        fastened=(
            frozenset(dimension["fastened"]["things"]),
            frozenset(dimension["fastened"]["before"]),
            frozenset(dimension["fastened"]["unless"]),
        ),
        firm=tuple(frozenset(dimension["firm"][name]) for name in ("nouns", "kinds", "unless")),  # type: ignore[arg-type]
        loosely={word: kind for kind, words in dimension["loosely"].items() for word in words},
        loose=(frozenset(dimension["loose"]["kinds"]), frozenset(dimension["loose"]["unless"])),
        waits=(frozenset(dimension["waits"]["before"]), frozenset(dimension["waits"]["behind"])),
        contrast=_phrases(dimension["contrast"]["phrases"]),
        contrast_between=frozenset(dimension["contrast"]["between"]),
        clause_borders=frozenset(dimension["borders"]),
        common=tuple(
            CommonBand(
                _phrases(row["words"]),
                row["name"],
                row["low"],
                row["high"],
                row["unit"],
                row["source"],
                row.get("behind", False),
                row.get("difference", False),
            )
            for row in data["common"]
        ),
        total=_phrases(data["running"]["total"]),
        adding=frozenset(data["running"]["adding"]),
        gaining=_phrases(data["running"]["gaining"]),
        vague=frozenset(dimension["attributes"]["vague"]),
        telling_apart=tuple(frozenset(row) for row in data["telling_apart"]["rows"]),
        ways=_phrases(data["telling_apart"]["ways"]),
        frame_found=_phrases(data["frames"]["found"]),
        frame_aimed=_phrases(data["frames"]["aimed"]),
        frame_empty=frozenset(data["frames"]["empty"]),
        counterparts={unit: tuple(others) for unit, others in data["counterparts"].items()},
        nominal=frozenset(
            (Fraction(inches), Fraction(str(other))) for inches, other in data["nominal"]["inch_and_millimeter"]
        ),
        elsewhere={unit: Fraction(ratio) for unit, ratio in data["elsewhere"]["units"].items()},
        placing=frozenset(data["scale"]["placing"]),
        taking=frozenset(data["scale"]["taking"]),
        not_own=frozenset(data["scale"]["not_own"]),
        offsets={name: frozenset(words) for name, words in data["offsets"].items()},
        no_size=frozenset(data["scale"]["behind"]),
        no_size_pairs=_phrases(data["scale"]["behind_pairs"]),
    )
