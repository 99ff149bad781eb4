"""Sessions of our own invention that name one tool in three ways, and rulings on them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

from capture.files import write_atomic
from capture.shop import SessionSettings, Shop, ShopSettings
from capture.transcript import Cue, Transcript
from extract.record import Mention, Record, SessionFacts, Step
from publish.kit import Kit, Names, as_called, kit_of
from publish.kit.rulings.model import Rename, Ruling, Said, Sort
from publish.source import SessionSource

SHOP = ShopSettings(title="Hollin Bank shop notes", author="Perpetua Sallow")
Named = Mapping[str, Sequence[int]]
"""Cues by name."""
BENCH: tuple[tuple[str, Named, Named], ...] = (
    ("2031-01-01-valves", {"feeler": (1, 3), "spanner": (2,)}, {"gasket paper": (4,)}),
    ("2031-02-01-points", {"filler gauge": (1,), "feeler gauge": (5,), "screwdriver": (2, 3)}, {"emery": (4,)}),
    ("2031-03-01-nut-slots", {"Feeler Gauges": (0,), "nut file": (2,)}, {"tape": (3,)}),
    ("2031-04-01-door", {"straightedge": (1,), "tape": (2,)}, {"glue": (3,), "emery": (5,)}),
)
"""Sessions with what they name: tools, then materials."""


def record(slug: str, tools: Named, materials: Named) -> Record:
    """A record that names these, with a step for each cue that names any."""
    at = sorted({cue for cues in (*tools.values(), *materials.values()) for cue in cues})
    facts = SessionFacts(title=slug[11:], date=slug[:10], subject="", trade=None, source="film.mp4", duration=60.0)
    return Record(
        session=facts,
        steps=tuple(_step(slug, number, cue, tools, materials) for number, cue in enumerate(at, 1)),
        tools=tuple(Mention(name=name, cues=tuple(cues)) for name, cues in tools.items()),
        materials=tuple(Mention(name=name, cues=tuple(cues)) for name, cues in materials.items()),
    )


def _step(slug: str, number: int, cue: int, tools: Named, materials: Named) -> Step:
    named = [tuple(name for name, cues in of.items() if cue in cues) for of in (tools, materials)]
    words = f"Use the {' and the '.join((*named[0], *named[1]))}"
    return Step(
        id=f"s-{slug}-{number}", number=number, cue_from=cue, cue_to=cue, start=cue * 10.0, end=cue * 10.0 + 5,
        quote=words, text=words, verb="use", object="", mode="done", tools=named[0], materials=named[1],
    )  # fmt: skip


def transcript(one: Record) -> Transcript:
    """What was said, a cue every ten seconds."""
    told = {step.cue_from: step.text for step in one.steps}
    cues = tuple(
        Cue(start=at * 10.0, end=at * 10.0 + 5, text=told.get(at, "Right, then."), words=()) for at in range(6)
    )
    return Transcript(source="film.mp4", duration=60.0, language="en", word_times="spread", cues=cues)


def sources(
    rulings: Iterable[Ruling] = (), bench: Sequence[tuple[str, Named, Named]] = BENCH
) -> tuple[SessionSource, ...]:
    """The sessions as rulings have them."""
    names = Names.by(rulings)
    records = [record(*one) for one in bench]
    return tuple(
        SessionSource(of[0], as_called(one, names), transcript(one)) for of, one in zip(bench, records, strict=True)
    )


def kit(rulings: Iterable[Ruling] = (), bench: Sequence[tuple[str, Named, Named]] = BENCH) -> Kit:
    """The things in them."""
    return kit_of(sources(rulings, bench))


def told(of: Kit) -> dict[str, list[str]]:
    """What is said for each thing, by what that is and is called."""
    return {one.label: [said.name for said in one.said] for one in of}


def by_hand(said: str, name: str, sort: Sort = "tool") -> Names:
    """The names where a person called what is said so by a name."""
    return Names.by([Rename(of=(Said(sort=sort, name=said),), name=name)])


def shop_on_disk(folder: Path) -> Shop:
    """A shop with the sessions in it."""
    shop = Shop.open_or_create(folder / "shop", SHOP)
    for slug, tools, materials in BENCH:
        one = record(slug, tools, materials)
        settings = {"title": one.session.title, "date": one.session.date}
        made = shop.add_session(SessionSettings.model_validate(settings))
        write_atomic(made.record_file, one.to_json())
        write_atomic(made.transcript_file, transcript(one).to_json())
    return shop
