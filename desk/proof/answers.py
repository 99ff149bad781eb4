"""What the proof page's addresses answer."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import asdict
from pathlib import Path

from pydantic import ValidationError
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import FileResponse, JSONResponse, RedirectResponse, Response

from capture.errors import SpokeshaveError
from capture.recording.marks import Mark, read_marks
from capture.shop import Session
from desk.app.files import SHARED, SHARED_FOLDER
from desk.app.pages import Pages
from desk.proof.adding import said_about
from desk.proof.film import film_answer
from desk.proof.galley import Galley, galley_of
from desk.proof.giving import AskedFor, give
from desk.proof.picture import picture_of
from desk.proof.reading import read_typed
from desk.proof.sessions import Listing
from desk.proof.state import state_of
from desk.proof.stills import still_file
from desk.proof.work import Bench
from publish.moments import clock
from publish.procedure import STILLS

_SCRIPTS = tuple(
    f"{home}/assets/{path.name}"
    for home, folder in (("", SHARED_FOLDER), ("/proof", Path(__file__).parent / "assets"))
    for path in sorted(folder.glob("*.js"))
    if path.name != "sessions.js"
)
"""Every module of a session's page, to be fetched at once instead of one behind the other."""

_FIRST_SCREENS = 30
"""Open items told at the beginning: more than any screen holds."""
_LONGEST_FIGURE = 200
_LAST_TENTH = 10 * 24 * 3600
_GALLEY_KINDS = {
    "html": "text/html", "json": "application/json", "vtt": "text/vtt", "txt": "text/plain", "svg": "image/svg+xml",
}  # fmt: skip


class Answers:
    """One method an address. Those that read or write files are plain functions, which Starlette runs in threads."""

    def __init__(self, bench: Bench, pages: Pages) -> None:
        self._bench = bench
        self._pages = pages
        self._listing = Listing(bench)
        self._told: dict[str, tuple[str, bytes]] = {}
        """The last state of each session that was told, by its tag: every tab asks for the same."""

    def sessions(self, _: Request) -> Response:
        """The list of sessions."""
        return self._pages.answer("sessions.html", shop=self._bench.shop.settings, sessions=self._listing.all())

    def open(self, request: Request) -> Response:
        """What is open in a session, in words."""
        return JSONResponse({"open": self._listing.open_in(self._session(request))})

    def session(self, request: Request) -> Response:
        """The proof page of one session."""
        session = self._session(request)
        marks, trouble = _marks(session)
        return self._pages.answer(
            "session.html",
            slug=session.slug,
            facts=session.settings,
            picture=picture_of(session),
            scripts=_SCRIPTS,
            marks=marks,
            marks_trouble=trouble,
        )

    def state(self, request: Request) -> Response:
        """All that the page shows, or 304 where nothing has changed since the tag that the page knows.

        `?part=beginning` asks for what the first screens show; it bears no tag, since the whole is asked for next.
        """
        session = self._session(request)
        if request.query_params.get("part") == "beginning":
            return Response(
                state_of(self._bench.work(session), _FIRST_SCREENS).model_dump_json(), media_type="application/json"
            )
        tag = self._bench.tag(session)
        if request.headers.get("if-none-match") == tag:
            return Response(status_code=304, headers={"etag": tag})
        tag, body = self._tell(session)
        return Response(body, media_type="application/json", headers={"etag": tag})

    def read_ahead(self, session: Session) -> None:
        """Read a session before it is asked for. What is wrong with it is told when it is."""
        with suppress(SpokeshaveError, OSError):
            state_of(self._bench.work(session), _FIRST_SCREENS)  # loads what converts; the page asks for this first
            self._tell(session)
            read_typed(self._bench.work(session), "", "1/2 in")  # the first figure loads the grammar

    def _tell(self, session: Session) -> tuple[str, bytes]:
        work = self._bench.work(session)
        told = self._told.get(session.slug)
        if told is None or told[0] != work.tag:
            told = self._told[session.slug] = (work.tag, state_of(work).model_dump_json().encode())
        return told

    async def rulings(self, request: Request) -> Response:
        """Rulings to be kept. The answer comes when they are on disk."""
        session = await run_in_threadpool(self._session, request)
        if request.headers.get("content-type", "").split(";")[0] != "application/json":
            return JSONResponse({"problem": "rulings are sent as application/json"}, status_code=415)
        try:
            asked = AskedFor.model_validate_json(await request.body())
        except ValidationError as error:
            one = error.errors()[0]
            place = ".".join(str(part) for part in one["loc"])
            return JSONResponse({"problem": f"that is no ruling ({place}: {one['msg']})"}, status_code=422)
        results = await run_in_threadpool(give, self._bench, session, asked)
        return JSONResponse({"results": [one.model_dump() for one in results]})

    def reads(self, request: Request) -> Response:
        """How a typed figure reads."""
        session = self._session(request)
        item, text, attribute = (
            request.query_params.get(name, "")[:_LONGEST_FIGURE] for name in ("item", "text", "attribute")
        )
        return JSONResponse(asdict(read_typed(self._bench.work(session), item, text, attribute)))

    def said(self, request: Request) -> Response:
        """The words said about a second."""
        try:
            second = float(request.query_params.get("second", ""))
        except ValueError as error:
            raise HTTPException(404) from error
        return JSONResponse(asdict(said_about(self._bench.work(self._session(request)), second)))

    def film(self, request: Request) -> Response:
        """The recording, or a range of it."""
        recording = self._session(request).recording_file
        if recording is None:
            raise HTTPException(404)
        return film_answer(recording)

    def still(self, request: Request) -> Response:
        """The film's frame at a tenth of a second."""
        path = still_file(self._session(request), min(request.path_params["tenths"], _LAST_TENTH) / 10)
        if path is None:
            raise HTTPException(404)
        return FileResponse(path, media_type="image/jpeg", headers={"cache-control": "private, max-age=3600"})

    def galley(self, request: Request) -> Response:
        """The page as it would be published, and the files beside it."""
        name = request.path_params["name"]
        galley = self._galley(request)
        if name in galley.texts:
            kind = _GALLEY_KINDS[name.rsplit(".", 1)[-1]]
            return Response(galley.texts[name], media_type=kind)
        if name in galley.files:
            return film_answer(galley.files[name])
        raise HTTPException(404)

    def picture(self, request: Request) -> Response:
        """A picture of the author's note."""
        path = self._galley(request).files.get(f"pictures/{request.path_params['name']}")
        if path is None:
            raise HTTPException(404)
        return FileResponse(path)

    def galley_still(self, request: Request) -> Response:
        """A still of a step."""
        path = self._galley(request).files.get(f"{STILLS}/{request.path_params['name']}")
        if path is None:
            raise HTTPException(404)
        return FileResponse(path)

    def galley_asset(self, request: Request) -> Response:
        """What the published pages share; it stands elsewhere here."""
        name = request.path_params["name"]
        if name not in SHARED:
            raise HTTPException(404)
        return RedirectResponse(f"/assets/{name}")

    def _galley(self, request: Request) -> Galley:
        return galley_of(self._bench.shop, self._session(request), self._bench.standing)

    def _session(self, request: Request) -> Session:
        slug = request.path_params["slug"]
        found = self._bench.session(slug)
        if found is None:
            raise HTTPException(404)
        return found


def _marks(session: Session) -> tuple[tuple[tuple[str, Mark], ...], str]:
    """The moments marked at the bench with their clock, and what is wrong with them where they can't be read."""
    try:
        return tuple((clock(one.second), one) for one in read_marks(session.folder)), ""
    except SpokeshaveError as error:
        return (), str(error)
