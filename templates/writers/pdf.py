"""The PDF writer: pages of marks in, the bytes of one document out (ISO 32000-1:2008, PDF 1.7).

A PDF counts in points of 1/72 in from the page's lower left corner, y up, as marks do: 1 mm is
72/25.4 pt, and nothing scales but the correction of a printer (`Page.scale`). A page longer than
14,400 units counts in a larger one, its UserUnit (ISO 32000-1:2008, table 30, from memory). The
same pages give the same bytes, whatever the settings of the machine, except that SOURCE_DATE_EPOCH
(the custom of reproducible builds) dates the document.

>>> from templates.page.marks import Line, Page
>>> write_pdf([Page(width=100, height=50, marks=(Line(x1=0, y1=0, x2=25.4, y2=0),))])[:8]
b'%PDF-1.7'
"""

import math
import re
import zlib
from collections.abc import Iterable, Sequence
from contextvars import ContextVar
from functools import lru_cache
from io import BytesIO
from tempfile import SpooledTemporaryFile
from typing import IO, Any

from jigs.ground.lengths import MM_PER_INCH
from templates.page.marks import Circle, Dash, Line, Mark, Outline, Page, Qr, Text
from templates.page.typeface import EM_PER_CAP, font_path, known, text_width
from templates.writers.qr import qr_matrix

POINT = 72 / MM_PER_INCH
"""Points in a millimetre."""

MOST_UNITS = 14_400
"""The most that a page may measure in its own units (ISO 32000-1:2008, annex C, from
memory: 200 in at 1/72 in)."""

_DASHES: dict[Dash, tuple[float, ...]] = {
    # ISO 128-20:1996, lines 02 (dashed: 12 d, 3 d) and 04 (long-dashed dotted: 24 d, 3 d, a dot
    # of 0.5 d, 3 d), in line widths d; the figures from memory. The dot is drawn 1 d long: half
    # a line width is less than one dot of a 300 dpi printer.
    "": (),
    "dashed": (12, 3),
    "axis": (24, 3, 1, 3),
}

_TURNS = {0: "1 0 0 1", 90: "0 1 -1 0", 180: "-1 0 0 -1"}
"""The matrix of a text by its angle."""

_ARC = 4 / 3 * (math.sqrt(2) - 1)
"""Control points of a quarter circle of radius 1 as one Bezier curve; it strays 0.03 % at most."""

_FOUR_QUARTERS = "{:.4f} {:.4f} m" + 4 * f"{6 * ' {:.4f}'} c" + " h"

_RUN = re.compile(b"\1+")
"""Dark modules side by side, a byte each."""

_AS_IT_IS = re.compile(rb"[ -'*-\[\]-~]*")
"""What a string has as it is: printable ASCII but parentheses and the backslash (ISO 32000-1:2008,
7.3.4.2, from memory). The library looks at each sign."""

_HELD = 1_000_000
"""So many bytes of finished pages are held in memory; those of a longer document go to a temporary
file until its end."""

_SETTINGS = {
    "useA85": 0,
    "pageCompression": 1,
    "invariant": 1,
    "ttfAsciiReadable": 1,
    "pdfComments": 0,
    "pdfMultiLine": 0,
    "documentLang": None,
    "canvas_baseColor": None,
    "warnOnMissingFontGlyphs": 0,
    "verbose": 0,
}
"""What the library would otherwise take from a settings file or the RL_ environment."""


@lru_cache(maxsize=1)
def _library() -> tuple[Any, Any, Any, Any]:
    """Load the library, its settings pinned: the canvas, the escape of strings, both faces."""
    from reportlab import rl_config

    for name, value in _SETTINGS.items():
        setattr(rl_config, name, value)
    from reportlab.lib.rl_accel import escapePDF
    from reportlab.pdfbase import pdfdoc
    from reportlab.pdfbase.pdfmetrics import registerFont
    from reportlab.pdfbase.ttfonts import TTFont
    from reportlab.pdfgen.canvas import Canvas

    pdfdoc.PDFFile = _whole_class(pdfdoc.PDFFile)
    faces = [
        TTFont(name, str(font_path(bold)), asciiReadable=1, shapable=False)
        for name, bold in (("jigsheet-regular", False), ("jigsheet-semibold", True))
    ]
    for face in faces:
        registerFont(face)
    return Canvas, escapePDF, *faces


_written: ContextVar[IO[bytes] | None] = ContextVar("_written", default=None)
"""The file into which a document is written; None for one of the library's other users."""


def _whole_class(library_file: Any) -> Any:
    """Make the class that writes a document's bytes into the file as they come: the library would
    keep them all, and once more as one."""

    class Whole(library_file):  # type: ignore[misc]
        """A document that is being written."""

        def __init__(self, version: tuple[int, int]) -> None:
            super().__init__(version)
            self.file = _written.get()
            if self.file is not None:
                self.file.writelines(self.strings)
                self.write = self.file.write

        def format(self, document: Any) -> bytes:
            """Give no bytes where they are in the file."""
            data: bytes = b"" if self.file is not None else super().format(document)
            return data

    return Whole


class _Words:
    """The strings of one document: cut into the embedded subsets, written once and kept."""

    def __init__(self, document: Any) -> None:
        _, self._escape, *self._faces = _library()
        self._document = document
        self._kept: dict[tuple[str, bool], list[tuple[str, str]]] = {}

    def pieces(self, text: str, bold: bool) -> list[tuple[str, str]]:
        """Give the text's pieces as font name and showing operator."""
        pieces = self._kept.get((text, bold))
        if pieces is None:
            if len(self._kept) > 5_000:  # bounds the memory of a long document
                self._kept.clear()
            face = self._faces[bold]
            pieces = [
                (
                    face.getSubsetInternalName(subset, self._document),
                    f"({self._as_string(codes)}) Tj",
                )
                for subset, codes in face.splitString(known(text), self._document)
            ]
            self._kept[text, bold] = pieces
        return pieces

    def _as_string(self, codes: bytes) -> str:
        """Give codes as they stand in a string."""
        if _AS_IT_IS.fullmatch(codes):
            return codes.decode("ascii")
        escaped: str = self._escape(codes)
        return escaped


def write_pdf(
    pages: Iterable[Page], *, title: str = "", producer: str = "jigsheet", creator: str = "jigsheet"
) -> bytes:
    """Write pages as one PDF, as `write_pdf_into` does; give its bytes."""
    file = BytesIO()
    write_pdf_into(file, pages, title=title, producer=producer, creator=creator)
    return file.getvalue()


def write_pdf_into(
    file: IO[bytes],
    pages: Iterable[Page],
    *,
    title: str = "",
    producer: str = "jigsheet",
    creator: str = "jigsheet",
) -> None:
    """Write pages as one PDF into an open file, each at its true size; it asks to be printed at
    actual size.

    Pages are taken one by one and not kept. Raises ValueError for a number that is not finite,
    and where there is no page at all.
    """
    canvas_class, _, regular, _ = _library()
    canvas = canvas_class(
        "",
        pagesize=(1, 1),
        pageCompression=1,
        invariant=1,
        pdfVersion=(1, 7),
        initialFontName=regular.fontName,
    )
    canvas.setTitle(title)
    canvas.setAuthor("")
    canvas.setSubject("")
    canvas.setProducer(producer)
    canvas.setCreator(creator)
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("Duplex", "Simplex")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    words = _Words(canvas._doc)
    entries: set[str] = set()
    number = 0
    with SpooledTemporaryFile(_HELD) as pressed:
        for number, page in enumerate(pages, start=1):
            across, up = page.scale
            wide, high = _points(page.width * across), _points(page.height * up)
            unit = _user_unit(max(wide, high))
            canvas.setPageSize((wide / unit, high / unit))
            if page.entry and page.entry not in entries:
                entries.add(page.entry)
                canvas.bookmarkPage(f"page-{number}", fit="Fit")
                canvas.addOutlineEntry(known(page.entry), f"page-{number}")
            drawn = _draw(page.marks, words)
            if page.scale != (1.0, 1.0) or unit > 1:
                drawn = f"{across / unit:.7f} 0 0 {up / unit:.7f} 0 0 cm\n{drawn}"
            canvas.addLiteral(drawn)
            canvas.showPage()
            _press(canvas._doc.Pages.pages[-1], unit, pressed)
        if not number:
            raise ValueError("a PDF of no pages at all; at least one is needed")
        if entries:
            canvas.showOutline()
        before = _written.set(file)
        try:
            canvas.getpdfdata()
        finally:
            _written.reset(before)


def _press(page: Any, unit: int, pressed: IO[bytes]) -> None:
    """Compress a finished page at once and put it aside: the library would keep its text until
    the end."""
    if unit > 1:  # the library does not know this entry of a page
        page.__NoDefault__ = [*page.__NoDefault__, "UserUnit"]
        page.UserUnit = unit
    packed = zlib.compress(page.stream.encode("latin-1"))
    page.Contents = _aside_class()(pressed, pressed.tell(), len(packed))
    pressed.write(packed)
    page.stream = None


@lru_cache(maxsize=1)
def _aside_class() -> Any:
    """Make the class of a stream that is put aside, once the library is loaded."""
    from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFStream

    filters = PDFArray([PDFName("FlateDecode")])

    class Aside(PDFStream):  # type: ignore[misc]
        """A stream that is read back as the document is written."""

        def __init__(self, file: IO[bytes], start: int, length: int) -> None:
            super().__init__(PDFDictionary({"Filter": filters}), content=b"")
            self.file, self.start, self.length = file, start, length

        def format(self, document: Any) -> bytes:
            """Give its bytes in the file; they are not kept."""
            self.file.seek(self.start)
            self.content = self.file.read(self.length)
            formatted: bytes = super().format(document)
            self.content = b""
            return formatted

    return Aside


def _user_unit(longest: float) -> int:
    """Give the unit of a page, in points: the least whole one in which it is not too long."""
    return math.ceil(longest / MOST_UNITS - 1e-9)


def _points(size: float) -> float:
    if not (math.isfinite(size) and size > 0):
        raise ValueError(f"a page's size of {size} mm; it must be finite and more than nothing")
    return size * POINT


def _draw(marks: Sequence[Mark], words: _Words) -> str:
    """Give the operators of one page: white areas in their turn, between them all strokes of one
    width and dash as one path."""
    parts: list[str] = []
    strokes: dict[tuple[float, Dash], list[str]] = {}
    texts: list[Text] = []
    for mark in marks:
        if isinstance(mark, Text):
            texts.append(mark)
        elif isinstance(mark, Line):
            strokes.setdefault((mark.width, mark.dash), []).append(
                f"{mark.x1 * POINT:.4f} {mark.y1 * POINT:.4f} m "
                f"{mark.x2 * POINT:.4f} {mark.y2 * POINT:.4f} l"
            )
        elif isinstance(mark, Circle):
            strokes.setdefault((mark.width, ""), []).append(_circle(mark))
        elif isinstance(mark, Outline):
            strokes.setdefault((mark.width, mark.dash), []).append(_polygon(mark.points))
        elif isinstance(mark, Qr):
            parts.append(_qr(mark))
        elif mark.fill == "black":
            parts.append(f"{_polygon(mark.points)} f")
        else:
            parts += _strokes(strokes)
            parts += _texts(texts, words)
            parts.append(f"1 g {_polygon(mark.points)} f 0 g")
            strokes, texts = {}, []
    parts += _strokes(strokes)
    drawn = "\n".join(parts)
    # No operator used here has an n, unlike nan and inf; strings follow, checked one by one.
    if "n" in drawn:
        culprit = next(mark for mark in marks if "nan" in repr(mark) or "inf" in repr(mark))
        raise ValueError(f"a number that is not finite in {culprit!r}")
    return "\n".join([drawn, *_texts(texts, words)])


def _strokes(groups: dict[tuple[float, Dash], list[str]]) -> list[str]:
    return [
        f"{width * POINT:.4f} w [{_dash(width, dash)}] 0 d\n" + "\n".join(paths) + "\nS"
        for (width, dash), paths in groups.items()
    ]


def _dash(width: float, dash: Dash) -> str:
    return " ".join([f"{length * width * POINT:.4f}" for length in _DASHES[dash]])


def _polygon(points: Sequence[tuple[float, float]]) -> str:
    corners = [f"{x * POINT:.4f} {y * POINT:.4f}" for x, y in points]
    return f"{' l '.join(corners).replace(' l ', ' m ', 1)} l h"


def _circle(mark: Circle) -> str:
    """Four Bezier quarters, from the right, anticlockwise."""
    x, y, r = mark.x * POINT, mark.y * POINT, mark.diameter / 2 * POINT
    k = _ARC * r
    return _FOUR_QUARTERS.format(
        *(x + r, y),
        *(x + r, y + k, x + k, y + r, x, y + r),
        *(x - k, y + r, x - r, y + k, x - r, y),
        *(x - r, y - k, x - k, y - r, x, y - r),
        *(x + k, y - r, x + r, y - k, x + r, y),
    )


def _qr(mark: Qr) -> str:
    module = mark.module * POINT
    rise = module if mark.rise is None else mark.rise * POINT
    place = f"{mark.x * POINT:.4f} {mark.y * POINT:.4f}"
    return f"q {module:.6f} 0 0 {rise:.6f} {place} cm {_qr_path(mark.text, mark.short)} f Q"


@lru_cache(maxsize=256)
def _qr_path(text: str, short: float) -> str:
    """Runs of dark modules as rectangles of one path: filled apart, they would show seams."""
    matrix = qr_matrix(text)
    begins, ends = _qr_figures(len(matrix), short)
    return " ".join(
        [
            begins[run.start()] + end[run.end() - run.start()]
            for row, end in zip(reversed(matrix), ends, strict=True)
            for run in _RUN.finditer(bytes(row))
        ]
    )


@lru_cache(maxsize=64)
def _qr_figures(modules: int, short: float) -> tuple[list[str], list[list[str]]]:
    """Write where each module of a row begins, and of each row how a run of so many modules goes
    on, both drawn `short` at each end."""
    begins = [f"{start + short:g} " for start in range(modules)]
    long = [f"{count - 2 * short:g}" for count in range(modules + 1)]
    return begins, [[f"{at}{run} {long[1]} re" for run in long] for at in begins]


def _texts(texts: Sequence[Text], words: _Words) -> list[str]:
    if not texts:
        return []
    parts = ["BT"]
    font = ("", 0.0)
    for mark in texts:
        x, y, size = mark.x, mark.y, mark.size
        if not math.isfinite(x + y + size):
            raise ValueError(f"a number that is not finite in {mark!r}")
        if mark.anchor != "start":
            shift = text_width(mark.text, size, mark.bold)
            if mark.anchor == "middle":
                shift /= 2
            if mark.angle == 90:
                y -= shift
            else:
                x -= -shift if mark.angle else shift
        turn = _TURNS[mark.angle]
        parts.append(f"{turn} {x * POINT:.4f} {y * POINT:.4f} Tm")
        for name, shown in words.pieces(mark.text, mark.bold):
            if font != (name, size):
                font = (name, size)
                parts.append(f"{name} {size * EM_PER_CAP * POINT:.4f} Tf")
            parts.append(shown)
    parts.append("ET")
    return parts
