"""A session in which every free text tries to break out of the page."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from capture.shop import ShopSettings
from capture.transcript import Transcript
from extract.record import Record
from publish.source import SessionSource
from tests.publish.session import SHOP, source

HOSTILE = (
    "</title><script>window.broken = 1</script>",
    "\"><img src=x onerror='window.broken = 1'><b id=broken>",
    "' onfocus='window.broken = 1' autofocus='",
    "javascript:window.broken=1",
    "--> <!-- </script><script>window.broken = 1</script>",
    "{{ 7 * 7 }}{% raw %}",
    "\\u003cscript\\u003e\u2028\u202e]]>",
)

_FIXED = frozenset(
    {
        "schema_", "schema", "phase", "severity", "mode", "scope", "limit", "kind", "word_times", "date", "verdict",
        "because",
    }
)  # fmt: skip
"""Fields that only take fixed words, or are checked where they are read."""

_FIXED_WORDS = frozenset({"narration", "proof"})
"""What the source of a correction may be; other sources are free text."""


def hostile_source(text: str) -> SessionSource:
    """The invented session with `text` put before every free text, ids and references among them."""
    honest = source()
    assert honest.transcript is not None
    return replace(
        honest,
        slug=f"{text.replace('/', '')}slug",
        record=Record.model_validate(_poison(honest.record.model_dump(), text)),
        transcript=Transcript.model_validate(_poison(honest.transcript.model_dump(), text)),
        recording=f"{text.replace('/', '')}.webm",
    )


def hostile_shop(text: str) -> ShopSettings:
    """The shop's settings with `text` put before every free text."""
    fields = {"title": text, "author": text, "licence": text, "site_address": text, "trade": text}
    return SHOP.model_copy(update=fields)


def _poison(value: Any, text: str, field: str = "") -> Any:
    if isinstance(value, dict):
        return {key: _poison(one, text, key) for key, one in value.items()}
    if isinstance(value, list | tuple):
        return [_poison(one, text, field) for one in value]
    fixed = field in _FIXED or (field == "source" and value in _FIXED_WORDS)
    return f"{text}{value}" if isinstance(value, str) and not fixed else value
