"""What a person rules on procedures holds, whatever later sessions bring; undo gives back exactly what was."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from capture.shop import Shop
from extract.rulings import Hand, RulingError
from publish.procedures import Procedures, SessionWork, procedures_of
from publish.procedures.rulings import giving
from publish.procedures.rulings.log import ProcedureLog
from publish.procedures.rulings.model import Merge, Ruling, Split, Version, ruling_adapter
from publish.procedures.rulings.replay import steps_in
from tests.publish.procedures.invented import JOBS, three_bridges, work

ACTS = ("rename", "merge", "split", "pin", "unpin", "undo", "session")


def home(procedures: Procedures) -> dict[tuple[str, str], int]:
    """The procedure of each step."""
    return {
        (version.work.slug, step.id): at
        for at, one in enumerate(procedures.all)
        for version in one.versions
        for step in version.steps
    }


def places(procedures: Procedures, versions: tuple[Version, ...]) -> set[int]:
    where = home(procedures)
    return {where[key] for key in steps_in(versions)}


def ruled(works: list[SessionWork], rulings: list[Ruling], act: str, pick: int) -> Ruling | None:
    """A ruling of this kind, where one can be given."""
    found = procedures_of(works, rulings)
    one, other = found.all[pick % len(found.all)], found.all[(pick // 7 + 1) % len(found.all)]
    hand = Hand("Ada")
    try:
        if act == "rename":
            return giving.rename(one, f"Name {pick}", hand)
        if act == "merge":
            return giving.merge([one, other], hand)
        if act == "split":
            return giving.split_by_sessions(one, [one.versions[pick % len(one.versions)].work.slug], "", hand)
        if act == "pin":
            return giving.pin(one, one.versions[pick % len(one.versions)].work.slug, hand)
        if act == "unpin":
            return giving.unpin(one, hand)
        return giving.undo(rulings, None, hand)
    except RulingError:
        return None


def holds(found: Procedures, ruling: Ruling) -> bool:
    """Whether the last ruling is carried out."""
    if isinstance(ruling, Merge):
        return len(places(found, tuple(version for of in ruling.of for version in of))) == 1
    if isinstance(ruling, Split):
        return places(found, ruling.stay).isdisjoint(places(found, ruling.apart))
    if ruling.act == "undo":
        return True
    (at,) = places(found, ruling.of)
    one = found.all[at]
    if ruling.act == "rename":
        return one.name == ruling.name and one.by_hand
    if ruling.act == "pin":
        return one.pinned is not None and one.versions[one.pinned].work.slug == ruling.version.session
    return one.pinned is None


job = st.lists(st.sampled_from(JOBS), min_size=1, max_size=2)


@settings(max_examples=40, deadline=None)
@given(
    st.lists(job, min_size=2, max_size=4),
    st.lists(st.tuples(st.sampled_from(ACTS), st.integers(0, 40), job), max_size=8),
    st.lists(job, min_size=1, max_size=3),
)
def test_any_rulings_and_sessions_keep_what_a_person_said(
    first: list[list[tuple[str, ...]]],
    acts: list[tuple[str, int, list[tuple[str, ...]]]],
    later: list[list[tuple[str, ...]]],
) -> None:
    works = [work(f"2031-01-{at:02d}-s{at}", *jobs) for at, jobs in enumerate(first, 1)]
    rulings: list[Ruling] = []
    for act, pick, jobs in acts:
        if act == "session":
            works.append(work(f"2031-02-{len(works):02d}-s{len(works)}", *jobs))
            continue
        before = procedures_of(works, rulings)
        ruling = ruled(works, rulings, act, pick)
        if ruling is None:
            continue
        after = procedures_of(works, [*rulings, ruling])
        assert holds(after, ruling)
        if ruling.act != "undo":
            assert procedures_of(works, [*rulings, ruling, giving.undo([*rulings, ruling], None, Hand())]) == before
        rulings.append(ruling)
    settled = procedures_of(works, rulings)
    more = [work(f"2031-03-{at:02d}-n{at}", *jobs) for at, jobs in enumerate(later, 1)]
    grown = procedures_of([*works, *more], rulings)
    kept = home(grown)
    named = {one.name: home(settled) for one in settled.all if one.by_hand}
    for one in settled.all:
        if one.by_hand or one.pinned is not None:
            (at,) = {kept[version.work.slug, step.id] for version in one.versions for step in version.steps}
            assert not one.by_hand or grown.all[at].name == one.name
            if one.pinned is not None:
                pinned = grown.all[at].pinned
                assert pinned is not None
                assert grown.all[at].versions[pinned].work.slug == one.versions[one.pinned].work.slug
    assert len({one.name for one in grown.all if one.by_hand}) == len(named)
    assert grown.lost == ()


def test_what_was_set_apart_stays_apart_and_a_later_one_goes_to_the_liker() -> None:
    works = list(three_bridges())
    bridge = procedures_of(works).all[0]
    rulings = [giving.split_by_sessions(bridge, ["cedar"], "Quick bridge", Hand())]
    found = procedures_of([*works, work("2031-09-01-elm", JOBS[2])], rulings)
    quick = next(one for one in found.all if one.name == "Quick bridge")
    assert [version.work.slug[11:] for version in quick.versions] == ["cedar", "elm"]


def test_steps_from_one_on_can_be_set_apart() -> None:
    works = three_bridges()
    bridge = procedures_of(works).all[0]
    glue = next(at for at, stage in enumerate(bridge.stages, 1) if stage.typical.deed.act == "glue")
    found = procedures_of(works, [giving.split_by_step(bridge, glue, "Glue it down", Hand())])
    apart = next(one for one in found.all if one.name == "Glue it down")
    assert [[step.text for step in version.steps][-1][:5] for version in apart.versions] == ["Clamp"] * 3


def test_a_session_heard_again_under_other_ids_keeps_its_ruling_by_its_words() -> None:
    works = three_bridges()
    rulings = [giving.rename(procedures_of(works).all[0], "Reglue a bridge", Hand())]
    again = work("2031-01-01-ash", ("A word before", *JOBS[0]))
    found = procedures_of((again, *works[1:]), rulings)
    one = next(one for one in found.all if one.name == "Reglue a bridge")
    assert [step.text for step in one.versions[0].steps][-6:] == list(JOBS[0])
    assert found.lost == ()


def test_a_ruling_whose_session_is_gone_is_told_and_the_rest_holds() -> None:
    works = three_bridges()
    rulings = [giving.rename(procedures_of(works).all[0], "Reglue a bridge", Hand())]
    found = procedures_of(works[1:], rulings)
    assert next(one for one in found.all if one.by_hand).name == "Reglue a bridge"
    assert len(found.lost) == 6
    assert "2031-01-01-ash (the session is gone)" in found.lost[0]


def test_undoing_waits_for_what_builds_on_it() -> None:
    works = three_bridges()
    first = giving.rename(procedures_of(works).all[0], "One", Hand())
    second = giving.pin(procedures_of(works, [first]).all[0], "ash", Hand())
    with pytest.raises(RulingError, match="builds on it"):
        giving.undo([first, second], first.id, Hand())


@pytest.mark.parametrize(
    ("act", "problem"),
    [
        (lambda one: giving.rename(one, "  ", Hand()), "called nothing"),
        (lambda one: giving.merge([one, one], Hand()), "two different"),
        (lambda one: giving.split_by_sessions(one, ["ash", "birch", "cedar"], "", Hand()), "one of the two empty"),
        (lambda one: giving.split_by_step(one, 99, "", Hand()), "can't be split before"),
        (lambda one: giving.pin(one, "yew", Hand()), "no session that did it"),
        (lambda one: giving.unpin(one, Hand()), "is pinned"),
    ],
)
def test_what_can_t_be_ruled_is_told_in_a_line(act, problem: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(RulingError, match=problem) as told:
        act(procedures_of(three_bridges()).all[0])
    assert "\n" not in str(told.value)


def test_the_log_keeps_every_ruling_and_a_torn_line_harms_none(tmp_path: Path) -> None:
    log = ProcedureLog.of(Shop(tmp_path))
    ruling = giving.rename(procedures_of(three_bridges()).all[0], "Reglue", Hand("Ada"))
    log.append(ruling)
    with log.path.open("ab") as file:
        file.write(b'{"act": "merge", "of')
    second = log.append(giving.undo([ruling], None, Hand()))
    read = log.read()
    assert read.rulings == (ruling, second)
    assert [one.why for one in read.aside] == ["torn or damaged"]
    assert ruling_adapter.validate_json(ruling.model_dump_json()) == ruling
