"""Whether a figure was found, is aimed at, was reached or is said in general.

Takes "the action was eleven" (found), "we're after seven" (aimed at), "it's now seven" (reached), "usually about nine"
(general). The habits behind the order of `RULES`: sizes of tools and of parts that go in are aimed at; a reading after
the work is reached, and needs an earlier reading of the same thing or a word that says so; a bare reading was found.
"""

from __future__ import annotations

from collections.abc import Callable

from extract.measures.figure import Figure, Finding
from extract.measures.phase_words import PhaseWords, holds, phase_words
from extract.spans import Phase

Rule = Callable[[Figure, Finding], Phase | None]
_BEING = frozenset({"is", "'s", "are", "'re", "was", "were"})
_BEGUN = 3
"""So many verbs of work before a figure show that the work has begun."""
_NEW_REACH = 60
"""Tokens back in which a thing may have been brought to the job."""
_INDEFINITE = frozenset({"a", "an", "some", "new"})
_LATE = 0.7
_GENERAL_REACH = 14
_RESULT_REACH = 8
_VERDICT_REACH = 14
"""Words behind a figure in which a verdict ("lovely", "I'll take that") is looked for."""


def by_restatement(_: Figure, finding: Finding) -> Phase | None:
    """ "... call it 28 in new money": the phase of what it says again."""
    return finding.restates.phase if finding.restates else None


def by_following(_: Figure, finding: Finding) -> Phase | None:
    """ "5 at the nut and 7 at the twelfth": the phase of the figure it goes on with."""
    return finding.follows.phase if finding.follows else None


def by_rotation(figure: Figure, _: Finding) -> Phase | None:
    """A part of a turn is something to do."""
    return "target" if figure.kind == "rotation" else None


def by_general_words(figure: Figure, _: Finding) -> Phase | None:
    """ "usually about nine", "last month I said nine"."""
    words = phase_words()
    if holds(words.general_before, _sentence_before(figure)) or holds(words.general_behind, _clause_behind(figure)):
        return "general"
    return None


def by_result_words(figure: Figure, finding: Finding) -> Phase | None:
    """ "it's now seven", "ended up at seven"; refuses "now the old bridge was ..."."""
    words = phase_words()
    before = figure.scene.text(max(figure.sentence[0], figure.start - _RESULT_REACH), figure.start)
    if holds(words.past, before) or figure.scene.work_done(figure.start) < _BEGUN and not _measured_before(figure, finding):
        return None
    return "as_left" if holds(words.result_before, before) and not holds(words.target_before, before) else None


def by_verdict(figure: Figure, finding: Finding) -> Phase | None:
    """ "26 seconds, that's proper", where the same thing was measured before."""
    words = phase_words()
    if holds(words.past, _clause_before(figure)) or not _measured_before(figure, finding):
        return None
    return "as_left" if holds(words.verdict, _close_behind(figure)) else None


def by_past(figure: Figure, _: Finding) -> Phase | None:
    """ "the old bridge was three quarters"."""
    return "as_found" if holds(phase_words().past, _clause_before(figure)) else None


def by_target_words(figure: Figure, _: Finding) -> Phase | None:
    """ "we want seven", "till it's flush at 3 mm", "it should be 1/16"."""
    return "target" if holds(phase_words().target_before, _clause_before(figure)) else None


def by_work(figure: Figure, _: Finding) -> Phase | None:
    """A command or a verb of work before the figure in its clause: "thin it to 2.5", "I cut it to 45"."""
    scene = figure.scene
    words: PhaseWords = phase_words()
    start = scene.clause_start[figure.start]
    told_of_it = bool({"it", "she", "they", "that"} & set(scene.words[start : figure.start]))
    for at in range(figure.start - 1, start - 1, -1):
        tag = scene.tags[at]
        if scene.words[at] in _BEING:
            return None
        if tag in ("VB", "VBP", "VBG", "VBN", "VBD") and scene.lemmas[at] in words.work:
            return None if told_of_it and tag == "VBD" else "target"
        if tag == "VB" and at == start:
            return "target"
    return None


def by_thing(figure: Figure, finding: Finding) -> Phase | None:
    """ "a quarter inch driver": the size of a tool or material that is used."""
    if finding.item_rule == "thing behind" and figure.kind != "time":
        things = figure.scene.things_in(figure.end, figure.end + 4)
        if things and things[0].role in ("tool", "material"):
            return "target"
    return None


def by_reading(figure: Figure, finding: Finding) -> Phase | None:
    """ "I get", "it reads", "measures": found."""
    return "as_found" if holds(phase_words().found_before, _clause_before(figure)) else None


def by_kind(figure: Figure, _: Finding) -> Phase | None:
    """Times, temperatures and torques are mostly told as what to do."""
    return "target" if figure.kind in ("time", "temperature", "torque") else None


def by_again(figure: Figure, finding: Finding) -> Phase | None:
    """The same measure of the same thing, read once more after work: reached."""
    words = phase_words()
    for earlier in reversed(figure.earlier):
        if (earlier.attribute, earlier.item_head) == (finding.attribute, finding.item_head) and earlier.phase == "as_found":
            worked = figure.scene.work_done(figure.start) - figure.scene.work_done(earlier.figure.start)
            return "as_left" if worked > 1 and holds(words.present, _clause_before(figure)) else None
    return None


def by_defect(figure: Figure, finding: Finding) -> Phase | None:
    """Play, wear and deviations are found; how it runs at the end of the job is what the work led to."""
    if finding.attribute not in phase_words().defects:
        return None
    late = figure.start > _LATE * len(figure.scene.words) and figure.scene.work_done(figure.start) >= _BEGUN
    return "as_left" if late and finding.attribute in figure.scene.lexicon.whole else "as_found"


def by_meter(figure: Figure, _: Finding) -> Phase | None:
    """Volts, amperes, hertz are read off a meter."""
    return "as_found" if figure.kind in phase_words().metered else None


def by_material(_: Figure, finding: Finding) -> Phase | None:
    """What is used up in the work: "grease, about 20 grams"."""
    return "target" if finding.item_role == "material" else None


def by_new(figure: Figure, finding: Finding) -> Phase | None:
    """A part or material that goes in: "new bridge is five eighths", "I'm using tapes, they're half an inch wide"."""
    scene, words = figure.scene, phase_words()
    for earlier in reversed(figure.earlier):
        if earlier.item_head == finding.item_head and earlier.item_at == finding.item_at >= 0:
            return "target" if earlier.phase_rule == "new" else None
    for thing in scene.things_in(max(0, figure.start - _NEW_REACH), figure.end + 4):
        if thing.head != finding.item_head or not finding.item_head:
            continue
        before = scene.text(max(scene.clause_start[thing.start], thing.start - 6), thing.start)
        if holds(words.new, before) or scene.text(thing.end, thing.end + 2)[1:] == ("new",):
            return "target"
        brought = any(lemma in words.work or lemma in words.bring for lemma in scene.lemmas[max(0, thing.start - 6) : thing.start])
        if brought and before[-1:] and before[-1] in _INDEFINITE | {"of"} and _INDEFINITE & set(before[-4:]):
            return "target"
    return None


def by_copula(figure: Figure, finding: Finding) -> Phase | None:
    """ "the plate's seventy thou thick", said of a part that is there: found."""
    scene = figure.scene
    before = scene.words[max(figure.left[0], figure.start - 3) : figure.start]
    if not {"is", "'s", "are", "'re", "has", "have"} & set(before) or finding.item_role in ("tool", "material"):
        return None
    return "as_found"


def by_progress(figure: Figure, _: Finding) -> Phase | None:
    """A bare size: found while the thing is being looked over, used once the work has begun."""
    return "target" if figure.scene.work_done(figure.start) >= _BEGUN else "as_found"


RULES: tuple[tuple[str, Rule], ...] = (
    ("restated", by_restatement),
    ("following", by_following),
    ("rotation", by_rotation),
    ("general", by_general_words),
    ("result", by_result_words),
    ("verdict", by_verdict),
    ("past", by_past),
    ("target", by_target_words),
    ("thing", by_thing),
    ("work", by_work),
    ("reading", by_reading),
    ("again", by_again),
    ("defect", by_defect),
    ("kind", by_kind),
    ("meter", by_meter),
    ("material", by_material),
    ("new", by_new),
    ("copula", by_copula),
    ("progress", by_progress),
)


def find_phase(figure: Figure, finding: Finding) -> tuple[Phase, str]:
    """The phase and the name of the rule that gave it."""
    for name, rule in RULES:
        phase = rule(figure, finding)
        if phase:
            return phase, name
    raise LookupError("the last rule always answers")


def _clause_before(figure: Figure) -> tuple[str, ...]:
    return figure.scene.text(figure.scene.clause_start[figure.start], figure.start)


def _sentence_before(figure: Figure) -> tuple[str, ...]:
    return figure.scene.text(max(figure.sentence[0], figure.start - _GENERAL_REACH), figure.start)


def _clause_behind(figure: Figure) -> tuple[str, ...]:
    return figure.scene.text(figure.end, figure.right[1])


def _close_behind(figure: Figure) -> tuple[str, ...]:
    scene = figure.scene
    following = scene.quantities[figure.index + 1 : figure.index + 2]
    stop = min(len(scene.words), figure.end + _VERDICT_REACH)
    return scene.text(figure.end, min(stop, following[0].start) if following else stop)


def _measured_before(figure: Figure, finding: Finding) -> bool:
    return any(
        (earlier.attribute, earlier.item_head) == (finding.attribute, finding.item_head)
        and earlier.figure.kind == figure.kind
        for earlier in figure.earlier
    )
