"""`python -m demo_sessions.build [SLUG ...]`: make the recordings and truth.json of the demo sessions again."""

from __future__ import annotations

import argparse
import sys

from capture.files import write_atomic
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
    try:
        if path.suffix == ".mp4":
            write_film(half_made, film(script, recording), FPS, recording.samples)
        else:
            write_sound(half_made, recording.samples)
        half_made.replace(path)
    finally:
        half_made.unlink(missing_ok=True)
    write_atomic(session / "truth.json", truth.to_json())
    print(f"{slug}: {truth.duration:.0f} s, {path.stat().st_size / 1000:.0f} kB, {len(truth.measures)} measures")


def main(arguments: list[str] | None = None) -> int:
    """Build the sessions that are named, or all of them; 2 where a voice is missing."""
    parser = argparse.ArgumentParser(prog="python -m demo_sessions.build", description=__doc__)
    parser.add_argument("slug", nargs="*", help=f"a session to build ({', '.join(slugs())}); all where none is named")
    named = parser.parse_args(arguments).slug
    for slug in named:
        if slug not in slugs():
            parser.error(f"no demo session is called {slug!r}; there are {', '.join(slugs())}")
    try:
        for slug in named or slugs():
            build(slug)
    except VoiceMissingError as error:
        print(error, file=sys.stderr)
        return 2
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
