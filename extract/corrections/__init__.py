"""Statements taken back.

Each rule is a pure function of a `Scene`, in a module of its own; `RULES` is the ordered table of them.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterable
from dataclasses import replace
from fractions import Fraction

from spacy.tokens import Doc

from extract.corrections.asked_again import find_asked_again
from extract.corrections.changed_mind import find_changed_minds
from extract.corrections.contrast import find_contrasts
from extract.corrections.denied import find_denied
from extract.corrections.dropped import find_dropped
from extract.corrections.earlier_session import find_retractions, find_sessions
from extract.corrections.echoed_figure import find_echoed_figures
from extract.corrections.elsewhere import find_elsewhere
from extract.corrections.far_denied import find_far_denied
from extract.corrections.judged import find_judged
from extract.corrections.measured_again import find_measured_again
from extract.corrections.named_anew import find_named_anew
from extract.corrections.parallel import find_parallels
from extract.corrections.pointed_back import find_pointed_back
from extract.corrections.put_right import find_put_right
from extract.corrections.recalled import find_recalled
from extract.corrections.recount import find_recounts
from extract.corrections.refused import find_refused
from extract.corrections.renamed import find_renamed
from extract.corrections.restated import find_restated
from extract.corrections.said_before import find_said_before
from extract.corrections.scene import Draft, Scene
from extract.corrections.sides import find_sides
from extract.corrections.signalled import find_signalled
from extract.corrections.slip_of_figure import find_figure_slips
from extract.corrections.slip_of_unit import find_unit_slips
from extract.corrections.slip_of_words import find_word_slips
from extract.corrections.struck_out import find_struck_out
from extract.corrections.swapped import find_swapped
from extract.corrections.told_otherwise import find_told_otherwise
from extract.corrections.told_then import find_told_then
from extract.corrections.weighed import find_weighed_returns, find_weighed_slips, find_weighed_statements
from extract.corrections.withdrawn import find_withdrawn
from extract.ids import Mint
from extract.spans import Measured, Takeback
from extract.trade import Trade

__all__ = ["RULES", "find_corrections"]

_BESIDE, _BEHIND = 12, 5
"""Words before and behind a quoted statement among which an earlier session is named."""

Rule = Callable[[Scene], Iterable[Draft]]

RULES: tuple[tuple[str, Rule], ...] = (
    ("earlier session", find_retractions),
    ("recalled", find_recalled),
    ("said before", find_said_before),
    ("recount", find_recounts),
    ("pointed back", find_pointed_back),
    ("judged", find_judged),
    ("sides", find_sides),
    ("elsewhere", find_elsewhere),
    ("slip of figure", find_figure_slips),
    ("slip of unit", find_unit_slips),
    ("put right", find_put_right),
    ("withdrawn", find_withdrawn),
    ("contrast", find_contrasts),
    ("far denied", find_far_denied),
    ("signalled", find_signalled),
    ("echoed figure", find_echoed_figures),
    ("struck out", find_struck_out),
    ("denied", find_denied),
    ("changed mind", find_changed_minds),
    ("dropped", find_dropped),
    ("measured again", find_measured_again),
    ("named anew", find_named_anew),
    ("weighed slip", find_weighed_slips),
    ("weighed return", find_weighed_returns),
    ("slip of words", find_word_slips),
    ("swapped", find_swapped),
    ("told otherwise", find_told_otherwise),
    ("asked again", find_asked_again),
    ("renamed", find_renamed),
    ("told then", find_told_then),
    ("weighed statement", find_weighed_statements),
    ("restated", find_restated),
    ("parallel", find_parallels),
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
    sessions = [begin for begin, _ in find_sessions(scene)]
    for _, rule in rules:
        for found in rule(scene):
            draft = _scoped(found, sessions)
            span = range(draft.begin, draft.end)
            if taken.isdisjoint(span) and draft.holds[0] < draft.holds[1] and not _says_the_same(scene, draft):
                taken.update(span)
                drafts.append(draft)
    drafts.sort(key=lambda draft: draft.begin)
    mint = Mint()
    return tuple(_takeback(scene, draft, mint) for draft in drafts)


def _says_the_same(scene: Scene, draft: Draft) -> bool:
    """What holds is what was withdrawn: nothing is taken back."""
    return scene.text(*draft.withdrawn).lower() == scene.text(*draft.holds).lower() and draft.unit is None


def _scoped(draft: Draft, sessions: list[int]) -> Draft:
    """A statement that was not made here and is quoted beside the naming of an earlier session was made there."""
    if not draft.said_again or draft.scope == "earlier_session":
        return draft
    near = bisect_left(sessions, draft.withdrawn[0] - _BESIDE)
    if near < len(sessions) and sessions[near] <= draft.withdrawn[1] + _BEHIND:
        return replace(draft, scope="earlier_session")
    return draft


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
        replacement_value=_value(draft),
        replacement_unit=draft.unit,
    )


def _value(draft: Draft) -> Fraction | None:
    """The figure that holds where it is no measure of its own."""
    if draft.unit is None:
        return None
    if draft.value is not None:
        return draft.value
    return draft.gone[0].quantity.value if draft.gone else None
