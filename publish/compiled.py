"""Templates compiled once and kept in the user's cache: compiling them takes longer than printing a few pages."""

from __future__ import annotations

from contextlib import suppress
from hashlib import blake2b
from importlib.metadata import version
from pathlib import Path

from jinja2 import FileSystemBytecodeCache
from jinja2.bccache import Bucket

from capture.model_files import cache_folder


class _Kept(FileSystemBytecodeCache):
    """A cache that does no harm: what can't be read is compiled, what can't be written is not kept."""

    def load_bytecode(self, bucket: Bucket) -> None:
        try:
            super().load_bytecode(bucket)
        except (OSError, EOFError, ValueError, TypeError):
            bucket.reset()

    def dump_bytecode(self, bucket: Bucket) -> None:
        with suppress(OSError):
            super().dump_bytecode(bucket)


def compiled_templates() -> FileSystemBytecodeCache | None:
    """The cache; None where its folder can't be made.

    Jinja holds each template against its text; the folder is named by what else decides how one is compiled.
    """
    decides = Path(__file__).with_name("render.py").read_bytes() + version("jinja2").encode()
    folder = cache_folder() / "templates" / blake2b(decides, digest_size=8).hexdigest()
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError:
        return None
    return _Kept(str(folder))
