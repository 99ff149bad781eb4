"""A step as an instruction: "now a little oil on the pivots" becomes "Oil the pivots".

Base form first, the thing named, first person and fillers gone, figures kept as said.
"""

from __future__ import annotations

from bisect import bisect_left

from extract.clauses.bench import Bench
from extract.clauses.cleaning import cleaned
from extract.clauses.grammar import PARTICLES
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, kind_of, name_of
from extract.spans import Action
from extract.steps.candidate import Candidate
from extract.steps.merge import Group
from extract.steps.naming import name_with_whole, named_beside, named_work
from extract.steps.shapes.tools import figure_verb

_TAILS = frozenset({"till", "until", "before", "where", "while", "so", "when", "if", "once", "after"})
_COATING = frozenset(
    {"grease", "oil", "glue", "paint", "varnish", "shellac", "wax", "solder", "tape", "stain", "apply"}
)
_LONGEST_TAIL = 14
_WORDED = 0.4
"""Chance under which a candidate tells where a step is, and is left out of its instruction."""
_BESIDE = 3
"""Further things named in a step's breaths, for its object."""
_MOST = 3
"""Verbs and objects named for a step that joins several actions."""


def to_action(bench: Bench, pieces: tuple[Piece, ...], group: Group) -> Action:
    """One step from the candidates that tell it."""
    likeliest = max(group, key=lambda one: one.chance)
    candidates = [one.candidate for one in group]
    verbs = [named_work(bench, c) for c in candidates if c.verb != "do"] or ["do"]
    verbs = list(dict.fromkeys(verbs))[:_MOST]
    names = list(dict.fromkeys(name_with_whole(bench, c) for c in candidates if c.meant is not None))[:_MOST]
    laid = [thing for c in candidates for thing in (c.laid, c.tool) if thing is not None]
    names += [name for thing in laid if (name := name_of(bench, thing)) not in names][:1]
    end = max(candidate.end for candidate in candidates)
    heads = {name.split()[-1] for name in names if name}
    verbs_at = frozenset(candidate.rest[0] - 1 for candidate in candidates)
    beside = named_beside(bench, candidates[0].start, end, verbs_at)
    beside = [name for name in beside if name.split()[-1] not in heads]
    names += beside[:_BESIDE]
    return Action(
        start=candidates[0].start,
        end=end,
        verb=" and ".join(verbs),
        object=" and ".join(names),
        mode=likeliest.candidate.mode,
        text=_text(bench, pieces, [one.candidate for one in group if one.chance >= _WORDED or one is likeliest]),
    )


def _text(bench: Bench, pieces: tuple[Piece, ...], group: list[Candidate]) -> str:
    parts: list[str] = []
    named: set[str] = set()
    for candidate in [one for one in group if not _is_bare_name(one)] or group:
        said = _instruction(bench, candidate, named) + _tail(bench, pieces, candidate)
        if said not in parts:
            parts.append(said)
        if candidate.meant is not None:
            named.add(name_of(bench, candidate.meant))
    text = parts[0] if len(parts) == 1 else ", ".join(parts[:-1]) + ", then " + parts[-1]
    return text[:1].upper() + text[1:]


def _instruction(bench: Bench, candidate: Candidate, named: set[str]) -> str:
    start, end = candidate.rest
    thing, meant = candidate.thing, candidate.meant
    if _is_bare_name(candidate) and candidate.fronted is not None:
        return _join("see to", _noun(bench, candidate.fronted, meant), cleaned(bench, start, end))
    if candidate.tool is not None:
        return _with_tool(bench, candidate)
    if candidate.shape in {"reading", "finding"}:
        return f"measure the {name_with_whole(bench, candidate)}" if meant is not None else "measure it"
    if candidate.shape == "nominal":
        return _join(candidate.said, _object(bench, candidate, named), cleaned(bench, start, end))
    if candidate.fronted is not None:
        return _fronted(bench, candidate)
    if candidate.said == "have" and thing is not None and not thing.pronoun:
        behind = thing.end + (bench.word(thing.end) in bench.words.plain)
        return _join(candidate.verb, _noun(bench, thing, meant), cleaned(bench, behind, end))
    if thing is None and candidate.verb != candidate.said and candidate.said in {"make", "do"} and meant is not None:
        return _join(candidate.verb, f"the {name_of(bench, meant)}", cleaned(bench, start, end))
    if thing is not None and thing.pronoun and start <= thing.start < end and _may_name(bench, candidate, named):
        return _join(
            candidate.said,
            cleaned(bench, start, thing.start),
            _noun(bench, thing, meant),
            cleaned(bench, thing.end, end),
        )
    return _join(candidate.said, cleaned(bench, start, end))


def _is_bare_name(candidate: Candidate) -> bool:
    """True for a thing that was only named, with no word of what is done to it."""
    return candidate.shape == "named" and candidate.verb == "do"


def _may_name(bench: Bench, candidate: Candidate, named: set[str]) -> bool:
    return candidate.sure and candidate.meant is not None and name_of(bench, candidate.meant) not in named


def _object(bench: Bench, candidate: Candidate, named: set[str]) -> str:
    """ "it" or the thing at hand, for work named by a noun: "give it a quick wipe"."""
    if candidate.thing is not None:
        return ""
    return (
        f"the {name_of(bench, candidate.meant)}"
        if candidate.meant is not None and _may_name(bench, candidate, named)
        else "it"
    )


def _fronted(bench: Bench, candidate: Candidate) -> str:
    start, end = candidate.rest
    verb, thing = candidate.said, candidate.fronted
    assert thing is not None  # noqa: S101
    noun = _noun(bench, thing, candidate.meant)
    if candidate.shape == "headed":
        return f"{verb} {noun}: {cleaned(bench, start, end)}"
    if candidate.shape == "listed":
        return f"{verb} {noun} to {cleaned(bench, start, end)}"
    if candidate.shape == "goes" and verb == "set":
        verb = figure_verb(bench, start, end) or verb
    lemma, _, particle = verb.partition(" ")
    if particle:
        return _join(lemma, noun, particle, cleaned(bench, start, end))
    moved = (
        bench.word(start)
        if start < end and bench.word(start) in PARTICLES and candidate.verb.endswith(bench.word(start))
        else ""
    )
    if moved:
        return _join(verb, moved, noun, cleaned(bench, start + 1, end))
    return _join(verb, noun, cleaned(bench, start, end))


def _with_tool(bench: Bench, candidate: Candidate) -> str:
    """ "grease in the cups" -> "grease the cups"; "hair dryer on the joint" -> "use the hair dryer on the joint"."""
    tool, (start, end) = candidate.tool, candidate.rest
    assert tool is not None  # noqa: S101
    target = _noun(bench, candidate.meant, candidate.meant) if candidate.meant else "it"
    if candidate.shape == "listed":
        figure = cleaned(bench, start, end)
        tools = cleaned(bench, tool.start, tool.end if figure else start)
        return _join(candidate.verb, target, "with", tools, f"to {figure}" if figure else "")
    through = bench.word(start) in {"through", "inside", "under", "between", "behind"} and candidate.thing is not None
    if through:
        return _join("put", cleaned(bench, tool.start, end))
    same = candidate.verb in name_of(bench, tool).split() or bench.doc[tool.head].lemma_.lower() == candidate.verb
    if same and candidate.thing is not None:
        return _join(candidate.verb, cleaned(bench, candidate.thing.start, end))
    if candidate.thing is None:
        return _join(candidate.verb, target, "with", _noun(bench, tool, tool), cleaned(bench, start, end))
    if candidate.shape == "with tool" and candidate.thing is not None:
        return _join(candidate.verb, target, "with", _noun(bench, tool, tool), cleaned(bench, start, end))
    verb = "put" if kind_of(bench, tool) == "material" or candidate.verb in _COATING else "use"
    return _join(verb, _noun(bench, tool, tool), cleaned(bench, start, end))


def _noun(bench: Bench, thing: Thing, meant: Thing | None) -> str:
    """A noun phrase with its article; a pronoun by what it means."""
    if thing.pronoun:
        if meant is None or bench.word(thing.head) in {"everything", "each", "both", "all", "one", "ones"}:
            said = cleaned(bench, thing.start, thing.end)
            return {"she": "it", "he": "it", "they": "them"}.get(said, said)
        return f"the {name_of(bench, meant)}"
    said = cleaned(bench, thing.start, thing.end)
    counted = bench.tag(thing.start) in {"DT", "PRP$", "CD", "PDT", "POS"} or bench.word(thing.start) == "each"
    return said if counted or kind_of(bench, thing) == "material" else f"the {said}"


def _tail(bench: Bench, pieces: tuple[Piece, ...], candidate: Candidate) -> str:
    """The clause behind an action that says how far or how long, where it is short."""
    index = bisect_left(pieces, candidate.end, key=lambda piece: piece.start)
    behind = pieces[index] if index < len(pieces) else None
    if behind is None or behind.joiner not in _TAILS or behind.sentence != candidate.piece.sentence:
        return ""
    if behind.end - behind.start > _LONGEST_TAIL or (
        behind.joiner == "so" and not bench.begins_clause(behind.start + 1)
    ):
        return ""
    return " " + cleaned(bench, behind.start, behind.end, keep_first=True, present=True)


def _join(*parts: str) -> str:
    return " ".join(part for part in parts if part)
