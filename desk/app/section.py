"""What a page brings to the local app."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

from starlette.routing import BaseRoute

Feature = Literal["camera", "microphone"]

SMALL_BODY = 64 * 1024
"""Bytes that a request may carry where a section says nothing else: a ruling with a long note fits twice over."""


@dataclass(frozen=True, slots=True)
class Section:
    """One page of the local app, with all that it needs of the server.

    Its routes are mounted under `/<name>/`, its files under `/<name>/assets/`.
    """

    name: str
    """First part of its addresses."""
    title: str
    """What links to it say."""
    routes: Sequence[BaseRoute]
    assets: Path
    """Folder of its style sheets and scripts."""
    largest_body: int = SMALL_BODY
    """Bytes that one request may carry."""
    features: frozenset[Feature] = frozenset()
    """What its pages may use of the machine; the browser still asks the person."""
    framed: Mapping[str, str] = field(default_factory=dict)
    """Paths below `/<name>/` that the app's own pages may show in a frame, each with the reason."""
