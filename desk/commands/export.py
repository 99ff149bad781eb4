"""`spokeshave export`: a whole shop as one archive, or its records for other programs."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from desk import options

if TYPE_CHECKING:
    from capture.shop import Shop

_FORMS = ("archive", "csv", "json", "markdown")
_BY_SUFFIX = {".zip": "archive", ".csv": "csv", ".json": "json", ".md": "markdown"}


@click.command("export", short_help="The whole shop as one archive, or its records as Markdown, JSON or CSV.")
@click.argument("output", type=click.Path(path_type=Path))
@options.shop
@click.option("--form", type=click.Choice(_FORMS), help="Default: by the ending of OUTPUT (.zip, .csv, .json, .md).")
@click.option("--session", "slug", help="Only this session's record; not for an archive.")
def command(output: Path, shop_folder: Path, form: str | None, slug: str | None) -> None:
    """Write the shop to OUTPUT.

    An archive holds every file of the shop but the site, which `publish` makes again; `spokeshave import` makes
    the same shop of it anywhere. The other forms hold the records as you passed them: CSV has a line a figure.
    """
    from capture.shop import Shop

    chosen = form or _BY_SUFFIX.get(output.suffix.lower())
    if chosen is None:
        raise click.UsageError(f"what {output.name} should hold can't be told from its ending; say it with --form")
    if chosen == "archive":
        if slug is not None:
            raise click.UsageError("an archive is of the whole shop; leave --session out")
        _archive(Shop.open(shop_folder), output)
    else:
        _records(Shop.open(shop_folder), output, chosen, slug)
    click.echo(output)


def _archive(shop: Shop, output: Path) -> None:
    from capture.archive import export_shop
    from desk.console import console, sized

    with sized("Packing") as report:
        packed = export_shop(shop, output, report)
    for recording in packed.outside:
        console.print(f"{recording} lies outside the shop and is not in the archive; keep it with it", markup=False)


def _records(shop: Shop, output: Path, form: str, slug: str | None) -> None:
    from capture.errors import ShopError
    from capture.files import write_atomic
    from desk.console import console
    from publish.exports import FORMS
    from publish.gather import gather, gather_session

    if slug is None:
        gathered, problems = gather(shop)
    else:
        gathered, problems = (gather_session(shop.session(slug)),), ()
    for problem in problems:
        console.print(problem, markup=False)
    try:
        write_atomic(output, FORMS[form]([one.source for one in gathered]))
    except OSError as error:
        raise ShopError(output, f"can't be written ({error.strerror})", "name another place") from error
