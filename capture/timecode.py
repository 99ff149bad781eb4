"""Times as a person reads them."""

from __future__ import annotations


def clock(seconds: float) -> str:
    """Seconds as "1:02:03" or "2:03", cut to whole seconds."""
    whole = max(int(seconds), 0)
    hours, minutes, rest = whole // 3600, whole // 60 % 60, whole % 60
    return f"{hours}:{minutes:02}:{rest:02}" if hours else f"{minutes}:{rest:02}"
