"""What the procedure library takes of a session, as the store keeps it."""

from __future__ import annotations

from functools import cache
from typing import Any

from pydantic import TypeAdapter

from publish.procedures import SessionWork


def work_part(work: SessionWork) -> bytes:
    """What the procedure library takes of a session, to keep."""
    return _works().dump_json(work)


def work_in(kept: Any) -> SessionWork:
    """The same, as it was kept."""
    return _works().validate_python(kept)


@cache
def _works() -> TypeAdapter[SessionWork]:
    return TypeAdapter(SessionWork)
