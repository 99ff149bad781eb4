"""Attributes that nobody says: by what was measured before, by the thing, by the kind of unit.

Takes "new bridge is five eighths" (a bridge's height), "it's nine" after "the action was eleven".
"""

from __future__ import annotations

from extract.measures.attribute.near import length_in_inches, same_order, usual_measure
from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.units import to_unit

_FAR = 150
"""Tokens over which an attribute is carried."""
_FURTHEST = 600
"""Tokens over which a thing keeps its attribute."""
_LONG_INCHES = 6
_COMPANY = 14
_NEAR = 60
_MOST_PLAY = 0.15
_AGAIN = 5
_STEEPEST = 60
"""Degrees over which a figure near an oven is no angle."""
_LOOK_BEFORE, _LOOK_BEHIND = 12, 8
_ONCE = frozenset({"difference", "cut"})
_TELLING = frozenset({"mass", "force", "pressure", "frequency", "voltage", "power"})
"""Kinds in which few figures come twice by chance."""
_CARRIED = frozenset({"previous", "attribute"})
_GUESSED = frozenset({"sentence", "attribute", "previous", "topic", "session", ""})
"""Rules that guess at an item; a carried attribute brings its own."""


def by_pronoun(figure: Figure, finding: Finding) -> str | None:
    """What the quantity before measured, where its item is still spoken of."""
    previous = figure.previous
    if previous is None or finding.item_rule not in _CARRIED or previous.head != finding.head:
        return None
    return previous.attribute if previous.attribute not in _ONCE and _alike(figure, previous) else None


def by_again(figure: Figure, finding: Finding) -> str | None:
    """ "Check again. 0.05 mm now.": the last measure of the kind, where nothing else is named."""
    scene = figure.scene
    around = set(scene.words[max(0, figure.start - _AGAIN) : figure.end + 2])
    named = scene.things_in(*figure.sentence)
    if not {"again", "now"} & around or named or figure.kind == "time":
        return None
    for earlier in figure.earlier(_NEAR):
        if _alike(figure, earlier) and earlier.attribute not in _ONCE:
            finding.item = earlier.item or finding.item
            return earlier.attribute
    return None


def by_reading(figure: Figure, _: Finding) -> str | None:
    """ "the glass reads 29.8": what is read off, where nothing tells of what."""
    scene = figure.scene
    read = {"read", "say"} & set(scene.lemmas[max(figure.left[0], figure.start - 2) : figure.start])
    return "reading" if read and figure.kind in ("length", None) else None


def by_look(figure: Figure, _: Finding) -> str | None:
    """ "goes down eleven, that's far too deep": a word for its looks in the sentence."""
    scene, known = figure.scene, knowledge()
    if figure.kind != "length":
        return None
    for at in _looked_at(figure):
        if scene.words[at] in known.looks and scene.tags[at][:2] in ("JJ", "RB") and not scene.is_noun(at + 1):
            name = known.looks[scene.words[at]]
            if name == "play" and length_in_inches(figure) > _MOST_PLAY:
                continue  # "the tenon's loose as well: 21.6"
            return name
    return None


def by_company(figure: Figure, finding: Finding) -> str | None:
    """What the words around it make of a figure: "4% methyl cellulose", "kitchen oven at 200"."""
    scene, known = figure.scene, knowledge()
    said = set(scene.words[figure.sentence[0] : figure.sentence[1]])
    name, head = (finding.item.name, finding.head) if finding.item else ("", "")
    if figure.kind == "ratio":
        if scene.word(figure.end) in known.strays:
            return "deviation"
        said |= set(scene.words[max(0, figure.start - _COMPANY) : figure.start])
        if said & known.wet:
            return "moisture content"
        return "concentration" if said & known.solutions or {name, head} & known.solutions else None
    if figure.kind in ("mass", "force"):
        return "tension" if {name, head} & known.pulled else None
    warm = figure.kind is None or (figure.kind == "angle" and figure.quantity.value > _STEEPEST)
    if warm and {name, head, *said} & known.heated:
        return "temperature"
    return None


def by_probe(figure: Figure, _: Finding) -> str | None:
    """ "I slid a feeler under it and got four thou": what goes in measures the gap."""
    scene = figure.scene
    near = set(scene.words[max(figure.sentence[0], figure.start - _LOOK_BEFORE) : figure.end + 4])
    return "gap" if figure.kind == "length" and near & knowledge().probed and length_in_inches(figure) < 0.5 else None


def _looked_at(figure: Figure) -> list[int]:
    """Tokens behind the figure in its sentence, before it in its clause, and "too shallow" in what was said before."""
    scene, previous = figure.scene, figure.previous
    end = min(figure.sentence[1], figure.end + _LOOK_BEHIND)
    if figure.following:
        end = min(end, figure.following.start)
    earliest = max(0, figure.start - _LOOK_BEFORE)
    if previous:
        earliest = max(earliest, previous.figure.end, previous.word.end if previous.word else 0)
    start = max(figure.clause[0], earliest)
    blamed = [at for at in range(start - 1, earliest - 1, -1) if scene.word(at - 1) == "too" or scene.tags[at] == "JJS"]
    return [*range(figure.end, end), *range(figure.start - 1, start - 1, -1), *blamed]


def by_same_item(figure: Figure, finding: Finding) -> str | None:
    """What was last measured, in the same kind, of a thing with the same head noun."""
    for earlier in figure.earlier(_FURTHEST):
        if earlier.head == finding.head and _alike(figure, earlier) and earlier.attribute not in _ONCE:
            return earlier.attribute
    return None


def by_band(figure: Figure, finding: Finding) -> str | None:
    """The attribute whose band for this very thing takes in the figure, the tightest band first."""
    unit = figure.quantity.unit
    if unit is None or finding.item is None:
        return None
    fits = [
        (band.high / band.low, attribute)
        for attribute, band in figure.scene.lexicon.bands_of(finding.item.name, unit.kind)
        if attribute not in knowledge().worked_away
        and 0 < band.low <= to_unit(abs(figure.quantity.value), unit, band.unit) <= band.high
    ]
    return min(fits)[1] if fits else None


def by_usual(figure: Figure, finding: Finding) -> str | None:
    """The usual measure of a thing that the sentence names."""
    if not figure.is_length or finding.item is None or finding.item_rule in ("previous", "topic", "session"):
        return None
    return usual_measure(finding.item.name, figure)


def by_carrying(figure: Figure, finding: Finding) -> str | None:
    """What the last quantity of the same kind and order measured, and of what where the item was a guess."""
    if finding.item_rule == "thing behind":
        return None  # "a five foot stick"
    for earlier in figure.earlier(_FAR):
        if earlier.attribute in knowledge().kept:
            continue
        if _alike(figure, earlier) and earlier.attribute != "size":
            if finding.item_rule in _GUESSED and earlier.item:
                finding.item = earlier.item
            return earlier.attribute
    return None


def by_repetition(figure: Figure, finding: Finding) -> str | None:
    """The very figure that was said before, in its unit: "it's back to 11 ounces"."""
    unit = figure.quantity.unit
    for earlier in figure.earlier(_FURTHEST):
        same = earlier.figure.quantity.value == figure.quantity.value and earlier.figure.quantity.unit == unit
        if same and unit is not None and figure.kind in _TELLING and earlier.attribute:
            if finding.item_rule in _GUESSED and earlier.item:
                finding.item = earlier.item
            return earlier.attribute
    return None


def by_usual_topic(figure: Figure, finding: Finding) -> str | None:
    """The usual measure of the thing that was spoken of before."""
    return usual_measure(finding.item.name, figure) if figure.is_length and finding.item else None


def by_kind(figure: Figure, _: Finding) -> str | None:
    """The kind's own name: voltage, torque; for a length "length" where it is long, else "size"."""
    if length_in_inches(figure) >= _LONG_INCHES:
        return "length"
    return knowledge().kind_default.get(figure.kind or "")


def _runs(figure: Figure, earlier: Finding) -> bool:
    """Minutes a day are no measure of ten minutes in the jar."""
    unit = figure.quantity.unit
    near = figure.start - earlier.figure.end < _NEAR
    if unit and unit.name in ("second", "minute") and earlier.figure.kind == "time" and near:
        return False
    return figure.kind == "time" and figure.scene.lexicon.owners.get(earlier.attribute or "") == "subject"


def _alike(figure: Figure, earlier: Finding) -> bool:
    """True where an earlier figure's attribute may be this one's too: same kind, same order, no slip of the unit."""
    if _runs(figure, earlier):
        return False
    if earlier.attribute is None or figure.kind != earlier.figure.kind or not same_order(figure, earlier):
        return False
    kind = figure.scene.lexicon.kinds.get(earlier.attribute)
    return kind is None or figure.kind is None or knowledge().akin(figure.kind, kind)
