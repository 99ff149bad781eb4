"""What speaks for and against a later figure telling an earlier one again; data/conflict_weights.toml weighs it.

A figure is told again the surer the plainer its words recall ("like I said", "it came in at", "that seventeen foot we
dipped"), and it means that earlier one with which it shares most that few others have, said of the same moment of the
job and in the same form. Common usage of spoken English; no source.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from math import log1p

from extract.checks.frames import Frames, is_now, own_statement
from extract.checks.said_in import holding, words_for
from extract.checks.talk import Said, Talk, words_of
from extract.checks.twice.kinship import Kinship
from extract.checks.twice.sides import Sides
from extract.checks.twice.values import is_statement, signs_of_values
from extract.roots import root

Signs = dict[str, float]
_TABLE = "twice"
_NEAR, _AROUND, _BEHIND, _OWN, _PAST, _WHEN = 12, 8, 8, 8, 5, 7
_MOST, _MOST_WIDE = 8.0, 6.0
"""Nats beyond which figures grow no more akin."""
_LONGEST = 4
_THAT = frozenset({"that", "those", "these"})


class Scene:
    """The figures of one talk, with what each tells by itself kept: each is set beside many."""

    def __init__(self, talk: Talk) -> None:
        self.talk = talk
        self.frames = Frames(talk)
        self.kinship = Kinship(talk, [one for one in talk.said if is_statement(one)])
        self._sides = Sides(talk)
        self._own: dict[int, Signs] = {}

    def are_two(self, first: Said, second: Said) -> bool:
        """Told apart for sure: left and right, wide and long, found and left or aimed at, wished for and found."""
        if self._sides.differ(first, second) or self.kinship.are_apart(first, second):
            return True
        worked = self.frames.frame(first) == "as_found" and self.frames.frame(second) in ("target", "as_left")
        if worked and not self._own_signs(second).keys() & _TELLING:
            return True
        if self.frames.frame(first) == "as_found" and _is_worked_towards(second):
            return True
        if _holds(second.before[-_NEAR:], "puts_right"):
            return True
        aimed = self.frames.says_aimed(first) or holding("against", "written").search(" ".join(first.before[-_NEAR:]))
        return bool(aimed) and self.frames.says_found(second)

    def signs(self, first: Said, second: Said, earlier: int) -> Signs:
        """All that speaks for or against a pair; `earlier` figures might be the first one."""
        own = self._own_signs(second)
        told = bool(own.keys() & _TELLING)
        signs = {**own, **self._of_both(first, second), **signs_of_values(first, second)}
        shared = self.kinship.shared(first, second)
        signs |= {"near": min(shared.near, _MOST), "far_words": min(shared.far, _MOST_WIDE)}
        if told:
            signs |= {"near_told": signs["near"], "wide_told": min(shared.wide, _MOST_WIDE)}
        signs |= {"gap": log1p(second.measure.cue - first.measure.cue), "kinds": log1p(earlier)}
        if not told:
            signs["untold"] = 1.0
            if "same_frame" not in signs:
                signs["moved_on"] = 1.0
        return signs

    def _own_signs(self, one: Said) -> Signs:
        """What the words about the later figure say by themselves."""
        if one.place not in self._own:
            before, behind, own = one.before[-_NEAR:], one.after[:_BEHIND], one.clause[-_OWN:]
            if is_now(one):
                before, own = own_statement(before), own_statement(own)
            found = {
                "recalls": (_holds(before, "recalls") or _holds(behind, "recalls")) and not _is_compared(one),
                "came": _holds(own, "came") or _holds(behind, "came"),
                "says_found": self.frames.says_found(one),
                "recaps": _holds(before, "recapping"),
                "old": bool(words_for(_TABLE, "old") & {*own, *one.after[:3]}),
                "past": bool(words_for(_TABLE, "past") & {*one.clause[-_PAST:]} and not _is_doing(one)),
                "points": bool(_THAT & {*one.before[-1:]}),
                "when_before": _is_dated(before),
                "when_behind": _is_dated(one.after[:_WHEN]),
                "clause_behind": bool(words_for(_TABLE, "persons") & {*one.after[:1]}),
                "aimed": self.frames.says_aimed(one),
                "wanted": _is_wanted(one),
                "unsaid": not one.measure.unit_said,
                "hedged": one.measure.hedged,
            }
            self._own[one.place] = {name: 1.0 for name, holds in found.items() if holds}
        return self._own[one.place]

    def _of_both(self, first: Said, second: Said) -> Signs:
        one, other = first.measure, second.measure
        before, after = self.frames.frame(first), self.frames.frame(second)
        here, there = _item(one.item or ""), _item(other.item or "")
        found = {
            "same_frame": before == after,
            "both_target": before == after == "target",
            "found_of_other": after == "as_found" != before,
            "target_then_found": before == "target" and after == "as_found",
            "then_left": before != "as_left" == after,
            "attribute": bool(one.attribute) and one.attribute == other.attribute,
            "other_attribute": bool(one.attribute and other.attribute) and one.attribute != other.attribute,
            "item": bool(here) and here == there,
            "item_part": here != there and bool(here & there) and (here <= there or there <= here),
            "item_of_kind": bool(here & there and here - there and there - here),
            "other_item": bool(here and there) and not here & there,
            "where": bool(one.where) and one.where == other.where,
            "other_where": bool(one.where and other.where) and one.where != other.where,
            "other_unit": one.kind == other.kind and one.unit != other.unit,
            "other_kind": one.kind != other.kind,
            "difference": one.difference != other.difference,
            "new": _is_new(second) and not _is_new(first),
            "wanted_first": _is_wanted(first),
        }
        return {name: 1.0 for name, holds in found.items() if holds}


_TELLING = frozenset({"recalls", "came", "says_found", "recaps", "old", "past", "points", "when_before", "when_behind"})
"""Signs by which a figure is told again at all."""


def _holds(words: tuple[str, ...], name: str) -> bool:
    phrases = _phrases(name)
    return any(words[at : at + length] in phrases for at in range(len(words)) for length in range(1, _LONGEST + 1))


@cache
def _phrases(name: str) -> frozenset[tuple[str, ...]]:
    return frozenset(tuple(phrase.split()) for phrase in words_for(_TABLE, name))


def _is_dated(words: tuple[str, ...]) -> bool:
    """ "When I put the gauge on", "as I measured it", "before we started"."""
    when, persons = words_for(_TABLE, "when"), words_for(_TABLE, "persons")
    return any(one in when and other in persons for one, other in pairwise(words))


def _is_doing(one: Said) -> bool:
    """ "It was 0.6 and I brought it down to 0.4" tells of what is being done, not of what was told."""
    return bool(words_for(_TABLE, "doing") & {*one.after})


def _is_compared(one: Said) -> bool:
    """ "Inside what I said": held against what was told, not told again."""
    return _holds((*one.before[-_NEAR:], *one.after[:_BEHIND]), "comparing")


def _is_worked_towards(one: Said) -> bool:
    """ "I'm shooting for 3/32", "it'll be 3/32 when we get done"."""
    return _holds(one.clause[-_NEAR:], "aims") or _holds(one.after[:_BEHIND], "when_done")


def _is_wanted(one: Said) -> bool:
    return bool(words_for(_TABLE, "wanted") & {*one.clause[-_OWN + 2 :]})


def _is_new(one: Said) -> bool:
    return bool(words_for(_TABLE, "new") & {*one.before[-_AROUND:], *one.after[:4]})


@cache
def _item(name: str) -> frozenset[str]:
    return frozenset(root(word) for word in words_of(name))
