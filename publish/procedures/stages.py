"""The steps of a procedure over all versions, and in which words each is done: the most usual first.

Two versions have the same words where they differ in figures alone: "Heat it to 150 °F" and "Heat it to 160 °F".
"""

from __future__ import annotations

from collections.abc import Sequence

from publish.context import Link
from publish.context.procedures import Place, StageOver, Variant
from publish.procedures.measured import of_step
from publish.procedures.procedure import Doing, Procedure, Stage
from publish.procedures.telling import titled
from publish.procedures.things import words_of
from publish.wording import count, sentence

_MOST = 3
"""Ways of saying a step that stand on a page that tells many versions briefly."""


def stage_over(one: Procedure, stage: Stage, number: int) -> StageOver:
    """A step over all versions."""
    versions = len(one.versions)
    every = stage.versions == versions
    share = ("" if versions == 1 else f"in all {versions}") if every else f"in {stage.versions} of {versions}"
    owned = [(one.versions[doing.version].work, told) for doing in stage.doings for told in doing.told]
    anchor, ways = f"step-{number}", _ways(stage.doings)
    shown = ways[:_MOST] if one.many else ways
    left = len(ways) - len(shown)
    return StageOver(
        anchor=anchor,
        number=number,
        text=sentence(stage.typical.deed.text),
        share=share,
        every=every,
        variants=tuple(_variant(one, of) for of in shown),
        more=f"{count(left, 'other way', 'other ways')} of saying it" if left else "",
        figures=of_step(owned, anchor, briefly=one.many),
    )


def _ways(doings: Sequence[Doing]) -> list[list[Doing]]:
    """Doings in the same words, the most usual first, of equals the oldest."""
    found: dict[tuple[object, ...], list[Doing]] = {}
    for doing in doings:
        found.setdefault((words_of(doing.deed.text), _note(doing)), []).append(doing)
    return sorted(found.values(), key=lambda of: -len(of))


def _variant(one: Procedure, of: Sequence[Doing]) -> Variant:
    places = tuple(
        Place(Link(f"{work.href}#{doing.step.anchor}", titled(work)), doing.step.moment)
        for doing in (of[-1:] if one.many else of)
        for work in (one.versions[doing.version].work,)
    )
    times = f"in {len({doing.version for doing in of})}" if len(places) < len(of) else ""
    return Variant(text=sentence(of[-1].deed.text), times=times, at=places, note=_note(of[0]))


def _note(doing: Doing) -> str:
    return ", ".join(note for note in ("in another order" if doing.moved else "", doing.step.mode) if note)
