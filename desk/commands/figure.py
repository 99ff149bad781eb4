"""`spokeshave figure`: the working figures of the bench, with their working and source."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

import click

if TYPE_CHECKING:
    from extract.working import Worked


@click.group("figure", short_help="Work out a figure of the bench: arcs, frets, drills, wire, wood ...")
def command() -> None:
    """Work out a figure of the bench, and show how, with the source of the rule.

    Figures are written as you would say them, in quotes: "14 in", "3/32 in", "650 mm",
    "15 ft". A bare length is in inches.
    """


@command.command("radius")
@click.argument("chord")
@click.argument("height")
def radius(chord: str, height: str) -> None:
    """Radius of an arc that rises HEIGHT over CHORD."""
    from extract.working import workings

    _show(workings.radius(_inches(chord), _inches(height)))


@command.command("rise")
@click.argument("radius")
@click.argument("chord")
def rise(radius: str, chord: str) -> None:
    """How far an arc of RADIUS rises in the middle of CHORD: a dish, a fingerboard, a brace."""
    from extract.working import workings

    _show(workings.rise(_inches(radius), _inches(chord)))


@command.command("frets")
@click.argument("scale")
@click.option("--last", type=click.IntRange(1, 36), default=22, show_default=True, help="The last fret shown.")
def frets(scale: str, last: int) -> None:
    """Where the frets of a SCALE length lie, from the nut."""
    from extract.working import workings

    _show(workings.fret_places(_inches(scale), last))


@command.command("tension")
@click.argument("diameter")
@click.argument("length")
@click.argument("pitch")
def tension(diameter: str, length: str, pitch: str) -> None:
    """Pull of a plain steel string: its DIAMETER, speaking LENGTH, and PITCH (E4, or "330 Hz")."""
    from extract.working import workings

    _show(workings.string_tension(_inches(diameter), _inches(length), _hertz(pitch)))


@command.command("movement")
@click.argument("width")
@click.argument("wood")
@click.argument("before", type=click.FloatRange(0, 100))
@click.argument("after", type=click.FloatRange(0, 100))
@click.option("--quartersawn", "cut", flag_value="quartersawn", help="The board is quartersawn.")
@click.option("--flatsawn", "cut", flag_value="flatsawn", default="flatsawn", help="The board is flatsawn.  [default]")
def movement(width: str, wood: str, before: float, after: float, cut: Literal["flatsawn", "quartersawn"]) -> None:
    """How much a board of WIDTH and WOOD moves from BEFORE to AFTER percent of moisture."""
    from extract.working import workings

    _show(workings.wood_movement(_inches(width), wood, before, after, cut))


@command.command("moisture")
@click.argument("temperature")
@click.argument("humidity", type=click.FloatRange(0, 100))
def moisture(temperature: str, humidity: float) -> None:
    """Moisture that wood comes to at TEMPERATURE ("70 F") and HUMIDITY percent."""
    from extract.working import workings

    _show(workings.moisture(_in(temperature, "degC", None), humidity))


@command.command("drill")
@click.argument("name")
def drill(name: str) -> None:
    """Diameter of a drill NAME (#7, F, 13/64), or the drills nearest to a diameter ("5 mm", "0.2 in")."""
    from fractions import Fraction

    from extract.working import workings
    from extract.working.worked import WorkingError

    try:
        _show(workings.drill(name))
    except WorkingError:
        if not any(sign.isdigit() for sign in name) or name.lstrip().startswith("#"):
            raise
        _show(workings.drill_for(Fraction(_inches(name)).limit_denominator(10**6)))


@command.command("wire")
@click.argument("gauge")
def wire(gauge: str) -> None:
    """Diameter of a wire GAUGE in each system that has it."""
    from extract.working import workings

    _show(workings.wire_gauge(gauge))


@command.command("screw")
@click.argument("number", type=click.IntRange(0, 24))
def screw(number: int) -> None:
    """Body diameter of a screw NUMBER."""
    from extract.working import workings

    _show(workings.screw(number))


@command.command("thread")
@click.argument("name")
def thread(name: str) -> None:
    """Diameter, pitch and tap drill of a thread: M6, 1/4-20, #10-32."""
    from extract.working import workings

    _show(workings.thread(name))


@command.command("pitch")
@click.argument("note")
@click.option(
    "--a4", type=click.FloatRange(300, 600), default=440.0, show_default=True, help="What A4 is tuned to, in Hz."
)
def pitch(note: str, a4: float) -> None:
    """Frequency of a NOTE: A4, F#3, Bb2."""
    from extract.working import workings

    _show(workings.note(note, a4))


@command.command("cents")
@click.argument("frequency")
@click.argument("against")
def cents(frequency: str, against: str) -> None:
    """Cents from AGAINST up to FREQUENCY, each a note or hertz."""
    from extract.working import workings

    _show(workings.interval(_hertz(frequency), _hertz(against)))


def _show(worked: Worked) -> None:
    from desk.workings import lines

    for line in lines(worked):
        click.echo(line)


def _inches(text: str) -> float:
    return _in(text, "inch", "inch")


def _hertz(text: str) -> float:
    from extract.working.pitch import hertz
    from extract.working.worked import WorkingError

    try:
        return hertz(text)
    except WorkingError:
        return _in(text, "hertz", "hertz")


def _in(text: str, unit: str, usual: str | None) -> float:
    """A typed figure in `unit`; a bare number is in `usual`, and refused where nothing is usual."""
    from fractions import Fraction

    from extract.rulings.figures import read_figure
    from extract.units import to_unit
    from extract.working.worked import WorkingError

    figure = read_figure(text, usual)
    if figure.unit is None:
        raise WorkingError(f"“{text}” has no unit", "write it too, as in 70 F or 21 C")
    return float(to_unit(Fraction(figure.value), figure.unit, unit))
