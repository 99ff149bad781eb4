"""The work behind the commands, for who would rather call it than type it."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from datetime import date, datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from capture.errors import ModelError, RecordingError, ShopError, TranscriptError
from capture.files import write_atomic
from capture.options import HearingOptions
from capture.shop import Session, SessionSettings, Shop
from desk.fellows import against_fellows
from desk.prime_words import past_words, prime_for

if TYPE_CHECKING:
    from capture.second.rival import RivalMaker
    from capture.transcript import Transcript
    from desk.console import Report
    from extract.pipeline import Extractor
    from extract.record import Record
    from extract.rulings import Proofed
    from extract.trade import Trade


@dataclass(frozen=True, slots=True)
class Hearing:
    """With what to listen."""

    model: str | None = None
    """Name or folder of a faster-whisper model; null for the one that came with Spokeshave."""
    device: Literal["auto", "cpu", "cuda"] = "auto"


@dataclass(frozen=True, slots=True)
class SessionChoice:
    """What a person says of a session when it is made; what is null is worked out."""

    title: str | None = None
    subject: str | None = None
    date: date | None = None
    trade: str | None = None


@dataclass(frozen=True, slots=True)
class WrittenUp:
    """A session after the whole job."""

    session: Session
    record: Record
    """As the person has it, who may have ruled on it before."""
    proofed: Proofed
    page: Path
    warnings: tuple[str, ...] = ()
    """What hearing and publishing have to say of this session, a line each."""


def write_up(
    recording: Path,
    shop_folder: Path,
    choice: SessionChoice | None = None,
    hearing: Hearing | None = None,
    report: Report | None = None,
    extractor: Extractor | None = None,
) -> WrittenUp:
    """The whole job for one recording: hear, extract, check, publish.

    The same recording again is the same session: it goes on where it was stopped. A recording that can't be used leaves
    the shop as it was. Raises `RecordingError`, `TranscriptError`, `ModelError`, `ShopError`.
    """
    check_readable(recording)
    if choice and choice.trade:
        check_trade(choice.trade)
    new_shop = not (shop_folder / "shop.toml").is_file()
    shop = Shop.open_or_create(shop_folder)
    session = shop.session_of(recording)
    new_session = session is None
    if session is None:
        session = shop.add_session(_settings(recording, choice or SessionChoice()))
    try:
        return write_up_session(session, shop, hearing or Hearing(), report, extractor)
    except (RecordingError, TranscriptError, ModelError):
        # A recording that turns out to be useless must not leave an empty session behind. A stopped or broken run keeps
        # its session, and with it the checkpoint to go on from.
        if new_session:
            shop.remove(session)
        if new_shop:
            _remove_empty(shop)
        raise


def write_up_session(
    session: Session,
    shop: Shop,
    hearing: Hearing,
    report: Report | None = None,
    extractor: Extractor | None = None,
) -> WrittenUp:
    """The whole job for a session that stands in the shop; raises what its parts raise."""
    from capture.recording import finish
    from publish import publish_shop
    from publish.standing import Standing

    with session.writing():
        # A recording from the bench that was cut off becomes whole first: as it is, without what was never recorded.
        finish(session.folder)
        transcript = listen(session, shop, hearing, report)
        understand(session, shop, transcript, extractor)
    proofed = Standing(shop).of(session).proofed
    take_stills(session, proofed.record)
    published = publish_shop(shop)
    page = next(path for path in published.pages if path.parent.name == session.slug)
    own = tuple(line for line in published.warnings if session.slug in line)
    return WrittenUp(session, proofed.record, proofed, page, transcript.warnings + own)


def take_stills(session: Session, record: Record) -> None:
    """Take a still of each step out of the film, where there is one; those that are kept stay."""
    from capture import is_caption_file
    from capture.step_stills import make_step_stills

    recording = session.recording_file
    if recording is None or is_caption_file(recording):
        return
    try:
        make_step_stills(session.folder, recording, (step.start for step in record.steps))
    except OSError as error:
        raise ShopError(session.folder, f"can't keep stills ({error.strerror})", "make room, then go on") from error


def listen(session: Session, shop: Shop, hearing: Hearing, report: Report | None = None) -> Transcript:
    """The session's transcript: the one on disk where it is newer than the recording, else heard or read anew.

    Raises `RecordingError`, `TranscriptError`, `ModelError`, `ShopError`.
    """
    recording = session.recording_file
    if recording is None:
        raise ShopError(session.folder, "its recording is gone", "put it back or mend `recording` in session.toml")
    kept = session.transcript() if _newer(session.transcript_file, recording) else None
    if kept is not None:
        return kept
    trade = session.settings.trade or shop.settings.trade
    transcript = transcribe(recording, hearing, session.folder, trade, report, past_words(shop, session))
    write_atomic(session.transcript_file, transcript.to_json())
    return transcript


def transcribe(
    recording: Path,
    hearing: Hearing,
    checkpoint_folder: Path,
    trade: str = "",
    report: Report | None = None,
    past: tuple[str, ...] = (),
) -> Transcript:
    """The words of a film, a sound file or a caption file, primed with the trade's own words and with `past` ones."""
    from capture import hear, is_caption_file, probe, read_captions, read_captions_of

    if is_caption_file(recording):
        return read_captions(recording)
    if not probe(recording).has_sound:
        captions = read_captions_of(recording)
        if captions is not None:
            return captions
    return hear(
        recording,
        options=HearingOptions(model=hearing.model, device=hearing.device),
        prime=prime_for(trade, past),
        rivals=_rivals(trade),
        checkpoint_folder=checkpoint_folder,
        progress=report,
    )


def check_readable(recording: Path) -> None:
    """Raise `RecordingError` or `TranscriptError` where a file can't be used, before anything is made for it."""
    from capture import is_caption_file, probe, read_captions, read_captions_of
    from capture.media import check_whole

    if is_caption_file(recording):
        read_captions(recording)
    elif probe(recording).has_sound or read_captions_of(recording) is None:
        check_whole(recording)


def checkpoint_home(recording: Path) -> Path:
    """Where the hearing of a recording that belongs to no shop is kept until it is done."""
    from capture.model_files import cache_folder

    name = hashlib.sha256(str(recording.resolve()).encode()).hexdigest()[:16]
    folder = cache_folder() / "hearing" / name
    folder.mkdir(parents=True, exist_ok=True)
    return folder


def understand(session: Session, shop: Shop, transcript: Transcript, extractor: Extractor | None = None) -> Record:
    """Extract and check a session's record, also against the shop's other sessions of the instrument, and keep it."""
    from extract.pipeline import Extractor
    from extract.record import SessionFacts

    settings = session.settings
    facts = SessionFacts(
        title=settings.title,
        date=settings.date.isoformat(),
        subject=settings.subject or None,
        trade=settings.trade or shop.settings.trade or None,
        source=transcript.source,
        duration=transcript.duration,
    )
    record = against_fellows((extractor or Extractor()).record(transcript, facts), session, shop)
    write_atomic(session.record_file, record.to_json())
    return record


def record_of(transcript: Transcript, trade: str | None = None) -> Record:
    """The record of a transcript that belongs to no shop. Raises `DataFileError` for a trade that is not known."""
    from extract.pipeline import Extractor

    return Extractor().record(transcript, trade=_trade(trade) if trade else None)


def check_trade(name: str) -> None:
    """Raise `UnknownTradeError` where there is no such trade."""
    _trade(name)


def _trade(name: str) -> Trade:
    from extract.trade import load_trade

    return load_trade(name)


def _settings(recording: Path, choice: SessionChoice) -> SessionSettings:
    # A film's name is the best title there is until a person gives a better one.
    title = choice.title or " ".join(recording.stem.replace("_", " ").replace("-", " ").split()) or "Session"
    return SessionSettings(
        title=title[:1].upper() + title[1:],
        subject=choice.subject or "",
        date=choice.date or datetime.fromtimestamp(recording.stat().st_mtime).date(),
        recording=str(recording.resolve()),
        trade=choice.trade or "",
    )


def _newer(made: Path, source: Path) -> bool:
    return made.is_file() and made.stat().st_mtime_ns >= source.stat().st_mtime_ns


def _remove_empty(shop: Shop) -> None:
    """Take away a shop that was made a moment ago for a recording that can't be used."""
    shop.settings_file.unlink()
    (shop.root / "sessions").rmdir()
    shop.root.rmdir()


def _rivals(trade: str) -> RivalMaker:
    """What else a figure may have been, by the grammar of numbers and the bands of the trade."""
    from extract.rivals import find_rivals
    from extract.trade import load_trade

    return partial(find_rivals, trade=load_trade(trade or "general"))
