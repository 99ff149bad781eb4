"""Reads a shop's sessions for publishing; what can't be published is told, and harms no other session."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from capture.captions import is_caption_file
from capture.errors import SpokeshaveError
from capture.shop import Session, Shop
from capture.step_stills import step_stills
from capture.transcript import Transcript
from extract.record import Record
from extract.retractions import Traced
from extract.rulings import LogRead, Proofed, RulingLog
from extract.rulings.model import NAMED_ONCE
from publish.kit.naming import as_called, said_in_record
from publish.kit.rulings.model import Said
from publish.moments import clock
from publish.note import Note, render_note
from publish.source import SessionSource
from publish.standing import Standing

_OURS = frozenset(
    {
        "beneath-the-film.txt",
        "captions.vtt",
        "card.html",
        "chapters.vtt",
        "corrections.vtt",
        "index.html",
        "pictures",
        "record.json",
        "stills",
        "transcript.json",
        "transcript.txt",
    }
)
"""Names beside a session page that no recording may take."""


@dataclass(frozen=True, slots=True)
class Gathered:
    """One session, read and checked."""

    source: SessionSource
    recording: Path | None
    """The recording to put beside the page."""
    note: Note
    """The author's words, with the pictures they need."""
    warnings: tuple[str, ...]
    """What a person should know, a line each."""
    said: tuple[Said, ...] = ()
    """Tools and materials as the session itself has them, whatever they are called in the shop."""


def gather(shop: Shop) -> tuple[tuple[Gathered, ...], tuple[str, ...]]:
    """Every session that can be published, oldest first, and one line for each that can't.

    Raises `RulingLogError` where the shop's log of names can't be read.
    """
    gathered, problems = [], []
    standing = Standing(shop, once=True)
    _ = standing.names
    for session in shop.sessions():
        try:
            gathered.append(gather_session(session, standing))
        except SpokeshaveError as error:
            problems.append(str(error))
    return tuple(gathered), tuple(problems)


def gather_session(session: Session, standing: Standing | None = None) -> Gathered:
    """One session as it stands, what later sessions took back of it and the shop's names for its kit included.

    `standing` knows the shop's sessions already; without it they are read. Raises `ShopError` where the session's
    files can't be read.
    """
    standing = standing or Standing.around(session)
    stands = standing.of(session)
    log = RulingLog(session.rulings_file).read()
    proofed = stands.proofed
    said = said_in_record(proofed.record)
    record = as_called(proofed.record, standing.names)
    transcript = session.transcript()
    recording = session.recording_file
    if recording is not None and is_caption_file(recording):
        recording = None
    note = render_note(session.notes, session.folder)
    source = SessionSource(
        slug=session.slug,
        record=record,
        transcript=transcript,
        recording=_name_beside(recording),
        note=note.html,
        stills={} if recording is None else step_stills(session.folder, recording),
        proofed=proofed.passed,
    )
    warnings = [f"{session.folder / warning}" for warning in note.warnings]
    warnings += _doubts_about(session, record, transcript)
    told = (*lost_rulings(proofed), *unread_lines(log), *untold_retractions(stands.retractions))
    warnings += [f"{session.folder}: {line}" for line in told]
    return Gathered(source, recording, note, tuple(warnings), said)


def lost_rulings(proofed: Proofed) -> tuple[str, ...]:
    """A line for each ruling in force that changes nothing, with the words that it is on."""
    lost = [(f"{one.ruling.act} of “{one.ruling.on.words}”", one.ruling.on, one.why) for one in proofed.unplaced]
    return tuple(
        f"{what}{'' if on.kind in NAMED_ONCE else f' at {clock(on.start)}'} has no place any more: {why}"
        for what, on, why in lost
    )


def untold_retractions(retractions: tuple[Traced, ...]) -> tuple[str, ...]:
    """A line for each retraction of an earlier statement of which no person has said which one it means."""
    lines = []
    for one in retractions:
        said = f"“{one.correction.withdraws.text}” at {clock(one.correction.start)}"
        if one.state == "lost":
            lines.append(f"{said} takes back a statement that is not found any more; say which on its proof page")
        elif one.state == "proposed" and one.chosen is not None:
            where = f"{clock(one.chosen.item.start)} of {one.chosen.session}"
            lines.append(f"{said} is taken to mean {one.chosen.told} at {where}; confirm it on its proof page")
        elif one.state == "open" and one.candidates:
            lines.append(f"{said} takes back something of an earlier session; say which on its proof page")
    return tuple(lines)


def unread_lines(log: LogRead) -> tuple[str, ...]:
    """A line for each line of a log that is no ruling."""
    return tuple(f"line {one.line} of rulings.json is {one.why}; it stays there, and does nothing" for one in log.aside)


def _name_beside(recording: Path | None) -> str | None:
    if recording is None:
        return None
    return f"recording-{recording.name}" if recording.name.casefold() in _OURS else recording.name


def _doubts_about(session: Session, record: Record, transcript: Transcript | None) -> list[str]:
    warnings = []
    named = session.settings.recording
    if named and session.recording_file is None:
        warnings.append(f"{session.folder}: the recording {named!r} is not there; its page has no player")
    cues = [measure.cue for measure in record.measures] + [step.cue_to for step in record.steps]
    if transcript is not None and cues and max(cues) >= len(transcript.cues):
        warnings.append(
            f"{session.folder}: record.json and transcript.json are not of one hearing; run `spokeshave writeup` again"
        )
    return warnings
