"""Numbers that name a thing or its place: "fret 12", "400 grit", "a 4-40", "cones oh six", "a six two oh six".

Refuses to take a figure with a unit for a name: "the 12 mm drill".
"""

from __future__ import annotations

from extract.numbers.grammar import figure
from extract.quantities.chains import link
from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.scene import Scene
from extract.quantities.unit_phrases import unit_at

_PART_OF_LIST = 100
_GRIT_WORDS = frozenset(["grit", "grits", "sandpaper", "abrasive"])
_GRIT_REACH = 8
_LONG_NUMBER, _SERIAL = 100, 1000
_STAMP_REACH = 6
_THREAD_REACH = 2
_LARGEST_PART = 8
_SIDES = ("side", "string", "strings", "end", "bar", "foot", "corner")
_BARE = ("grit", "size", "multiple", "ratio", "clock", "thread")
"""What a figure with a unit is not: "eighty gsm" is a weight, "nine degrees this morning" no time of day."""


def goes_by_name(scene: Scene, draft: Draft) -> bool:
    """ "fret 12", "number two", "400 grit", "the 2000 paper"."""
    know = knowledge()
    at = draft.start
    if scene.tape.text(at - 1) in ("the", "a"):
        at -= 1
    if scene.tape.text(at - 1) in ("m", "f") and scene.tape.text(at - 2) != "'" and draft.unit is None:
        return True  # "m five", a metric screw; "f 4.5", an aperture
    if draft.unit is None and any(
        phrases.before(scene.tape, at) is not None
        for name, phrases in know.before.items()
        if name != "position" or draft.number.form == "integer"
    ):
        return True
    if draft.unit is None and draft.number.value in know.grits and scene.near(draft, _GRIT_REACH) & _GRIT_WORDS:
        return True
    behind = draft.end + 1 if scene.tape.kind(draft.end) == "dash" else draft.end
    return any(
        phrases.at(scene.tape, behind) is not None
        for name, phrases in know.after.items()
        if (name not in _BARE or draft.unit is None) and (name != "multiple" or not is_sum(scene, behind))
    )


def is_stamped(scene: Scene, draft: Draft) -> bool:
    """ "stamped on the back plate, 1187. A serial number": long numbers without a unit."""
    know, tape = knowledge(), scene.tape
    if draft.unit is not None or draft.number.form != "integer" or draft.number.value < _LONG_NUMBER:
        return False
    behind = draft.end + 1 if tape.is_stop(draft.end) else draft.end
    if know.stamped_behind.at(tape, behind) is not None:
        return True
    return draft.number.value >= _SERIAL and bool(set(scene.left(draft.start, _STAMP_REACH)) & know.stamped)


def is_abrasive(scene: Scene, draft: Draft) -> bool:
    """ "a strip of two twenty like polishing a shoe": a grit that is said without the word."""
    know = knowledge()
    if draft.unit is not None or draft.number.value not in know.grits or draft.number.value < know.coarsest:
        return False
    return know.abrasive_before.before(scene.tape, draft.start) is not None


def is_size_by_name(scene: Scene, draft: Draft) -> bool:
    """ "a three-quarter bass", "a half size cello": how large of its kind a thing is."""
    tape, dashed = scene.tape, scene.tape.kind(draft.end) == "dash"
    at = draft.end + dashed
    named = draft.unit is None and draft.number.form == "fraction" and tape.text(at) in knowledge().by_size
    plain = (draft.number.denominator or 1) <= _LARGEST_PART and tape.text(at + 1) not in _SIDES
    return named and plain and (dashed or tape.kind(draft.start - 1) == "article" or tape.kind(draft.start) == "part")


def is_thread_count(scene: Scene, draft: Draft) -> bool:
    """The "twenty to the inch" of "a quarter inch, twenty to the inch": the second half of a thread's name."""
    if draft.unit is None or draft.unit.name != "count / inch":
        return False
    before = scene.draft_before(draft)
    sized = before is not None and before.unit is not None and before.unit.kind == "length"
    return bool(sized and before is not None and draft.start - before.end <= _THREAD_REACH)


def is_sum(scene: Scene, at: int) -> bool:
    """ "425 times 35": a product is worked out, nothing is done 425 times."""
    return figure(scene.tape, at + 1) is not None


def is_cone(scene: Scene, draft: Draft) -> bool:
    """ "cones oh six, oh five": a pyrometric cone goes by number."""
    lettered = scene.tape.kind(draft.start) == "oh" and draft.unit is None
    return lettered and bool({"cone", "cones"} & set(scene.left(draft.start, 14)))


def is_thread(scene: Scene, draft: Draft) -> bool:
    """ "a 4-40", "1/4-20": a screw thread."""
    if draft.unit is not None:
        return False
    if _is_half_of_thread(draft, scene.draft_at(draft.end)):
        return True
    before = scene.draft_before(draft)
    if before is not None and before.end == draft.start and _is_half_of_thread(before, draft):
        return True
    low, high = max(0, draft.start - 2), draft.end + 2
    written = "".join(one.text for one in scene.tape.lexemes[draft.start : draft.end])
    wider = "".join(one.text for one in scene.tape.lexemes[low:high])
    return written in knowledge().threads or any(thread in wider and "/" in thread for thread in knowledge().threads)


def _is_half_of_thread(size: Draft, count: Draft | None) -> bool:
    """True for "three eighths sixteen", a thread by its diameter and its threads per inch."""
    if count is None or size.unit is not None or count.unit is not None or size.number.form != "fraction":
        return False
    return f"{size.number.value}-{count.number.value}" in knowledge().threads


def is_part_number(scene: Scene, draft: Draft) -> bool:
    """ "a six two oh six": numbers said one after the other, without a unit, are a part number."""
    if draft.unit is not None or draft.number.low is not None:
        return False
    behind = scene.draft_at(draft.end)
    if behind is not None and scene.cue(behind.start) == scene.cue(draft.start):
        if scene.tape.text(behind.start) == "one":
            return False
        if _ends_list(scene, behind):
            return False
        return behind.unit is None and draft.number.form == behind.number.form == "integer"
    before = scene.draft_before(draft)
    joined = before is not None and before.end == draft.start and scene.cue(before.start) == scene.cue(draft.start)
    if _ends_list(scene, draft):
        return False
    return bool(before and joined and before.unit is None and before.number.form == draft.number.form == "integer")


def _ends_list(scene: Scene, draft: Draft) -> bool:
    """True for the "five" of "three five and ten", a list."""
    small = draft.number.value < _PART_OF_LIST
    return small and scene.tape.text(draft.end) in ("and", "or") and scene.draft_at(draft.end + 1) is not None


def _is_put_right(scene: Scene, draft: Draft) -> bool:
    """True for the 6 of "the bit's a 6, beg pardon, a 6.5", which is a size."""
    behind = next((one for at in range(1, 8) if (one := scene.draft_at(draft.end + at)) is not None), None)
    joined = link(scene, draft, behind) if behind is not None else None
    return bool(joined and behind and joined.strength == "correction" and behind.number.form == "decimal")


def is_called(scene: Scene, draft: Draft) -> bool:
    """ "that's an 11": a thing called by its size, where no unit stands in the sentence."""
    whole = draft.number.form == "integer" or (draft.grouped and draft.number.form == "decimal")
    if draft.unit or not whole or scene.tape.kind(draft.start - 1) != "article" or _is_put_right(scene, draft):
        return False
    low, high = scene.sentence_bounds(draft.start)
    digits = ("digits", "decimal", "slash", "vulgar")
    return not any(unit_at(scene.tape, at, scene.tape.kind(at - 1) in digits) for at in range(low, high))
