"""Statements taken back.

Each rule is a pure function of a `Scene`, in a module of its own; `RULES` is the ordered table of them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from spacy.tokens import Doc

from extract.corrections.asked_again import find_asked_again
from extract.corrections.contrast import find_contrasts
from extract.corrections.earlier_session import find_retractions
from extract.corrections.pointed_back import find_pointed_back
from extract.corrections.put_right import find_put_right
from extract.corrections.recount import find_recounts
from extract.corrections.refused import find_refused
from extract.corrections.said_before import find_said_before
from extract.corrections.scene import Draft, Scene
from extract.corrections.slip_of_figure import find_figure_slips
from extract.corrections.slip_of_unit import find_unit_slips
from extract.corrections.slip_of_words import find_word_slips
from extract.corrections.swapped import find_swapped
from extract.corrections.told_otherwise import find_told_otherwise
from extract.corrections.withdrawn import find_withdrawn
from extract.ids import Mint
from extract.spans import Measured, Takeback
from extract.trade import Trade

__all__ = ["RULES", "find_corrections"]

Rule = Callable[[Scene], Iterable[Draft]]

RULES: tuple[tuple[str, Rule], ...] = (
    ("earlier session", find_retractions),
    ("said before", find_said_before),
    ("recount", find_recounts),
    ("pointed back", find_pointed_back),
    ("slip of figure", find_figure_slips),
    ("slip of unit", find_unit_slips),
    ("put right", find_put_right),
    ("withdrawn", find_withdrawn),
    ("contrast", find_contrasts),
    ("slip of words", find_word_slips),
    ("swapped", find_swapped),
    ("told otherwise", find_told_otherwise),
    ("asked again", find_asked_again),
    ("refused", find_refused),
)
"""In order: what one rule has taken, no later one takes again."""


def find_corrections(
    doc: Doc,
    measures: tuple[Measured, ...],
    trade: Trade,  # noqa: ARG001, every stage is given the trade; ways of taking back are the same in all
    rules: tuple[tuple[str, Rule], ...] = RULES,
) -> tuple[Takeback, ...]:
    """Slips, later corrections and retractions of earlier sessions, in order. Linear in the number of tokens."""
    scene = Scene(doc, measures)
    taken: set[int] = set()
    drafts: list[Draft] = []
    for _, rule in rules:
        for draft in rule(scene):
            span = range(draft.begin, draft.end)
            if taken.isdisjoint(span):
                taken.update(span)
                drafts.append(draft)
    drafts.sort(key=lambda draft: draft.begin)
    mint = Mint()
    return tuple(_takeback(scene, draft, mint) for draft in drafts)


def _takeback(scene: Scene, draft: Draft, mint: Mint) -> Takeback:
    withdrawn, replacement = scene.text(*draft.withdrawn), scene.text(*draft.holds)
    earlier = draft.scope == "earlier_session" or draft.said_again
    return Takeback(
        id=mint.mint("c", withdrawn, scene.text(draft.begin, draft.end)),
        start=scene.pieces[draft.begin].start,
        end=scene.pieces[draft.end - 1].end,
        scope=draft.scope,
        withdrawn_text=withdrawn,
        withdrawn_cue=None if earlier else scene.pieces[draft.withdrawn[0]].cue,
        replacement=replacement,
        withdrawn_measures=tuple(dict.fromkeys(one.id for one in draft.gone)),
        replacement_measure=draft.kept.id if draft.kept else None,
        replacement_value=draft.gone[0].quantity.value if draft.unit else None,
        replacement_unit=draft.unit,
    )
