"""Mends the nesting of a note's markup, which a person may have written by hand.

What can't stand where it stands is unwrapped: takes a `<li>` outside of a list as its words, and `<em><ul>` as `<ul>`;
leaves out an empty heading. The places are those of the HTML standard, sections 4.4 to 4.9
(https://html.spec.whatwg.org/).
"""

from __future__ import annotations

from typing import Any

from lxml import html
from markupsafe import escape

_BLOCKS = frozenset(
    {
        "blockquote", "dd", "dl", "dt", "figcaption", "figure", "h3", "h4", "h5", "h6", "hr", "li", "ol", "p", "pre",
        "table", "ul",
    }
)  # fmt: skip
_INLINE = frozenset(
    {"abbr", "b", "code", "del", "em", "i", "ins", "kbd", "p", "pre", "q", "s", "small", "strong", "sub", "sup"}
)
"""May hold no block."""
_HEADINGS = frozenset({"h3", "h4", "h5", "h6"})
_WITHIN = {
    "li": {"ul", "ol"}, "dt": {"dl"}, "dd": {"dl"}, "figcaption": {"figure"}, "caption": {"table"},
}  # fmt: skip
"""Where alone these may stand."""


def mended(markup: str) -> str:
    """The markup, each element where it may stand; `markup` was sanitised, and is closed everywhere."""
    whole = html.fragment_fromstring(markup, create_parent="div")
    for element in list(whole.iterdescendants()):
        if not _may_stand(element):
            element.drop_tag()
        elif element.tag in _HEADINGS and not _tells(element):
            element.drop_tree()
    inside = (html.tostring(child, encoding="unicode") for child in whole)
    return "".join((str(escape(whole.text or "")), *inside))


def _may_stand(element: Any) -> bool:
    parent = element.getparent()
    if element.tag in _WITHIN and (parent is None or parent.tag not in _WITHIN[element.tag]):
        return False
    holds_a_block = any(inner.tag in _BLOCKS for inner in element.iterdescendants())
    return not (holds_a_block and element.tag in _INLINE | _HEADINGS)


def _tells(element: Any) -> bool:
    return bool(element.text_content().strip()) or element.find(".//img") is not None
