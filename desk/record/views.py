"""What the page is told, as plain JSON."""

from __future__ import annotations

import shlex
from pathlib import Path
from typing import Any

from capture.recording import CutOff, Finished, Room
from capture.shop import Session
from capture.timecode import clock


def room_view(room: Room) -> dict[str, Any]:
    """Room on the disk."""
    return {"state": room.state, "minutes": round(room.minutes, 1), "line": room.line}


def cut_off_view(one: CutOff, shop_folder: Path) -> dict[str, Any]:
    """A recording that was cut off."""
    return {
        "slug": one.session.slug,
        "line": one.line,
        "empty": not one.size,
        "command": command_for(one.session, shop_folder) if one.size else "",
    }


def finished_view(session: Session, finished: Finished | None, shop_folder: Path) -> dict[str, Any]:
    """A recording that was ended."""
    if finished is None:
        return {"slug": session.slug, "nothing": True, "length": "", "command": "", "note": ""}
    note = f"It lies there as it came, without an index: {finished.problem}." if finished.problem else ""
    return {
        "slug": session.slug,
        "nothing": False,
        "length": clock(finished.seconds),
        "command": command_for(session, shop_folder),
        "note": note,
    }


def command_for(session: Session, shop_folder: Path) -> str:
    """The command that writes a session up."""
    recording = session.folder / session.settings.recording
    return shlex.join(["spokeshave", "writeup", short(recording), "--shop", short(shop_folder)])


def short(path: Path) -> str:
    """A path as it is written in this terminal's folder, where it lies below that."""
    whole = path.resolve()
    return str(whole.relative_to(Path.cwd())) if whole.is_relative_to(Path.cwd()) else str(whole)
