"""The thing that has the measure.

Takes "an 11 inch head", "the pivot is one point four five", "five grams of grease", "it's seventy thou" (carried).
"""

from __future__ import annotations

from collections.abc import Callable

from extract.measures.attribute.near import adjoins
from extract.measures.candidates import LED_BY, anything, goes_on, is_predicate, is_reader, plain, salient
from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.measures.things import Thing

Rule = Callable[[Figure, Finding], Thing | None]
_REACH = 60
"""Tokens looked back for what "it" stands for."""
_LONGEST_CLIMB = 5
_FURTHEST_SUBJECT = 25
_OPENING = 60
"""Tokens in which the thing on the bench is spoken of."""
_WITHOUT_THING = frozenset({"temperature", "time"})
_SET_AT = frozenset({"temperature", "ratio", "rotational speed", "pressure", "frequency", "voltage", None})
_LONG = 400
"""Tokens over which an attribute keeps its item."""


def by_thing_behind(figure: Figure, finding: Finding) -> Thing | None:
    """ "a quarter inch driver"; not the stuff in "the seat's two inches thick pine"."""
    if figure.kind in _WITHOUT_THING:
        return None
    scene, being = figure.scene, knowledge().clause.being
    stated = being & set(figure.scene.words[max(figure.left[0], figure.start - 3) : figure.start])
    if finding.word and stated:
        return None
    told = bool(stated) and any(plain(figure, thing) for thing in figure.things_left())
    for thing in figure.scene.things_in(figure.end, figure.end + 4)[:1]:
        if figure.scene.word(thing.end) == "to" and figure.scene.word(thing.end + 1) == figure.scene.word(thing.start):
            return None  # "corner to corner"
        bare = scene.word(figure.start - 1) in being and scene.words[figure.start] not in ("a", "an")
        if bare and scene.tags[thing.end - 1] == "NN" and not told:
            return None  # "they're 10 mm rod"
        if told and thing.role == "material":
            return None  # "the bar is three eighths steel"
        if adjoins(figure, thing.start) and not (finding.word and thing.start < finding.word.end):
            return thing
    return None


def by_noun_owner(figure: Figure, finding: Finding) -> Thing | None:
    """ "saddle height", "the height of the saddle": the thing tied to the word of measure."""
    noun = finding.noun
    if noun is None:
        return None
    scene = figure.scene
    named = scene.part_within(noun)
    if named:
        return named
    for thing in scene.things_in(noun.start - 4, noun.start)[::-1]:
        if scene.tags[thing.end - 1] == "VBG":
            continue  # "working pressure"
        if thing.end == noun.start or scene.words[thing.end : noun.start] == ("'s",):
            return thing
    for thing in scene.things_in(noun.end, noun.end + 5)[:1]:
        if thing.preposition in ("of", "between", "in", "on") and thing.name not in knowledge().vague:
            return thing
    return None


def by_of_behind(figure: Figure, _: Finding) -> Thing | None:
    """ "five grams of grease"."""
    for thing in figure.scene.things_in(figure.end, figure.end + 4)[:1]:
        if thing.preposition == "of" and figure.scene.word(figure.end) == "of":
            return thing
    return None


def by_restatement(_: Figure, finding: Finding) -> Thing | None:
    """What the figure before it was of."""
    return finding.restates.item if finding.restates else None


def by_following(_: Figure, finding: Finding) -> Thing | None:
    """ "... and 6 on the C": of what the figure before it was."""
    return finding.follows.item if finding.follows else None


def by_grammar(figure: Figure, _: Finding) -> Thing | None:
    """The subject of the verb that the figure depends on, where marks let the parser see past its clause.

    Takes "the pawl, such as it is after all those years, is 3 mm thick"; leaves raw captions to the nearest thing.
    """
    scene = figure.scene
    if not scene.narration.punctuated or any(plain(figure, thing) for thing in figure.things_left()):
        return None
    token = scene.doc[figure.end - 1]
    for _step in range(_LONGEST_CLIMB):
        if token.pos_ in ("VERB", "AUX") or token.head.i == token.i:
            break
        token = token.head
    if token.pos_ not in ("VERB", "AUX"):
        return None
    for child in token.children:
        if (
            child.dep_ in ("nsubj", "nsubjpass")
            and child.i < figure.start
            and figure.start - child.i < _FURTHEST_SUBJECT
        ):
            for thing in scene.things_in(max(0, child.i - 4), child.i + 1):
                if thing.start <= child.i < thing.end and plain(figure, thing) and thing.role != "tool":
                    return thing
    return None


def by_subject(figure: Figure, _: Finding) -> Thing | None:
    """ "the pivot is ...", "thin the top to ...": the nearest thing of the clause that no preposition governs."""
    told = [thing for thing in figure.things_left() if plain(figure, thing)]
    for thing in told:
        if thing.role != "tool" and not (is_predicate(figure, thing) and thing is not told[-1]):
            return thing
    vague = knowledge().vague
    parts = (thing for thing in figure.things_left() if thing.role == "part" and not thing.preposition)
    return next((thing for thing in parts if thing.name not in vague or not goes_on(figure)), None)


def by_setting(figure: Figure, _: Finding) -> Thing | None:
    """ "in a box at 60%", "the oven at 200": the thing right before "at"."""
    if figure.kind not in _SET_AT or figure.scene.word(figure.start - 1) != "at":
        return None
    for thing in figure.things_left()[:1]:
        if thing.end == figure.start - 1 and not is_reader(figure, thing):
            return thing
    return None


def by_place_before(figure: Figure, _: Finding) -> Thing | None:
    """ "on the third wheel it's ..."; only where no "it" points further back."""
    for thing in figure.things_left():
        if (
            thing.preposition
            and thing.preposition not in LED_BY
            and thing.role != "tool"
            and not is_reader(figure, thing)
        ):
            return thing
    return None


def by_place_behind(figure: Figure, finding: Finding) -> Thing | None:
    """ "12 watts in the anode", "took an eighth off the leg"."""
    start, end = figure.right
    if figure.kind == "time":
        return None
    tied = figure.kind == "rotation" or finding.attribute_rule in ("removal", "existence")
    for thing in figure.scene.things_in(start, min(end, start + 7))[:1]:
        if (tied or thing.preposition in ("in", "on", "of", "for")) and thing.name not in knowledge().vague:
            return thing
    return None


def by_tied_place(figure: Figure, finding: Finding) -> Thing | None:
    """ "took an eighth off the leg", "there was an eighth under that leg"."""
    return by_place_behind(figure, finding) if finding.attribute_rule in ("removal", "existence") else None


def by_usual_owner(figure: Figure, finding: Finding) -> Thing | None:
    """ "it's losing four minutes a day": what has an attribute where nobody says it, by the trade's file."""
    owner = figure.scene.lexicon.owners.get(finding.attribute or "")
    if owner == "subject" and figure.kind == "mass" and figure.start > _OPENING:
        return None  # "it weighs" is said of parts as well
    if owner == "subject":
        return figure.scene.subject
    return Thing(figure.start, figure.start, owner, "part") if owner else None


def by_sentence(figure: Figure, _: Finding) -> Thing | None:
    """The nearest thing earlier in the sentence."""
    things = figure.scene.things_in(figure.sentence[0], figure.start)[::-1]
    for wanted in (salient, plain, anything):
        for thing in things:
            if wanted(figure, thing) and thing.role != "tool":
                return thing
    return next((thing for thing in things if plain(figure, thing)), None)


def by_previous(figure: Figure, _: Finding) -> Thing | None:
    """The item of the quantity before, where nothing else was named since."""
    previous = figure.previous
    if previous is None or figure.start - previous.figure.end > _REACH:
        return None
    since = figure.scene.things_in(previous.figure.end, figure.start)
    return None if any(plain(figure, thing) for thing in since) else previous.item


def by_she(figure: Figure, _: Finding) -> Thing | None:
    """ "she came in at nine": the instrument or machine itself."""
    return figure.scene.subject if {"she", "her"} & set(figure.before()) else None


def by_attribute(figure: Figure, finding: Finding) -> Thing | None:
    """The item that the same attribute was last measured of, where no other thing came up since."""
    for earlier in figure.earlier(_LONG):
        if earlier.item and earlier.attribute == finding.attribute and earlier.figure.kind == figure.kind:
            since = figure.scene.things_in(earlier.figure.end, figure.start)
            return None if any(salient(figure, thing) for thing in since) else earlier.item
    return None


def by_topic(figure: Figure, _: Finding) -> Thing | None:
    """What "it" stands for: the last thing that the job is about, a part before a tool."""
    things = figure.scene.things_in(max(0, figure.start - _REACH), figure.start)[::-1]
    for wanted in (salient, lambda _, thing: thing.role in ("part", "subject", "material")):
        for thing in things:
            if wanted(figure, thing) and thing.name not in knowledge().vague:
                return thing
    return None


def by_session(figure: Figure, _: Finding) -> Thing | None:
    """The instrument or machine on the bench."""
    return figure.scene.subject


RULES: tuple[tuple[str, Rule], ...] = (
    ("thing behind", by_thing_behind),
    ("owner of the noun", by_noun_owner),
    ("of behind", by_of_behind),
    ("restated", by_restatement),
    ("tied place", by_tied_place),
    ("following", by_following),
    ("setting", by_setting),
    ("grammar", by_grammar),
    ("subject", by_subject),
    ("usual owner", by_usual_owner),
    ("place before", by_place_before),
    ("place behind", by_place_behind),
    ("she", by_she),
    ("sentence", by_sentence),
    ("attribute", by_attribute),
    ("previous", by_previous),
    ("topic", by_topic),
    ("session", by_session),
)
