"""Tools and materials as a person has them."""

from __future__ import annotations

from extract.rulings import Proofed, add, amend, strike, undo
from extract.rulings.items import kit_id
from tests.extract.rulings.bench import hand, proof, record

PLATE, CUP, GLUE = kit_id("tool", "heating plate"), kit_id("tool", "c cup"), kit_id("material", "hide glue")


def tools(proofed: Proofed) -> list[str]:
    return [one.name for one in proofed.record.tools]


def test_what_is_no_tool_is_struck() -> None:
    ruled = proof(strike(proof(), CUP, hand(1)))
    assert tools(ruled) == ["heating plate"]
    assert [one.item.words for one in ruled.struck] == ["c cup"]


def test_a_struck_tool_leaves_the_steps_too() -> None:
    assert proof(strike(proof(), PLATE, hand(1))).record.steps[1].tools == ()


def test_a_material_under_its_right_name_is_so_in_every_step() -> None:
    ruled = proof(amend(proof(), GLUE, {"text": "fish glue"}, hand(1)))
    assert [(one.name, one.cues) for one in ruled.record.materials] == [("fish glue", (3, 5))]
    assert ruled.record.steps[1].materials == ("fish glue",)


def test_a_name_may_be_put_right_twice() -> None:
    first = amend(proof(), GLUE, {"text": "fish glue"}, hand(1))
    second = amend(proof(first), GLUE, {"text": "bone glue"}, hand(2))
    assert [one.name for one in proof(first, second).record.materials] == ["bone glue"]


def test_a_tool_is_put_in_and_taken_back() -> None:
    given = add(proof(), "tool", 3.0, 3, "with the spatula", {"text": "spatula"}, hand(1))
    assert tools(proof(given)) == ["heating plate", "c cup", "spatula"]
    assert proof(given, undo(proof(given), given.id, hand(2))).record == record()
