"""Phases that words near the figure tell.

Takes "the action was eleven" (found), "we're after seven" (aimed at), "it's now seven" (reached), "usually about nine"
(general); refuses "now the old bridge was ..." for a result.
"""

from __future__ import annotations

from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.measures.phase.implied import is_at_end
from extract.measures.phase.stretches import clause_behind, close_behind, measured_before, sentence_before, work_begun
from extract.measures.phase_words import holds, phase_words
from extract.record import Phase

_RESULT_REACH = 8
"""Tokens before a figure in which a word for a result stands."""
_NOW = 2
_BOUND = 3
"""Words behind a figure in which it is bounded: "3 mm, no more"."""
_CONTRAST = 5
"""Words behind a figure in which what it was or should be is said."""
_SUM_REACH = 6
_SUMS = frozenset({"so", "'s", "makes", "is", "about"})
_TOLD_OF_IT = frozenset({"it", "she", "they", "that"})


def by_restatement(_: Figure, finding: Finding) -> Phase | None:
    """ "... call it 28 in new money": the phase of what it says again."""
    return finding.restates.phase if finding.restates else None


def by_following(figure: Figure, finding: Finding) -> Phase | None:
    """ "5 at the nut and 7 at the twelfth": the phase of the figure it goes on with."""
    ought = phase_words().wish & set(figure.gap())
    return finding.follows.phase if finding.follows and not ought else None


def by_sum(figure: Figure, _: Finding) -> Phase | None:
    """ "I take 4 off, so 64": the phase of what it was reckoned from."""
    previous = figure.previous
    if previous is None or previous.figure.kind != figure.kind:
        return None
    gap = figure.gap()
    reckoned = 0 < len(gap) <= _SUM_REACH and gap[-1] in _SUMS and "so" in gap
    return previous.phase if reckoned else None


def by_general_words(figure: Figure, _: Finding) -> Phase | None:
    """ "usually about nine", "last month I said nine"."""
    words = phase_words()
    said = holds(words.general_before, sentence_before(figure)) or holds(words.general_behind, clause_behind(figure))
    return "general" if said else None


def by_result_words(figure: Figure, finding: Finding) -> Phase | None:
    """ "it's now seven", "ended up at seven"; needs work done, or an earlier reading of the same."""
    words, before = phase_words(), sentence_before(figure, _RESULT_REACH)
    if holds(words.past, before) or words.wish & set(before) or not holds(words.result_before, before):
        return None
    return "as_left" if work_begun(figure) or measured_before(figure, finding) else None


def by_now(figure: Figure, finding: Finding) -> Phase | None:
    """ "it's 42 now": reached; refuses "I want 42 now" and what is only begun with."""
    scene, words = figure.scene, phase_words()
    behind = close_behind(figure)[:_NOW]
    if "now" not in behind or words.wish & set(figure.before()) or holds(words.past, figure.before()):
        return None
    if scene.clauses.start[figure.end] == figure.end < len(scene) and scene.word(figure.end) == "now":
        return None
    verbless = not any(tag[:2] == "VB" for tag in scene.tags[figure.left[0] : figure.start])
    told = verbless or holds(words.present, figure.before()) or holds(words.found_before, figure.before())
    return "as_left" if told and (work_begun(figure) or measured_before(figure, finding)) else None


def by_verdict(figure: Figure, finding: Finding) -> Phase | None:
    """ "26 seconds, that's proper", where the same thing was measured before."""
    words = phase_words()
    if holds(words.past, figure.before()) or not measured_before(figure, finding):
        return None
    return "as_left" if holds(words.verdict, close_behind(figure)) else None


def by_past(figure: Figure, _: Finding) -> Phase | None:
    """ "the old bridge was three quarters"."""
    scene, since = figure.scene, figure.left[0]
    for at in range(figure.start - 1, since - 1, -1):
        commands = scene.word(at + 1) in ("it", "them", "the", "that") or scene.tags[at] == "VB"
        if scene.lemmas[at] in phase_words().work and commands and scene.tags[at] not in ("VBD", "VBN"):
            since = at
            break
    return "as_found" if holds(phase_words().past, scene.text(since, figure.start)) else None


def by_found_behind(figure: Figure, _: Finding) -> Phase | None:
    """ "six seconds before and now 21", "52, and it should be 46"."""
    return "as_found" if holds(phase_words().found_behind, close_behind(figure)[:_CONTRAST]) else None


def by_target_words(figure: Figure, _: Finding) -> Phase | None:
    """ "we want seven", "till it's flush at 3 mm", "it should be 1/16"."""
    words = phase_words()
    bounded = holds(words.target_behind, close_behind(figure)[:_BOUND])
    return "target" if bounded or holds(words.target_before, figure.before()) else None


def by_work(figure: Figure, _: Finding) -> Phase | None:
    """A command or a verb of work before the figure in its clause: "thin it to 2.5", "I cut it to 45"."""
    scene, start = figure.scene, figure.clause[0]
    told_of_it = bool(_TOLD_OF_IT & set(figure.before()))
    for at in range(figure.start - 1, start - 1, -1):
        tag = scene.tags[at]
        if scene.words[at] in knowledge().clause.being or tag == "VBZ":
            return None
        if tag in ("VB", "VBP", "VBG", "VBN", "VBD") and scene.lemmas[at] in phase_words().work:
            told = (tag == "VBD" and told_of_it) or (tag == "VBP" and scene.is_noun(at - 1))
            told = told or (tag == "VBG" and told_of_it and scene.word(at - 1) in knowledge().clause.being)
            told = told or (tag == "VBN" and bool(knowledge().clause.being & set(scene.words[max(start, at - 2) : at])))
            return None if told else "target"
        if at == start and (tag == "VB" or scene.word(at + 1) in ("it", "them")):
            return "target"
    return None


def by_made(figure: Figure, finding: Finding) -> Phase | None:
    """ "0.4 deep, cut on the lathe": work told right behind the figure."""
    scene = figure.scene
    start = finding.word.end if finding.word else figure.end
    for at in range(start, min(start + 2, figure.sentence[1])):
        if scene.tags[at] == "VBN" and scene.lemmas[at] in phase_words().work:
            return "target"
    return None


def by_reading(figure: Figure, _: Finding) -> Phase | None:
    """ "I get", "it reads", "measures": found."""
    if not holds(phase_words().found_before, figure.before()):
        return None
    told_back = "VBD" in figure.scene.tags[figure.left[0] : figure.start]
    return "as_left" if is_at_end(figure) and not told_back else "as_found"
