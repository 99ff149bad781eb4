"""Pages of the local app as HTML: everything escaped, and a name that the page lacks raises."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from starlette.responses import HTMLResponse

_SHARED = Path(__file__).parent / "templates"


class Pages:
    """Renders the templates of one section; they may build on `app.html`."""

    def __init__(self, templates: Path) -> None:
        self._engine = Environment(
            loader=FileSystemLoader([templates, _SHARED]),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )

    def answer(self, template: str, status: int = 200, **context: Any) -> HTMLResponse:
        """The page made from a template."""
        return HTMLResponse(self._engine.get_template(template).render(context), status_code=status)
