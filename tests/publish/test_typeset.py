"""Figures set as a printer would, and still copied as they were said."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markupsafe import escape

from publish.typeset import NARROW_SPACE, plain, typeset
from publish.wording import cited

_TAGS = re.compile(r"</?span[^>]*>")
HALF = '<span class="frac"><span>1</span>/<span>2</span></span>'


@pytest.mark.parametrize(
    ("said", "set_as"),
    [
        ("1/2 in", f"{HALF} in"),
        ("5/64", '<span class="frac"><span>5</span>/<span>64</span></span>'),
        ("about 3 1/2 in", f'about <span class="nobreak">3{NARROW_SPACE}{HALF}</span> in'),
        ("5 1/2\u00a0in, so", f'<span class="nobreak">5{NARROW_SPACE}{HALF}{NARROW_SPACE}in,</span> so'),
        ("12\u00a0mm (1/2\u00a0in)", f'12{NARROW_SPACE}mm <span class="nobreak">({HALF}{NARROW_SPACE}in)</span>'),
        ("0.012\u00a0in", f"0.012{NARROW_SPACE}in"),
        ("down to -5\u00a0°C", f"down to −5{NARROW_SPACE}°C"),
        ("a 2 x 4", "a 2 × 4"),
        ("at most 1 mg/m3", "at most 1 mg/m³"),
        ("38x89 mm", "38 × 89 mm"),
    ],
)
def test_sets(said: str, set_as: str) -> None:
    assert str(typeset(said)) == set_as


@pytest.mark.parametrize(
    "said", ["3/4/2024", "and/or", "9/8 time", "7/0", "1/129", "v1/2x", "1/2.5", "EL34/6CA7", "6-32 screw", "fret 3-5"]
)
def test_leaves_alone_what_is_no_fraction_of_a_unit(said: str) -> None:
    assert "span" not in typeset(said)
    assert "−" not in typeset(said)


@given(st.text(alphabet=st.one_of(st.sampled_from('0123456789/<>&" \u00a0.-x'), st.characters())))
def test_only_our_own_markup_is_added(text: str) -> None:
    assert _one_space(_TAGS.sub("", str(typeset(text)))) == _one_space(str(escape(plain(text))))


def _one_space(text: str) -> str:
    return text.replace(NARROW_SPACE, " ").replace("\N{NO-BREAK SPACE}", " ")


@given(st.integers(1, 127), st.integers(2, 128), st.integers(0, 99))
def test_what_is_copied_reads_as_it_was_said(above: int, below: int, whole: int) -> None:
    said = f"{whole} {above}/{below} in" if whole else f"{above}/{below} in"
    copied = _TAGS.sub("", str(typeset(said))).replace(NARROW_SPACE, " ")
    assert copied == said


def test_hostile_text_is_inert() -> None:
    assert typeset('<script>1/2</script>"') == f"&lt;script&gt;{HALF}&lt;/script&gt;&#34;"


@pytest.mark.parametrize(
    ("source", "told"),
    [
        ("common practice, no source; sources differ", "Common practice, no published source; sources differ."),
        ("common practice", "Common practice."),
        ("29 CFR 1910.107", "Source: 29 CFR 1910.107."),
    ],
)
def test_sources_are_told_in_a_sentence(source: str, told: str) -> None:
    assert cited(source) == told
