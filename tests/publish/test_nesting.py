"""Markup of a person's own hand ends up as the HTML standard has it."""

from __future__ import annotations

import html5lib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from publish.nesting import mended


@pytest.mark.parametrize(
    ("written", "made"),
    [
        ("<p>A <b>word</b>.</p>", "<p>A <b>word</b>.</p>"),
        ("<li>alone</li>", "alone"),
        ("<em><ul><li>one</li></ul></em>", "<ul><li>one</li></ul>"),
        ("<h3></h3><p>a</p>", "<p>a</p>"),
        ('<h3><img alt="a" src="a.png"></h3>', '<h3><img alt="a" src="a.png"></h3>'),
        ("1 &lt; 2 &amp; 3", "1 &lt; 2 &amp; 3"),
        ("<p>1<br>2</p>", "<p>1<br>2</p>"),
        ("", ""),
    ],
)
def test_each_stands_where_it_may(written: str, made: str) -> None:
    assert mended(written) == made


_PIECES = st.sampled_from(
    [
        "<b>",
        "</b>",
        "<p>",
        "</p>",
        "<ul>",
        "</ul>",
        "<li>",
        "</li>",
        "<h3>",
        "</h3>",
        "<em>",
        "</em>",
        "a",
        " &lt;",
        "<br>",
    ]
)


@given(st.lists(_PIECES, max_size=12).map("".join))
def test_no_word_is_lost(text: str) -> None:
    def words(markup: str) -> str:
        return "".join(html5lib.parseFragment(markup, namespaceHTMLElements=False).itertext())

    assert words(mended(text)) == words(text)
