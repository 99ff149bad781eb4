"""Two figures for the same thing at the same moment of the job, with no correction between.

Takes "we're after 7/64 at the twelfth" and later "remember, we're shooting for 9/64 at the twelfth"; "the left valve's
at 52, the right's at 31" and "it was 42, it's 36 now" pass. Source: consistency within one narration.
"""

from __future__ import annotations

from collections import defaultdict, deque
from collections.abc import Iterator
from fractions import Fraction

from extract.checks.agreement import agreement
from extract.checks.finding import Suspicion
from extract.checks.frames import Frames
from extract.checks.linear import Linear, conversion
from extract.checks.sameness import Alike
from extract.checks.talk import Said, Talk, names_attribute
from extract.roots import root

SOURCE = "the narration itself: one thing, two figures"
_LOOK_BACK = 60
"""Figures of one kind that are looked back on, the latest ones: an hour costs no more a figure than a minute."""
_FAR = Fraction(5, 2)
"""Two sizes further apart than this are of two things, whatever they are called."""
_NEAR, _BEHIND = 12, 6
_FARTHER = Fraction(6)
"""The same where the words say that it was told before."""
_NEVER_ONE = 4
"""Figures this many times apart are no roundings of one another."""
_PHASES = {"as_found": "as found", "target": "aimed at", "as_left": "as left", "general": "as said"}


def find_conflicts(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that differs from what was said of the same thing before, where nothing said before agrees."""
    frames = Frames(talk)
    alike = Alike(talk, frames)
    said: defaultdict[str | None, deque[Said]] = defaultdict(lambda: deque(maxlen=_LOOK_BACK))
    for one in talk.said:
        if not is_statement(one):
            continue
        earlier = tuple(said[one.measure.kind])
        said[one.measure.kind].append(one)
        for rule in (alike.recalled, alike.aimed_again, alike.said_again, alike.sized_again, alike.told_otherwise):
            same = _closest(alike, [other for other in earlier if rule(other, one)], one)
            if same and rule == alike.told_otherwise and any(agree(other, one) for other in earlier):
                break
            if same:
                far = _FARTHER if alike.recalls_firmly(one) else _FAR
                if not any(agree(other, one) for other in same) and is_near(same[-1], one, far):
                    yield _suspect(same[-1], one, frames, rule == alike.recalled)
                break


def _closest(alike: Alike, found: list[Said], one: Said) -> list[Said]:
    """Those of the earlier figures that share most of their words with this one."""
    kinship = {other.place: alike.kinship(other, one) for other in found}
    most = max(kinship.values(), default=0)
    return [other for other in found if kinship[other.place] == most]


def is_statement(one: Said) -> bool:
    """A figure of a thing itself: no bound, tolerance, difference or restatement."""
    measure = one.measure
    bound = measure.limit or measure.tolerance or measure.same_as or measure.difference
    return measure.unit is not None and not bound and one.figure.value > 0


def agree(first: Said, second: Said) -> bool:
    """A figure said as one of a range, or within it, agrees too."""
    convert = conversion(first.measure.unit or "", second.measure.unit or "")
    if convert is None or _is_far_off(first, second, convert):
        return False
    if any(agreement(a, b, convert) != "disagrees" for a in first.figures for b in second.figures):
        return True
    ends, others = [convert(one.value) for one in first.figures], [one.value for one in second.figures]
    return min(ends) <= max(others) and min(others) <= max(ends)


def _is_far_off(first: Said, second: Said, convert: Linear) -> bool:
    """No rounding bridges this: a glance that spares the exact rule most pairs, blind at and below zero."""
    ends = [float(one.value) * float(convert.factor) for one in first.figures]
    others = [float(one.value) for one in second.figures]
    if convert.offset or min(*ends, *others) <= 0:
        return False
    return min(ends) > _NEVER_ONE * max(others) or min(others) > _NEVER_ONE * max(ends)


def is_near(first: Said, second: Said, far: Fraction) -> bool:
    """Less than so many times apart."""
    convert = conversion(first.measure.unit or "", second.measure.unit or "")
    if convert is None or not (exact := convert(first.figure.value)):
        return False
    return 1 / far < second.figure.value / exact < far


def _as_spoken(attribute: str | None, first: Said, second: Said, frames: Frames) -> str | None:
    """The attribute where the words say it; for a length that the record only supposes, the thing that both name."""
    if second.measure.kind != "length":
        return attribute
    near = [word.removesuffix("'s") for one in (first, second) for word in (*one.before[-_NEAR:], *one.after[:_BEHIND])]
    if attribute is None or names_attribute(near, attribute):
        return attribute
    things = frames.named(first).things & frames.named(second).things
    return next((word for word in near if root(word) in things), attribute)


def _suspect(first: Said, second: Said, frames: Frames, recalled: bool) -> Suspicion:
    one, other = first.measure, second.measure
    shared = frames.named(first).attributes & frames.named(second).attributes
    attribute = next((name for name in (other.attribute, one.attribute) if name in shared), None) or min(
        shared, default=None
    )
    if attribute in (one.kind, None):
        attribute = other.attribute or one.attribute
    if recalled:
        attribute = _as_spoken(attribute, first, second, frames)
        what = f"the {attribute}" if attribute else "it"
        message = f"{what} was {one.display} as found, and is recalled here as {other.display}"
    else:
        where = f" ({other.where})" if other.where else ""
        of = f" of the {other.item}" if other.item and other.item == one.item else ""
        what = f"the {attribute or 'figure'}{of}{where}"
        phase = _PHASES[frames.frame(second)]
        message = f"{what}, {phase}, is {one.display} at first and {other.display} here, with no correction between"
    return Suspicion("conflict", "stop", (one, other), message, SOURCE)
