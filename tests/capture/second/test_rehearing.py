"""A moment heard alone: what is cut out of it, and that the sound of a figure can be heard by itself."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from capture.hearing import hear
from capture.model import SpeechModel
from capture.second import Doubt, Rival
from capture.second.deciding import Scored, decide, settled
from capture.second.rehearing import cut
from tests.capture.making import Maker


@pytest.mark.parametrize(
    ("heard", "stretch", "behind", "kept"),
    [
        ("sixteen thou thick, it", "sixteen hours", "thick. The", "sixteen thou"),
        ("forty-four thou of relief", "forty-fourth out of", "relief.", "forty-four thou of"),
        ("six thou thin it", "six out", "thick it", "six thou"),
        ("something else was said", "sixteen hours", "thick. The", ""),
        ("two eighths", "two eight", "", "two eighths"),
    ],
)
def test_what_stands_where_a_figure_stood(heard: str, stretch: str, behind: str, kept: str) -> None:
    assert " ".join(cut(heard.split(), stretch.split(), behind.split())) == kept


def test_only_a_figure_far_ahead_of_its_rivals_is_left_alone() -> None:
    first, rival = Scored("two", "", -1.0, 0.0), Scored("ten", "", -9.0, 0.0)
    assert settled(decide([first, rival], 0.9))
    assert not settled(decide([first, Scored("ten", "", -2.0, 0.0)], 0.9))
    assert not settled(decide([first], 0.9))


@pytest.mark.model
def test_a_moment_is_heard_again_by_itself(model: SpeechModel, make: Maker, tmp_path: Path) -> None:
    alone: list[Sequence[str]] = []

    def doubting(texts: Sequence[str]) -> list[Doubt]:
        def reread(others: Sequence[str]) -> list[Rival]:
            alone.append(others)
            return []

        at = next((at for at, text in enumerate(texts) if text == "to"), None)
        return [] if at is None else [Doubt(at + 1, at + 3, (), reread)]

    path = make.speech("Trim the cable to forty seven millimetres and cap it. Take it slowly with a sharp chisel.")
    hear(path, model=model, checkpoint_folder=tmp_path, rivals=doubting)
    (texts,) = alone
    assert any("forty" in text for text in texts), texts
    assert not any("cap" in text for text in texts)
