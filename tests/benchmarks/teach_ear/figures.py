"""Measures in many forms and trades, as they are said, for teaching. Wider than what the benchmark of hearing asks."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import gcd
from random import Random

from tests.benchmarks.spoken_measures.figures import PARTS
from tests.benchmarks.spoken_measures.figures import cardinal as words


@dataclass(frozen=True, slots=True)
class Line:
    """What a voice says, and what the ear should write."""

    spoken: str
    written: str


def _count(random: Random, low: int, high: int) -> str:
    number = random.randint(low, high)
    said = words(number)
    return said.replace(" and ", " ") if random.random() < 0.4 else said


def _part(random: Random, bottoms: tuple[int, ...] = (2, 4, 8, 8, 16, 16, 16, 32, 32, 32, 32, 64, 64, 64, 64)) -> str:
    bottom = random.choice(bottoms)
    top = random.choice([one for one in range(1, bottom) if gcd(one, bottom) == 1])
    if top > 1:
        return f"{words(top)} {PARTS[bottom]}s"
    article = random.choice(["one", "a", "a"])
    return f"{'an' if article == 'a' and bottom == 8 else article} {PARTS[bottom]}"


def fraction(random: Random) -> str:
    """ "eleven sixty-fourths", "a thirty-second of an inch", "quarter inch", "half an inch"."""
    manner = random.random()
    if manner < 0.08:
        return random.choice(["half an inch", "a half inch", "quarter inch", "a quarter inch", "three-quarter inch"])
    if manner < 0.13:
        return f"{words(random.choice([3, 5, 7, 9, 11, 13, 15]))} sixty-fourths"
    tail = random.choice(["", "", "", "", " of an inch", " inch"])
    return _part(random) + tail


def _mixed_number(random: Random, low: int = 1, high: int = 40) -> str:
    return f"{words(random.randint(low, high))} and {_part(random, (2, 2, 4, 4, 8, 8, 16, 16, 32, 64))}"


def mixed(random: Random) -> str:
    """ "two and three eighths inches", "an inch and a quarter", "twenty-five and a half"."""
    manner = random.random()
    if manner < 0.2:
        return f"an inch and {_part(random, (2, 4, 8, 16, 32))}"
    if manner < 0.3:
        return f"{words(random.randint(2, 9))} inches and {_part(random, (4, 8, 16, 32))}"
    return _mixed_number(random) + random.choice([" inches", " inches", " inch", ""])


def _spelled(random: Random, figures: str) -> str:
    nought = random.choice(["oh", "oh", "zero", "nought"])
    return " ".join(nought if one == "0" else words(int(one)) for one in figures)


def thousandths(random: Random) -> str:
    """ "twelve thou", "forty-two thousandths", "point oh one two", "oh forty-two", "half a thou", "a tenth"."""
    manner = random.random()
    number = random.choice([random.randint(1, 20), random.randint(2, 99), random.randint(10, 250)])
    if manner < 0.3:
        return f"{words(number)} thou"
    if manner < 0.55:
        return f"{words(max(number, 2))} thousandths" + random.choice(["", "", " of an inch"])
    if manner < 0.65:
        return f"{words(random.randint(1, 30))} and a half {random.choice(['thou', 'thousandths'])}"
    if manner < 0.72:
        return random.choice(["half a thou", "a thou", "a thousandth", "a couple of thou", "a tenth", "two tenths"])
    if manner < 0.78:
        return f"{random.choice(['oh', 'zero'])} {words(random.randint(10, 99))}"
    lead = random.choice(["", "", "zero ", "nought "])
    return f"{lead}point {_spelled(random, f'{random.randint(2, 250):03d}')}" + random.choice(
        ["", " inches", " of an inch"]
    )


def decimal(random: Random) -> str:
    """ "two point four millimetres", "nought point six five mil"."""
    places = random.choice([1, 1, 1, 2, 2, 3])
    whole = random.choice([0, random.randint(1, 9), random.randint(1, 60)])
    lead = random.choice(["", "nought ", "zero "]) if whole == 0 else words(whole) + " "
    rest = random.randrange(1, 10**places)
    unit = random.choice(["millimetres"] * 4 + ["mil", "mil", "inches", "centimetres", "metres", ""])
    return f"{lead}point {_spelled(random, f'{rest:0{places}d}')} {unit}".rstrip()


def metric(random: Random) -> str:
    """ "forty millimetres", "six hundred and fifty mil", "nine and a half centimetres", "a metre and a half"."""
    manner = random.random()
    if manner < 0.25:
        return f"{words(random.randint(1, 60))} and a half {random.choice(['millimetres', 'mil', 'centimetres'])}"
    if manner < 0.3:
        return random.choice(["half a millimetre", "a millimetre", "a metre and a half", "two metres", "half a mil"])
    number = _count(random, *random.choice([(2, 20), (2, 99), (100, 999)]))
    return f"{number} {random.choice(['millimetres', 'millimetres', 'millimetres', 'mil', 'centimetres'])}"


def feet(random: Random) -> str:
    """ "five foot two", "six feet three inches", "four and a half feet"."""
    number, inches = words(random.randint(2, 12)), random.randint(1, 11)
    manner = random.random()
    if manner < 0.15:
        return f"{number} and a half feet"
    if manner < 0.25:
        return f"{words(random.randint(3, 60))} feet"
    foot = random.choice(["foot", "feet"])
    if manner < 0.4:
        return f"{number} {foot} {words(inches)} and {_part(random, (2, 4, 8))}" + random.choice([" inches", ""])
    return f"{number} {foot} {words(inches)}" + random.choice([" inches" if inches > 1 else " inch", ""])


def radius(random: Random) -> str:
    """ "a twelve inch radius", "sixteen-foot radius", "a nine and a half radius"."""
    number = random.choice(
        [words(random.randint(3, 40)), _mixed_number(random, 3, 20), words(random.randint(100, 400))]
    )
    article = random.choice(["an" if number.startswith(("eight", "eleven")) else "a", ""])
    return f"{article} {number} {random.choice(['inch', 'inch', 'foot', 'millimetre'])} radius".strip()


def heat(random: Random) -> str:
    """ "two hundred and fifty degrees Fahrenheit", "sixty degrees"."""
    number = _count(random, *random.choice([(5, 40), (40, 99), (100, 480)]))
    return f"{number} degrees" + random.choice([" Celsius", " Fahrenheit", " centigrade", " C", "", ""])


def angle(random: Random) -> str:
    """ "twenty-five degrees", "a degree and a half"."""
    return random.choice(
        [
            f"{_count(random, 2, 90)} degrees",
            f"{words(random.randint(1, 20))} and a half degrees",
            "a degree and a half",
        ]
    )


def torque(random: Random) -> str:
    """ "forty newton metres", "fifteen foot-pounds"."""
    units = ["newton metres"] * 4 + ["foot pounds"] * 2 + ["inch pounds"] * 2 + ["inch ounces", "centinewton metres"]
    number = _count(random, *random.choice([(2, 20), (4, 99), (100, 250)]))
    point = f" point {words(random.randint(1, 9))}" if random.random() < 0.12 else ""
    return f"{number}{point} {random.choice(units)}"


_ELECTRIC = ("volts", "volts", "millivolts", "ohms", "k", "kilohms", "milliamps", "amps", "watts", "microfarads",
             "picofarads", "hertz", "megohms", "millihenries")  # fmt: skip
_WEIGHT = (
    "grams",
    "kilos",
    "pounds",
    "ounces",
    "kilograms",
    "millilitres",
    "litres",
    "psi",
    "bar",
    "pounds of tension",
)
_TIME = ("seconds", "minutes", "hours", "days", "rpm", "beats an hour", "turns", "percent", "cents", "teeth", "spokes",
         "grit", "coats", "strokes")  # fmt: skip


def _with_unit(random: Random, units: tuple[str, ...]) -> str:
    number = random.choice(
        [
            _count(random, 2, 20),
            _count(random, 2, 99),
            _count(random, 100, 480),
            f"{words(random.randint(1, 12))} and a half",
            f"{words(random.randint(0, 30))} point {words(random.randint(1, 9))}",
        ]
    )
    return f"{number} {random.choice(units)}"


def electric(random: Random) -> str:
    """ "two hundred and forty volts"."""
    return _with_unit(random, _ELECTRIC)


def weight(random: Random) -> str:
    """ "six and a half ounces"."""
    return _with_unit(random, _WEIGHT)


def time(random: Random) -> str:
    """ "twenty minutes"."""
    return _with_unit(random, _TIME)


def span(random: Random) -> str:
    """ "three to four sixty-fourths", "between ten and twelve thou", "two and a half to three millimetres"."""
    low = random.randint(1, 40)
    high = low + random.randint(1, 6)
    unit = random.choice(["thou", "millimetres", "sixteenths", "thirty-seconds", "sixty-fourths", "thousandths",
                          "sixteenths of an inch", "newton metres", "degrees", "minutes", "inches"])  # fmt: skip
    halves = [f"{words(one)} and a half" if random.random() < 0.12 else words(one) for one in (low, high)]
    if random.random() < 0.12:
        return f"{_part(random)} to {_part(random)}"
    return f"{halves[0]} {random.choice(['to', 'to', 'or'])} {halves[1]} {unit}"


LENGTHS: tuple[Callable[[Random], str], ...] = (
    fraction, fraction, fraction, mixed, mixed, thousandths, thousandths, decimal, metric, span,
)  # fmt: skip


def length(random: Random) -> str:
    """Any length."""
    return random.choice(LENGTHS)(random)


_MARKS = ("no", "no", "no", "sorry", "wait", "make that", "I mean", "no wait", "no sorry", "scratch that", "correction",
          "rather", "well", "hang on", "oh no")  # fmt: skip


def slip(random: Random) -> str:
    """A figure taken back in the same breath: "three, no, four sixteenths"."""
    mark = random.choice(_MARKS)
    if random.random() < 0.35:
        return f"{length(random)}, {mark}, {length(random)}"
    unit = random.choice(["thou", "millimetres", "newton metres", "degrees", "thirty-seconds", "sixty-fourths",
                          "sixteenths", "eighths", "thousandths", "inches", "ohms", "volts"])  # fmt: skip
    low, high = (1, 63) if unit != "sixteenths" else (1, 15)
    first, second = random.sample(range(low, high), 2)
    both = f" {unit}" if random.random() < 0.5 else ""
    return f"{words(first)}{both}, {mark}, {words(second)} {unit}"


SLOTS: dict[str, Callable[[Random], str]] = {
    "len": length, "frac": fraction, "mix": mixed, "thou": thousandths, "dec": decimal, "mm": metric, "ft": feet,
    "rad": radius, "heat": heat, "angle": angle, "torque": torque, "volt": electric, "wt": weight, "time": time,
    "span": span, "slip": slip,
}  # fmt: skip
