"""What a person calls a thing holds, whatever later sessions say; undo gives back exactly what was."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from capture.shop import Shop
from extract.rulings import Hand, RulingError
from publish.kit import Kit, Names
from publish.kit.rulings import giving
from publish.kit.rulings.log import KitLog
from publish.kit.rulings.model import Merge, Rename, Ruling, Said, Split, ruling_adapter
from publish.kit.rulings.replay import keyed
from publish.rulings.naming import same_letters
from tests.publish.hostile import HOSTILE
from tests.publish.kit.bench import BENCH, Named, kit, sources, told

FEELER, FILLER, GAUGE = "feeler", "filler gauge", "feeler gauge"
WORDS = (FEELER, FILLER, GAUGE, "Feelers", "string", "strings", "tape", "glue")
Bench = Sequence[tuple[str, Named, Named]]


def three_in_one() -> Merge:
    """The three names of one tool, put together under the last."""
    now = kit()
    things = [giving.called(now, name) for name in (GAUGE, FEELER, FILLER)]
    return giving.merge(now, things, GAUGE, Hand("Ada"))


def test_without_a_ruling_names_that_differ_by_case_and_plural_alone_are_one_thing() -> None:
    assert told(kit())["tool feeler gauge"] == ["feeler gauge", "Feeler Gauges"]
    assert told(kit())["tool feeler"] == ["feeler"]


def test_merged_names_are_one_thing_under_the_name_given() -> None:
    after = told(kit([three_in_one()]))
    assert after["tool feeler gauge"] == ["feeler", "filler gauge", "feeler gauge", "Feeler Gauges"]
    assert "tool feeler" not in after
    assert "tool filler gauge" not in after


def test_the_first_name_holds_where_none_is_given() -> None:
    now = kit()
    merged = giving.merge(now, [giving.called(now, FILLER), giving.called(now, FEELER)], "", Hand())
    assert told(kit([merged]))["tool filler gauge"] == ["feeler", "filler gauge"]


def test_a_later_session_falls_in_with_what_a_person_said() -> None:
    named: Named = {"Feelers": (0,), "filler gauges": (1,), "FEELER GAUGE": (2,)}
    after = kit([three_in_one()], (*BENCH, ("2031-05-01-later", named, {})))
    (one,) = (one for one in after if "2031-05-01-later" in {of.session for of in one.spoken})
    assert one.label == "tool feeler gauge"
    assert [of.said.name for of in one.spoken][-3:] == list(named)


def test_a_split_takes_a_merge_apart() -> None:
    merged = three_in_one()
    now = kit([merged])
    apart = giving.split(now, giving.called(now, GAUGE), [FILLER], "", Hand())
    after = told(kit([merged, apart]))
    assert after["tool filler gauge"] == ["filler gauge"]
    assert after["tool feeler gauge"] == ["feeler", "feeler gauge", "Feeler Gauges"]


def test_a_split_parts_what_the_machine_put_together_by_the_plural() -> None:
    bench: Bench = (("2031-01-01-a", {}, {"string": (1,)}), ("2031-01-02-b", {}, {"strings": (2,)}))
    now = kit((), bench)
    assert told(now) == {"material string": ["string", "strings"]}
    apart = giving.split(now, now[0], ["strings"], "string set", Hand())
    assert told(kit([apart], bench)) == {"material string": ["string"], "material string set": ["strings"]}
    kept = giving.split(now, now[0], ["strings"], "", Hand())
    assert told(kit([kept], bench)) == {"material string": ["string"], "material strings": ["strings"]}


def test_a_tool_and_a_material_can_be_one_thing() -> None:
    now = kit()
    tapes = [giving.called(now, "material tape"), giving.called(now, "tool tape")]
    after = kit([giving.merge(now, tapes, "masking tape", Hand())])
    assert told(after)["material masking tape"] == ["tape", "tape"]
    assert [(one.session[11:], one.said.sort) for one in giving.called(after, "masking tape").spoken] == [
        ("nut-slots", "material"),
        ("door", "tool"),
    ]


def test_the_record_keeps_what_was_said_with_its_cues_and_its_steps_follow() -> None:
    points = sources([three_in_one()])[1].record
    (one,) = (one for one in points.tools if one.name == GAUGE)
    assert one.cues == (1, 5)
    assert [(said.name, said.cues) for said in one.said] == [(FILLER, (1,)), (GAUGE, (5,))]
    assert points.steps[0].tools == (GAUGE,)
    assert points.steps[0].text == "Use the filler gauge"
    assert all(one.said == () for one in points.tools if one.name != GAUGE)


@pytest.mark.parametrize(
    ("wanted", "problem"),
    [
        ("feeler gage", "no tool or material is called 'feeler gage'; near it: “feeler gauge”"),
        ("theodolite", "no tool or material is called 'theodolite'; see `spokeshave kit list`"),
        ("", "no tool or material is called ''"),
        ("tape", "name one of: tool tape, material tape"),
        ("gauge", "name one of: tool feeler gauge, tool filler gauge"),
    ],
)
def test_a_name_that_means_none_or_several_is_told_with_those_near_it(wanted: str, problem: str) -> None:
    with pytest.raises(RulingError) as said:
        giving.called(kit(), wanted)
    assert problem in str(said.value)
    assert "\n" not in str(said.value)


@pytest.mark.parametrize(
    ("act", "problem"),
    [
        (lambda now, one: giving.rename(now, one, "  ", Hand()), "called nothing"),
        (lambda now, one: giving.rename(now, one, "a\x1b[31mred", Hand()), "can't be printed"),
        (lambda now, one: giving.rename(now, one, "\udcff", Hand()), "can't be printed"),
        (lambda now, one: giving.rename(now, one, "x" * 201, Hand()), "too long"),
        (lambda now, one: giving.rename(now, one, "Screwdrivers", Hand()), "“screwdriver” is called 'Screwdrivers'"),
        (lambda now, one: giving.merge(now, [one], "", Hand()), "two different"),
        (lambda now, one: giving.merge(now, [one, one], "", Hand()), "two different"),
        (lambda now, one: giving.split(now, one, [GAUGE, "feeler gauges"], "", Hand()), "one of the two empty"),
        (lambda now, one: giving.split(now, one, ["spanner"], "", Hand()), "no name said for “feeler gauge”"),
        (lambda now, one: giving.split(now, one, [GAUGE], "Feeler Gauges", Hand()), "is said for what stays"),
    ],
)
def test_what_can_t_be_ruled_is_told_in_a_line(act, problem: str) -> None:  # type: ignore[no-untyped-def]
    now = kit()
    with pytest.raises(RulingError, match=problem) as said:
        act(now, giving.called(now, GAUGE))
    assert "\n" not in str(said.value)


def test_undoing_waits_for_what_builds_on_it_and_for_a_name_given_away() -> None:
    first = three_in_one()
    now = kit([first])
    second = giving.rename(now, giving.called(now, GAUGE), "feeler set", Hand())
    with pytest.raises(RulingError, match="builds on it"):
        giving.undo([first, second], first.id, Hand())
    again = [giving.rename(kit(), giving.called(kit(), "spanner"), "wrench", Hand())]
    again.append(giving.rename(kit(again), giving.called(kit(again), "wrench"), "ring spanner", Hand()))
    again.append(giving.rename(kit(again), giving.called(kit(again), "screwdriver"), "wrench", Hand()))
    with pytest.raises(RulingError, match="would be called 'wrench'"):
        giving.undo(again, again[1].id, Hand())


def test_a_ruling_on_a_name_that_no_session_has_is_told_and_stays() -> None:
    names = Names.by([three_in_one()])
    there = [said for one in kit((), BENCH[1:]) for said in one.said]
    (line,) = names.without_effect(there)
    assert "“feeler gauge” has no place any more for the tool “feeler” (no session names it)" in line


name = st.sampled_from(WORDS) | st.text(max_size=12) | st.sampled_from(HOSTILE)
named = st.dictionaries(name, st.lists(st.integers(0, 5), min_size=1, max_size=2), max_size=4)
session = st.tuples(named, named)


def ruled(now: Kit, rulings: list[Ruling], act: str, pick: int, new: str) -> Ruling | None:
    """A ruling of this kind, where one can be given."""
    hand = Hand("Ada")
    try:
        if act == "undo":
            return giving.undo(rulings, None, hand)
        one, other = now[pick % len(now)], now[(pick // 7 + 1) % len(now)]
        if act == "rename":
            return giving.rename(now, one, new, hand)
        if act == "merge":
            return giving.merge(now, [one, other], new if pick % 2 else "", hand)
        return giving.split(now, one, [one.said[pick % len(one.said)].name], new if pick % 2 else "", hand)
    except (RulingError, ZeroDivisionError):
        return None


def homes(now: Kit) -> dict[tuple[str, str, str], str]:
    """What each name as said is and is called, session by session."""
    return {(one.session, one.said.sort, one.said.name): thing.label for thing in now for one in thing.spoken}


def homes_of(now: Kit, said: Sequence[Said]) -> set[str]:
    keys = set(keyed(said))
    return {label for (_, sort, word), label in homes(now).items() if (sort, same_letters(word)) in keys}


def holds(now: Kit, ruling: Ruling) -> bool:
    """Whether the last ruling is carried out."""
    if isinstance(ruling, Rename):
        (label,) = homes_of(now, ruling.of)
        return label.partition(" ")[2] == ruling.name
    if isinstance(ruling, Merge):
        return homes_of(now, [said for of in ruling.of for said in of]) == {f"{ruling.of[0][0].sort} {ruling.name}"}
    if isinstance(ruling, Split):
        (stay,), (apart,) = homes_of(now, ruling.stay), homes_of(now, ruling.apart)
        return (stay.partition(" ")[2], apart.partition(" ")[2]) == (ruling.kept, ruling.name)
    return True


@settings(max_examples=60, deadline=None)
@given(
    st.lists(session, min_size=1, max_size=3),
    st.lists(
        st.tuples(st.sampled_from(("rename", "merge", "split", "undo", "session")), st.integers(0, 60), name, session),
        max_size=8,
    ),
    session,
)
def test_any_rulings_and_sessions_keep_what_a_person_said(
    first: list[tuple[Named, Named]],
    acts: list[tuple[str, int, str, tuple[Named, Named]]],
    later: tuple[Named, Named],
) -> None:
    bench = [(f"2031-01-{at:02d}-s", *of) for at, of in enumerate(first, 1)]
    rulings: list[Ruling] = []
    for act, pick, new, more in acts:
        if act == "session":
            bench.append((f"2031-02-{len(bench):02d}-s", *more))
            continue
        before = kit(rulings, bench)
        ruling = ruled(before, rulings, act, pick, new)
        if ruling is None:
            continue
        after = kit([*rulings, ruling], bench)
        assert holds(after, ruling)
        if ruling.act != "undo":
            assert kit([*rulings, ruling, giving.undo([*rulings, ruling], None, Hand())], bench) == before
        # Nothing that is said gets lost, and every second stays.
        assert {(of.session, of.said, of.seconds) for one in after for of in one.spoken} == {
            (of.session, of.said, of.seconds) for one in kit((), bench) for of in one.spoken
        }
        rulings.append(ruling)
    settled, grown = kit(rulings, bench), kit(rulings, [*bench, ("2031-09-09-s", *later)])
    now = homes(grown)
    for key, label in homes(settled).items():
        thing = next(one for one in settled if one.label == label)
        assert not thing.by_hand or now[key] == label


def test_the_log_keeps_every_ruling_and_a_torn_line_harms_none(tmp_path: Path) -> None:
    log = KitLog.of(Shop(tmp_path))
    ruling = log.append(three_in_one())
    with log.path.open("ab") as file:
        file.write(b'{"act": "merge", "of')
    second = log.append(giving.undo([ruling], None, Hand()))
    read = log.read()
    assert read.rulings == (ruling, second)
    assert [one.why for one in read.aside] == ["torn or damaged"]
    assert ruling_adapter.validate_json(ruling.model_dump_json()) == ruling
