"""A moment of sound heard again by itself: what else the model would write there, the likeliest first.

A window is written out as a whole, and a word early in it sways what follows. The moment of a figure, given with the
few words before it, often reads otherwise. What the encoder made of the window is used again, so this costs little.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from capture.figures import parts_of
from capture.second.scoring import Encoded, Scorer

HEARINGS = 3
"""Readings that are asked for."""

BEAM = 5

MORE_TOKENS = 6
"""Tokens that another reading may be longer than the first one."""

STRAY = 3
"""Words by which the word behind a figure may move."""


class Rehearer:
    """Hears moments again with one model and one prime."""

    def __init__(self, scorer: Scorer) -> None:
        self._scorer = scorer

    def texts(
        self, encoded: Encoded, before: Sequence[str], stretch: Sequence[str], behind: Sequence[str]
    ) -> list[str]:
        """Texts for `stretch`, given the words `before` it, each cut off where the words `behind` it begin."""
        import ctranslate2

        prompt = self._scorer.prompt(before)
        most = self._scorer.count([*stretch, *behind[:2]]) + MORE_TOKENS
        (found,) = self._scorer.model.generate(
            ctranslate2.StorageView.from_array(np.ascontiguousarray(encoded[None])),
            [prompt],
            beam_size=BEAM,
            num_hypotheses=HEARINGS,
            max_length=len(prompt) + most,
            length_penalty=0,
        )
        texts: dict[str, None] = {}
        for tokens in found.sequences_ids:
            words = self._scorer.decode(tokens).split()
            if _bare(words[: len(before)]) == _bare(before):
                words = words[len(before) :]
            texts[" ".join(cut(words, stretch, behind))] = None
        return [text for text in texts if text]


def cut(words: Sequence[str], stretch: Sequence[str], behind: Sequence[str]) -> Sequence[str]:
    """The words that stand where `stretch` stood; none where neither of the next two words behind it is found.

    Takes "sixteen thou" from "sixteen thou thick, it" for "sixteen hours" before "thick.".
    """
    if not behind:
        return words[: len(stretch) + STRAY]
    heard = _bare(words)
    for further, anchor in enumerate(_bare(behind[:2])):
        near = [at for at, word in enumerate(heard) if word == anchor and abs(at - len(stretch) - further) <= STRAY]
        if near:
            end = min(near, key=lambda at: abs(at - len(stretch) - further)) - further
            return words[: max(end, 0)]
    return []


def _bare(words: Sequence[str]) -> list[str]:
    return ["".join(parts_of(word)) for word in words]
