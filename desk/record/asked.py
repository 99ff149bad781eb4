"""Reading what the page asks: each request checked against its shape before anything is done."""

from __future__ import annotations

import math
from typing import TypeVar

from pydantic import BaseModel, ConfigDict, Field, ValidationError
from starlette.requests import Request

from capture.errors import SpokeshaveError
from capture.recording import Mark

LONGEST = 7 * 24 * 3600.0
"""Seconds; a clock beyond this is a mistake."""


class AskedError(SpokeshaveError):
    """A request that is not of the shape it must have: the page's mistake, not the person's."""


class _Strict(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Begin(_Strict):
    """What is going to be recorded."""

    title: str = Field(default="", max_length=200)
    subject: str = Field(default="", max_length=200)
    trade: str = Field(default="", max_length=40)
    mime: str = Field(max_length=100)


class Marks(_Strict):
    """All marks of a recording."""

    marks: tuple[Mark, ...] = Field(max_length=5000)


class End(_Strict):
    """The end of a recording."""

    second: float = Field(ge=0, le=LONGEST)


Shape = TypeVar("Shape", bound=BaseModel)


async def read(request: Request, shape: type[Shape]) -> Shape:
    """The request's JSON. Raises `AskedError` where it is not of that shape."""
    try:
        return shape.model_validate_json(await request.body())
    except ValidationError as error:
        one = error.errors()[0]
        place = ".".join(str(part) for part in one["loc"]) or "request"
        raise AskedError(f"{place}: {one['msg']}") from error


def second_of(request: Request) -> float:
    """The second that a request with bytes belongs to, from its address. Raises `AskedError`."""
    try:
        second = float(request.query_params.get("second", ""))
    except ValueError as error:
        raise AskedError("second: is no number") from error
    if not math.isfinite(second) or not 0 <= second <= LONGEST:
        raise AskedError("second: is out of range")
    return second
