"""Statements of earlier sessions that a retraction may mean, each with its words and where its clip is."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from urllib.parse import quote

from capture.errors import SpokeshaveError
from capture.shop import Session
from capture.transcript import Transcript
from desk.proof.picture import picture_of
from desk.proof.said import Context
from desk.proof.views import CandidateView
from desk.proof.work import Work
from extract.retractions import Candidate, State, Traced
from extract.rulings import RulingError
from publish.moments import clock

TRACED: dict[State, str] = {
    "confirmed": "A person has said which statement is meant.",
    "proposed": "The machine takes the marked statement to be meant: the same figure of the same thing, and no other "
    "like it. It stands as proposed until you confirm it, name another, or say that it is none of these.",
    "none": "A person has said that it is none of these.",
    "open": "Say which statement is meant, or that it is none of these.",
    "lost": "The statement that was named is not found any more: say again which one is meant.",
}
_NONE_FOUND = "No earlier session of this shop says anything like it."


def told_of(work: Work, correction: str) -> tuple[str, tuple[CandidateView, ...]]:
    """How far it is known what a correction takes back of an earlier session, and the candidates; both may be empty."""
    traced = next((one for one in work.retractions if one.correction.id == correction), None)
    if traced is None:
        return "", ()
    views = tuple(_view(work.session, one, one == traced.chosen) for one in _shown(traced))
    return TRACED[traced.state] if views else _NONE_FOUND, views


def number_of(traced: Traced, session: str, item: str) -> int:
    """Which candidate a statement is, from 0. Raises `RulingError` where it is none."""
    for at, one in enumerate(traced.candidates):
        if (one.session, one.item.id) == (session, item):
            return at
    raise RulingError("that statement is no candidate any more", "load the proof again and name another")


def _shown(traced: Traced) -> tuple[Candidate, ...]:
    chosen = traced.chosen
    return traced.candidates if chosen is None or chosen in traced.candidates else (chosen, *traced.candidates)


def _view(here: Session, one: Candidate, chosen: bool) -> CandidateView:
    there = Session(here.folder.parent / one.session)
    said = Context(_transcript(there)).around(one.item.start, max(one.end, one.item.start + 0.1), one.item.words)
    return CandidateView(
        session=one.session,
        item=one.item.id,
        title=one.title,
        date=one.date or "",
        told=one.told,
        again=len(one.also),
        clock=clock(one.item.start),
        start=one.item.start,
        end=max(one.end, one.item.start + 0.1),
        before=said.before,
        quote=said.quote,
        after=said.after,
        reasons=one.reasons,
        chosen=chosen,
        picture=picture_of(there),
        address=f"/proof/sessions/{quote(one.session, safe='')}/",
    )


def _transcript(session: Session) -> Transcript | None:
    try:
        stamp = session.transcript_file.stat().st_mtime_ns
    except OSError:
        return None
    return _read(session.folder, stamp)


@lru_cache(maxsize=8)
def _read(folder: Path, stamp: int) -> Transcript | None:  # noqa: ARG001 (another stamp is another reading)
    try:
        return Session(folder).transcript()
    except SpokeshaveError:
        return None
