"""`spokeshave record`: record at the bench."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import click

from desk import options


@click.command("record", short_help="Record at the bench, mark moments, have it written up.")
@options.shop
@click.option(
    "--port",
    type=click.IntRange(0, 65535),
    default=None,
    help="Port to serve on. Default: that of a recording which was cut off, or any that is free.",
)
@click.option("--no-browser", is_flag=True, help="Only print the address; open no browser.")
@click.option(
    "--mic",
    is_flag=False,
    flag_value="",
    default=None,
    metavar="[DEVICE]",
    help="Record sound in this terminal instead, from the usual microphone or the one whose name holds DEVICE.",
)
@click.option("--title", default="", help="Title of the session.")
@click.option("--subject", default="", help="What is on the bench; the same words join the sessions of one instrument.")
@options.trade
@options.model
@options.device
def command(
    shop_folder: Path,
    port: int | None,
    no_browser: bool,
    mic: str | None,
    title: str,
    subject: str,
    trade: str | None,
    model: str | None,
    device: Literal["auto", "cpu", "cuda"],
) -> None:
    """Record a session with microphone and camera, on a page that is served to this machine alone, until Ctrl-C.

    Each second is on the disk before the next is over. The address of the page, good for this run alone, goes to
    standard output.
    """
    from capture.shop import Shop
    from desk.record.command import record_in_browser
    from desk.record.section import Prefilled
    from desk.record.terminal import record_in_terminal
    from desk.work import Hearing, check_trade

    if trade:
        check_trade(trade)
    prefilled, hearing = Prefilled(title, subject, trade or ""), Hearing(model, device)
    if mic is None:
        record_in_browser(Shop.open_or_create(shop_folder), port, prefilled, hearing, open_browser=not no_browser)
    else:
        record_in_terminal(shop_folder, mic, prefilled, hearing)
