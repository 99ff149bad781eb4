"""Records for other programs: Markdown to read, JSON whole, CSV with a line a figure.

All three are of the records as a person passed them.
"""

from collections.abc import Callable, Sequence

from publish.exports.markdown import as_markdown
from publish.exports.tables import as_csv, as_json
from publish.source import SessionSource

FORMS: dict[str, Callable[[Sequence[SessionSource]], str]] = {"csv": as_csv, "json": as_json, "markdown": as_markdown}
"""Each form by name."""

__all__ = ["FORMS", "as_csv", "as_json", "as_markdown"]
