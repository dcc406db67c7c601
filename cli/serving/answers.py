"""What is answered to a request: a page, a file, or a deed done and the way back to its page."""

import re
import threading
from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from cli.serving.access import Refused
from cli.serving.photos import PhotoError, draw_again

if TYPE_CHECKING:
    from collections.abc import Mapping

    from cli.serving.current import Current, Now
    from cli.serving.store import Entry, Store
    from jigs.bench.standing import Event, Standing
    from templates.scan.host import Host

LONGEST_NOTE = 2000
LATEST = 50
"""Entries of a part's history that its page shows; `progress --history` has them all."""
HTML, CSS, JS = (f"text/{kind}; charset=utf-8" for kind in ("html", "css", "javascript"))
_UNSEEN = re.compile(
    "[\x00-\x09\x0b-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]"
)
"""Control characters but for the line end, marks of direction, halves of a character."""


class Reply(Struct, frozen=True, kw_only=True):
    """An answer."""

    body: bytes = b""
    kind: str = HTML
    """The type of what is answered."""
    status: int = 200
    goes_to: str = ""
    """The page that the browser asks for next."""


class Answers:
    """The answers of one job's server. Pages are made one after the other: making one is the
    processor's work alone, and what it looks up is kept for one layout at a time."""

    def __init__(self, current: "Current", store: "Store") -> None:
        self._current = current
        self._store = store
        self._lock = threading.Lock()

    def style(self) -> Reply:
        """Give the style sheet of all pages."""
        from templates.scan.frame import STYLE

        return Reply(body=STYLE.encode(), kind=CSS)

    def script(self) -> Reply:
        """Give the script of all pages."""
        from templates.scan.frame import SCRIPT

        return Reply(body=SCRIPT.encode(), kind=JS)

    def plain(self, status: int, title: str, text: str) -> Reply:
        """Give a page that says one thing."""
        from templates.scan.frame import plain_page
        from templates.scan.host import Host

        return Reply(body=plain_page(title, text, Host(href=_address)).encode(), status=status)

    def home(self, search: str, chosen: str, *, marks: bool) -> Reply:
        """Give the first page: the walls, what is to be done; or the part that was typed."""
        from templates.scan.homepage import home_page

        with self._lock:
            now = self._current.now()
            typed = search.strip().upper()
            if typed in now.scan.parts:
                return Reply(status=303, goes_to=_address(typed))
            page = home_page(
                now.scan, self._standings(now), _host(now, marks=marks), search=search,
                chosen=chosen,
            )  # fmt: skip
            return Reply(body=page.encode())

    def part(self, name: str, *, marks: bool) -> Reply:
        """Give the page of a part."""
        from templates.scan.partpage import part_page

        with self._lock:
            now = self._current.now()
            part, standing = self._find(now, name)
            if part != name:
                return Reply(status=303, goes_to=_address(part))
            events = tuple(map(_event, reversed(self._store.history(part)[-LATEST:])))
            page = part_page(
                now.scan, part, replace(standing, history=events), _host(now, marks=marks)
            )
            return Reply(body=page.encode())

    def sheet(self, name: str) -> Reply:
        """Give the drilling sheet of a part."""
        from templates.binding.jobsheets import make_sheets
        from templates.page.paper import PAPERS
        from templates.writers.pdf import write_pdf

        with self._lock:
            now = self._current.now()
            part, _ = self._find(now, name)
            sheets = make_sheets(now.scan.layout, PAPERS["common"], only=frozenset({part}))
            if part not in {each for sheet in sheets for each in sheet.parts}:
                raise Refused(404, f"{part} has no sheet", "It has no holes, or is held back.")
            return Reply(
                body=write_pdf(sheets.pages, title=f"{part}: {now.scan.layout.job.name}"),
                kind="application/pdf",
            )

    def stations(self, name: str) -> Reply:
        """Give the stations of a part, with its rows alone."""
        from jigs.bench.rows import choose_rows
        from templates.binding.jobstations import bind_stations
        from templates.page.paper import PAPERS
        from templates.writers.pdf import write_pdf

        with self._lock:
            now = self._current.now()
            part, _ = self._find(now, name)
            layout = now.scan.layout
            chosen = choose_rows(layout, now.scan.stations, frozenset({part}))
            if not chosen:
                raise Refused(404, f"{part} has no station", "It has no holes, or is held back.")
            pages = bind_stations(layout, chosen, PAPERS["common"]).pages
            return Reply(
                body=write_pdf(pages, title=f"{part}: {layout.job.name}"), kind="application/pdf"
            )

    def elevations(self) -> Reply:
        """Give the walls, to print."""
        from cli.drawing import bind_walls, draw_walls

        with self._lock:
            layout = self._current.now().scan.layout
            sheets, _ = draw_walls(layout, "common", None)
            return Reply(body=bind_walls(layout, sheets), kind="application/pdf")

    def photo(self, name: str) -> Reply:
        """Give the photo of a part."""
        data = self._store.photo(name.upper())
        if data is None:
            raise Refused(404, "No photo", "There is no photo of this part.")
        return Reply(body=data, kind="image/jpeg")

    def mark(self, name: str, step: str, code: str) -> Reply:
        """Mark a step of a part as done, by the figures of the page on which it was pressed: the
        job may have been edited since. `code`: that of the part there, "" where none was sent.
        Its steps are marked in their order: hung says that the holes are bored."""
        from jigs.bench.marking import find_step, left_before, waits_for_release
        from templates.words.stepwords import step_done

        now, part, standing = self._part_of_job(name)
        course = now.scan.courses[part]
        found = find_step(course, step)
        if found is None:
            steps = ", ".join(each.key for each in course.steps)
            raise Refused(400, "No such step", f"{part} has no step {step!r}; its steps: {steps}.")
        if waits_for_release(course, found):
            raise Refused(409, f"{part} is held back", "Nothing more is done with it until the "
                          "job says what is missing.")  # fmt: skip
        if open_steps := left_before(course, found, standing.done):
            raise Refused(409, f"{part} is not so far yet", "Mark first what comes before, as it "
                          f"is done: {'; '.join(map(step_done, open_steps))}.")  # fmt: skip
        kept = self._store.kept().get(part)
        known = kept is not None and code in kept.codes
        self._store.mark(part, step, code if known else now.scan.parts[part].code)
        return Reply(status=303, goes_to=_address(part))

    def undo(self, name: str, step: str) -> Reply:
        """Take a mark of a part back."""
        return self._done(name, lambda part, code: self._store.undo(part, step, code))

    def note(self, name: str, text: str) -> Reply:
        """Keep a note of a part."""
        note = _UNSEEN.sub("", text.replace("\r\n", "\n")).strip()
        if len(note) > LONGEST_NOTE:
            raise Refused(413, "Too long a note", f"It has {len(note)} characters; at most "
                          f"{LONGEST_NOTE} are kept.")  # fmt: skip
        return self._done(name, lambda part, code: self._store.note(part, note, code))

    def take_photo(self, name: str, data: bytes) -> Reply:
        """Keep a photo of a part."""
        try:
            drawn = draw_again(data)
        except PhotoError as error:
            raise Refused(415, "No photo", str(error)) from error
        return self._done(name, lambda part, code: self._store.keep_photo(part, drawn, code))

    def drop_photo(self, name: str) -> Reply:
        """Take a photo away."""
        return self._done(name, lambda part, code: self._store.keep_photo(part, None, code))

    def _done(self, name: str, do: Callable[[str, str], None]) -> Reply:
        """Do something to a part, one that is gone too."""
        with self._lock:
            now = self._current.now()
            part, _ = self._find(now, name)
        tracked = now.scan.parts.get(part)
        do(part, "" if tracked is None else tracked.code)
        return Reply(status=303, goes_to=_address(part))

    def _part_of_job(self, name: str) -> "tuple[Now, str, Standing]":
        with self._lock:
            now = self._current.now()
            part, standing = self._find(now, name)
        if standing.vanished:
            raise Refused(409, f"{part} is no longer in the job", "What was kept of it stays.")
        return now, part, standing

    def _find(self, now: "Now", name: str) -> "tuple[str, Standing]":
        part = name.strip().upper()
        found = self._standings(now).get(part)
        if found is None:
            raise Refused(404, "No such part", "This job has no part of that ID. The first page "
                          "finds parts by the beginning of theirs.")  # fmt: skip
        return part, found

    def _standings(self, now: "Now") -> "Mapping[str, Standing]":
        return now.scan.standings(self._store.kept())


def _host(now: "Now", *, marks: bool) -> "Host":
    from templates.scan.host import Host

    return Host(
        href=_address,
        marks=marks,
        sheet=lambda part: f"{_address(part)}/sheet.pdf",
        stations=lambda part: f"{_address(part)}/stations.pdf",
        photo=lambda part: f"{_address(part)}/photo",
        faults=now.faults,
        drawings="/elevations.pdf",
    )


def _address(part: str) -> str:
    return f"/p/{part}"


def _event(entry: "Entry") -> "Event":
    from jigs.bench.standing import Event

    when = datetime.fromisoformat(entry.at).astimezone()
    return Event(when=f"{when:%Y-%m-%d %H:%M}", what=entry.deed, step=entry.said)
