"""Workings: each rule of the bench with its numbers put in, ready to print.

Lengths go in and come out in inches, temperatures in °C, frequencies in Hz, pulls in N.
"""

from __future__ import annotations

from fractions import Fraction

from extract.working import arc, drills, frets, pitch, screws, strings, wire, wood
from extract.working.worked import Answer, Worked

_METRE = 0.0254
_MILLIMETRE = Fraction(10, 254)
_LAST_FRET = 36


def radius(chord: float, height: float) -> Worked:
    """The radius of the arc over a chord."""
    found = arc.radius(chord, height)
    return Worked(
        "Radius of an arc",
        (Answer("radius", found, "inch"), Answer("radius", found / 12, "foot")),
        f"height/2 + chord²/(8 × height) = {height:g}/2 + {chord:g}²/(8 × {height:g})",
        arc.SOURCE,
        ("An error in the height counts most: measure it with feeler gauges, not by eye.",),
    )


def rise(radius: float, chord: float) -> Worked:
    """How far an arc of a radius rises over a chord."""
    return Worked(
        "Rise of an arc over a chord",
        (Answer("rise", arc.sagitta(radius, chord), "inch"),),
        f"radius − √(radius² − chord²/4) = {radius:g} − √({radius:g}² − {chord:g}²/4)",
        arc.SOURCE,
    )


def fret_places(scale: float, last: int) -> Worked:
    """Frets 1 to `last`, each from the nut."""
    places = tuple(Answer(f"fret {n}", frets.from_nut(scale, n), "inch") for n in range(1, min(last, _LAST_FRET) + 1))
    return Worked(
        f"Frets of a {scale:g} in scale, from the nut",
        places,
        f"scale × (1 − 2^(−n/12)), scale = {scale:g} in",
        frets.SOURCE,
        ("Without compensation: the saddle stands farther back than the scale length.",),
    )


def string_tension(diameter: float, length: float, frequency: float) -> Worked:
    """The pull of a plain steel string."""
    mass = strings.mass_per_length(diameter * _METRE)
    pull = strings.tension(length * _METRE, frequency, mass)
    return Worked(
        "Pull of a plain steel string",
        (Answer("tension", pull, "newton"), Answer("weight a metre", mass * 1000, "gram")),
        f"μ (2 L f)² = {mass:.4g} kg/m × (2 × {length * _METRE:.4g} m × {frequency:.4g} Hz)²",
        strings.SOURCE,
        (f"Steel taken at {strings.STEEL_DENSITY:g} kg/m³; not for wound strings, gut or nylon.",),
    )


def wood_movement(width: float, name: str, before: float, after: float, cut: wood.Cut) -> Worked:
    """What a board's width does between two moistures."""
    kind = wood.wood_named(name)
    part = kind.tangential if cut == "flatsawn" else kind.radial
    return Worked(
        f"Movement of {cut} {kind.name}",
        (Answer("change of width", wood.movement(width, kind, before, after, cut), "inch"),),
        f"width × coefficient × change of moisture = {width:g} × {part:g} × ({after:g} − {before:g})",
        f"{wood.MOVEMENT_SOURCE}; coefficient: {kind.source}",
        ("A board that is not truly flat- or quartersawn moves less than this.",),
    )


def moisture(celsius: float, humidity: float) -> Worked:
    """The moisture that air brings wood to."""
    return Worked(
        "Moisture of wood in still air, given time",
        (Answer("moisture content", wood.moisture_content(celsius, humidity), "percent"),),
        f"at {celsius:.3g} °C and {humidity:g} % relative humidity",
        wood.MOISTURE_SOURCE,
    )


def drill(name: str) -> Worked:
    """The diameter of a drill by name."""
    found = drills.drill_named(name)
    source = drills.FRACTION_SOURCE if "/" in found.name else drills.SOURCE
    return Worked(
        f"Drill {found.name}", (Answer("diameter", float(found.inches), "inch", True),), "from the table", source
    )


def drill_for(inches: Fraction) -> Worked:
    """The drills nearest to a diameter."""
    found = drills.nearest_drills(inches)
    return Worked(
        "Drills nearest to that",
        tuple(Answer(one.name, float(one.inches), "inch", True) for one in found),
        "numbers, letters and 64ths, the nearest first",
        drills.SOURCE,
    )


def wire_gauge(text: str) -> Worked:
    """What a gauge number is in each system."""
    number = wire.gauge_number(text)
    found = wire.diameters(number)
    return Worked(
        f"Wire of gauge {text.strip()}",
        tuple(Answer(wire.gauges()[name].title, size, "inch", name != "american") for name, size in found.items()),
        "from the table of each system",
        "; ".join(wire.gauges()[name].source for name in found),
        ("Name the system: a gauge number alone is no size.",),
    )


def screw(number: int) -> Worked:
    """The body of a numbered screw."""
    return Worked(
        f"Screw number {number}",
        (Answer("body", float(screws.screw_diameter(number)), "inch", True),),
        f"0.060 + 0.013 × {number}",
        screws.NUMBER_SOURCE,
    )


def thread(name: str) -> Worked:
    """Diameter, pitch and tap drill of a thread."""
    found = screws.thread_named(name)
    return Worked(
        f"Thread {found.name}",
        (
            Answer("outside", float(found.diameter * _MILLIMETRE), "inch", True),
            Answer("pitch", float(found.pitch * _MILLIMETRE), "inch", True),
            Answer("threads to the inch", float(found.threads_per_inch), ""),
        ),
        f"pitch = 25.4 mm / {float(found.threads_per_inch):.4g} threads",
        found.source,
        (f"Tap drill: {found.tap}, by the usual charts.",) if found.tap else (),
    )


def note(name: str, a4: float) -> Worked:
    """The frequency of a note."""
    return Worked(
        f"Pitch of {name.strip()}",
        (Answer("frequency", pitch.hertz(name, a4), "hertz"),),
        f"{a4:g} Hz × 2^(semitones from A4 / 12)",
        pitch.SOURCE if a4 == pitch.STANDARD_A else f"equal temperament on A4 = {a4:g} Hz",
    )


def interval(frequency: float, against: float) -> Worked:
    """The cents between two frequencies."""
    return Worked(
        "Interval",
        (Answer("cents", pitch.cents(frequency, against), "cent"),),
        f"1200 × log₂({frequency:g} / {against:g})",
        pitch.CENTS_SOURCE,
    )
