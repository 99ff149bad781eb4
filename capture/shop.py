"""A shop on disk: its settings, its sessions, and who may write to them.

    shop/
      shop.toml                 a person's: title, author, trade, units, site address, licence of the notes
      sessions/<date>-<slug>/
        session.toml            a person's: title, subject, date, recording, trade
        notes.md                a person's words for the page, optional
        transcript.json         machine-made
        record.json             machine-made
      errata.json               machine-made: errata that were published, none ever dropped
      procedures.json           a person's rulings on the procedure library, only ever added to
      procedure-addresses.json  machine-made: addresses of procedures that were published, none ever dropped
      kit.json                  a person's rulings on what tools and materials are called, only ever added to
      public/                   the site, rebuilt at will

Machine output and a person's decisions never share a file.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from typing import Literal, TypeVar

import tomlkit
from filelock import FileLock, Timeout
from pydantic import BaseModel, ConfigDict, Field, ValidationError
from slugify import slugify
from tomlkit.exceptions import TOMLKitError

from capture.errors import SessionBusyError, ShopError
from capture.files import write_atomic
from capture.transcript import Transcript

Settings = TypeVar("Settings", bound=BaseModel)


class ShopSettings(BaseModel):
    """What a person sets for the whole shop, in shop.toml."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    format: Literal["spokeshave-shop/1"] = "spokeshave-shop/1"
    title: str = "Shop notes"
    author: str = ""
    trade: str = ""
    """Trade of sessions that name none; empty to guess it from the words."""
    units: Literal["as_said", "metric", "imperial"] = "as_said"
    """Which unit stands first on pages; `as_said` keeps the speaker's."""
    site_address: str = ""
    """Where the site will be found, for feeds and titles; empty where it stays at home."""
    licence: str = ""
    """Licence of the published notes."""
    text_room: int = Field(default=5000, ge=500)
    """Most characters of the text to set beneath a film."""


class SessionSettings(BaseModel):
    """What a person may set for one session, in session.toml."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    format: Literal["spokeshave-session/1"] = "spokeshave-session/1"
    title: str
    subject: str = ""
    """What is on the bench; sessions with the same subject belong to one instrument's history."""
    date: date
    recording: str = ""
    """The film or sound: a path relative to the session folder, or absolute."""
    trade: str = ""


class Session:
    """One session's folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    @property
    def slug(self) -> str:
        """Name of the folder: `<date>-<title>`."""
        return self.folder.name

    @property
    def settings(self) -> SessionSettings:
        """What session.toml says. Raises `ShopError` where it can't be read."""
        return _read_toml(self.folder / "session.toml", SessionSettings)

    @property
    def recording_file(self) -> Path | None:
        """The recording, where session.toml names one that exists."""
        named = self.settings.recording
        if not named:
            return None
        path = (self.folder / named).resolve()
        return path if path.is_file() else None

    @property
    def transcript_file(self) -> Path:
        """transcript.json, there or not yet."""
        return self.folder / "transcript.json"

    @property
    def record_file(self) -> Path:
        """record.json, there or not yet."""
        return self.folder / "record.json"

    @property
    def rulings_file(self) -> Path:
        """rulings.json, there or not yet."""
        return self.folder / "rulings.json"

    @property
    def notes(self) -> str:
        """The person's own words for the page, Markdown; empty where there are none."""
        path = self.folder / "notes.md"
        try:
            return path.read_text(encoding="utf-8") if path.is_file() else ""
        except (OSError, UnicodeDecodeError) as error:
            raise ShopError(path, f"can't be read ({error})", "save it as plain UTF-8 text") from error

    def transcript(self) -> Transcript | None:
        """The transcript, where one was made. Raises `ShopError` where it is broken."""
        if not self.transcript_file.is_file():
            return None
        try:
            return Transcript.model_validate_json(self.transcript_file.read_bytes())
        except ValidationError as error:
            raise ShopError(
                self.transcript_file,
                f"is no transcript ({_first(error)})",
                "delete it and run `spokeshave writeup` again",
            ) from error

    @contextmanager
    def writing(self) -> Iterator[None]:
        """Hold the session as its only writer. Raises `SessionBusyError` where another process holds it."""
        # Who records lets go in another thread than the one that took it.
        lock = FileLock(self.folder / ".lock", thread_local=False)
        try:
            lock.acquire(timeout=0)
        except Timeout:
            raise SessionBusyError(self.folder) from None
        try:
            yield
        finally:
            lock.release()


class Shop:
    """A folder of sessions and the site made from them."""

    def __init__(self, root: Path) -> None:
        self.root = root

    @classmethod
    def open(cls, root: Path) -> Shop:
        """An existing shop. Raises `ShopError` where there is none."""
        shop = cls(root)
        if not shop.settings_file.is_file():
            raise ShopError(root, "is no shop (it has no shop.toml)", "name the folder of a shop with --shop")
        _ = shop.settings
        return shop

    @classmethod
    def open_or_create(cls, root: Path, settings: ShopSettings | None = None) -> Shop:
        """The shop at `root`, made where there is none. Raises `ShopError` where another kind of thing stands there."""
        if (root / "shop.toml").is_file():
            return cls.open(root)
        if root.exists() and (not root.is_dir() or any(root.iterdir())):
            raise ShopError(root, "is no shop and not an empty folder", "name a new or empty folder with --shop")
        shop = cls(root)
        try:
            (root / "sessions").mkdir(parents=True, exist_ok=True)
            write_atomic(shop.settings_file, _toml(settings or ShopSettings(), _SHOP_REMARKS))
        except OSError as error:
            raise ShopError(root, f"can't be made ({error.strerror})", "name another folder with --shop") from error
        return shop

    @property
    def settings_file(self) -> Path:
        """shop.toml."""
        return self.root / "shop.toml"

    @property
    def settings(self) -> ShopSettings:
        """What shop.toml says. Raises `ShopError` where it can't be read."""
        return _read_toml(self.settings_file, ShopSettings)

    @property
    def errata_file(self) -> Path:
        """errata.json: which errata were published, and when."""
        return self.root / "errata.json"

    @property
    def procedures_file(self) -> Path:
        """procedures.json: what a person ruled on the procedure library, there or not yet."""
        return self.root / "procedures.json"

    @property
    def procedure_addresses_file(self) -> Path:
        """procedure-addresses.json: which addresses of procedures were published, there or not yet."""
        return self.root / "procedure-addresses.json"

    @property
    def kit_file(self) -> Path:
        """kit.json: what a person ruled on the names of tools and materials, there or not yet."""
        return self.root / "kit.json"

    @property
    def public(self) -> Path:
        """The published site."""
        return self.root / "public"

    def sessions(self) -> list[Session]:
        """All sessions, oldest first (folder names begin with the date)."""
        folder = self.root / "sessions"
        if not folder.is_dir():
            return []
        return [Session(path) for path in sorted(folder.iterdir()) if (path / "session.toml").is_file()]

    def session(self, slug: str) -> Session:
        """The session whose folder is called `slug`, or the only one whose name holds it. Raises `ShopError`."""
        sessions = self.sessions()
        hits = [one for one in sessions if one.slug == slug] or [one for one in sessions if slug in one.slug]
        if len(hits) != 1:
            known = ", ".join(one.slug for one in (hits or sessions)) or "none"
            problem = "several sessions match" if hits else "no session matches"
            raise ShopError(self.root, f"{problem} {slug!r}", f"name one of: {known}")
        return hits[0]

    def session_of(self, recording: Path) -> Session | None:
        """The session that was made from this recording, if there is one."""
        wanted = recording.resolve()
        return next((one for one in self.sessions() if one.recording_file == wanted), None)

    def add_session(self, settings: SessionSettings) -> Session:
        """Make a session's folder; a name that is taken gets a number behind."""
        stem = f"{settings.date.isoformat()}-{slugify(settings.title, max_length=60, word_boundary=True) or 'session'}"
        folder = self.root / "sessions" / stem
        number = 1
        while True:
            try:
                folder.mkdir(parents=True)
                break
            except FileExistsError:
                number += 1
                folder = self.root / "sessions" / f"{stem}-{number}"
        write_atomic(folder / "session.toml", _toml(settings, _SESSION_REMARKS))
        return Session(folder)

    def remove(self, session: Session) -> None:
        """Take away the folder of a session that came to nothing."""
        shutil.rmtree(session.folder)


_SHOP_REMARKS = "What holds for every session of this shop. Edit it as you like."
_SESSION_REMARKS = "What this session is. Edit it as you like; the next publish follows it."


def _toml(settings: BaseModel, remark: str) -> str:
    document = tomlkit.document()
    document.add(tomlkit.comment(remark))
    for key, value in settings.model_dump().items():
        document.add(key, value)
    return tomlkit.dumps(document)


def _read_toml(path: Path, model: type[Settings]) -> Settings:
    try:
        content = tomlkit.parse(path.read_text(encoding="utf-8")).unwrap()
        return model.model_validate(content)
    except (OSError, UnicodeDecodeError) as error:
        raise ShopError(path, f"can't be read ({error})", "put the file back or mend it") from error
    except TOMLKitError as error:
        raise ShopError(path, f"is no TOML ({error})", "mend that line") from error
    except ValidationError as error:
        raise ShopError(path, _first(error), "mend that line") from error


def _first(error: ValidationError) -> str:
    one = error.errors()[0]
    return f"{'.'.join(str(part) for part in one['loc']) or 'file'}: {one['msg']}"
