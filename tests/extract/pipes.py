"""The language model without this project's stages, for tests that run one stage alone."""

from __future__ import annotations

from functools import cache

from spacy.language import Language
from spacy.tokens import Doc

from capture.transcript import Transcript
from extract.narration import make_doc
from extract.pipeline import load_language
from extract.trade import Trade

_BASE = ["tok2vec", "tagger", "segments", "parser", "attribute_ruler", "lemmatizer"]


@cache
def language() -> Language:
    """Loaded once a test run."""
    nlp = load_language()
    nlp.select_pipes(enable=_BASE)
    return nlp


def parsed(transcript: Transcript, trade: Trade) -> Doc:
    """A transcript with sentences, tags and lemmas."""
    doc = make_doc(language(), transcript)
    doc._.trade = trade
    return language()(doc)
