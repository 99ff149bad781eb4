"""The author's own words: notes.md as markup that can do no harm.

Headings are fitted below the page's own, pictures may only be files of the session's folder, and links may only lead to
web and mail addresses or to places beside the page.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING
from urllib.parse import quote, unquote

import markdown
import nh3
from markdown.extensions import Extension
from markdown.treeprocessors import Treeprocessor
from markupsafe import Markup

from publish.nesting import mended

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

PICTURES_FOLDER = "pictures"
"""Where the pictures of a note stand beside the page."""

_TOP_LEVEL = 3
_LOWEST_LEVEL = 6
_PICTURES = frozenset({".jpg", ".jpeg", ".png", ".webp", ".gif", ".avif"})
_TAGS = {
    "a", "abbr", "b", "blockquote", "br", "caption", "code", "dd", "del", "dl", "dt", "em", "figcaption",
    "figure", "h3", "h4", "h5", "h6", "hr", "i", "img", "ins", "kbd", "li", "ol", "p",
    "pre", "q", "s", "small", "strong", "sub", "sup", "table", "tbody", "td", "th", "thead", "tr",
    "ul",
}  # fmt: skip
_ATTRIBUTES = {"a": {"href", "title"}, "abbr": {"title"}, "img": {"src", "alt"}, "ol": {"start"}, "th": {"scope"}}
_SCHEMES = {"http", "https", "mailto"}
_PICTURE = re.compile(r'<img((?: [a-z]+="[^"]*")*)>')  # nh3 writes attributes in this form alone


@dataclass(frozen=True, slots=True)
class Note:
    """A note that is ready for the page."""

    html: Markup
    """Sanitised markup; empty where there is no note."""
    pictures: tuple[tuple[Path, str], ...]
    """Each picture file and its address beside the page, unquoted."""
    warnings: tuple[str, ...]
    """Pictures that were left out, a line each."""


def render_note(text: str, folder: Path) -> Note:
    """A Markdown text as markup; pictures are looked for in `folder`."""
    if not text.strip():
        return Note(Markup(), (), ())
    pictures = _Pictures(folder)
    raw = markdown.markdown(text, extensions=["tables", "fenced_code", "sane_lists", _FittedHeadings()])
    # Another parser than the sanitiser's mends the nesting, so that the sanitiser has the last word.
    clean = _clean(mended(_clean(raw, pictures.filter)))
    whole = _PICTURE.sub(_settle_picture, clean)
    return Note(Markup(whole), tuple(pictures.found.items()), tuple(pictures.warnings))  # noqa: S704 (nh3 cleaned it)


def _clean(markup: str, decide: Callable[[str, str, str], str | None] | None = None) -> str:
    return nh3.clean(
        markup,
        tags=_TAGS,
        attributes=_ATTRIBUTES,
        attribute_filter=decide,
        url_schemes=_SCHEMES,
        link_rel="noopener noreferrer",
    )


def _settle_picture(match: re.Match[str]) -> str:
    """Drop a picture that lost its source; give one without a description an empty one."""
    attributes = match.group(1)
    if ' src="' not in attributes:
        return ""
    return match.group(0) if ' alt="' in attributes else f'<img alt=""{attributes}>'


class _Pictures:
    """Decides which pictures stay, and remembers them."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder.resolve()
        self.found: dict[Path, str] = {}
        self.warnings: list[str] = []

    def filter(self, tag: str, attribute: str, value: str) -> str | None:
        """nh3's question about one attribute: its new value, or null to drop it."""
        if (tag, attribute) != ("img", "src"):
            return value
        named = PurePosixPath(unquote(value))
        path = (self._folder / named).resolve()
        if not path.is_relative_to(self._folder) or not path.is_file() or path.suffix.lower() not in _PICTURES:
            self.warnings.append(f"notes.md: picture {value!r} is no picture file of this session's folder; left out")
            return None
        name = "-".join(path.relative_to(self._folder).parts)
        self.found[path] = f"{PICTURES_FOLDER}/{name}"
        return quote(self.found[path])


class _FittedHeadings(Extension):
    """Moves a note's headings below the page's own."""

    def extendMarkdown(self, md: markdown.Markdown) -> None:  # noqa: N802 (the library's name)
        """Have the headings fitted when the whole text has been read."""
        md.treeprocessors.register(_FitHeadings(md), "fitted-headings", 0)


class _FitHeadings(Treeprocessor):
    """Starts headings at the third level and lets none go more than one level deeper than the one before."""

    def run(self, root: Element) -> None:
        """Rename the headings in place."""
        above = _TOP_LEVEL - 1
        for element in root.iter():
            if len(element.tag) == 2 and element.tag[0] == "h" and element.tag[1].isdigit():
                level = min(int(element.tag[1]) + _TOP_LEVEL - 1, above + 1, _LOWEST_LEVEL)
                element.tag, above = f"h{level}", level
