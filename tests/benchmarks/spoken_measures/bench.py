"""What the tables share: the loaded models, and hearings that are made once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cache, partial

from capture.model import SpeechModel, load_model
from capture.model_files import NAME
from capture.options import HearingOptions
from extract.pipeline import Extractor
from extract.rivals import find_rivals
from extract.trade import load_trade
from tests.benchmarks.spoken_measures import hearings
from tests.benchmarks.spoken_measures.sentences import Side
from tests.benchmarks.spoken_measures.sound import Recording, recordings
from tests.benchmarks.spoken_measures.tally import Tally, Way, tally

SMALL = 0.2
"""Of each voice's sentences, how many the tables beside the main one are made of."""


@dataclass(slots=True)
class Bench:
    """One run of the benchmark."""

    model: SpeechModel
    extractor: Extractor
    side: Side = "held-out"
    share: float = 1.0
    """Of each voice's sentences, how many are heard."""
    options: HearingOptions = field(default_factory=HearingOptions)
    _heard: dict[str, Tally] = field(default_factory=dict)

    def small(self) -> Bench:
        """The same on a part of the sentences, for tables that need many hearings."""
        return Bench(self.model, self.extractor, self.side, self.share * SMALL, self.options)

    def published(self) -> SpeechModel:
        """Whisper base without what it was taught."""
        return self.model if self.model.name == NAME else _published()

    def recordings(self) -> Sequence[Recording]:
        """The recordings of the half that is heard."""
        return recordings(self.side, self.share)

    def ways(self) -> dict[str, Way]:
        """Each way of hearing by name, the simplest first."""
        return {
            "told (a perfect ear)": hearings.told,
            "plain faster-whisper": lambda one: hearings.plain(one.path, self.published(), self.options),
            "primed": lambda one: hearings.primed(one.path, self.model, self.options),
            "primed, heard again": lambda one: hearings.primed(
                one.path, self.model, self.options, rivals=partial(find_rivals, trade=load_trade("general"))
            ),
        }

    def heard(self, name: str) -> Tally:
        """All recordings heard one way, once a run."""
        return self.keep(name, self.ways()[name])

    def keep(self, name: str, way: Way) -> Tally:
        """All recordings heard by `way`, kept under `name`."""
        if name not in self._heard:
            self._heard[name] = tally(self.recordings(), way, self.extractor)
        return self._heard[name]


@cache
def _published() -> SpeechModel:
    return load_model(HearingOptions(model=NAME))
