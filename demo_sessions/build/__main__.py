"""`python -m demo_sessions.build [SLUG ...]`: make the recordings and truth.json of the demo sessions again."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from demo_sessions.build.encode import write_film, write_sound
from demo_sessions.build.film import FPS, film
from demo_sessions.build.noting import make_truth
from demo_sessions.build.script import load_script
from demo_sessions.build.sound import record
from demo_sessions.build.voices import VoiceMissingError, open_voice
from demo_sessions.truth import folder, slugs


def build(slug: str) -> None:
    """Make one session: its recording, then truth.json."""
    session = folder(slug)
    script = load_script(session)
    recording = record(script, open_voice(script.voice))
    truth = make_truth(session, script, recording)
    path = session / truth.recording
    half_made = path.with_suffix(".part")
    if path.suffix == ".mp4":
        write_film(half_made, film(script, recording), FPS, recording.samples)
    else:
        write_sound(half_made, recording.samples)
    half_made.replace(path)
    (session / "truth.json").write_text(truth.to_json(), encoding="utf-8")
    print(f"{slug}: {truth.duration:.0f} s, {_kilobytes(path)} kB, {len(truth.measures)} measures")


def _kilobytes(path: Path) -> int:
    return round(path.stat().st_size / 1000)


def main() -> int:
    """Build the sessions that are named, or all of them."""
    parser = argparse.ArgumentParser(prog="python -m demo_sessions.build", description=__doc__)
    parser.add_argument("slug", nargs="*", choices=[[], *slugs()], help="a session to build; all where none is named")
    named = parser.parse_args().slug
    try:
        for slug in named or slugs():
            build(slug)
    except VoiceMissingError as error:
        print(error, file=sys.stderr)
        return 2
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
