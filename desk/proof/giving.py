"""From what the page asks for to lines of the log: each checked against the session as it stands, then safe on disk."""

from __future__ import annotations

from typing import Literal, cast

from pydantic import BaseModel, ConfigDict, Field

from capture.shop import Session
from desk.proof.adding import added
from desk.proof.elsewhere import number_of
from desk.proof.wording import portions
from desk.proof.work import Bench, Work
from extract.record import Because, Mode, Phase
from extract.retractions import retract
from extract.rulings import (
    Hand,
    Ruling,
    RulingError,
    RulingLog,
    RulingLogError,
    UnitKindError,
    Wanted,
    amend,
    merge,
    note,
    pass_for_press,
    redo,
    reorder,
    split,
    stet,
    strike,
    undo,
)
from extract.rulings.model import Kind

_MOST = 50
_LONGEST = 10 * 24 * 3600


class Put(BaseModel):
    """What is to stand in the place of what the machine had; null leaves a field as it is, an empty text clears it."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    figure: str | None = Field(default=None, max_length=200)
    attribute: str | None = Field(default=None, max_length=200)
    item: str | None = Field(default=None, max_length=200)
    where: str | None = Field(default=None, max_length=200)
    phase: Phase | None = None
    text: str | None = Field(default=None, max_length=4000)
    mode: Mode | None = None

    def wanted(self) -> Wanted:
        """The fields that were named."""
        return cast("Wanted", self.model_dump(exclude_none=True))


class Asked(BaseModel):
    """One ruling as the page asks for it."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    id: str = Field(pattern=r"^[0-9a-f]{32}$")
    """Made by the page, so that asking again is safe."""
    act: Literal[
        "stet", "amend", "strike", "note", "add", "reorder", "merge", "split", "retract", "pass", "undo", "redo"
    ]
    item: str = Field(default="", max_length=100)
    of: str = Field(default="", max_length=100)
    """Of an undo or redo: the ruling. Of an added correction: the measure that it takes back; may be empty. Of an
    amendment: the query that it answers, for the page's own use. Of a retraction: the statement that it takes back,
    in the session named by `text`; both empty for none."""
    to: Put = Put()
    because: Because | None = None
    overrule: bool = False
    text: str = Field(default="", max_length=4000)
    after: str | None = Field(default=None, max_length=100)
    others: tuple[str, ...] = Field(default=(), max_length=_MOST)
    kind: Kind = "measure"
    """Of what is added, as are the next two."""
    second: float = Field(default=0.0, ge=0, le=_LONGEST, allow_inf_nan=False)
    said: str = Field(default="", max_length=1000)
    """The words that it was said in; empty for those of the transcript."""
    into: tuple[str, ...] = Field(default=(), max_length=_MOST)


class AskedFor(BaseModel):
    """Several rulings, in the order in which they are given."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    rulings: tuple[Asked, ...] = Field(max_length=_MOST)


class Result(BaseModel):
    """What became of one ruling."""

    model_config = ConfigDict(frozen=True)

    id: str
    kept: bool
    """It is safe on disk."""
    again: bool = False
    """The disk refused: asking again later may do."""
    overrule: bool = False
    """It would be taken where the person says that they mean it."""
    problem: str = ""


def give(bench: Bench, session: Session, asked: AskedFor) -> list[Result]:
    """Put rulings on the log, in order; what can't be given harms none of the others. Where the disk refuses, those
    behind are not tried, so that none overtakes another."""
    results: list[Result] = []
    log = RulingLog(session.rulings_file)
    by = bench.shop.settings.author
    for one in asked.rulings:
        try:
            log.append(_ruling(bench.work(session), one, Hand(by, one.id)))
        except RulingLogError as error:
            results.append(Result(id=one.id, kept=False, again=True, problem=str(error)))
            break
        except RulingError as error:
            if _stands(bench, session, one):
                results.append(Result(id=one.id, kept=True))
                continue
            overrule = isinstance(error, UnitKindError)
            results.append(Result(id=one.id, kept=False, overrule=overrule, problem=str(error)))
        else:
            results.append(Result(id=one.id, kept=True))
    return results


def _stands(bench: Bench, session: Session, asked: Asked) -> bool:
    """The ruling is on the log already: its answer was lost, and it is asked for again after others changed things."""
    return any(one.id == asked.id for one in bench.work(session).rulings)


def _ruling(work: Work, asked: Asked, hand: Hand) -> Ruling:
    proofed = work.proofed
    match asked.act:
        case "stet":
            return stet(proofed, asked.item, hand)
        case "strike":
            return strike(proofed, asked.item, hand)
        case "amend":
            return amend(proofed, asked.item, asked.to.wanted(), hand, asked.because, asked.overrule)
        case "note":
            return note(proofed, asked.item, asked.text, hand)
        case "add":
            to = asked.to.wanted()
            return added(work, asked.kind, asked.second, asked.said, to, asked.of, asked.overrule, hand)
        case "reorder":
            return reorder(proofed, asked.item, asked.after, hand)
        case "merge":
            return merge(proofed, [asked.item, *asked.others], hand, asked.text)
        case "split":
            return split(proofed, asked.item, portions(list(asked.into)), hand)
        case "retract":
            return _retract(work, asked, hand)
        case "pass":
            return pass_for_press(proofed, hand)
        case "undo":
            return undo(proofed, asked.of, hand)
        case "redo":
            return redo(asked.of, hand)


def _retract(work: Work, asked: Asked, hand: Hand) -> Ruling:
    traced = next((one for one in work.retractions if one.correction.id == asked.item), None)
    if traced is None:
        raise RulingError("that takes back nothing of an earlier session", "load the proof again")
    return retract(work.proofed, traced, number_of(traced, asked.text, asked.of) if asked.of else None, hand)
