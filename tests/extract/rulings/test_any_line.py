"""Whatever lines a log holds, applying them raises nothing and keeps the record sound."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from extract.record import Record
from extract.rulings import Changes, Figure, Item, Portion, Ruling, apply
from extract.rulings.items import items_of
from extract.rulings.made import new_id
from extract.rulings.model import Add, Amend, Merge, Note, Pass, Redo, Reorder, Split, Stet, Strike, Undo
from tests.extract.rulings.bench import record

_IDS = [f"ruling-{number}" for number in range(8)]
_KNOWN = sorted(items_of(record()).values(), key=lambda one: one.id)
_KINDS = ("measure", "correction", "finding", "step", "follow_up", "doubt", "tool", "material")
_TEXTS = st.sampled_from(["", "Heat the plate to 140 °F", "7/64", "a\u2028b"])

ids = st.sampled_from(_IDS)
strange = st.builds(
    Item,
    kind=st.sampled_from(_KINDS),
    id=st.one_of(
        st.sampled_from([one.id for one in _KNOWN]),
        st.sampled_from(["m-99999999", "s-99999999-2", new_id("step", _IDS[0], 1), new_id("measure", _IDS[1])]),
    ),
    words=_TEXTS,
    start=st.floats(0, 100),
    cue=st.integers(0, 9),
)
items = st.one_of(st.sampled_from(_KNOWN), strange)
figures = st.builds(
    Figure,
    text=_TEXTS,
    value=st.fractions(-1000, 1000, max_denominator=64),
    unit=st.sampled_from([None, "inch", "degC", "newton * meter", "percent"]),
    tolerance=st.sampled_from([None, Fraction(1, 64)]),
    display=st.sampled_from(["7/64 in", "", "12"]),
)
changes = st.builds(
    Changes,
    figure=st.none() | figures,
    attribute=st.none() | _TEXTS,
    where=st.none() | _TEXTS,
    phase=st.sampled_from([None, "target"]),
    text=st.none() | _TEXTS,
    mode=st.sampled_from([None, "advice"]),
)
reasons = st.sampled_from([None, "said_wrong", "heard_wrong", "own_words"])
portions = st.builds(Portion, text=st.sampled_from(["one", "two"]), measures=st.sampled_from([None, ("m-0", "m-77")]))


def _add(ruling_id: str, on: Item, to: Changes, withdraws: Item | None) -> Add:
    """An added item has an id of its own, whatever else is wrong with it."""
    made = on.model_copy(update={"id": new_id(on.kind, ruling_id)})
    return Add(id=ruling_id, on=made, to=to, withdraws=withdraws)


lines = st.one_of(
    st.builds(Stet, id=ids, on=items),
    st.builds(Strike, id=ids, on=items),
    st.builds(Note, id=ids, on=items, text=st.just("hm")),
    st.builds(Amend, id=ids, on=items, to=changes, because=reasons, overrule=st.booleans()),
    st.builds(_add, ids, items, changes, st.none() | items),
    st.builds(Reorder, id=ids, on=items, after=st.none() | items),
    st.builds(Merge, id=ids, on=items, others=st.lists(items, min_size=1, max_size=3).map(tuple), text=_TEXTS),
    st.builds(Split, id=ids, on=items, into=st.lists(portions, min_size=2, max_size=3).map(tuple)),
    st.builds(Pass, id=ids, record=st.just("0")),
    st.builds(Undo, id=ids, of=ids),
    st.builds(Redo, id=ids, of=ids),
)


@settings(max_examples=200, deadline=None)
@given(st.lists(lines, max_size=10, unique_by=lambda one: one.id))
def test_nothing_in_a_log_raises(log: list[Ruling]) -> None:
    proofed = apply(record(), log)
    ruled = proofed.record
    assert proofed.machine == record()
    assert Record.model_validate_json(ruled.to_json()) == ruled
    assert {one.id for one in record().measures} <= {one.id for one in ruled.measures}
    assert [one.number for one in ruled.steps] == list(range(1, len(ruled.steps) + 1))
    for listed in (ruled.measures, ruled.corrections, ruled.findings, ruled.steps, ruled.doubts, ruled.follow_ups):
        assert len({one.id for one in listed}) == len(listed)
    assert apply(record(), log) == proofed
