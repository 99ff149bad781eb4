"""Phases that nobody says: by what was measured before, by the thing, by how far the work has come.

Habits of people who tell of their work: sizes of tools and of parts that go in are aimed at; play and wear are found; a
reading after the work is what it led to; a bare size is found while the thing is looked over and used once work began.
"""

from __future__ import annotations

from extract.measures.figure import Figure, Finding
from extract.measures.phase.stretches import measured_before, work_begun
from extract.measures.phase_words import holds, phase_words
from extract.measures.things import Thing
from extract.record import Phase

_TOLD = frozenset({"time", "temperature", "torque"})
_RUNNING_LATE = 0.7
_BARE_LATE = 0.85
"""Shares of the narration behind which a reading is one of the end."""
_NEW_REACH = 60
"""Tokens back in which a thing may have been brought to the job."""
_LEAD = 6
"""Tokens before a thing that tell whether it was brought."""
_INDEFINITE = frozenset({"a", "an", "some", "new"})
_STATES = frozenset({"is", "'s", "are", "'re", "has", "have"})
_NAMED_HERE = frozenset({"thing behind", "of behind", "subject", "owner of the noun", "sentence"})
_FAR = 60
"""Tokens after which a figure no longer goes on with the one before."""
_USED = frozenset({"tool", "material"})


def by_rotation(figure: Figure, finding: Finding) -> Phase | None:
    """A part of a turn, or what is taken off, is something to do."""
    if figure.kind == "rotation" and figure.scene.word(figure.start - 1) in _STATES:
        return None
    return "target" if figure.kind == "rotation" or finding.attribute_rule == "removal" else None


def by_thing(figure: Figure, finding: Finding) -> Phase | None:
    """ "a quarter inch driver": the size of a tool or material that is used."""
    used = finding.item is not None and finding.item.role in _USED
    return "target" if used and finding.item_rule == "thing behind" and figure.kind != "time" else None


def by_again(figure: Figure, finding: Finding) -> Phase | None:
    """The same measure of the same thing, read once more after work: reached."""
    earlier = measured_before(figure, finding)
    if earlier is None or earlier.phase != "as_found" or not holds(phase_words().present, figure.before()):
        return None
    worked = figure.scene.work_done(figure.start) - figure.scene.work_done(earlier.figure.start)
    return "as_left" if worked > 1 else None


def by_defect(figure: Figure, finding: Finding) -> Phase | None:
    """Play, wear and deviations are found; how it runs at the end of the job is what the work led to."""
    if finding.attribute not in phase_words().defects:
        return None
    runs = figure.scene.lexicon.owners.get(finding.attribute or "") == "subject"
    return "as_left" if runs and _is_late(figure, _RUNNING_LATE) else "as_found"


def by_kind(figure: Figure, _: Finding) -> Phase | None:
    """Times, temperatures and torques are mostly told as what to do."""
    return "target" if figure.kind in _TOLD else None


def by_meter(figure: Figure, _: Finding) -> Phase | None:
    """Volts, amperes, hertz are read off a meter."""
    return "as_found" if figure.kind in phase_words().metered else None


def by_material(figure: Figure, finding: Finding) -> Phase | None:
    """What is used up in the work: "grease, about 20 grams"."""
    stated = _STATES & set(figure.scene.words[max(figure.left[0], figure.start - 3) : figure.start])
    named = finding.item_rule in _NAMED_HERE and not (stated and finding.attribute_rule == "adjective behind")
    return "target" if finding.item and finding.item.role == "material" and named else None


def by_new(figure: Figure, finding: Finding) -> Phase | None:
    """A thing that was brought to the job: "new bridge is five eighths", "I'm using tapes, they're half an inch"."""
    for thing in figure.scene.things_in(max(0, figure.start - _NEW_REACH), figure.end + 4):
        if thing.head == finding.head and _is_brought(figure, thing):
            return "target"
    return None


def by_end(figure: Figure, finding: Finding) -> Phase | None:
    """A bare reading near the end of the telling: what the work led to."""
    used = finding.item is not None and finding.item.role in _USED
    if used or not _is_late(figure, _BARE_LATE):
        return None
    return "as_found" if _goes_on_finding(figure) else "as_left"


def by_state(figure: Figure, finding: Finding) -> Phase | None:
    """ "the plate's seventy thou thick": found while things are looked over, worked to once the work has begun."""
    before = figure.scene.words[max(figure.left[0], figure.start - 3) : figure.start]
    used = finding.item is not None and finding.item.role in _USED
    if used or not _STATES & set(before):
        return None
    described = finding.attribute_rule == "adjective behind"
    return "target" if work_begun(figure) and not described and not _goes_on_finding(figure) else "as_found"


def by_progress(figure: Figure, _: Finding) -> Phase | None:
    """A bare size: found while the thing is being looked over, used once the work has begun."""
    return "target" if work_begun(figure) else "as_found"


def _goes_on_finding(figure: Figure) -> bool:
    """True where the figure just before was one that was found."""
    previous = figure.previous
    return previous is not None and previous.phase == "as_found" and figure.start - previous.figure.end < _FAR


def is_at_end(figure: Figure) -> bool:
    """True where a bare reading is one of the end of the job."""
    return _is_late(figure, _BARE_LATE)


def _is_late(figure: Figure, share: float) -> bool:
    return figure.start > share * len(figure.scene) and work_begun(figure)


def _is_brought(figure: Figure, thing: Thing) -> bool:
    """ "a bit of brass shim" behind a verb that brings or works, "new", "spare", "is new"."""
    scene, words = figure.scene, phase_words()
    before = scene.text(max(scene.clauses.start[thing.start], thing.start - _LEAD), thing.start)
    if holds(words.new, before) or scene.text(thing.end, thing.end + 2)[1:] == ("new",):
        return True
    verbs = scene.lemmas[max(0, thing.start - _LEAD) : thing.start]
    some = bool(before) and before[-1] in _INDEFINITE | {"of"} and bool(_INDEFINITE & set(before[-4:]))
    return some and any(verb in words.work or verb in words.bring for verb in verbs)
