"""Tools and materials used on the job: named in the trade's lists, or by their place in a sentence.

Takes "three cornered file", "0000 wool", "with a dental probe"; refuses what another job used, what is forbidden
("don't use a steel one") and parts of the thing under repair.
"""

from __future__ import annotations

from functools import cache

from extract.clauses import Thing, kind_of, thing_at
from extract.clauses.terms import singular
from extract.remarks.reading import Reading, cues
from extract.spans import Named
from extract.units import unit_data

_VAGUE = frozenset(
    {"old", "new", "little", "proper", "good", "sharp", "wee", "fresh", "clean", "small", "big", "own", "same", "other"}
) | {
    "nice",
    "last",
    "first",
    "next",
    "second",
    "light",
    "bare",
    "large",
    "tiny",
    "real",
    "dead",
    "whole",
    "middle",
    "spare",
}
_KIN_TAGS = frozenset({"NN", "NNP", "JJ", "VBN", "VBG", "HYPH", "CD"})
"""What may tell one kind of a noun from another: "hide glue", "bevelled glass", "bending iron"."""
_DENIALS = frozenset({"n't", "not", "never", "no"})
_LONGEST_NAME = 4
_LONGEST_NUMBER = 3
_COUNT_TAGS = frozenset({"DT", "PRP$", "PDT", "POS", "WDT"})


def find_things_used(reading: Reading) -> tuple[tuple[Named, ...], tuple[Named, ...]]:
    """Tools and materials, each with the tokens that name it, in order of first mention."""
    tools = _Shelf()
    materials = _Shelf()
    for index, piece in enumerate(reading.pieces):
        if reading.told[index] or _is_elsewhere(reading, index):
            continue
        denied = next((k for k in range(piece.start, piece.end) if reading.bench.word(k) in _DENIALS), piece.end)
        at = piece.start
        while at < piece.end:
            thing = thing_at(reading.bench, at, piece.end)
            if thing is None or thing.pronoun or _is_verb_like(reading, thing):
                at += 1
                continue
            shelf = _shelf_of(reading, thing, tools, materials)
            if shelf is not None and thing.head < denied and not _is_unit(reading, thing):
                shelf.put(_name(reading, thing), thing.head)
            at = thing.end
    return tools.named(), materials.named()


def _is_unit(reading: Reading, thing: Thing) -> bool:
    """True for the "newton meter" of "35 newton meters", whose last word is a tool elsewhere."""
    words = reading.bench.lower[thing.start : thing.head]
    return bool(words) and f"{words[-1]} {singular_noun(reading, thing.head)}" in _unit_words()


@cache
def _unit_words() -> frozenset[str]:
    """The forms in which units are said, singular and plural."""
    return frozenset(form for row in unit_data()["unit"] for form in row["said"])


def _is_elsewhere(reading: Reading, index: int) -> bool:
    """True for what somebody else used: "the man i learned from would do it with a hot nail"."""
    bench, piece = reading.bench, reading.pieces[index]
    if (
        "would" in bench.lower[piece.start : piece.end]
        and index
        and reading.pieces[index - 1].sentence == piece.sentence
    ):
        before = thing_at(bench, reading.pieces[index - 1].lead, piece.start)
        if before is not None and kind_of(bench, before) == "people":
            return True
    subject = thing_at(bench, piece.lead, piece.end)
    return bench.word(piece.lead) in {"he", "she"} or (subject is not None and kind_of(bench, subject) == "people")


def _is_verb_like(reading: Reading, thing: Thing) -> bool:
    """A single word that is a verb of work too names a tool only behind an article or "with"."""
    bench = reading.bench
    if kind_of(bench, thing) == "material" and not bench.takes_object(thing.end):
        return False
    if bench.is_bare_verb(thing.start):
        return True
    word = bench.word(thing.head)
    if word not in bench.words.work or bench.tag(thing.head) == "NNS":
        return False
    treatment = bench.word(thing.end) in {"on", "of", "over", "with"} and thing.end - thing.start > 1
    return treatment or (thing.end - thing.start == 1 and bench.tag(thing.start - 1) != "IN")


class _Shelf:
    """Names and where they stand; a bare name joins the longer one that it ends."""

    def __init__(self) -> None:
        self._at: dict[str, list[int]] = {}

    def put(self, name: str, at: int) -> None:
        known = next((other for other in self._at if other == name or other.endswith(f" {name}")), None)
        shorter = next((other for other in self._at if name.endswith(f" {other}")), None)
        if known is None and shorter is not None:
            self._at = {name if other == shorter else other: places for other, places in self._at.items()}
            known = name
        self._at.setdefault(known or name, []).append(at)

    def named(self) -> tuple[Named, ...]:
        return tuple(Named(name, tuple(places)) for name, places in self._at.items())


def _shelf_of(reading: Reading, thing: Thing, tools: _Shelf, materials: _Shelf) -> _Shelf | None:
    bench = reading.bench
    kind = kind_of(bench, thing)
    if bench.word(thing.head - 1) == "dead" and thing.head - 1 >= thing.start:
        return None
    if bench.word(thing.start - 1) == "like" or bench.words.nouns.get(bench.word(thing.head)) == "people":
        return None
    if bench.word(thing.end) == "of" and kind == "thing":
        return None
    if kind == "tool":
        return tools
    if kind == "material":
        return materials
    made = kind == "part" and bench.word(thing.start) in {"a", "an"}
    if (kind == "thing" or made) and bench.word(thing.start - 1) == "with" and _is_handled(reading, thing):
        return tools if bench.tag(thing.start) == "DT" or bench.tag(thing.head) == "NNS" else materials
    return None


def _is_handled(reading: Reading, thing: Thing) -> bool:
    """True where a verb of work stands before "with": not "live with that", "a box with a lid"."""
    bench = reading.bench
    for at in range(thing.start - 2, max(-1, thing.start - 10), -1):
        verb = bench.verb(at)
        if verb is not None:
            return bench.words.kind(verb.lemma) in ("work", "light") and verb.lemma != "come"
        if bench.doc[at + 1].is_sent_start:
            return False
    return False


def _name(reading: Reading, thing: Thing) -> str:
    """The noun with what tells it from its kin: "320 grit paper"; "old", "a", "my" are left out."""
    bench = reading.bench
    start = thing.head
    while start > thing.start and thing.head - start < _LONGEST_NAME:
        before = start - 1
        if (
            bench.tag(before) in _COUNT_TAGS
            or bench.tag(before) == "RB"
            or bench.word(before).startswith("'")
            or bench.word(before) in _VAGUE
            or bench.word(before) == "of"
            or not _may_name_kin(reading, before)
        ):
            break
        if bench.tag(before) == "CD" and not _is_name_number(reading, before):
            break
        start = before
    start = _with_its_size(reading, start, thing)
    words = [*bench.lower[start : thing.head], singular_noun(reading, thing.head)]
    return " ".join(words).replace(" - ", "-")


def _with_its_size(reading: Reading, start: int, thing: Thing) -> int:
    """A name that begins with a unit has its number too, or leaves the unit out where it has none.

    Takes "eight millimetre wrench" as it is and "thousandths feeler" as "feeler".
    """
    bench = reading.bench
    if start == thing.head or bench.word(start) not in _unit_words():
        return start
    begin = start
    while begin > 0 and start - begin < _LONGEST_NUMBER and _is_number(reading, begin - 1):
        begin -= 1
    return begin if begin < start else start + 1


def _is_number(reading: Reading, at: int) -> bool:
    return reading.bench.tag(at) == "CD" or bool(reading.bench.doc[at].like_num)


def _may_name_kin(reading: Reading, at: int) -> bool:
    """False for what tells no kind of the noun behind it: a mark, a plural beside it, a word that joins or says."""
    bench = reading.bench
    if at in bench.in_long_term or bench.word(at) == "-":
        return True
    return bench.tag(at) in _KIN_TAGS or bench.doc[at].like_num


def _is_name_number(reading: Reading, at: int) -> bool:
    """True for the number of a grade: "320 grit paper", "0000 wool"; not "three clamps"."""
    word, behind = reading.bench.word(at), reading.bench.word(at + 1)
    return behind in {"grit", "-", "ought", "cornered", "inch", "mm", "grade"} or (word.isdigit() and len(word) >= 3)


def singular_noun(reading: Reading, at: int) -> str:
    """The head of a name in the singular, where it is a plain plural."""
    word = reading.bench.word(at)
    return singular(word) if reading.bench.tag(at) == "NNS" and word not in cues().plural_only else word
