"""Style sheets and scripts: a closed list of files, so that no path of a request is ever looked up on the disk."""

from __future__ import annotations

from collections.abc import Mapping
from hashlib import sha256
from pathlib import Path

from starlette.datastructures import Headers
from starlette.exceptions import HTTPException
from starlette.responses import Response
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
    """Serves a closed list of files by name, from memory: a page of thirty small modules asks for them all at once."""

    def __init__(self, files: Mapping[str, Path]) -> None:
        self._files = {name: (_KINDS[path.suffix], path.read_bytes()) for name, path in files.items()}
        self._tags = {name: f'"{sha256(content).hexdigest()[:16]}"' for name, (_, content) in self._files.items()}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer with the file of that name."""
        name = scope["path"].removeprefix(scope.get("root_path", "")).lstrip("/")
        if name not in self._files or scope["method"] not in ("GET", "HEAD"):
            raise HTTPException(404)
        kind, content = self._files[name]
        # A script of the last version beside a page of this one would be worse than asking once more.
        headers = {"cache-control": "no-cache", "etag": self._tags[name]}
        known = Headers(scope=scope).get("if-none-match") == self._tags[name]
        answer = Response(status_code=304, headers=headers) if known else Response(content, 200, headers, kind)
        await answer(scope, receive, send)
