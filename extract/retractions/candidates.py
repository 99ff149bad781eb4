"""Statements of earlier sessions that a retraction may mean, the likeliest first, each with what speaks for it.

A figure said several times of one thing is one candidate, since all of them fall together, and so do those that say it
again in another unit. What is taken back already, or struck, is none.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from extract.record import Measure, Record, Step
from extract.retractions.claim import Claim, same_figure
from extract.retractions.knowledge import knowledge, telling
from extract.retractions.sitting import Sitting
from extract.rulings.items import item_of_measure, item_of_step
from extract.rulings.model import Item

_SHOWN_WORDS = 4


@dataclass(frozen=True, slots=True)
class Candidate:
    """A statement that may be meant."""

    session: str
    """Folder of its session."""
    title: str
    date: str | None
    item: Item
    """The measure or step."""
    told: str
    """What it says: "temperature, blanket: 180 °F"."""
    end: float
    """Second at which it ends."""
    also: tuple[Item, ...]
    """The same figure said again in that session."""
    score: int
    reasons: tuple[str, ...]
    """What speaks for it, the strongest first."""
    exact: bool
    """The same figure, of a thing that the talk names too, on the same instrument."""


def candidates(claim: Claim, here: Sitting, earlier: Sequence[tuple[Sitting, Record]]) -> tuple[Candidate, ...]:
    """The candidates among earlier sessions, each with its record as its own rulings have it, oldest first."""
    bounds = knowledge().bounds
    of_work = [sitting.slug for sitting, _ in earlier if here.subject and sitting.subject == here.subject]
    found = [
        one
        for sitting, record in earlier
        for one in _of_session(claim, sitting, record, _session_signs(claim, sitting, of_work))
        if one.score >= bounds["fewest"]
    ]
    days = {sitting.slug: at for at, (sitting, _) in enumerate(earlier)}
    found.sort(key=lambda one: (-one.score, -days[one.session], one.item.start))
    return tuple(found[: bounds["most"]])


Signs = list[tuple[int, str]]
"""Weights, each with its reason in words."""


def _session_signs(claim: Claim, there: Sitting, of_work: list[str]) -> Signs:
    weights = knowledge().weights
    signs: Signs = []
    if there.slug in of_work:
        signs.append((weights["instrument"], "the same instrument"))
        if claim.named and there.slug == of_work[0 if claim.named == "first" else -1]:
            signs.append((weights["film"], f"the {claim.named} film of it is named"))
        elif not claim.named and there.slug == of_work[-1]:
            signs.append((weights["before"], "the session of it just before"))
    elif called := sorted(claim.around & telling(there.record.session.title, there.record.session.subject)):
        signs.append((weights["film"], f"the session is named: {', '.join(called[:_SHOWN_WORDS])}"))
    return signs


def _of_session(claim: Claim, there: Sitting, record: Record, shared: Signs) -> Iterator[Candidate]:
    of_work = any(weight == knowledge().weights["instrument"] for weight, _ in shared)
    if claim.kind is None:
        yield from (
            _made(there, item_of_step(step), step.text, step.end, (), [*shared, *signs], exact=False)
            for step in record.steps
            if (signs := _step_signs(claim, step))
        )
        return
    standing = {one.id for one in record.measures if one.stands}
    own = (one for one in record.measures if one.id in standing and one.same_as not in standing)
    for same in _said_alike(one for one in own if one.kind == claim.kind):
        first = same[0]
        signs, names = _measure_signs(claim, first)
        figure = claim.wrong is not None and same_figure(claim.wrong, first)
        if not (figure or names):
            continue
        of = ", ".join(part for part in (first.attribute, first.item, first.where) if part)
        told = f"{of}: {first.display}" if of else first.display
        also = tuple(item_of_measure(one) for one in same[1:])
        exact = of_work and figure and names
        yield _made(there, item_of_measure(first), told, first.end, also, [*signs, *shared], exact=exact)


def _made(
    there: Sitting, item: Item, told: str, end: float, also: tuple[Item, ...], signs: Signs, *, exact: bool
) -> Candidate:
    ordered = sorted(signs, key=lambda one: -one[0])
    facts = there.record.session
    score = sum(weight for weight, _ in ordered)
    return Candidate(
        there.slug, facts.title, facts.date, item, told, end, also, score, tuple(why for _, why in ordered), exact
    )


def _said_alike(measures: Iterable[Measure]) -> Iterator[list[Measure]]:
    """Measures that say one figure of one thing, together."""
    groups: dict[tuple[object, ...], list[Measure]] = {}
    for one in measures:
        key = (one.attribute, one.item, one.where, one.phase, one.value, one.low, one.high, one.unit, one.difference)
        groups.setdefault(key, []).append(one)
    yield from groups.values()


def _measure_signs(claim: Claim, one: Measure) -> tuple[Signs, bool]:
    """What speaks for a measure by itself, and whether the talk names what it measures."""
    weights, bounds = knowledge().weights, knowledge().bounds
    signs: Signs = []
    said = [two for two in (claim.wrong, claim.right) if two is not None]
    for name in ("attribute", "item", "where"):
        own = getattr(one, name)
        if own and any(getattr(two, name) == own for two in said):
            signs.append((weights[name], f"the same {_CALLED[name]}: {own}"))
    words = sorted(claim.words & telling(one.attribute, one.item, one.where))[: bounds["most_words"]]
    if words:
        signs.append((weights["word"] * len(words), f"named in the words: {', '.join(words)}"))
    named = bool(signs) and not _other_thing(claim, one)
    if claim.wrong is not None and same_figure(claim.wrong, one):
        signs.append((weights["figure"], f"the same figure: {one.display}"))
    return signs, named


_CALLED = {"attribute": "measure", "item": "thing", "where": "place"}


def _other_thing(claim: Claim, one: Measure) -> bool:
    """Both name a thing, and no word of the one is in what the talk says: the bolt's torque is not the crank's."""
    wrong = claim.wrong
    if wrong is None or not wrong.item or not one.item or wrong.item == one.item:
        return False
    return not telling(one.item) & claim.words


def _step_signs(claim: Claim, step: Step) -> Signs:
    weights, bounds = knowledge().weights, knowledge().bounds
    words = sorted(claim.words & telling(step.text, step.quote))
    if len(words) < bounds["words_of_step"]:
        return []
    worth = weights["word"] * min(len(words), bounds["most_words"])
    return [(worth, f"the same words: {', '.join(words[:_SHOWN_WORDS])}")]
