"""What `spokeshave record` does once its words are read: the capture page, served until told to end."""

from __future__ import annotations

import shlex
from collections.abc import Callable

import click
from starlette.applications import Starlette

from capture.recording import CutOff, cut_off
from capture.shop import Shop
from desk.app import PortError, make_app, serve
from desk.console import console
from desk.proof import proof_section
from desk.record.bench import Bench
from desk.record.section import Prefilled, record_section
from desk.record.views import command_for, short
from desk.record.writing_up import WritingUp
from desk.work import Hearing


def record_in_browser(
    shop: Shop, port: int | None, prefilled: Prefilled, hearing: Hearing, *, open_browser: bool
) -> None:
    """Serve the capture page, and the proof page behind it, until told to end. Raises `PortError`."""
    interrupted = cut_off(shop)
    tell_cut_off(interrupted, shop)
    writing_up = WritingUp(shop.root, hearing)
    benches: list[Bench] = []

    def build(key: str, number: int) -> Starlette:
        again = shlex.join(["spokeshave", "record", "--shop", short(shop.root), "--port", str(number)])
        bench = Bench(shop, number)
        benches.append(bench)
        return make_app([record_section(bench, writing_up, prefilled, again), proof_section(shop)], key, number)

    def opened(address: str) -> None:
        click.echo(address)
        console.print("capture page open; end it with Ctrl-C", style="dim")
        if open_browser:
            click.launch(address)

    try:
        _serve(build, port, interrupted, opened)
    finally:
        writing_up.stop()
        for bench in benches:
            bench.close()


def tell_cut_off(interrupted: tuple[CutOff, ...], shop: Shop) -> None:
    """One line in the terminal for each recording that was cut off."""
    for one in interrupted:
        then = f" Write it up as it is: {command_for(one.session, shop.root)}" if one.size else ""
        console.print(one.line + then, markup=False)


def _serve(
    build: Callable[[str, int], Starlette],
    port: int | None,
    interrupted: tuple[CutOff, ...],
    opened: Callable[[str], None],
) -> None:
    """A page that was open when the server was killed looks for it on the same port, and goes on by itself there."""
    before = next((one.port for one in reversed(interrupted) if one.port), 0)
    try:
        serve(build, before if port is None else port, opened)
    except PortError:
        if port is not None or not before:
            raise
        serve(build, 0, opened)
