"""The procedure in schema.org terms, for machines that read pages.

HowTo, HowToStep, HowToTool, HowToSupply and CorrectionComment are types of schema.org; `correction` belongs to every
CreativeWork.
"""

from __future__ import annotations

from typing import Any

from jinja2.utils import htmlsafe_json_dumps
from markupsafe import Markup

from publish.context import Erratum
from publish.source import SessionSource


def linked_data(
    source: SessionSource, author: str, licence: str, address: str | None, errata: tuple[Erratum, ...]
) -> Markup:
    """JSON-LD for a script element: angle brackets and ampersands are written as escapes."""
    record = source.record
    document: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "HowTo",
        "name": record.session.title,
        "about": record.session.subject,
        "url": address,
        "author": {"@type": "Person", "name": author} if author else None,
        "dateCreated": record.session.date,
        "license": licence if licence.startswith("https://") else None,
        "step": [{"@type": "HowToStep", "position": one.number, "text": one.text} for one in record.steps],
        "tool": [{"@type": "HowToTool", "name": one.name} for one in record.tools],
        "supply": [{"@type": "HowToSupply", "name": one.name} for one in record.materials],
        "correction": [
            {"@type": "CorrectionComment", "text": f"For “{one.wrong}” read “{one.right}”"} for one in errata
        ],
    }
    return htmlsafe_json_dumps({key: value for key, value in document.items() if value}, ensure_ascii=False)
