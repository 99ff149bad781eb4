"""`spokeshave demo`: a shop with the demo sessions in it."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import click

from desk import options


@click.command("demo", short_help="Make a shop from the demo sessions, to look around in.")
@click.option(
    "--shop",
    "shop_folder",
    type=click.Path(path_type=Path),
    default=Path("demo-shop"),
    show_default=True,
    help="Folder of the demo shop; made where there is none.",
)
@options.model
@options.device
def command(shop_folder: Path, model: str | None, device: Literal["auto", "cpu", "cuda"]) -> None:
    """Do the whole job for three recordings of our own: two films of one instrument, and one of another trade.

    The people and instruments in them are invented, and so are their mistakes.
    """
    from desk.console import console, progress
    from desk.demo import demo_titles, write_up_demo
    from desk.report import report_session
    from desk.work import Hearing

    for slug, title in demo_titles():
        with progress(title) as report:
            done = write_up_demo(slug, shop_folder, Hearing(model, device), report)
        report_session(console, done)
    click.echo(shop_folder / "public" / "index.html")
