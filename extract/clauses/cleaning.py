"""Spoken words made fit for an instruction: fillers out, first person to second, past to present where asked."""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.talk import talk

_PRONOUN = {"i": "I"}
_EDGES = " ,;:.!?—–-"


def cleaned(
    bench: Bench, start: int, end: int, *, keep_first: bool = False, present: bool = False, second_person: bool = True
) -> str:
    """Tokens `start` to `end` as running text without marks at either edge.

    `keep_first` keeps an opener that ties the words to what comes before ("so it stays"); `present` puts the commonest
    past forms in the present.
    """
    words = talk()
    out: list[str] = []
    at = start
    while at < end:
        skip = words.fillers.length_at(bench.lower, at)
        if skip and at + skip <= end:
            at += skip
            continue
        word = bench.lower[at]
        if bench.is_exclamation(at) and bench.tag(at) not in {"VB", "VBP"}:
            at += 1
            continue
        token = bench.doc[at]
        said = (words.person.get(word) if second_person else _PRONOUN.get(word)) or (
            words.present.get(word) if present else None
        )
        if said is None:
            proper = token.tag_ in {"NNP", "NNPS"} and bench.term_kind[at] is None and not token.is_sent_start
            said = token.text if proper or not token.is_title else word
        space = " " if token.whitespace_ or (at + 1 < len(bench) and bench.cue[at + 1] != bench.cue[at]) else ""
        out.append(said + space)
        at += 1
    text = " ".join("".join(out).split())
    return text.strip(_EDGES) if not keep_first else text.rstrip(_EDGES)
