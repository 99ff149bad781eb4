"""`spokeshave import`: a shop from an archive."""

from __future__ import annotations

from pathlib import Path

import click

from desk import options


@click.command("import", short_help="A shop from an archive that `export` wrote.")
@click.argument("archive", type=click.Path(path_type=Path))
@options.shop
def command(archive: Path, shop_folder: Path) -> None:
    """Make the shop in ARCHIVE anew in a new or empty folder, every file as it was packed.

    Each file is held against its checksum first; where one differs, nothing is made.
    """
    from capture.archive import import_shop
    from desk.console import sized

    with sized("Unpacking") as report:
        shop = import_shop(archive, shop_folder, report)
    click.echo(shop.root)
