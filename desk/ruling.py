"""Giving rulings that hold for the whole shop, at the terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from pathlib import Path

    from capture.shop import Shop
    from extract.rulings.line_log import Given, LineLog
    from publish.gather import Gathered


def _hand(_context: click.Context, _option: click.Parameter, by: str) -> str:
    if not by.isprintable():
        from extract.rulings import RulingError

        raise RulingError(f"{by!r} has characters that can't be printed", "say who says so without them")
    return by


by = click.option("--by", default="", callback=_hand, help="Who says so; kept with the ruling.")


def gathered(shop_folder: Path) -> tuple[Shop, tuple[Gathered, ...]]:
    """The shop and its sessions; what can't be read is told."""
    from capture.shop import Shop
    from desk.console import console
    from publish.gather import gather

    shop = Shop.open(shop_folder)
    found, problems = gather(shop)
    for problem in problems:
        console.print(problem, markup=False)
    return shop, found


def give(log: LineLog[Given], ruling: Given) -> None:
    """Keep a ruling, and tell it with its id once it is on the disk."""
    log.append(ruling)
    click.echo(f"{getattr(ruling, 'act', 'ruled')} {ruling.id}")
