"""`spokeshave retraction`: which statement of an earlier session a later one takes back."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from desk import options

if TYPE_CHECKING:
    from desk.retracting import Found


@click.command("retraction", short_help="Say which statement of an earlier session a later one takes back.")
@click.argument("which", required=False, default="")
@options.shop
@click.option("--take", type=click.IntRange(min=1), help="The statement of that number is meant.")
@click.option("--none", "none", is_flag=True, help="None of the statements is meant.")
@click.option("--undo", is_flag=True, help="Take back what you said of it last.")
def command(shop_folder: Path, which: str, take: int | None, none: bool, undo: bool) -> None:
    """List what sessions take back of earlier ones, each with the statements that may be meant, the likeliest first.

    WHICH is the id of one of them, or its beginning. With --take, --none or --undo your ruling on it is kept; the
    next `publish` follows it.
    """
    from capture.shop import Shop
    from desk.retracting import found_in, rule

    asked = [name for name, given in (("--take", take), ("--none", none), ("--undo", undo)) if given]
    if len(asked) > 1:
        raise click.UsageError(f"{' and '.join(asked)} can't be given together")
    shop = Shop.open(shop_folder)
    found = [one for one in found_in(shop) if one.traced.correction.id.startswith(which)]
    if asked:
        if len(found) != 1 or not which:
            raise click.UsageError("name one retraction by its id; the list has them")
        rule(shop, found[0], take, undo=undo)
        found = [one for one in found_in(shop) if one.traced.correction.id == found[0].traced.correction.id]
    if not found:
        click.echo("no session takes back anything of an earlier one" if not which else f"no retraction {which}")
    for one in found:
        _tell(one)


def _tell(one: Found) -> None:
    from desk.console import console
    from desk.proof.elsewhere import TRACED
    from publish.moments import clock

    correction = one.traced.correction
    lines = [
        f"{correction.id}  {one.title}, {clock(correction.start)}: “{correction.withdraws.text}”",
        f"  read {correction.replacement}. {TRACED[one.traced.state]}",
    ]
    for number, candidate in enumerate(one.traced.candidates, start=1):
        mark = "*" if candidate == one.traced.chosen else " "
        where = f"{clock(candidate.item.start)} of {candidate.title}{f' ({candidate.date})' if candidate.date else ''}"
        lines += [f" {mark}{number}  {candidate.told}, at {where}", f"     {'; '.join(candidate.reasons)}"]
    for line in lines:
        console.print(line, markup=False, highlight=False)
