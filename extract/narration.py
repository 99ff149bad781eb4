"""A transcript as a spaCy `Doc`, every token tied to its cue and its seconds.

Tokens never run over a cue's border, so a quote can always be led back to where it was said.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from capture.transcript import Transcript

if TYPE_CHECKING:
    from spacy.language import Language
    from spacy.tokens import Doc, Span


@dataclass(frozen=True, slots=True)
class Narration:
    """Where each token of a `Doc` stands in the recording; reached as `doc._.narration`."""

    transcript: Transcript
    cue: tuple[int, ...]
    """0-based cue index a token."""
    start: tuple[float, ...]
    """Seconds a token."""
    end: tuple[float, ...]
    probability: tuple[float | None, ...]
    """How sure the ear was of the word a token belongs to; null for captions."""
    punctuated: bool
    """False for raw captions, which have no sentence marks."""

    def quote(self, doc: Doc, start: int, end: int) -> str:
        """The words of tokens `start` to `end` as they were said."""
        return doc[start:end].text.strip()


def make_doc(nlp: Language, transcript: Transcript) -> Doc:
    """Tokenise a transcript, cue by cue. Linear in the number of words."""
    from spacy.tokens import Doc

    words: list[str] = []
    spaces: list[bool] = []
    cue_of: list[int] = []
    starts: list[float] = []
    ends: list[float] = []
    sure: list[float | None] = []
    for number, cue in enumerate(transcript.cues):
        for said in cue.words:
            tokens = nlp.tokenizer(said.text)
            length = max(len(said.text), 1)
            for token in tokens:
                share = (said.end - said.start) / length
                words.append(token.text)
                spaces.append(False)
                cue_of.append(number)
                sure.append(said.probability)
                starts.append(said.start + token.idx * share)
                ends.append(said.start + (token.idx + len(token)) * share)
            if spaces:
                spaces[-1] = True
    doc = Doc(nlp.vocab, words=words, spaces=spaces)
    doc._.narration = Narration(
        transcript, tuple(cue_of), tuple(starts), tuple(ends), tuple(sure), is_punctuated(transcript)
    )
    return doc


def is_punctuated(transcript: Transcript) -> bool:
    """True where the words carry sentence marks: at least one word in forty ends a sentence."""
    words = [word.text for cue in transcript.cues for word in cue.words]
    marks = sum(word.rstrip("\"')")[-1:] in tuple(".?!") for word in words if word)
    return marks * 40 >= len(words) > 0


def narration_of(doc: Doc | Span) -> Narration:
    """The narration that a `Doc` was made from."""
    from spacy.tokens import Span

    found: Narration = (doc.doc if isinstance(doc, Span) else doc)._.narration
    return found
