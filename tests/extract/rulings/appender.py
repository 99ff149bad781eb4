"""Appends notes to a log until it is stopped, and says after each that it is kept; run by the tests as a process."""

from __future__ import annotations

import sys
from pathlib import Path

from extract.rulings import Hand, RulingLog
from extract.rulings.model import Item, Note


def append_notes(path: Path, name: str, most: int) -> None:
    """Add `most` notes with ids `<name>-<number>`, each told on standard output once it is safe."""
    log = RulingLog(path)
    on = Item(kind="measure", id="m-0", words="seven sixty-fourths", start=0.0, cue=0)
    for number in range(most):
        hand = Hand(name, ruling_id=f"{name}-{number:06d}")
        log.append(Note(on=on, text="x" * (number % 400 + 1), id=hand.ruling_id, by=hand.by, at=hand.at))
        print(hand.ruling_id, flush=True)


if __name__ == "__main__":
    append_notes(Path(sys.argv[1]), sys.argv[2], int(sys.argv[3]))
