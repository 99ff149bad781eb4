"""`spokeshave find`: what was said, measured or done, in all sessions."""

from __future__ import annotations

import json
from dataclasses import asdict
from itertools import groupby
from pathlib import Path

import click

from desk import options


@click.command("find", short_help="Find figures, steps, errata and words in all sessions; knows units.")
@click.argument("question", nargs=-1, required=True)
@options.shop
@click.option("--most", type=click.IntRange(1, 1000), default=50, show_default=True, help="Show so many at most.")
@click.option("--json", "as_json", is_flag=True, help="Print what was found as JSON.")
def command(question: tuple[str, ...], shop_folder: Path, most: int, as_json: bool) -> None:
    """Look for QUESTION: words, figures or both.

    "saddle slot 3/32" also finds 2.4 mm; "radius > 10 ft" (or: over 10 ft) finds every larger one.
    """
    from capture.shop import Shop
    from desk.console import clock, console
    from publish.find import Index, read_query, search

    shop = Shop.open(shop_folder)
    with Index.of(shop) as index:
        hits = search(index, read_query(" ".join(question)), most)
        for problem in index.problems:
            console.print(problem, markup=False)
    if as_json:
        click.echo(json.dumps([asdict(one) for one in hits], indent=1, ensure_ascii=False))
        return
    for (title, date), found in groupby(hits, key=lambda one: (one.title, one.date)):
        click.echo(f"{title} ({date})" if date else title)
        for one in found:
            at = "" if one.start is None else clock(one.start)
            click.echo(f"  {at:>7}  {one.sort}: {one.told}")
            click.echo(f"           {shop.public / one.href}")
    if not hits:
        console.print("nothing found")
