"""Spoken words made fit for an instruction: fillers out, first person to second, past to present where asked."""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.talk import talk

_PRONOUN = {"i": "I"}
_ENDS = frozenset({".", "?", "!", ":", '"', ""})
_EDGES = " ,;:.!?—–-"


def cleaned(
    bench: Bench, start: int, end: int, *, keep_first: bool = False, present: bool = False, second_person: bool = True
) -> str:
    """Tokens `start` to `end` as running text without marks at either edge.

    `keep_first` keeps a space or mark at the start; `present` puts the commonest past forms in the present.
    """
    words = talk()
    changed = {
        **(words.person if second_person else _PRONOUN),
        **(words.present if present else {}),
    }
    out: list[str] = []
    at = start
    while at < end:
        skip = words.fillers.length_at(bench.lower, at)
        if second_person and not skip:
            skip = words.days_past.length_at(bench.lower, at)
        if skip and at + skip <= end:
            at += skip
            continue
        repeated = at > start and bench.word(at) == bench.word(at - 1) and bench.doc[at].is_alpha
        if not repeated and not (bench.is_exclamation(at) and bench.tag(at) not in {"VB", "VBP"}):
            breath = at + 1 < len(bench) and bench.cue[at + 1] != bench.cue[at]
            out.append(_word(bench, at, changed) + (" " if bench.doc[at].whitespace_ or breath else ""))
        at += 1
    text = " ".join("".join(out).split())
    return text.strip(_EDGES) if not keep_first else text.rstrip(_EDGES)


def _word(bench: Bench, at: int, changed: dict[str, str]) -> str:
    token, word = bench.doc[at], bench.lower[at]
    before = bench.word(at - 1)
    spelt = len(before) == 1 and before.isalpha() and before not in {"i", "a"}
    if word == "un" and bench.tag(at - 1) in {"DT", "JJ"}:
        return "one"  # "the old un"; "turn un over" is it
    if word == "got" and before in {"'ve", "have", "has", "had"}:
        return token.text
    if word in changed and not spelt:
        return changed[word]
    proper = token.tag_ in {"NNP", "NNPS"} and bench.term_kind[at] is None and not token.is_sent_start
    meant = bench.narration.punctuated and not token.is_sent_start and before not in _ENDS
    return token.text if proper or meant or not token.is_title else word
