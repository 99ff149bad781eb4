"""Reads a shop's sessions for publishing; what can't be published is told, and harms no other session."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from pydantic import ValidationError

from capture.captions import is_caption_file
from capture.errors import ShopError, SpokeshaveError
from capture.shop import Session, Shop
from capture.transcript import Transcript
from extract.record import Record
from extract.rulings import LogRead, Proofed, RulingLog, apply
from extract.rulings.model import NAMED_ONCE
from publish.moments import clock
from publish.note import Note, render_note
from publish.source import SessionSource

_OURS = frozenset(
    {"index.html", "record.json", "captions.vtt", "chapters.vtt", "transcript.txt", "transcript.json", "pictures"}
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


def gather(shop: Shop) -> tuple[tuple[Gathered, ...], tuple[str, ...]]:
    """Every session that can be published, oldest first, and one line for each that can't."""
    gathered, problems = [], []
    for session in shop.sessions():
        try:
            gathered.append(gather_session(session))
        except SpokeshaveError as error:
            problems.append(str(error))
    return tuple(gathered), tuple(problems)


def gather_session(session: Session) -> Gathered:
    """One session. Raises `ShopError` where its files can't be read."""
    record = machine_record(session)
    log = RulingLog(session.rulings_file).read()
    proofed = apply(record, log.rulings)
    record = proofed.record
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
        proofed=proofed.passed,
    )
    warnings = [f"{session.folder / warning}" for warning in note.warnings]
    warnings += _doubts_about(session, record, transcript)
    warnings += [f"{session.folder}: {line}" for line in (*lost_rulings(proofed), *unread_lines(log))]
    return Gathered(source, recording, note, tuple(warnings))


def machine_record(session: Session) -> Record:
    """What the machine made of a session, under the facts that session.toml states now. Raises `ShopError`."""
    settings = session.settings
    record = read_record(session.record_file)
    facts = record.session.model_copy(
        update={
            "title": settings.title,
            "date": settings.date.isoformat(),
            "subject": settings.subject or record.session.subject,
            "trade": settings.trade or record.session.trade,
        }
    )
    return record.model_copy(update={"session": facts})


def read_record(path: Path) -> Record:
    """The record in a file. Raises `ShopError` where there is none, or none that can be read."""
    try:
        return Record.model_validate_json(path.read_bytes())
    except FileNotFoundError as error:
        raise ShopError(path, "is not there yet", "run `spokeshave writeup` on the recording") from error
    except OSError as error:
        raise ShopError(path, f"can't be read ({error.strerror})", "mend its permissions") from error
    except ValidationError as error:
        one = error.errors()[0]
        place = ".".join(str(part) for part in one["loc"]) or "file"
        raise ShopError(
            path, f"is no record ({place}: {one['msg']})", "run `spokeshave writeup` on the recording again"
        ) from error


def lost_rulings(proofed: Proofed) -> tuple[str, ...]:
    """A line for each ruling in force that changes nothing, with the words that it is on."""
    lost = [(f"{one.ruling.act} of “{one.ruling.on.words}”", one.ruling.on, one.why) for one in proofed.unplaced]
    return tuple(
        f"{what}{'' if on.kind in NAMED_ONCE else f' at {clock(on.start)}'} has no place any more: {why}"
        for what, on, why in lost
    )


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
