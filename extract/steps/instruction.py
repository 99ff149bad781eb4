"""One action as an instruction: base form first, the thing named, first person and fillers gone, figures kept as said.

"now a little oil on the pivots" becomes "oil the pivots", "i had them off" with the hoops at hand "remove the hoops".
"""

from __future__ import annotations

from dataclasses import replace

from extract.clauses.bench import Bench
from extract.clauses.cleaning import cleaned
from extract.clauses.grammar import PARTICLES
from extract.clauses.things import Thing, is_workable, kind_of, name_of, thing_at
from extract.steps.candidate import Candidate
from extract.steps.complement import complement_end
from extract.steps.naming import name_with_whole
from extract.steps.phrase_words import phrase_words
from extract.steps.shapes.tools import figure_verb, tool_verb

_COATING = frozenset(
    {"grease", "oil", "glue", "paint", "varnish", "shellac", "wax", "solder", "tape", "stain", "apply"}
)
_TWO_OBJECTS = frozenset({"give", "make", "call", "set", "leave", "keep"})
_MEANS_ALL = frozenset({"everything", "each", "both", "all", "one", "ones", "rest", "lot", "others"})
_COUNTED = frozenset({"DT", "PRP$", "CD", "PDT", "POS"})
_PARTICIPLES = frozenset({"worked", "stray", "bare participle", "shown", "passive"})
_GOING_ON = frozenset({"until", "till", "so", "to", "at"})
_NEAR = 1
"""Cues within which a pronoun is put by its noun; farther back it stays as said."""


def instruct(bench: Bench, candidate: Candidate, named: frozenset[str]) -> str:
    """The instruction, "" where none can be made; `named` things are "it" the second time."""
    candidate = _cut_short(bench, candidate)
    start, end = candidate.rest
    thing, meant = candidate.thing, candidate.meant
    if candidate.tool is not None:
        return _with_tool(bench, candidate)
    if candidate.shape in {"reading", "finding"}:
        return f"measure the {name_with_whole(bench, candidate)}".replace(" of ", " of the ") if meant else ""
    if candidate.verb == "measure" and start < end and bench.tag(start) == "CD":
        return _read_off(bench, candidate)
    if candidate.shape == "nominal":
        return join(candidate.said, _object(bench, candidate, named), cleaned(bench, start, end))
    if candidate.fronted is not None:
        return _fronted(bench, candidate)
    if candidate.said == "have" and thing is not None and not thing.pronoun:
        behind = thing.end + (bench.word(thing.end) in bench.words.plain)
        return join(candidate.verb, noun(bench, thing, meant), cleaned(bench, behind, end))
    if thing is None and candidate.verb != candidate.said and candidate.said in {"make", "do"} and meant is not None:
        return join(candidate.verb, f"the {name_of(bench, meant)}", cleaned(bench, start, end))
    if thing is not None and thing.pronoun and start <= thing.start < end:
        said = noun(bench, thing, meant if _may_name(bench, candidate, named) else None)
        return join(candidate.said, cleaned(bench, start, thing.start), said, cleaned(bench, thing.end, end))
    return join(candidate.said, "it" if _is_left_out(bench, candidate) else "", cleaned(bench, start, end))


def _is_left_out(bench: Bench, candidate: Candidate) -> bool:
    """ "wrapped in a cloth", "crimped under a screw": what a participle was done to goes without saying."""
    verb, _, particle = candidate.verb.split(" / ")[0].partition(" ")
    participle = candidate.shape in _PARTICIPLES and bench.tag(candidate.rest[0] - 1) in {"VBN", "VBD"}
    works = bench.words.kind(verb, particle) == "work" and candidate.said not in phrase_words().alone
    return participle and works and candidate.thing is None and candidate.tool is None


def _read_off(bench: Bench, candidate: Candidate) -> str:
    """ "i measure 31 on the reservoir": the figure is what came of it."""
    start, end = candidate.rest
    for at in range(start, end):
        place = thing_at(bench, at + 1, end) if bench.tag(at) == "IN" else None
        if place is not None and not place.pronoun and is_workable(bench, place):
            return f"measure {noun(bench, place, place)}"
    return ""


def plain_instruction(bench: Bench, candidate: Candidate) -> str:
    """Only the verb and the thing, where the words as said do not read: "unscrew the button"; "" without a thing."""
    thing = candidate.thing if candidate.thing is not None and not candidate.thing.pronoun else candidate.meant
    if candidate.tool is not None and tool_verb(bench, candidate.tool) is None:
        return ""
    clear = thing is candidate.thing or (candidate.sure and _is_near(bench, candidate))
    if thing is None or thing.pronoun or not clear or name_of(bench, thing).split()[-1:] == []:
        return ""
    if thing is candidate.thing and candidate.fronted is None and thing.start > candidate.rest[0] + 1:
        return ""
    verb = candidate.verb.split(" / ")[0]
    name = name_of(bench, thing)
    if verb == "do" or set(name.split()) & (phrase_words().nothing | {verb}):
        return ""
    lemma, _, particle = verb.partition(" ")
    return join(lemma, noun(bench, thing, thing), particle)


def join(*parts: str) -> str:
    """The parts that are not empty, with spaces between."""
    return " ".join(part for part in parts if part)


def noun(bench: Bench, thing: Thing, meant: Thing | None) -> str:
    """A noun phrase with its article; a pronoun by what it means."""
    if thing.pronoun:
        if meant is None or bench.word(thing.head) in _MEANS_ALL:
            said = cleaned(bench, thing.start, thing.end)
            return {"she": "it", "he": "it", "they": "them", "her": "it", "him": "it", "em": "them"}.get(said, said)
        return f"the {name_of(bench, meant)}"
    said = cleaned(bench, thing.start, thing.end)
    first, _, behind = said.partition(" ")
    said = join(first.lower(), behind) if bench.tag(thing.start) in _COUNTED else said
    if " of " in said and thing.start != thing.head and {bench.tag(thing.start), bench.tag(thing.head)} == {"NN"}:
        return f"a {said}"  # "piece of paper": the paper has no number, the piece has
    counted = bench.tag(thing.start) in _COUNTED or bench.word(thing.start) in {"each", "everything", "another"}
    return said if counted or kind_of(bench, thing) == "material" else f"the {said}"


def _cut_short(bench: Bench, candidate: Candidate) -> Candidate:
    """The candidate without what no longer belongs to its verb, and without what an instruction can't end on."""
    start, end = candidate.rest
    objects = 1 + (candidate.said in _TWO_OBJECTS)
    if candidate.tool is None and (candidate.fronted is not None or candidate.shape == "nominal"):
        objects -= 1
    thing, words = candidate.thing, phrase_words()
    lets = candidate.said in {"let", "leave", "make"} and thing is not None and start <= thing.start
    if thing is not None and lets and thing.end < end and bench.tag(thing.end) in {"VB", "VBP", "TO", "VBG"}:
        start_of_rest = thing.end + 1 + (bench.tag(thing.end) == "TO")
        cut = complement_end(bench, min(start_of_rest, end), end)
    else:
        cut = complement_end(bench, start, end, objects)
    loose = words.hanging | words.closing
    while cut > start and (bench.word(cut - 1) in loose or bench.doc[cut - 1].is_punct):
        if bench.word(cut - 2) == "or":
            break
        cut -= 1
    if bench.tag(cut) in {"JJR", "RBR"} and bench.words.nouns.get(bench.word(cut - 1)) == "measure":
        cut = max(start, cut - 2)  # "a whisker | wider than the string"
    if thing is not None and start <= thing.start < end:
        cut = max(cut, thing.end)
    return replace(candidate, rest=(start, cut))


def _may_name(bench: Bench, candidate: Candidate, named: frozenset[str]) -> bool:
    meant = candidate.meant
    if not candidate.sure or meant is None or name_of(bench, meant) in named or not _is_near(bench, candidate):
        return False
    return not set(name_of(bench, meant).split()) & phrase_words().nothing


def _is_near(bench: Bench, candidate: Candidate) -> bool:
    meant = candidate.meant
    return meant is not None and bench.cue[candidate.start] - bench.cue[meant.head] <= _NEAR


def _object(bench: Bench, candidate: Candidate, named: frozenset[str]) -> str:
    """ "it" or the thing at hand, for work named by a noun: "give it a quick wipe"."""
    if candidate.thing is not None:
        return ""
    meant = candidate.meant
    return f"the {name_of(bench, meant)}" if meant is not None and _may_name(bench, candidate, named) else "it"


def _fronted(bench: Bench, candidate: Candidate) -> str:
    start, end = candidate.rest
    verb, thing = candidate.said, candidate.fronted
    assert thing is not None  # noqa: S101
    said = noun(bench, thing, candidate.meant if _may_name(bench, candidate, frozenset()) else None)
    if candidate.shape == "headed":
        told = cleaned(bench, *candidate.rest)
        return f"{verb} {said}{'' if told.partition(' ')[0] in _GOING_ON else ':'} {told}"
    if candidate.shape == "listed":
        return f"{verb} {said} to {cleaned(bench, start, end)}"
    if candidate.shape == "goes" and verb == "set":
        verb = figure_verb(bench, start, end) or verb
    lemma, _, particle = verb.partition(" ")
    if particle:
        return join(lemma, said, particle, cleaned(bench, start, end))
    moved = (
        bench.word(start)
        if start < end and bench.word(start) in PARTICLES and candidate.verb.endswith(bench.word(start))
        else ""
    )
    if moved:
        return join(verb, moved, said, cleaned(bench, start + 1, end))
    return join(verb, said, cleaned(bench, start, end))


def _with_tool(bench: Bench, candidate: Candidate) -> str:
    """ "grease in the cups" -> "grease the cups"; "hair dryer on the joint" -> "use the hair dryer on the joint"."""
    tool, (start, end) = candidate.tool, candidate.rest
    assert tool is not None  # noqa: S101
    if (
        not bench.tag(tool.head).startswith("NN")
        or bench.tag(tool.start) in {"IN", "RB"}
        or bench.word(tool.head) == "none"
    ):
        return ""
    clear = candidate.thing is not None or (candidate.sure and _is_near(bench, candidate))
    target = noun(bench, candidate.meant, candidate.meant) if candidate.meant is not None and clear else "it"
    verb = candidate.verb.split(" / ")[0]
    if candidate.shape == "listed":
        figure = cleaned(bench, start, end)
        tools = cleaned(bench, tool.start, tool.end if figure else start)
        return join(verb, target, "with", tools, f"to {figure}" if figure else "")
    through = bench.word(start) in {"through", "inside", "under", "between", "behind"} and candidate.thing is not None
    if through:
        return join("put", noun(bench, tool, tool), cleaned(bench, start, end))
    if candidate.thing is not None and kind_of(bench, candidate.thing) == "tool":
        return join("put", noun(bench, tool, tool), cleaned(bench, start, end))
    same = verb in {bench.word(tool.head), bench.doc[tool.head].lemma_.lower()}
    if same and candidate.thing is not None:
        return join(verb, cleaned(bench, candidate.thing.start, end))
    if same:
        return join(verb, target, cleaned(bench, start, end))
    if candidate.thing is None or candidate.shape == "with tool":
        return join(verb, target, "with", noun(bench, tool, tool), cleaned(bench, start, end))
    known = kind_of(bench, tool) == "tool" or tool_verb(bench, tool) is not None
    material = kind_of(bench, tool) == "material" or verb in _COATING
    if not (known or material) and bench.word(start) not in phrase_words().putting:
        return ""
    return join("use" if known and not material else "put", noun(bench, tool, tool), cleaned(bench, start, end))
