"""What is spoken of beside a bare number, and how well a kind of unit suits it."""

from __future__ import annotations

from extract.quantities.draft import Draft, Scene
from extract.quantities.topics import Hit

_ROLE_WEIGHT = {"adjective": 3.0, "name": 2.5, "word": 2.0, "verb": 1.3}
_PER_WORD = 0.12
"""How much a topic loses for each word between it and the number."""
_OTHER_SENTENCE = 1.0
_BEHIND_OTHER_NUMBER = 0.6

Weighed = tuple[float, Hit]


def topics_near(scene: Scene, draft: Draft) -> list[Weighed]:
    """What is spoken of beside the number, each with a weight that falls with distance and over a sentence's border.

    Words right before another number are that number's: the "rated at" of "47, rated at 500 volts".
    """
    found = []
    for hit in scene.topics.between(draft.start - 14, draft.end + 8):
        if hit.start >= draft.start and hit.end <= draft.end:
            continue
        away = draft.start - hit.end if hit.end <= draft.start else hit.start - draft.end
        if hit.topic.role == "adjective" and not 0 <= hit.start - draft.end <= 1:
            continue
        if hit.start >= draft.end and scene.number_at(draft.end, hit.end + 2):
            continue
        weight = _ROLE_WEIGHT[hit.topic.role] - _PER_WORD * max(away, 0)
        if scene.sentence(hit.start) != scene.sentence(draft.start):
            weight -= _OTHER_SENTENCE
        if hit.end <= draft.start and scene.number_at(hit.end, draft.start):
            weight *= _BEHIND_OTHER_NUMBER
        if weight > 0:
            found.append((weight, hit))
    return found


def kind_fit(kind: str, hits: list[Weighed]) -> float:
    """How well a kind of unit suits what is spoken of: for it, or against it where only other kinds are named."""
    for_it = max((weight for weight, hit in hits if hit.topic.kind == kind), default=0.0)
    against = max((weight for weight, hit in hits if hit.topic.kind != kind), default=0.0)
    return for_it if for_it else -0.6 * against
