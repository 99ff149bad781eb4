"""`spokeshave writeup`: the whole job for one recording."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import Literal

import click

from desk import options


@click.command("writeup", short_help="A recording becomes a shop-notes page: hear, extract, check, publish.")
@click.argument("recording", type=click.Path(path_type=Path))
@options.shop
@click.option("--title", default=None, help="Title of the session. Default: the recording's name.")
@click.option(
    "--subject", default=None, help="What is on the bench; the same words join the sessions of one instrument."
)
@click.option(
    "--date", "day", type=click.DateTime(["%Y-%m-%d"]), default=None, help="Day of the work. Default: the recording's."
)
@options.trade
@options.model
@options.device
@options.as_json
def command(
    recording: Path,
    shop_folder: Path,
    title: str | None,
    subject: str | None,
    day: datetime | None,
    trade: str | None,
    model: str | None,
    device: Literal["auto", "cpu", "cuda"],
    as_json: bool,
) -> None:
    """Hear RECORDING (a film, a sound file or a caption file), extract and check its repair record, publish its page.

    Stopped half way, the same command goes on from where it was.
    """
    from desk.console import console, progress
    from desk.report import report_session
    from desk.work import Hearing, SessionChoice, write_up

    choice = SessionChoice(title, subject, day.date() if day else None, trade)
    with progress("Hearing") as report:
        done = write_up(recording, shop_folder, choice, Hearing(model, device), report)
    report_session(console, done)
    if as_json:
        click.echo(done.record.to_json())
