"""`spokeshave kit`: what tools and materials are called in the whole shop, and a person's say in it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from desk import options, ruling

if TYPE_CHECKING:
    from capture.shop import Shop
    from publish.kit import Kit
    from publish.kit.rulings.model import Ruling

_as = click.option("--as", "new_name", default="", help="What it is called from now on.")


@click.group("kit", short_help="Tools and materials over all sessions: list, show, rename, merge, split, undo.")
def command() -> None:
    """Work on the shop's kit: tools and materials, each under one name on every page.

    A thing is named by its name, by what was said for it, or by a part of its name; "tool" or "material" before the
    name tells two apart. What was said stays shown at its seconds. What you say is kept in the shop's kit.json, which
    is only added to; the next `spokeshave publish` follows it.
    """


@command.command("list", short_help="All tools and materials, and what of your rulings has no place any more.")
@options.shop
def list_(shop_folder: Path) -> None:
    """List the kit, tools first, with what was said for each thing."""
    from desk.console import console, printable
    from desk.kit import line_of
    from publish.kit import Names, log_of

    shop, kit = _kit(shop_folder)
    for one in kit:
        click.echo(line_of(one))
    if not kit:
        console.print("no session names a tool or a material yet", markup=False)
    log = log_of(shop)
    for line in (*Names.by(log.rulings).without_effect(said for one in kit for said in one.said), *log.told):
        console.print(printable(line), markup=False)


@command.command("show", short_help="One thing: every session and second that names it.")
@click.argument("name")
@options.shop
def show(name: str, shop_folder: Path) -> None:
    """Show the tool or material NAME with all its seconds, each under what was said there."""
    from desk.kit import told
    from publish.kit.rulings.giving import called

    _, kit = _kit(shop_folder)
    for line in told(called(kit, name)):
        click.echo(line)


@command.command("rename", short_help="Give a tool or material a name.")
@click.argument("name")
@click.argument("new_name")
@options.shop
@ruling.by
def rename(name: str, new_name: str, shop_folder: Path, by: str) -> None:
    """Call NAME by NEW_NAME in the whole shop, whatever is said for it."""
    from extract.rulings import Hand
    from publish.kit.rulings import giving

    shop, kit = _kit(shop_folder)
    _give(shop, giving.rename(kit, giving.called(kit, name), new_name, Hand(by)))


@command.command("merge", short_help="Make one thing of several.")
@click.argument("names", nargs=-1, required=True)
@options.shop
@_as
@ruling.by
def merge(names: tuple[str, ...], shop_folder: Path, new_name: str, by: str) -> None:
    """Make one tool or material of NAMES; the first one's name holds, unless --as gives another."""
    from extract.rulings import Hand
    from publish.kit.rulings import giving

    shop, kit = _kit(shop_folder)
    _give(shop, giving.merge(kit, [giving.called(kit, name) for name in names], new_name, Hand(by)))


@command.command("split", short_help="Make two things of one: take a merge apart.")
@click.argument("name")
@click.argument("said", nargs=-1, required=True)
@options.shop
@_as
@ruling.by
def split(name: str, said: tuple[str, ...], shop_folder: Path, new_name: str, by: str) -> None:
    """Set apart from NAME what was called SAID in its sessions; --as names that, else it is called so."""
    from extract.rulings import Hand
    from publish.kit.rulings import giving

    shop, kit = _kit(shop_folder)
    _give(shop, giving.split(kit, giving.called(kit, name), said, new_name, Hand(by)))


@command.command("undo", short_help="Take back a ruling; the last one where none is named.")
@click.argument("which", metavar="[RULING]", required=False)
@options.shop
@ruling.by
def undo(which: str | None, shop_folder: Path, by: str) -> None:
    """Take back RULING, named by its id or the beginning of that."""
    from capture.shop import Shop
    from extract.rulings import Hand
    from publish.kit import log_of
    from publish.kit.rulings import giving

    shop = Shop.open(shop_folder)
    _give(shop, giving.undo(log_of(shop).rulings, which, Hand(by)))


def _kit(shop_folder: Path) -> tuple[Shop, Kit]:
    from publish.kit import kit_of

    shop, gathered = ruling.gathered(shop_folder)
    return shop, kit_of(one.source for one in gathered)


def _give(shop: Shop, given: Ruling) -> None:
    from publish.kit.rulings.log import KitLog

    ruling.give(KitLog.of(shop), given)
