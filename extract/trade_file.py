"""Reads one trade file and says clearly what is wrong with a malformed one.

Takes:

    [attributes.relief]
    said = ["neck relief"]
    kind = "length"
    bands = [{ low = 0.0, high = 0.5, unit = "millimeter", source = "common practice, no source" }]

    [parts]
    soundboard = ["top", "belly"]

Refuses a band without a source, a band whose `low` lies above its `high`, words in capitals and keys it does not know.
"""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Annotated

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationError, model_validator

from capture.errors import DataFileError
from extract.trade_facts import Attribute, Band, Hazard, Term, Trade

_REMEDY = "mend that row and run this again"


def _plain(phrase: str) -> str:
    if phrase != " ".join(phrase.lower().split()) or not phrase:
        raise ValueError(f"{phrase!r} must be lower case, with single spaces")
    return phrase


Phrase = Annotated[str, AfterValidator(_plain)]
Phrases = tuple[Phrase, ...]
Words = Annotated[str, Field(min_length=1)]


class _Row(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class _BandRow(_Row):
    low: float
    high: float
    unit: Words
    source: Words
    items: Phrases = ()

    @model_validator(mode="after")
    def _in_order(self) -> _BandRow:
        if self.low >= self.high:
            raise ValueError(f"low ({self.low:g}) must lie below high ({self.high:g})")
        return self


class _AttributeRow(_Row):
    said: Phrases = ()
    adjectives: Phrases = ()
    verbs: Phrases = ()
    kind: Words
    unit: Words | None = None
    things: Phrases = ()
    of: Words | None = None
    bands: tuple[_BandRow, ...] = ()


class _HazardRow(_Row):
    said: Annotated[Phrases, Field(min_length=1)]
    caution: Words
    source: Words


class _File(_Row):
    name: Words
    signs: Phrases = ()
    attributes: dict[Phrase, _AttributeRow] = {}
    subjects: dict[Phrase, Phrases] = {}
    parts: dict[Phrase, Phrases] = {}
    tools: dict[Phrase, Phrases] = {}
    materials: dict[Phrase, Phrases] = {}
    hazards: dict[Phrase, _HazardRow] = {}


def read_trade_file(path: Path) -> Trade:
    """The trade of one file, joined with nothing.

    Raises `DataFileError`, with the row that is wrong, where the file can't be read.
    """
    try:
        table = tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise DataFileError(path, "file", error.strerror or "can't be read", "check the name of the file") from error
    except UnicodeDecodeError as error:
        raise DataFileError(path, f"byte {error.start}", "not UTF-8 text", "save the file as UTF-8") from error
    except tomllib.TOMLDecodeError as error:
        raise DataFileError(path, "TOML", str(error), "mend that line and run this again") from error
    try:
        rows = _File.model_validate(table)
    except ValidationError as error:
        first = error.errors()[0]
        place = ".".join(str(part) for part in first["loc"] if part != "[key]") or "file"
        raise DataFileError(path, place, first["msg"].removeprefix("Value error, "), _REMEDY) from error
    return Trade(
        name=rows.name,
        signs=rows.signs,
        attributes=tuple(_attribute(name, row) for name, row in rows.attributes.items()),
        subjects=_terms(rows.subjects),
        parts=_terms(rows.parts),
        tools=_terms(rows.tools),
        materials=_terms(rows.materials),
        hazards=tuple(Hazard(name, row.said, row.caution, row.source) for name, row in rows.hazards.items()),
    )


def _attribute(name: str, row: _AttributeRow) -> Attribute:
    return Attribute(
        name=name,
        said=_with(name, row.said),
        kind=row.kind,
        unit=row.unit,
        bands=tuple(Band(b.low, b.high, b.unit, b.source, b.items) for b in row.bands),
        things=row.things,
        of=row.of,
        adjectives=row.adjectives,
        verbs=row.verbs,
    )


def _terms(table: dict[str, Phrases]) -> tuple[Term, ...]:
    return tuple(Term(name, _with(name, said)) for name, said in table.items())


def _with(name: str, said: Phrases) -> Phrases:
    return tuple(dict.fromkeys((name, *said)))
