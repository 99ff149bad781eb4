"""Ids of the things on a page: safe in an attribute and an address, and unique."""

from __future__ import annotations

import re

_UNSAFE = re.compile(r"[^A-Za-z0-9_.-]+")


class Anchors:
    """Gives each thing of a record its id on the page.

    A record's own ids (`m-3f9c21ab`) pass unchanged, so that an address stays good when the page is made again;
    whatever would be unsafe or taken is changed.
    """

    def __init__(self, taken: tuple[str, ...] = ()) -> None:
        self._taken = set(taken)
        self._of: dict[tuple[str, str], str] = {}

    def of(self, kind: str, key: str) -> str:
        """The id of the thing of this kind and key, the same each time it is asked for."""
        known = self._of.get((kind, key))
        if known is None:
            known = self._of[kind, key] = self._free(_UNSAFE.sub("-", key).strip("-") or kind)
        return known

    def _free(self, stem: str) -> str:
        name, number = stem if stem[0].isalpha() else f"i-{stem}", 1
        wanted = name
        while name in self._taken:
            number += 1
            name = f"{wanted}-{number}"
        self._taken.add(name)
        return name
