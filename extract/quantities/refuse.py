"""Reasons why a number is no measure, one small rule each, in a visible order."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from extract.numbers.grammar import figure
from extract.quantities.chains import link
from extract.quantities.draft import Draft, Scene
from extract.quantities.knowledge import knowledge
from extract.quantities.unit_phrases import unit_at

Rule = Callable[[Scene, Draft], bool]
_GRIT_RUN = 3
_SPREADING = ("name", "count", "year", "price")


def _in_idiom(scene: Scene, draft: Draft) -> bool:
    """ "one of these", "half the battle", "a million times"."""
    return any(
        start <= draft.start < end and draft.end <= end + (draft.unit is None)
        for start, end in scene.idioms_at(draft.start)
    )


def _by_name(scene: Scene, draft: Draft) -> bool:
    """ "fret 12", "number two", "400 grit", "the 2000 paper"."""
    know = knowledge()
    at = draft.start
    if scene.tape.text(at - 1) in ("the", "a"):
        at -= 1
    if scene.tape.text(at - 1) in ("m", "f") and scene.tape.text(at - 2) != "'" and draft.unit is None:
        return True  # "m five", a metric screw; "f 4.5", an aperture
    if any(phrases.before(scene.tape, at) is not None for phrases in know.before.values()) and draft.unit is None:
        return True
    behind = draft.end + 1 if scene.tape.kind(draft.end) == "dash" else draft.end
    return any(
        phrases.at(scene.tape, behind) is not None
        for name, phrases in know.after.items()
        if name != "multiple" or (draft.unit is None and not _is_sum(scene, behind))
    )


def _is_thread(scene: Scene, draft: Draft) -> bool:
    """ "a 4-40", "1/4-20": a screw thread."""
    if draft.unit is not None:
        return False
    low, high = max(0, draft.start - 2), draft.end + 2
    written = "".join(one.text for one in scene.tape.lexemes[draft.start : draft.end])
    wider = "".join(one.text for one in scene.tape.lexemes[low:high])
    return written in knowledge().threads or any(thread in wider and "/" in thread for thread in knowledge().threads)


def _is_past(scene: Scene, draft: Draft) -> bool:
    """ "150 years old", "thirty years I've been at this", "a month ago"; timber seasoned three years is measured."""
    if draft.unit is None or draft.unit.name not in ("year", "month", "week", "day"):
        return False
    if draft.unit.name == "year":
        return not scene.near(draft, 8) & knowledge().seasoned
    return bool((scene.near(draft, 1) | set(scene.left(draft.start, 2))) & knowledge().past)


def _worked_out(scene: Scene, draft: Draft) -> bool:
    """ "280 to 400, so 7 to 10": two numbers just said stand as these two do."""
    low, high = draft.ends
    said = [value for value in scene.values_before(draft, 3) if value > 0]
    return low > 0 and any(one * high == other * low for one in said for other in said)


def _is_digits(scene: Scene, draft: Draft) -> bool:
    """ "a six two oh six": numbers said one after the other, without a unit, are a part number."""
    if draft.unit is not None or draft.number.low is not None:
        return False
    behind = scene.draft_at(draft.end)
    if behind is not None and scene.cue(behind.start) == scene.cue(draft.start):
        if scene.tape.text(behind.start) == "one":
            return False
        return behind.unit is None and draft.number.form == behind.number.form == "integer"
    before = scene.draft_before(draft)
    joined = before is not None and before.end == draft.start and scene.cue(before.start) == scene.cue(draft.start)
    return bool(before and joined and before.unit is None and before.number.form == draft.number.form == "integer")


def _is_wrap(scene: Scene, draft: Draft) -> bool:
    """ "three turns of thread": how often it goes round, not how far."""
    turns = draft.unit is not None and draft.unit.kind == "rotation"
    return turns and scene.tape.text(draft.end) == "of" and scene.tape.is_noun(draft.end + 1)


def _is_article_name(scene: Scene, draft: Draft) -> bool:
    """ "that's an 11": a thing called by its size, where no unit stands in the sentence."""
    if draft.unit or draft.number.form != "integer" or scene.tape.kind(draft.start - 1) != "article":
        return False
    low, high = scene.sentence_bounds(draft.start)
    digits = ("digits", "decimal", "slash", "vulgar")
    return not any(unit_at(scene.tape, at, scene.tape.kind(at - 1) in digits) for at in range(low, high))


def _is_ratio(scene: Scene, draft: Draft) -> bool:
    """ "3 in 10", "9 out of 10"."""
    tape = scene.tape
    if draft.number.low is not None and draft.unit is None and _worked_out(scene, draft):
        return True
    if draft.unit is not None or draft.number.form != "integer":
        return False
    behind = scene.draft_at(draft.end + 1) if tape.text(draft.end) == "in" else None
    if behind is not None:
        return behind.unit is None and behind.number.form == "integer"
    return tape.text(draft.start - 1) == "in" and tape.kind(draft.start - 2) in ("digits", "ones", "teens")


def _is_sum(scene: Scene, at: int) -> bool:
    """ "425 times 35": a product is worked out, nothing is done 425 times."""
    return figure(scene.tape, at + 1) is not None


def _is_cone(scene: Scene, draft: Draft) -> bool:
    """ "cones oh six, oh five": a pyrometric cone goes by number."""
    lettered = scene.tape.kind(draft.start) == "oh" and draft.unit is None
    return lettered and bool({"cone", "cones"} & set(scene.left(draft.start, 14)))


def _is_price(scene: Scene, draft: Draft) -> bool:
    if scene.tape.text(draft.start - 1) in ("$", "£", "€"):
        return True
    if draft.unit is None:
        return bool(set(scene.left(draft.start, 3)) & knowledge().money)
    return draft.said in ("pound", "pounds", "cent", "cents") and bool(scene.near(draft, 12) & knowledge().money)


def _is_year(scene: Scene, draft: Draft) -> bool:
    """ "1938", "nineteen seventy six"; not "1,600" and not "1600 mm"."""
    know = knowledge()
    value = draft.number.value
    if (
        draft.unit
        or draft.number.decimals
        or value.denominator != 1
        or not know.year["from"] <= value <= know.year["to"]
    ):
        return False
    if "," in scene.tape.text(draft.start):
        return False
    return draft.grouped or scene.tape.text(draft.start - 1) in know.year_before


def _is_one(scene: Scene, draft: Draft) -> bool:
    """The pronoun."""
    return (
        draft.unit is None
        and draft.number.value == 1
        and draft.number.low is None
        and scene.tape.text(draft.start) == "one"
    )


def _is_count(scene: Scene, draft: Draft) -> bool:
    """ "nine spindles", "18 in the tray", "the other two", "there's 24 of them"."""
    if draft.unit or draft.number.form not in ("integer",):
        return False
    know, tape = knowledge(), scene.tape
    if know.counted_before.before(tape, draft.start) is not None:
        return True
    at = draft.end + 1 if tape.kind(draft.end) == "dash" else draft.end
    if know.counted_after.at(tape, at) is not None or tape.text(at) in know.counted_nouns:
        return True
    if know.after["multiple"].at(tape, at) is not None and _is_sum(scene, at):
        return False
    return _heads_plural(scene, at)


def _heads_plural(scene: Scene, at: int) -> bool:
    """True where a plural noun that no unit is stands within two adjectives or nouns behind."""
    for place in range(at, min(at + 3, len(scene.tape))):
        tag = scene.tag(place)
        if tag in ("NNS", "NNPS"):
            return True
        if tag not in ("JJ", "NN", "VBN", "VBG", "NNP", "JJR"):
            return False
    return False


def _is_bare_half(scene: Scene, draft: Draft) -> bool:
    """ "half" alone, without article and unit: "half of it", "cut it in half", "a fish and a half"."""
    if draft.unit is None and scene.tape.text(draft.start - 1) == "and" and scene.tape.is_noun(draft.start - 2):
        return scene.tape.text(draft.end - 1) == "half"
    return draft.unit is None and draft.end == draft.start + 1 and scene.tape.text(draft.start) in ("half", "quarter")


def _is_share(scene: Scene, draft: Draft) -> bool:
    """ "a third of the way", "two thirds": a share of something, not a size."""
    if draft.unit or draft.number.form != "fraction":
        return False
    below = draft.number.denominator or 1
    if below & (below - 1):
        return below not in (10, 100) or not scene.tape.lexemes[draft.end - 1].plural
    return scene.tape.text(draft.end) == "of" and scene.tape.text(draft.end + 1) in (
        "the",
        "it",
        "them",
        "that",
        "this",
        "my",
        "your",
        "its",
        "those",
        "these",
        "what",
    )


RULES: tuple[tuple[str, Rule], ...] = (
    ("idiom", _in_idiom),
    ("name", _by_name),
    ("price", _is_price),
    ("cone", _is_cone),
    ("thread", _is_thread),
    ("past", _is_past),
    ("ratio", _is_ratio),
    ("wrap", _is_wrap),
    ("digits", _is_digits),
    ("called", _is_article_name),
    ("year", _is_year),
    ("pronoun", _is_one),
    ("count", _is_count),
    ("half", _is_bare_half),
    ("share", _is_share),
)


def refused(scene: Scene, draft: Draft) -> str | None:
    """Name of the first rule that makes the number no measure, None where none does."""
    return next((name for name, rule in RULES if rule(scene, draft)), None)


def _named_whole(scene: Scene, draft: Draft) -> Draft:
    """The draft with the word behind that names it: "80 grit"."""
    ends = (phrases.at(scene.tape, draft.end) for phrases in knowledge().after.values())
    end = next((end for end in ends if end is not None), None)
    return draft if end is None or draft.unit else replace(draft, end=end)


def _grit_runs(scene: Scene, drafts: tuple[Draft, ...]) -> set[int]:
    """Places of the numbers of "1000, 4000, 8000": three abrasives or more, each finer, and no unit."""
    found: set[int] = set()
    run: list[int] = []
    for place, draft in enumerate(drafts):
        finer = bool(run) and draft.number.value > drafts[run[-1]].number.value
        if draft.unit or draft.number.value not in knowledge().grits:
            run = []
        elif finer and link(scene, drafts[run[-1]], draft):
            run = [*run, place]
        else:
            run = [place]
        if len(run) >= _GRIT_RUN:
            found |= set(run)
    return found


def refuse_all(scene: Scene, drafts: tuple[Draft, ...]) -> dict[int, str]:
    """Places of the numbers that are no measures, with the rule's name.

    What holds for one number of a list holds for the bare ones joined to it: "pins 2 and 7", "400, 600, then 0000".
    """
    found = {place: name for place, draft in enumerate(drafts) if (name := refused(scene, draft))}
    found |= dict.fromkeys(_grit_runs(scene, drafts), "name")
    for order in (range(1, len(drafts)), range(len(drafts) - 2, -1, -1)):
        for place in order:
            other = place - 1 if order.step == 1 else place + 1
            if place in found or found.get(other) not in _SPREADING or drafts[place].unit:
                continue
            first, second = (_named_whole(scene, drafts[one]) for one in sorted((place, other)))
            if drafts[place].number.form == "integer" and link(scene, first, second):
                found[place] = found[other]
    return found
