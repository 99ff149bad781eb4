"""The phrases of data/corrections.toml, and where they stand among pieces."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.corrections.pieces import Piece
from extract.corrections.templates import Templates


class Phrases:
    """A set of phrases, looked up by their first word."""

    def __init__(self, rows: Iterable[str]) -> None:
        self._by_first: dict[str, list[tuple[str, ...]]] = {}
        for row in rows:
            words = tuple(row.split())
            self._by_first.setdefault(words[0], []).append(words)
        for found in self._by_first.values():
            found.sort(key=len, reverse=True)

    def at(self, pieces: Sequence[Piece], place: int) -> int:
        """How many pieces the longest phrase at a place takes up; 0 where none stands there."""
        for words in self._by_first.get(pieces[place].text, ()):
            if place + len(words) <= len(pieces) and all(
                pieces[place + k].text == word for k, word in enumerate(words)
            ):
                return len(words)
        return 0

    def find(self, pieces: Sequence[Piece], begin: int, end: int) -> Iterator[tuple[int, int]]:
        """Begin and end of each phrase between two places, in order, none inside another."""
        place = max(0, begin)
        while place < min(end, len(pieces)):
            length = self.at(pieces, place)
            if length:
                yield place, place + length
            place += length or 1


@dataclass(frozen=True, slots=True)
class CorrectionWords:
    """Phrases by what they do; the data file says what each list is for."""

    edits: Phrases
    weak_edits: Phrases
    fillers: frozenset[str]
    said: Phrases
    weakly_said: Phrases
    not_behind: frozenset[str]
    withdrawing: Phrases
    doubtful: Phrases
    wrongness: frozenset[str]
    holding: Phrases
    earlier: Phrases
    shows: frozenset[str]
    claiming: frozenset[str]
    refuting: Phrases
    pointing: Phrases
    firm: frozenset[str]
    righting: Phrases
    apology: frozenset[str]
    behind: Phrases
    leading: frozenset[str]
    rechecked: Phrases
    refusing: Phrases
    retracting: Phrases
    weak_refuting: Phrases
    saying: frozenset[str]
    address: frozenset[str]
    naming: frozenset[str]
    empty: frozenset[str]
    explicit: frozenset[str]
    frames: frozenset[str]
    thinking: frozenset[str]
    openers: frozenset[str]
    swaps: dict[str, frozenset[str]]
    """To each word those that are said in its place."""
    own: Templates
    thrown: Templates
    asked: Templates
    recounted: Templates
    misplaced: Templates
    given: Templates
    returning: Templates
    echoing: Templates
    denying: Templates
    not_meant: Templates
    discarding: Templates
    other: frozenset[str]
    here: frozenset[str]
    be: frozenset[str]
    before_right: frozenset[str]
    consequences: Phrases
    affirming: Templates
    laying_down: Phrases
    meanwhile: frozenset[str]
    agreeing: frozenset[str]
    particles: frozenset[str]
    habitual: Phrases


def _swaps(rows: list[list[str]]) -> dict[str, frozenset[str]]:
    found: dict[str, set[str]] = {}
    for row in rows:
        for word in row:
            found.setdefault(word, set()).update(other for other in row if other != word)
    return {word: frozenset(others) for word, others in found.items()}


@cache
def correction_words() -> CorrectionWords:
    """Read once, at the first narration."""
    data = tomllib.loads((files("extract") / "data" / "corrections.toml").read_text(encoding="utf-8"))
    edit, said, withdrawing, earlier = (data[name] for name in ("edit", "said", "withdrawing", "earlier"))
    classes, signals, placing = data["classes"], data["signals"], data["placing"]
    return CorrectionWords(
        edits=Phrases(edit["strong"]),
        weak_edits=Phrases(edit["weak"]),
        fillers=frozenset(data["fillers"]["words"]),
        said=Phrases(said["words"]),
        weakly_said=Phrases(said["weak"]),
        not_behind=frozenset(said["not_behind"]),
        withdrawing=Phrases(withdrawing["words"]),
        doubtful=Phrases(withdrawing["doubtful"]),
        wrongness=frozenset(withdrawing["wrongness"]),
        holding=Phrases(data["holding"]["words"]),
        earlier=Phrases(earlier["words"]),
        shows=frozenset(earlier["shows"]),
        claiming=frozenset(data["claiming"]["words"]),
        refuting=Phrases(data["refuting"]["words"]),
        pointing=Phrases(data["pointing"]["words"]),
        firm=frozenset(data["pointing"]["firm"]),
        righting=Phrases(data["righting"]["words"]),
        apology=frozenset(data["righting"]["apology"]),
        behind=Phrases(data["behind"]["words"]),
        leading=frozenset(data["leading"]["words"]),
        rechecked=Phrases(data["rechecked"]["words"]),
        refusing=Phrases(data["refusing"]["words"]),
        retracting=Phrases(data["retracting"]["words"]),
        weak_refuting=Phrases(data["weak_refuting"]["words"]),
        saying=frozenset(data["weak_refuting"]["claims"]),
        address=frozenset(data["address"]["words"]),
        empty=frozenset(data["empty"]["words"]),
        explicit=frozenset(data["word_slips"]["explicit"]),
        frames=frozenset(data["word_slips"]["frames"]),
        thinking=frozenset(data["word_slips"]["thinking"]),
        openers=frozenset(data["word_slips"]["openers"]),
        naming=frozenset(data["naming"]["first"]),
        swaps=_swaps(data["swaps"]["rows"]),
        **{name: Templates(rows, classes) for name, rows in signals.items()},
        other=frozenset(classes["other"]),
        here=frozenset(placing["here"]),
        be=frozenset(placing["be"]),
        before_right=frozenset(placing["before"]),
        laying_down=Phrases(data["consequence"]["laying_down"]),
        agreeing=frozenset(placing["agreeing"]),
        particles=frozenset(placing["particles"]),
        meanwhile=frozenset(said["meanwhile"]),
        habitual=Phrases(said["habitual"]),
        consequences=Phrases(data["consequence"]["words"]),
    )
