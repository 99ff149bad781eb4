"""`spokeshave proof`: the page on which a person rules."""

from __future__ import annotations

from pathlib import Path

import click

from desk import options


@click.command("proof", short_help="Rule on what was heard, with its sound and picture at hand.")
@click.argument("session", required=False)
@options.shop
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="Port to serve on. Default: any that is free.")
@click.option("--no-browser", is_flag=True, help="Only print the address; open no browser.")
def command(session: str | None, shop_folder: Path, port: int, no_browser: bool) -> None:
    """Serve the proof page of SESSION, or the list of sessions, to this machine alone, until Ctrl-C.

    SESSION is the name of a session's folder, or a part of it that only one session has. The address, good for this run
    alone, goes to standard output.
    """
    from starlette.applications import Starlette

    from capture.shop import Shop
    from desk.app import make_app, serve
    from desk.console import console
    from desk.proof import proof_section, session_path

    shop = Shop.open(shop_folder)
    first = shop.session(session) if session else None
    start = session_path(first.slug) if first else "/proof/"

    def build(key: str, number: int) -> Starlette:
        return make_app([proof_section(shop, first)], key, number, start)

    def opened(address: str) -> None:
        click.echo(address)
        console.print("proof page open; end it with Ctrl-C", style="dim")
        if not no_browser:
            click.launch(address)

    serve(build, port, opened)
