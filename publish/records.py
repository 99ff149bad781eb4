"""A session's record as the machine made it, read from disk."""

from __future__ import annotations

from pathlib import Path

from pydantic import ValidationError

from capture.errors import ShopError
from capture.shop import Session
from extract.record import Record


def machine_record(session: Session) -> Record:
    """What the machine made of a session, under the facts that session.toml states now. Raises `ShopError`."""
    settings = session.settings
    record = read_record(session.record_file)
    facts = record.session.model_copy(
        update={
            "title": settings.title,
            "date": settings.date.isoformat(),
            "subject": settings.subject or record.session.subject,
            "trade": settings.trade or record.session.trade,
        }
    )
    return record.model_copy(update={"session": facts})


def read_record(path: Path) -> Record:
    """The record in a file. Raises `ShopError` where there is none, or none that can be read."""
    try:
        return Record.model_validate_json(path.read_bytes())
    except FileNotFoundError as error:
        raise ShopError(path, "is not there yet", "run `spokeshave writeup` on the recording") from error
    except OSError as error:
        raise ShopError(path, f"can't be read ({error.strerror})", "mend its permissions") from error
    except ValidationError as error:
        one = error.errors()[0]
        place = ".".join(str(part) for part in one["loc"]) or "file"
        raise ShopError(
            path, f"is no record ({place}: {one['msg']})", "run `spokeshave writeup` on the recording again"
        ) from error
