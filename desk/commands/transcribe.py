"""`spokeshave transcribe`: only the words and when they were said."""

from __future__ import annotations

from pathlib import Path

import click

from desk import options


@click.command("transcribe", short_help="Only hear: the timed transcript of a recording.")
@click.argument("recording", type=click.Path(path_type=Path))
@click.option(
    "-o", "--output", type=click.Path(path_type=Path), default=None, help="Write here instead of standard output."
)
@click.option("--format", "form", type=click.Choice(["json", "vtt", "text"]), default="json", show_default=True)
@options.trade
@options.model
@options.device
def command(recording: Path, output: Path | None, form: str, trade: str | None, model: str | None, device: str) -> None:
    """Hear RECORDING and print its transcript: JSON with a time a word, WebVTT captions, or plain text."""
    from capture import check_readable, checkpoint_home, transcript_as
    from capture.files import write_atomic
    from desk.console import progress
    from desk.work import Hearing, transcribe

    check_readable(recording)
    with progress("Hearing") as report:
        heard = transcribe(recording, Hearing(model, device), checkpoint_home(recording), trade or "", report)
    written = transcript_as(heard, form)
    if output is None:
        click.echo(written)
    else:
        write_atomic(output, written)
