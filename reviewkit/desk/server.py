"""The desk's small server, on loopback."""

from __future__ import annotations

import json
import secrets
import socket
from collections.abc import Callable
from pathlib import Path
from typing import Any

import uvicorn
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import FileResponse, HTMLResponse, JSONResponse, Response
from starlette.routing import Route

from reviewkit.desk.guard import LARGEST, Guard
from reviewkit.desk.media import TYPES, Copying, Source, media_of
from reviewkit.desk.session import Again, Session
from reviewkit.desk.teach import teach
from reviewkit.errors import ReviewkitError
from reviewkit.log import RoundFolder
from reviewkit.report.render import asset

PAGE = Path(__file__).parent / "page"
ASSETS = {
    "desk.css": "text/css",
    "desk.js": "text/javascript",
    "doubts.js": "text/javascript",
    "strokes.js": "text/javascript",
    "strip.js": "text/javascript",
    "player.js": "text/javascript",
    "parts.js": "text/javascript",
}


def build(session: Session, token: str, port: int) -> Guard:
    """The application for one round, behind its guard."""
    copying = Copying()

    def page(request: Request) -> Response:
        return HTMLResponse((PAGE / "desk.html").read_text(encoding="utf-8"))

    def static(request: Request) -> Response:
        name = request.path_params["name"]
        if name == "paper.css":
            return Response(asset(name), media_type="text/css")
        if name not in ASSETS:
            return JSONResponse({"error": "There is no such file."}, 404)
        return Response((PAGE / name).read_bytes(), media_type=ASSETS[name])

    def state(request: Request) -> Response:
        if request.query_params.get("version") == session.version and not copying.share:
            return Response(status_code=204)
        return JSONResponse({**session.state(), **_copies(copying)})

    def media(request: Request) -> Response:
        source = _source(session.folder, request.path_params["index"])
        if source is None or source.path is None:
            return JSONResponse({"error": "The footage is not where it was read from."}, 404)
        return FileResponse(source.path, media_type=TYPES.get(source.path.suffix.lower()))

    async def amend(request: Request) -> Response:
        return await _answer(request, lambda data: {**session.act(data), **_copies(copying)})

    async def learn(request: Request) -> Response:
        def act(data: dict[str, Any]) -> dict[str, Any]:
            path = teach(session.folder, str(data.get("heard", "")), str(data.get("meant", "")))
            session.read_again()
            return {**session.state(), **_copies(copying), "taught": path.name}

        return await _answer(request, act)

    async def copy(request: Request) -> Response:
        def act(data: dict[str, Any]) -> dict[str, Any]:
            source = _source(session.folder, int(request.path_params["index"]))
            if source is not None:
                copying.start(source)
            return {**session.state(), **_copies(copying)}

        return await _answer(request, act)

    routes = [
        Route("/", page),
        Route("/static/{name}", static),
        Route("/state", state),
        Route("/media/{index:int}", media),
        Route("/amend", amend, methods=["POST"]),
        Route("/teach", learn, methods=["POST"]),
        Route("/copy/{index:int}", copy, methods=["POST"]),
    ]
    return Guard(Starlette(routes=routes), token, port)


async def _answer(request: Request, act: Callable[[dict[str, Any]], dict[str, Any]]) -> Response:
    """Run one change; what cannot be done is told in the page's own words."""
    from starlette.concurrency import run_in_threadpool

    body = await request.body()
    try:
        data = json.loads(body) if len(body) <= LARGEST else None
    except ValueError:
        data = None
    if not isinstance(data, dict):
        return JSONResponse({"error": "That is not a correction."}, 400)
    try:
        return JSONResponse(await run_in_threadpool(act, data))
    except ReviewkitError as error:
        return JSONResponse({"error": str(error)}, 422)


def _source(folder: RoundFolder, index: int) -> Source | None:
    sources = media_of(folder)
    return sources[index] if 0 <= index < len(sources) else None


def _copies(copying: Copying) -> dict[str, Any]:
    return {"copying": dict(copying.share), "copy_complaints": dict(copying.complaint)}


def serve(folder: RoundFolder, again: Again, port: int, told: Callable[[str], None]) -> None:
    """Serve the desk of `folder` until it is stopped. Port 0 takes a free one; `told` gets the address."""
    bound = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    bound.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        bound.bind(("127.0.0.1", port))
    except OSError as error:
        bound.close()
        raise ReviewkitError(
            f"Port {port} cannot be used ({error.strerror}).", "Choose another --port."
        ) from error
    token, number = secrets.token_urlsafe(24), bound.getsockname()[1]
    session = Session(folder, again)
    session.start()
    session.state()  # loads what the first page would wait for
    app = build(session, token, number)
    told(f"http://127.0.0.1:{number}/{token}/")
    config = uvicorn.Config(app, log_level="error", access_log=False, lifespan="off", server_header=False)
    try:
        uvicorn.Server(config).run(sockets=[bound])
    finally:
        session.settle()
        bound.close()
