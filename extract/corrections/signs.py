"""Where the signs of data/takeback_signs.toml stand in a narration.

"No", "I gave you", "back to that", "I had the rule upside down", "like I said": one sign proves nothing; the weights in
data/takeback_weights.toml say how much each speaks for or against a statement's being taken back.
"""

from __future__ import annotations

import tomllib
from bisect import bisect_left
from functools import cache, lru_cache
from importlib.resources import files

from extract.corrections.scene import Scene
from extract.corrections.templates import Templates

OWNING = ("confess", "discard", "amend", "reread", "strong")
"""Signs that explain why something is said again."""

_TURNED = 14
"""Words behind "remember I said" among which it is taken back."""


class Signs:
    """The signs of one narration, looked up by name and place. Places are pieces."""

    def __init__(self, scene: Scene) -> None:
        self._spans: dict[str, list[tuple[int, int]]] = {
            name: list(templates.find(scene.line, 0, len(scene.pieces))) for name, templates in sign_templates().items()
        }
        idle = frozenset(at for begin, end in self._spans["idle"] for at in range(begin, end))
        self._spans["quote"] = [
            span for span in self._spans["quote"] if span[1] - 1 not in idle and not _called_to_mind(scene, *span)
        ]
        self._begins = {name: [begin for begin, _ in spans] for name, spans in self._spans.items()}
        self._covered = {
            name: frozenset(at for begin, end in spans for at in range(begin, end))
            for name, spans in self._spans.items()
        }
        self._explained: dict[tuple[str, ...], frozenset[int]] = {}

    def within(self, name: str, begin: int, end: int) -> tuple[int, int] | None:
        """The first sign of a name that begins between two places."""
        found = bisect_left(self._begins[name], begin)
        if found < len(self._begins[name]) and self._begins[name][found] < end:
            return self._spans[name][found]
        return None

    def last(self, name: str, begin: int, end: int) -> tuple[int, int] | None:
        """The last sign of a name that begins between two places."""
        found = bisect_left(self._begins[name], end) - 1
        if found >= 0 and self._begins[name][found] >= begin:
            return self._spans[name][found]
        return None

    def all(self, name: str) -> list[tuple[int, int]]:
        """Every sign of a name, in order."""
        return self._spans[name]

    def covers(self, name: str, place: int) -> bool:
        """The place belongs to a sign of that name."""
        return place in self._covered[name]

    def explained(self, place: int, names: tuple[str, ...]) -> bool:
        """The place belongs to a sign of one of these names."""
        if names not in self._explained:
            self._explained[names] = frozenset().union(*(self._covered[name] for name in names))
        return place in self._explained[names]

    def counts(self, names: tuple[str, ...], begin: int, end: int) -> dict[str, float]:
        """1.0 for each name of which a sign begins between two places."""
        return {name: 1.0 for name in names if self.within(name, begin, end)}


def _called_to_mind(scene: Scene, begin: int, end: int) -> bool:
    """ "Like I said", "as I told you": what was said holds. "I said to him" and "I told you about" state nothing."""
    follows = scene.pieces[end].text if end < len(scene.pieces) else ""
    what = "what" in {piece.text for piece in scene.pieces[max(0, begin - 1) : begin + 1]}
    if (scene.pieces[end - 1].text == "said" and follows == "to") or (follows == "about" and not what):
        return True
    before = scene.pieces[begin - 1] if begin else None
    if (
        before is not None
        and before.text == "remember"
        and any(at in scene.edit_ends for at in range(end, end + _TURNED))
    ):
        return False  # "remember I said bevel up, it's bevel down, sorry"
    return before is not None and not before.mark and before.text in scene.words.not_behind


@lru_cache(maxsize=1)
def signs_of(scene: Scene) -> Signs:
    """The signs of a narration, found once for all rules."""
    return Signs(scene)


@cache
def sign_templates() -> dict[str, Templates]:
    """Read once, at the first narration."""
    data = tomllib.loads((files("extract") / "data" / "takeback_signs.toml").read_text(encoding="utf-8"))
    classes = data.pop("classes")
    return {name: Templates(part["rows"], classes) for name, part in data.items()}
