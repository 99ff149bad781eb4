"""`spokeshave transcribe`: only the words and when they were said."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import click

from capture.writing import FORMS, explained, written
from desk import options


@click.command("transcribe", short_help="Only hear: the timed transcript of a recording.")
@click.argument("recording", type=click.Path(path_type=Path))
@click.option("-o", "--output", type=click.Path(path_type=Path), help="Write here instead of standard output.")
@click.option("--format", "form", type=click.Choice(FORMS), default="json", show_default=True)
@click.option("--explain", is_flag=True, help="Print each figure with its rivals, their scores and why, instead.")
@options.trade
@options.model
@options.device
def command(
    recording: Path,
    output: Path | None,
    form: str,
    explain: bool,
    trade: str | None,
    model: str | None,
    device: Literal["auto", "cpu", "cuda"],
) -> None:
    """Hear RECORDING and print its transcript: JSON with a time a word, WebVTT captions, or plain text."""
    from capture.files import write_atomic
    from desk.console import progress
    from desk.work import Hearing, check_readable, checkpoint_home, transcribe

    check_readable(recording)
    with progress("Hearing") as report:
        heard = transcribe(recording, Hearing(model, device), checkpoint_home(recording), trade or "", report)
    text = explained(heard) if explain else written(heard, form)
    if output is None:
        click.echo(text)
    else:
        write_atomic(output, text)
