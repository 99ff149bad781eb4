"""faster-whisper's batched pipeline, keeping what its encoder made of each window so that nothing is encoded twice."""

from __future__ import annotations

from typing import Any

import numpy as np

from capture.second.scoring import Encoded


def keeping_pipeline(whisper: Any, seconds: float) -> Any:
    """A `BatchedInferencePipeline` over a `WhisperModel`, with `take`: what was made of the last windows.

    Whisper's windows are filled up with silence to 30 s; here to `seconds`, since the encoder's time grows with them.
    """
    from faster_whisper import BatchedInferencePipeline

    class Keeping(BatchedInferencePipeline):  # type: ignore[misc]
        def __init__(self, model: Any) -> None:
            super().__init__(model)
            self._kept: list[Encoded] = []

        def generate_segment_batched(self, features: Any, tokenizer: Any, options: Any) -> Any:
            frames = 2 * round(seconds * whisper.frames_per_second / 2)
            features = np.ascontiguousarray(features[..., :frames])
            encoded, output = super().generate_segment_batched(features, tokenizer, options)
            self._kept.extend(np.asarray(one, np.float32) for one in np.array(_on_cpu(encoded)))
            return encoded, output

        def take(self, count: int) -> list[Encoded]:
            """The last `count` windows that were encoded; forgets all."""
            kept, self._kept = self._kept[-count:], []
            return kept

    return Keeping(whisper)


def _on_cpu(encoded: Any) -> Any:
    import ctranslate2

    return encoded if encoded.device == "cpu" else encoded.to_device(ctranslate2.Device.cpu)
