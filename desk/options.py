"""Options that several subcommands share, each written once."""

from __future__ import annotations

from pathlib import Path

import click

shop = click.option(
    "--shop",
    "shop_folder",
    type=click.Path(path_type=Path),
    default=Path("shop"),
    show_default=True,
    help="Folder of the shop; made where there is none.",
)
model = click.option(
    "--model",
    metavar="NAME_OR_FOLDER",
    default=None,
    help="Another faster-whisper model, by name or folder. Default: the Whisper base model that came with Spokeshave.",
)
device = click.option(
    "--device",
    type=click.Choice(["auto", "cpu", "cuda"]),
    default="auto",
    show_default=True,
    help="Where the speech model runs; auto takes a GPU where there is one.",
)
trade = click.option(
    "--trade", default=None, help="The trade whose words and figures apply. Default: guessed from the words."
)
as_json = click.option("--json", "as_json", is_flag=True, help="Print the record as JSON on standard output.")
