"""The visible tables: every refusal has a phrase that it alone explains, every reason has a weight."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import extract.quantities as stage
from extract.numbers.grammar import parse
from extract.quantities.candidate import weigh
from extract.quantities.join import join
from extract.quantities.knowledge import knowledge
from extract.quantities.refusals import RULES, refused
from extract.quantities.scale import count_systems
from extract.quantities.scene import Scene
from extract.trade import load_trade
from tests.extract.marked import read

REFUSED = {
    "idiom": "that is half the battle",
    "name": "press it at fret 5",
    "clock": "i am off at quarter to six",
    "price": "i paid about 240 pounds",
    "cone": "the cones oh six and oh five",
    "thread": "a 1/4-20 tap",
    "thread count": "a quarter inch, twenty to the inch",
    "stamped": "stamped on the back plate, 1187",
    "abrasive": "a strip of two twenty round it",
    "size by name": "a three-quarter bass",
    "past": "it is 150 years old",
    "ratio": "about 3 in 10 of them",
    "wrap": "three turns of thread",
    "digits": "the bearing is six two",
    "called": "that's an 11",
    "year": "made in 1938",
    "pronoun": "the big one",
    "count": "nine spindles",
    "half": "cut it in quarter",
    "share": "a third of the way",
}


def reasons_in_code() -> set[str]:
    folder = Path(stage.__file__).parent
    code = "".join(path.read_text(encoding="utf-8") for path in folder.glob("*.py"))
    return set(re.findall(r'"(same_\w+|linked_\w+|form_\w+|own_unit|habit\w*|heat\w*|dual|typical)"', code))


@pytest.mark.parametrize("name", [name for name, _ in RULES])
def test_every_refusal_explains_a_phrase(name: str) -> None:
    doc = read((REFUSED[name],))
    tape, parsed = parse(doc)
    scene = Scene(doc, tape, load_trade("general"))
    drafts = join(tape, parsed)
    scene.learn(drafts, count_systems(drafts))
    assert name in {refused(scene, draft) for draft in drafts}


def test_every_reason_has_a_weight() -> None:
    assert reasons_in_code() <= set(knowledge().evidence.weights)


def test_an_unknown_reason_raises() -> None:
    with pytest.raises(KeyError):
        weigh({"luck": 1.0})
