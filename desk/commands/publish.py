"""`spokeshave publish`: the site from the records."""

from __future__ import annotations

from pathlib import Path

import click

from desk import options


@click.command("publish", short_help="Only publish: the shop's site from its records.")
@options.shop
@click.option(
    "--strict", is_flag=True, help="Fail, and leave the site as it is, while a statement must still be settled."
)
def command(shop_folder: Path, strict: bool) -> None:
    """Make the shop's public/ folder anew from its sessions."""
    import gc

    from capture.shop import Shop
    from publish import publish_shop

    # Hundreds of thousands of small values live until the end; looking for cycles among them all the time finds none.
    gc.set_threshold(200_000)
    published = publish_shop(Shop.open(shop_folder), strict=strict)
    if published.warnings:
        click.echo("\n".join(published.warnings), err=True)
    click.echo(published.front)
