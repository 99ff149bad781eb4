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
_BEGUN = 3
"""So many verbs of work before a figure show that the work has begun."""
_RESULT_REACH = 8
_VERDICT_REACH = 14
"""Words behind a figure in which a verdict ("lovely", "I'll take that") is looked for."""


def by_restatement(_: Figure, finding: Finding) -> Phase | None:
    """ "... call it 28 in new money": the phase of what it says again."""
    return finding.restates.phase if finding.restates else None


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
    if holds(words.past, before):
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
    for at in range(start, figure.start):
        if scene.tags[at] in ("VB", "VBP", "VBD", "VBN", "VBG") and scene.lemmas[at] in words.work:
            return "target"
        if scene.tags[at] == "VB" and at == start:
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
    """Play, wear and deviations are found, unless something above said otherwise."""
    return "as_found" if finding.attribute in phase_words().defects else None


def by_meter(figure: Figure, _: Finding) -> Phase | None:
    """Volts, amperes, hertz are read off a meter."""
    return "as_found" if figure.kind in phase_words().metered else None


def by_progress(figure: Figure, _: Finding) -> Phase | None:
    """A bare size: found while the thing is being looked over, used once the work has begun."""
    return "target" if figure.scene.work_done(figure.start) >= _BEGUN else "as_found"


RULES: tuple[tuple[str, Rule], ...] = (
    ("restated", by_restatement),
    ("rotation", by_rotation),
    ("general", by_general_words),
    ("result", by_result_words),
    ("verdict", by_verdict),
    ("past", by_past),
    ("target", by_target_words),
    ("thing", by_thing),
    ("work", by_work),
    ("reading", by_reading),
    ("kind", by_kind),
    ("again", by_again),
    ("defect", by_defect),
    ("meter", by_meter),
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
    return figure.scene.text(max(figure.sentence[0], figure.start - 25), figure.start)


def _clause_behind(figure: Figure) -> tuple[str, ...]:
    return figure.scene.text(figure.end, figure.right[1])


def _close_behind(figure: Figure) -> tuple[str, ...]:
    scene = figure.scene
    following = scene.quantities[figure.index + 1 : figure.index + 2]
    stop = min(len(scene.words), figure.end + _VERDICT_REACH)
    return scene.text(figure.end, min(stop, following[0].start) if following else stop)


def _measured_before(figure: Figure, finding: Finding) -> bool:
    return any(earlier.attribute == finding.attribute and earlier.figure.kind == figure.kind for earlier in figure.earlier)
