"""The steps of generated sessions: two jobs each, so that every procedure was done in several sessions."""

from __future__ import annotations

from collections.abc import Sequence

from extract.record import Step

THINGS = (
    "saddle", "nut", "tailpiece", "rib", "scroll", "peg", "lining", "purfling", "bracing", "heel", "tuner", "pickguard",
    "binding", "rosette", "fretboard", "neck", "pickup", "jack", "mainspring", "barrel", "pallet", "pinion", "arbor",
    "balance", "hairspring", "crutch", "hub", "spoke", "crank", "headset", "freewheel", "fork", "cone", "transformer",
    "choke", "capacitor", "socket", "leg", "stretcher", "drawer",
)  # fmt: skip
"""What is worked on, one thing a kind of job."""

_FIRST = (
    ("Slacken the {thing} and mask around it", "Heat the {thing} to {figure}",
     "Work the palette knife under the {thing}",
     "Scrape the old glue off the {thing}", "Glue the {thing} with hot hide glue and clamp it"),
    ("Measure the {thing}, it reads {figure}", "Remove the old {thing}", "Clean the seat of the {thing} with spirit",
     "Fit a new {thing}", "Tighten the {thing} to {figure}"),
    ("Mark the {thing} with a knife", "Rout a slot for the {thing}, {figure} deep", "File the {thing} to fit",
     "Press the {thing} home", "Polish the {thing} with a cloth"),
    ("Drain the {thing}", "Desolder the {thing} and pull it out", "Drill the hole of the {thing} to {figure}",
     "Solder in a new {thing}", "Test the {thing}, {figure}"),
)  # fmt: skip
_SECOND = (
    ("Check the {thing} with a straightedge", "Sand the {thing} to {figure}", "Oil the {thing}",
     "Leave the {thing} to dry"),
    ("Take the {thing} apart", "Broach the bore of the {thing}", "Grease the {thing}",
     "Put the {thing} together again"),
    ("Steam the {thing}", "Bend the {thing} over the iron", "Clamp the {thing} for {figure}", "Trim the {thing} flush"),
)  # fmt: skip
_OTHERS = 7
"""How far the second thing of a session lies from the first."""


def jobs_of(number: int, steps: Sequence[Step], figures: dict[str, str]) -> tuple[Step, ...]:
    """The steps with the words of two jobs of session `number`; `figures` tells how each measure is written.

    A step keeps its place on the film and its figures. The second job begins behind the fifth step.
    """
    thing, other = THINGS[number % len(THINGS)], THINGS[(number + _OTHERS) % len(THINGS)]
    turn = number // len(THINGS)
    texts = [(text, thing) for text in _FIRST[turn % len(_FIRST)]]
    texts += [(text, other) for text in _SECOND[turn % len(_SECOND)]]
    return tuple(_told(step, text, of, figures, number) for step, (text, of) in zip(steps, texts, strict=False))


def _told(step: Step, text: str, thing: str, figures: dict[str, str], number: int) -> Step:
    shown = next((figures[name] for name in reversed(step.measures) if name in figures), f"{1 + number % 9} mm")
    verb = text.split()[0].casefold()
    return step.model_copy(update={"text": text.format(thing=thing, figure=shown), "verb": verb, "object": thing})
