"""`spokeshave extract`: the record of a timed transcript."""

from __future__ import annotations

from pathlib import Path

import click

from desk import options


@click.command("extract", short_help="Only extract: the repair record of a timed transcript.")
@click.argument("narration", type=click.Path(path_type=Path))
@options.trade
@options.as_json
def command(narration: Path, trade: str | None, as_json: bool) -> None:
    """Read NARRATION (WebVTT, SRT or a transcript of our own) and print its repair record. Needs no shop."""
    from capture import read_captions
    from desk.report import print_record
    from desk.work import record_of

    record = record_of(read_captions(narration), trade)
    if as_json:
        click.echo(record.to_json())
    else:
        print_record(record)
