"""Written up again, a session keeps every ruling, and the terminal says how many."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from rich.console import Console

from desk.report import report_session
from desk.work import WrittenUp, write_up
from extract.pipeline import Extractor
from extract.rulings import Hand, RulingLog, amend, strike

LINES = (
    "Right, the action at the twelfth fret is five sixty-fourths of an inch.",
    "The saddle slot is three thirty-seconds wide.",
    "I heat the plate to a hundred and forty degrees Fahrenheit.",
    "Then the scale length is twenty and seven eighths inches.",
)


@pytest.fixture(scope="module")
def extractor() -> Extractor:
    return Extractor()


def captions(path: Path, lines: tuple[str, ...], late: float = 0.0) -> Path:
    """A caption file with a line every five seconds, `late` seconds behind."""
    cues = [
        f"{_time(5 * number + late)} --> {_time(5 * number + 4 + late)}\n{line}\n" for number, line in enumerate(lines)
    ]
    path.write_text("WEBVTT\n\n" + "\n".join(cues), encoding="utf-8")
    return path


def _time(seconds: float) -> str:
    return f"00:{int(seconds // 60):02d}:{seconds % 60:06.3f}"


def told(done: WrittenUp) -> str:
    out = io.StringIO()
    report_session(Console(file=out, width=200), done)
    return out.getvalue()


def ruled(done: WrittenUp) -> RulingLog:
    """The first figure amended, the second struck."""
    log = RulingLog(done.session.rulings_file)
    action, slot = done.record.measures[:2]
    log.append(amend(done.proofed, action.id, {"figure": "7/64 in"}, Hand("Ada"), because="heard_wrong"))
    log.append(strike(done.proofed, slot.id, Hand("Ada")))
    return log


def test_a_session_without_rulings_says_nothing_of_them(tmp_path: Path, extractor: Extractor) -> None:
    done = write_up(captions(tmp_path / "talk.vtt", LINES), tmp_path / "shop", extractor=extractor)
    assert "rulings:" not in told(done)


def test_the_same_recording_again_keeps_every_ruling(tmp_path: Path, extractor: Extractor) -> None:
    talk = captions(tmp_path / "talk.vtt", LINES)
    log = ruled(write_up(talk, tmp_path / "shop", extractor=extractor))
    kept = log.path.read_bytes()
    again = write_up(talk, tmp_path / "shop", extractor=extractor)
    assert "rulings: 2 kept\n" in told(again)
    assert again.record.measures[0].display == "7/64\N{NO-BREAK SPACE}in"
    assert not again.record.measures[1].stands
    assert log.path.read_bytes() == kept


def test_captions_broken_otherwise_move_the_rulings_with_the_words(tmp_path: Path, extractor: Extractor) -> None:
    talk = captions(tmp_path / "talk.vtt", LINES)
    ruled(write_up(talk, tmp_path / "shop", extractor=extractor))
    shifted = (LINES[0] + " Good.", "Now, " + LINES[1], *LINES[2:])
    again = write_up(captions(talk, shifted, late=0.4), tmp_path / "shop", extractor=extractor)
    assert "rulings: 2 moved to where their words are now\n" in told(again)
    assert again.record.measures[0].display == "7/64\N{NO-BREAK SPACE}in"
    assert not again.record.measures[1].stands


def test_a_ruling_whose_words_are_gone_is_told_and_kept(tmp_path: Path, extractor: Extractor) -> None:
    talk = captions(tmp_path / "talk.vtt", LINES)
    log = ruled(write_up(talk, tmp_path / "shop", extractor=extractor))
    kept = log.path.read_bytes()
    again = write_up(captions(talk, ("Nothing to measure today.", *LINES[1:])), tmp_path / "shop", extractor=extractor)
    lines = told(again)
    assert "rulings: 1 kept, 1 without a place\n" in lines
    assert "amend of “five sixty-fourths of an inch” at 0:0" in lines
    assert log.path.read_bytes() == kept
