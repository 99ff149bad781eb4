"""`spokeshave procedure`: what was done in the same way on several jobs, and a person's say in it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from desk import options, ruling

if TYPE_CHECKING:
    from capture.shop import Shop
    from publish.procedures import Procedures
    from publish.procedures.rulings.model import Ruling


@click.group("procedure", short_help="Procedures over all sessions: list, show, rename, merge, split, pin, undo.")
def command() -> None:
    """Work on the procedure library: jobs that were done more than once, set beside one another.

    A procedure is named by its name, a part of that, or the name of its page. What you say is kept in the shop's
    procedures.json, which is only added to; the next `spokeshave publish` follows it.
    """


@command.command("list", short_help="All procedures, and what of your rulings has no place any more.")
@options.shop
@click.option("--once", is_flag=True, help="Those that were done in one session only, too.")
def list_(shop_folder: Path, once: bool) -> None:
    """List the procedures, those done most often first."""
    from desk.console import console
    from desk.procedures import line_of

    _, procedures, without_effect = _procedures(shop_folder)
    listed = [one for one in procedures.all if once or one.has_page]
    for one in sorted(listed, key=lambda one: (-one.sessions, one.name.casefold())):
        click.echo(line_of(one))
    if not listed:
        console.print("no procedure was done in more than one session yet; see --once", markup=False)
    for line in without_effect:
        console.print(line, markup=False)


@command.command("show", short_help="One procedure: steps, figures, sessions.")
@click.argument("name")
@options.shop
def show(name: str, shop_folder: Path) -> None:
    """Show procedure NAME with its steps over all sessions."""
    from desk.procedures import told
    from publish.procedures.rulings.giving import called

    _, procedures, _ = _procedures(shop_folder)
    for line in told(called(procedures, name)):
        click.echo(line)


@command.command("rename", short_help="Give a procedure a name.")
@click.argument("name")
@click.argument("new_name")
@options.shop
@ruling.by
def rename(name: str, new_name: str, shop_folder: Path, by: str) -> None:
    """Call procedure NAME by NEW_NAME from now on, whatever later sessions bring."""
    from extract.rulings import Hand
    from publish.procedures.rulings import giving

    shop, procedures, _ = _procedures(shop_folder)
    _give(shop, giving.rename(giving.called(procedures, name), new_name, Hand(by)))


@command.command("merge", short_help="Make one procedure of several.")
@click.argument("names", nargs=-1, required=True)
@options.shop
@ruling.by
def merge(names: tuple[str, ...], shop_folder: Path, by: str) -> None:
    """Make one procedure of NAMES; the first one's name and pinned version hold."""
    from extract.rulings import Hand
    from publish.procedures.rulings import giving

    shop, procedures, _ = _procedures(shop_folder)
    _give(shop, giving.merge([giving.called(procedures, name) for name in names], Hand(by)))


@command.command("split", short_help="Make two procedures of one.")
@click.argument("name")
@options.shop
@click.option("--session", "sessions", multiple=True, help="Set apart what this session did; may be given again.")
@click.option(
    "--from-step", type=click.IntRange(min=2), help="Set apart the steps from this number on, as `show` counts."
)
@click.option("--as", "new_name", default="", help="Name of what is set apart.")
@ruling.by
def split(
    name: str, shop_folder: Path, sessions: tuple[str, ...], from_step: int | None, new_name: str, by: str
) -> None:
    """Make two procedures of NAME: by session, or from a step on."""
    from extract.rulings import Hand
    from publish.procedures.rulings import giving

    if bool(sessions) == (from_step is not None):
        raise click.UsageError("say what is to be set apart: either --session or --from-step")
    shop, procedures, _ = _procedures(shop_folder)
    procedure = giving.called(procedures, name)
    if from_step is None:
        _give(shop, giving.split_by_sessions(procedure, sessions, new_name, Hand(by)))
    else:
        _give(shop, giving.split_by_step(procedure, from_step, new_name, Hand(by)))


@command.command("pin", short_help="Prefer one session's version; it gets a bench card.")
@click.argument("name")
@click.argument("session")
@options.shop
@ruling.by
def pin(name: str, session: str, shop_folder: Path, by: str) -> None:
    """Prefer the version of procedure NAME that SESSION did, named by its folder or a part of that."""
    from extract.rulings import Hand
    from publish.procedures.rulings import giving

    shop, procedures, _ = _procedures(shop_folder)
    _give(shop, giving.pin(giving.called(procedures, name), session, Hand(by)))


@command.command("unpin", short_help="Prefer no version any more.")
@click.argument("name")
@options.shop
@ruling.by
def unpin(name: str, shop_folder: Path, by: str) -> None:
    """Prefer no version of procedure NAME any more."""
    from extract.rulings import Hand
    from publish.procedures.rulings import giving

    shop, procedures, _ = _procedures(shop_folder)
    _give(shop, giving.unpin(giving.called(procedures, name), Hand(by)))


@command.command("undo", short_help="Take back a ruling; the last one where none is named.")
@click.argument("which", metavar="[RULING]", required=False)
@options.shop
@ruling.by
def undo(which: str | None, shop_folder: Path, by: str) -> None:
    """Take back RULING, named by its id or the beginning of that."""
    from capture.shop import Shop
    from extract.rulings import Hand
    from publish.procedures.rulings import giving
    from publish.procedures.rulings.log import ProcedureLog

    shop = Shop.open(shop_folder)
    _give(shop, giving.undo(ProcedureLog.of(shop).read().rulings, which, Hand(by)))


def _procedures(shop_folder: Path) -> tuple[Shop, Procedures, tuple[str, ...]]:
    from publish.procedures import procedures_of_shop, work_of

    shop, gathered = ruling.gathered(shop_folder)
    settings = shop.settings
    procedures, without_effect = procedures_of_shop(shop, [work_of(one.source, settings) for one in gathered])
    return shop, procedures, without_effect


def _give(shop: Shop, given: Ruling) -> None:
    from publish.procedures.rulings.log import ProcedureLog

    ruling.give(ProcedureLog.of(shop), given)
