"""Style sheets and scripts: a closed list of files, so that no path of a request is ever looked up on the disk."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from starlette.exceptions import HTTPException
from starlette.responses import FileResponse
from starlette.types import Receive, Scope, Send

from publish.site import ASSETS as PUBLISHED_ASSETS

_KINDS = {".css": "text/css", ".js": "text/javascript", ".svg": "image/svg+xml"}


def files_in(folder: Path) -> dict[str, Path]:
    """The style sheets, scripts and drawings of a folder by their names."""
    return {path.name: path for path in sorted(folder.iterdir()) if path.suffix in _KINDS}


SHARED_FOLDER = Path(__file__).parent / "assets"
"""Scripts and style sheets of the app itself."""

SHARED = {**files_in(PUBLISHED_ASSETS), **files_in(SHARED_FOLDER)}
"""What every section may use, the look of the published pages included."""


class Files:
    """Serves a closed list of files by name."""

    def __init__(self, files: Mapping[str, Path]) -> None:
        self._files = files

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer with the file of that name."""
        name = scope["path"].removeprefix(scope.get("root_path", "")).lstrip("/")
        path = self._files.get(name)
        if path is None or scope["method"] not in ("GET", "HEAD"):
            raise HTTPException(404)
        # A script of the last version beside a page of this one would be worse than a few kilobytes more.
        answer = FileResponse(path, media_type=_KINDS[path.suffix], headers={"cache-control": "no-cache"})
        await answer(scope, receive, send)
