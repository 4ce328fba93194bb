"""Who may talk to the desk: this machine's browser, on the desk's own page, with the desk's own token."""

from __future__ import annotations

import hmac
from collections.abc import Awaitable, Callable
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

HEADERS = {
    "Content-Security-Policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; media-src 'self'; "
        "connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cache-Control": "no-store",
}
LARGEST = 20_000
"""Bytes that a request may hold."""


class Guard:
    """Refuses what does not carry the token in its path, names another host, or comes from another page."""

    def __init__(self, app: ASGIApp, token: str, port: int) -> None:
        self.app = app
        self.prefix = f"/{token}/"
        self.hosts = {f"127.0.0.1:{port}", f"localhost:{port}", f"[::1]:{port}"}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        refusal = self.refusal(scope)
        if refusal is not None:
            await refusal(scope, receive, _with_headers(send))
            return
        path = scope["path"][len(self.prefix) - 1 :]
        await self.app({**scope, "path": path, "raw_path": path.encode()}, receive, _with_headers(send))

    def refusal(self, scope: Scope) -> PlainTextResponse | None:
        """The answer for a request that may not pass."""
        headers = Headers(scope=scope)
        if headers.get("host", "") not in self.hosts:
            return PlainTextResponse("This desk answers on loopback only.", 403)
        origin = headers.get("origin")
        if origin is not None and urlsplit(origin).netloc not in self.hosts:
            return PlainTextResponse("Another page may not use this desk.", 403)
        if scope["method"] not in ("GET", "HEAD") and (
            origin is None or headers.get("content-type", "").split(";")[0] != "application/json"
        ):
            return PlainTextResponse("Only the desk's own page may change the round.", 403)
        if not hmac.compare_digest(scope["path"][: len(self.prefix)].encode(), self.prefix.encode()):
            return PlainTextResponse("Open the address that reviewkit desk printed.", 404)
        length = headers.get("content-length", "0")
        if not length.isdecimal() or int(length) > LARGEST:
            return PlainTextResponse("That is more than one correction holds.", 413)
        return None


def _with_headers(send: Send) -> Callable[[Message], Awaitable[None]]:
    async def sending(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in HEADERS.items():
                headers[name] = value
        await send(message)

    return sending
