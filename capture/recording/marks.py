"""Moments that a person marked while recording: "this, look at it again".

They lie in marks.json of the session's folder, a person's file that no machine rewrites afterwards:

    {"schema": "spokeshave-marks/1", "marks": [{"second": 83.4, "note": "the crack"}]}
"""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from capture.errors import ShopError
from capture.files import write_atomic

NAME = "marks.json"


class Mark(BaseModel):
    """A marked moment."""

    model_config = ConfigDict(frozen=True)

    second: float = Field(ge=0, allow_inf_nan=False)
    """Second of the recording."""
    note: str = Field(default="", max_length=500)
    """What the person wrote to it."""


class _Kept(BaseModel):
    model_config = ConfigDict(frozen=True, populate_by_name=True)

    schema_: Literal["spokeshave-marks/1"] = Field(default="spokeshave-marks/1", alias="schema")
    marks: tuple[Mark, ...]


def keep_marks(folder: Path, marks: tuple[Mark, ...]) -> None:
    """Keep the marks of a session, all of them at once, in order of time. Raises `ShopError` where the disk refuses."""
    kept = _Kept(marks=tuple(sorted(marks, key=lambda mark: mark.second)))
    try:
        write_atomic(folder / NAME, kept.model_dump_json(by_alias=True, indent=1) + "\n")
    except OSError as error:
        raise ShopError(folder / NAME, f"can't be written ({error.strerror})", "make room or mend it") from error


def read_marks(folder: Path) -> tuple[Mark, ...]:
    """The marks of a session, in order of time; none where there is no file. Raises `ShopError` where it is broken."""
    path = folder / NAME
    try:
        return _Kept.model_validate_json(path.read_bytes()).marks
    except FileNotFoundError:
        return ()
    except OSError as error:
        raise ShopError(path, f"can't be read ({error.strerror})", "mend its permissions") from error
    except ValidationError as error:
        raise ShopError(path, "is no list of marks", "mend it, or delete it to go without marks") from error
