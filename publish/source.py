"""One session as it is handed to the page maker: facts checked and gathered, nothing read from disk any more."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from markupsafe import Markup

from capture.transcript import Transcript
from extract.record import Record


@dataclass(frozen=True, slots=True)
class SessionSource:
    """What a session's page is made from."""

    slug: str
    """Name of its folder, under sessions/ in the shop as on the site."""
    record: Record
    """The record, its session facts as session.toml has them."""
    transcript: Transcript | None = None
    """What was said; null where only the record is left."""
    recording: str | None = None
    """File name of the recording beside the page; null where there is none."""
    note: Markup = field(default_factory=Markup)
    """The author's own words, sanitised."""
    stills: Mapping[int, Path] = field(default_factory=dict)
    """Stills of the film, by their tenth of a second."""
    proofed: bool = False
    """A person has passed the record."""
