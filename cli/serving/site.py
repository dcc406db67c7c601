"""The pages by their addresses: each request judged, answered, and the answer made safe.

`bottle` finds the way to an answer and reads forms. What it would do by itself is not let happen:
its pages of errors print the whole address, with the key, and its forms garble what is not ASCII.
"""

import os
import traceback
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any

from cli.serving.access import HEADERS, Gate, Refused, given_key
from cli.serving.answers import Answers, Reply
from cli.terminal import tell

if TYPE_CHECKING:
    from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

MAY_MARK = "jigsheet.marks"
"""Where a request carries whether it may mark."""
MOST_BYTES = 8 << 20
"""Of a request: a photo of 12 million pixels has 3 to 6 MB."""


def make_site(answers: Answers, gate: Gate) -> "WSGIApplication":
    """Give the site of a job."""
    routes = _route(answers)

    def site(environ: "WSGIEnvironment", start: "StartResponse") -> Iterable[bytes]:
        cookie: list[tuple[str, str]] = []

        def started(status: str, headers: list[tuple[str, str]], *error: Any) -> Any:
            return start(status, [*headers, *HEADERS, *cookie], *error)

        try:
            environ[MAY_MARK] = gate.judge(environ) == "marks"
            if said := gate.cookie_for(environ):
                cookie.append(said)
            return routes(environ, started)
        except Refused as refused:
            reply = answers.plain(refused.status, refused.title, refused.text)
        except Exception as error:
            reply = _stumbled(answers, error)
        started(_line(reply.status), _headers(reply))
        return [] if environ["REQUEST_METHOD"] == "HEAD" else [reply.body]

    return site


def _route(answers: Answers) -> "WSGIApplication":
    """Say which address has which answer."""
    from bottle import Bottle, HTTPResponse, request

    app = Bottle()
    app.config["catchall"] = False

    def answer(reply: Reply) -> HTTPResponse:
        given = given_key(request.environ) if reply.goes_to else None
        goes_to = f"{reply.goes_to}?k={given}" if given is not None else reply.goes_to
        headers = dict(_headers(reply)) | ({"Location": goes_to} if goes_to else {})
        return HTTPResponse(reply.body, reply.status, headers)

    def get(address: str, reply: Callable[..., Reply]) -> None:
        app.get(address, callback=lambda **named: answer(reply(**named)))

    def post(address: str, reply: Callable[..., Reply]) -> None:
        app.post(address, callback=lambda **named: answer(reply(**named)))

    def may_mark() -> bool:
        return bool(request.environ[MAY_MARK])

    def said(field: str) -> str:
        try:
            return str(request.forms.getunicode(field) or "")
        except (ValueError, LookupError) as error:  # headers of its parts that are none
            raise Refused(400, *WRONG[400]) from error

    def asked(field: str) -> str:
        return str(request.query.getunicode(field) or "")

    def photo(name: str) -> Reply:
        if said("remove"):
            return answers.drop_photo(name)
        sent = request.files.get("photo")
        return answers.take_photo(name, sent.file.read() if sent is not None else b"")

    get("/", lambda: answers.home(asked("q"), asked("list"), marks=may_mark()))
    get("/p/<name>", lambda name: answers.part(name, marks=may_mark()))
    get("/p/<name>/photo", answers.photo)
    get("/p/<name>/sheet.pdf", answers.sheet)
    get("/p/<name>/stations.pdf", answers.stations)
    get("/elevations.pdf", answers.elevations)
    get("/style.css", answers.style)
    get("/scan.js", answers.script)
    post("/p/<name>/mark", lambda name: answers.mark(name, said("step"), said("code")))
    post("/p/<name>/undo", lambda name: answers.undo(name, said("step")))
    post("/p/<name>/note", lambda name: answers.note(name, said("note")))
    post("/p/<name>/photo", photo)

    def went_wrong(error: Any) -> bytes:
        title, text = WRONG.get(error.status_code, WRONG[400])
        return answers.plain(error.status_code, title, text).body

    app.default_error_handler = went_wrong
    return app  # type: ignore[no-any-return]


WRONG = {
    400: ("Not understood", "What was sent cannot be read; nothing was done."),
    404: ("No such page", "There is nothing under this address."),
    405: ("Not so", "Nothing is done in that way under this address."),
    413: ("Too much", f"More was sent than is taken: {MOST_BYTES >> 20} MB at most."),
}
"""What is said of what finds no answer: never the address, for it may hold the key."""


def _stumbled(answers: Answers, error: Exception) -> Reply:
    """Tell where the tool went wrong: the terminal the place, the telephone that nothing is
    certain; neither what was asked for, which may hold the key."""
    place = traceback.extract_tb(error.__traceback__)[-1]
    said = f"{os.path.basename(place.filename)}:{place.lineno}: {type(error).__name__}"
    tell(f"A page could not be made: {said}. Whatever was being marked may not be.")
    if os.environ.get("JIGSHEET_TRACEBACK"):
        tell("".join(traceback.format_exception(error)), nl=False)
    return answers.plain(500, "That went wrong", "Look whether it was kept, and do it again.")


def _headers(reply: Reply) -> list[tuple[str, str]]:
    return [("Content-Type", reply.kind), ("Content-Length", str(len(reply.body)))]


def _line(status: int) -> str:
    from http import HTTPStatus

    return f"{status} {HTTPStatus(status).phrase}"
