"""Random measures, said as people say them at a bench, with the value each one has."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from math import gcd
from random import Random

from num2words import num2words

PARTS = {2: "half", 4: "quarter", 8: "eighth", 16: "sixteenth", 32: "thirty-second", 64: "sixty-fourth"}


@dataclass(frozen=True, slots=True)
class Figure:
    """A measure: its words, and what a record must say of it."""

    said: str
    value: Fraction
    """The midpoint of a range."""
    unit: str
    """An expression that pint reads."""
    low: Fraction | None = None
    high: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Half:
    """A number without its unit: how it is said and what it is worth."""

    said: str
    value: Fraction


def cardinal(number: int) -> str:
    """A whole number in words, with British "and"."""
    return str(num2words(number, lang="en_GB")).replace(",", "")


def digits(number: int, *, nought: str) -> str:
    """The digits of a number one by one."""
    return " ".join(nought if figure == "0" else cardinal(int(figure)) for figure in str(number))


def part(top: int, bottom: int) -> str:
    """A proper fraction: "an eighth", "eleven sixty-fourths", "a half"."""
    name = PARTS[bottom]
    if top == 1:
        return f"{'an' if name[0] == 'e' else 'a'} {name}" if bottom < 16 else f"one {name}"
    return f"{cardinal(top)} {name}s"


def draw_part(random: Random, bottoms: tuple[int, ...]) -> tuple[int, int]:
    """A proper fraction in lowest terms, as bench rules are marked."""
    bottom = random.choice(bottoms)
    top = random.choice([one for one in range(1, bottom) if gcd(one, bottom) == 1])
    return top, bottom


def decimal(random: Random, low: int, high: int, places: int) -> Half:
    """A decimal between `low` and `high`: "two point four", "nought point six five", "point oh four"."""
    scale = 10**places
    number = random.randrange(low * scale + 1, high * scale)
    if number % 10 == 0:
        number += random.randrange(1, 10)
    whole, rest = divmod(number, scale)
    nought = random.choice(["oh", "oh", "zero"])
    lead = random.choice(["", "nought ", "zero "]) if whole == 0 else cardinal(whole) + " "
    said = " ".join(nought if one == "0" else cardinal(int(one)) for one in f"{rest:0{places}d}")
    return Half(f"{lead}point {said}", Fraction(number, scale))


def mixed(random: Random, low: int, high: int, bottoms: tuple[int, ...]) -> Half:
    """A whole number and a fraction: "thirteen and an eighth"."""
    whole = random.randint(low, high)
    top, bottom = draw_part(random, bottoms)
    return Half(f"{cardinal(whole)} and {part(top, bottom)}", whole + Fraction(top, bottom))


def _fraction(random: Random) -> Figure:
    top, bottom = draw_part(random, (4, 8, 8, 16, 16, 32, 32, 32, 64, 64, 64, 64))
    return Figure(part(top, bottom) + random.choice(["", "", " of an inch", " inch"]), Fraction(top, bottom), "inch")


def _mixed(random: Random) -> Figure:
    half = mixed(random, 1, 30, (2, 4, 8, 8, 8, 16, 16, 32))
    return Figure(f"{half.said} inches", half.value, "inch")


def _thousandths(random: Random) -> Figure:
    manner = random.choice(["thou", "thou", "thousandths", "half", "point"])
    number = random.choice([random.randint(2, 20), random.randint(21, 90)])
    if manner == "half":
        return Figure(f"{cardinal(number)} and a half thou", number + Fraction(1, 2), "thou")
    if manner == "point":
        return Figure(
            f"point oh {digits(number, nought='oh') if number > 9 else 'oh ' + cardinal(number)} inches",
            Fraction(number),
            "thou",
        )
    return Figure(f"{cardinal(number)} {manner}", Fraction(number), "thou")


def _decimal(random: Random) -> Figure:
    if random.random() < 0.25:
        half = decimal(random, 0, 1, random.choice([2, 3]))
        return Figure(f"{half.said} inches", half.value, "inch")
    half = decimal(random, *random.choice([(0, 1), (1, 5), (1, 20)]), random.choice([1, 1, 2]))
    return Figure(f"{half.said} {random.choice(['millimetres', 'millimetres', 'mil'])}", half.value, "millimeter")


def _metric(random: Random) -> Figure:
    manner = random.choice(["mm", "mm", "half", "hundreds", "cm"])
    if manner == "half":
        number = random.randint(2, 40)
        return Figure(f"{cardinal(number)} and a half millimetres", number + Fraction(1, 2), "millimeter")
    if manner == "cm":
        number = random.randint(3, 60)
        return Figure(f"{cardinal(number)} centimetres", Fraction(number), "centimeter")
    number = random.randint(101, 950) if manner == "hundreds" else random.randint(3, 99)
    return Figure(f"{cardinal(number)} millimetres", Fraction(number), "millimeter")


def _degrees(random: Random) -> Figure:
    if random.random() < 0.5:
        number = random.choice([random.randint(60, 99), random.randrange(100, 360, 5)])
        return Figure(f"{cardinal(number)} degrees Fahrenheit", Fraction(number), "degF")
    number = random.choice([random.randint(13, 95), random.randrange(100, 200, 5)])
    return Figure(f"{cardinal(number)} degrees {random.choice(['Celsius', 'centigrade'])}", Fraction(number), "degC")


def _torque(random: Random) -> Figure:
    unit, said, high = random.choice(
        [
            ("newton * meter", "newton metres", 60),
            ("newton * meter", "newton metres", 18),
            ("foot * force_pound", "foot pounds", 80),
            ("inch * force_pound", "inch pounds", 90),
        ]
    )
    number = random.randint(4, high)
    return Figure(f"{cardinal(number)} {said}", Fraction(number), unit)


def _feet(random: Random) -> Figure:
    feet, inches = random.randint(2, 9), random.randint(1, 11)
    foot = random.choice(["foot", "feet"])
    if random.random() < 0.3:
        half = mixed(random, inches, inches, (2, 4, 8))
        return Figure(f"{cardinal(feet)} {foot} {half.said} inches", feet * 12 + half.value, "inch")
    tail = "" if foot == "foot" and random.random() < 0.4 else " inch" if inches == 1 else " inches"
    return Figure(f"{cardinal(feet)} {foot} {cardinal(inches)}{tail}", Fraction(feet * 12 + inches), "inch")


def _range(random: Random) -> Figure:
    low = random.randint(2, 16)
    high = low + random.randint(1, 4)
    unit, said = random.choice([("thou", "thou"), ("millimeter", "millimetres"), ("inch", "sixteenths of an inch")])
    bottom = 16 if unit == "inch" else 1
    if bottom == 16:
        low, high = min(low, 10), min(high, 15) if low < 10 else 13
    ends = Fraction(low, bottom), Fraction(high, bottom)
    return Figure(f"{cardinal(low)} to {cardinal(high)} {said}", (ends[0] + ends[1]) / 2, unit, *ends)


def _radius(random: Random) -> Figure:
    if random.random() < 0.3:
        half = mixed(random, 5, 16, (2, 4))
        article = "an" if half.said.startswith(("eight", "eleven")) else "a"
        return Figure(f"{article} {half.said} inch radius", half.value, "inch")
    number = random.randint(6, 24)
    article = "an" if number in (8, 11, 18) else "a"
    return Figure(f"{article} {cardinal(number)} inch radius", Fraction(number), "inch")


KINDS: dict[str, Callable[[Random], Figure]] = {
    "fraction": _fraction,
    "mixed": _mixed,
    "thousandths": _thousandths,
    "decimal": _decimal,
    "metric": _metric,
    "degrees": _degrees,
    "torque": _torque,
    "feet": _feet,
    "range": _range,
    "radius": _radius,
}
