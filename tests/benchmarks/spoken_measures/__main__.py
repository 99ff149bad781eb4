"""Prints the whole table as Markdown, or the sections that are named."""

from __future__ import annotations

from collections.abc import Callable

import click

from tests.benchmarks.spoken_measures import tables
from tests.benchmarks.spoken_measures.bench import Bench
from tests.benchmarks.spoken_measures.sentences import SIDES, Side
from tests.benchmarks.spoken_measures.speed import speed

SECTIONS: dict[str, Callable[[Bench], list[str]]] = {
    "measures": tables.measures,
    "calibration": tables.calibration,
    "words": tables.word_times,
    "speed": speed,
    "leaks": tables.leaks,
    "noise": tables.noise,
    "ablation": tables.ablation,
}
"""In the order of their weight, so that a run that is broken off has shown the most."""


@click.command()
@click.argument("sections", nargs=-1, type=click.Choice(list(SECTIONS)))
@click.option("--side", type=click.Choice(SIDES), default="held-out", show_default=True)
@click.option("--share", default=1.0, show_default=True, help="Of each voice's sentences, how many are heard.")
def main(sections: tuple[str, ...], side: Side, share: float) -> None:
    """Hear the corpus and print SECTIONS, all where none is named."""
    from capture.model import load_model
    from extract.pipeline import Extractor

    bench = Bench(load_model(), Extractor(), side, share)
    for name in sections or SECTIONS:
        click.echo("\n".join(SECTIONS[name](bench)))


if __name__ == "__main__":
    main()
