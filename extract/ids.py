"""Ids that stay the same when the narration is read again.

An id is made from what was said and the words around it, never from a cue's number, so that a cue added elsewhere
changes no other id. The same words said twice get a number behind, in order of speaking.
"""

from __future__ import annotations

import hashlib


class Mint:
    """Gives out ids for one record."""

    def __init__(self) -> None:
        self._seen: dict[str, int] = {}

    def mint(self, prefix: str, *said: str) -> str:
        """An id such as "m-3f9c21ab" from a prefix and the words it rests on."""
        words = "\x1f".join(" ".join(part.lower().split()) for part in said)
        digest = hashlib.sha256(f"{prefix}\x1f{words}".encode()).hexdigest()[:8]
        stem = f"{prefix}-{digest}"
        self._seen[stem] = self._seen.get(stem, 0) + 1
        return stem if self._seen[stem] == 1 else f"{stem}-{self._seen[stem]}"
