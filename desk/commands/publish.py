"""`spokeshave publish`: the site from the records."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

import click

from desk import options

SHOWN = 20
"""Warnings that are printed."""


@click.command("publish", short_help="Only publish: the shop's site from its records.")
@options.shop
@click.option(
    "--strict", is_flag=True, help="Fail, and leave the site as it is, while a statement must still be settled."
)
def command(shop_folder: Path, strict: bool) -> None:
    """Make the shop's public/ folder anew from its sessions."""
    import gc

    # Hundreds of thousands of small values live until the end; looking for cycles among them all the time finds none.
    gc.set_threshold(200_000)
    from capture.shop import Shop
    from publish import publish_shop

    published = publish_shop(Shop.open(shop_folder), strict=strict)
    for line in told(published.warnings):
        click.echo(line, err=True)
    click.echo(published.front)
    # Nor at the very end.
    gc.freeze()


def told(warnings: Sequence[str]) -> Iterator[str]:
    """The warnings that fit on a screen; the others as a number, since nobody reads a thousand lines."""
    yield from warnings[:SHOWN]
    left = len(warnings) - SHOWN
    if left > 0:
        yield f"and {left} more like these; `spokeshave proof` lists what waits in a session"
