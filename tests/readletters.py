"""The strings of a printed page, read by a library that had no part in writing it; in points."""

from collections.abc import Iterator
from ctypes import addressof, byref, c_float, create_string_buffer
from dataclasses import dataclass
from math import dist
from typing import Any

from pypdfium2 import raw

LETTERS_OFF = 0.15
"""The library counts a letter's width in whole thousandths of the em: a string's end may be off by
so much, points."""

Point = tuple[float, float]
"""On the page, in its own unit."""
Forms = tuple[Any, ...]
"""What an object stands in, the outermost first: a printing system makes a form of a page."""


def matrix_of(item: Any, forms: Forms = ()) -> Any:
    """Where an object's own places lie on the page, though it stands in a form."""
    matrix = raw.FS_MATRIX()
    assert raw.FPDFPageObj_GetMatrix(item, byref(matrix))
    for form in reversed(forms):
        m, o = matrix, matrix_of(form)
        matrix = raw.FS_MATRIX(
            m.a * o.a + m.b * o.c,
            m.a * o.b + m.b * o.d,
            m.c * o.a + m.d * o.c,
            m.c * o.b + m.d * o.d,
            m.e * o.a + m.f * o.c + o.e,
            m.e * o.b + m.f * o.d + o.f,
        )
    return matrix


def objects_of(page: Any) -> Iterator[tuple[Any, Forms]]:
    """Give the objects of a page in their order, those of its forms too."""
    for row in range(raw.FPDFPage_CountObjects(page.raw)):
        yield from _objects_in(raw.FPDFPage_GetObject(page.raw, row), ())


def _objects_in(item: Any, forms: Forms) -> Iterator[tuple[Any, Forms]]:
    if raw.FPDFPageObj_GetType(item) != raw.FPDF_PAGEOBJ_FORM:
        yield item, forms
        return
    for row in range(raw.FPDFFormObj_CountObjects(item)):
        yield from _objects_in(raw.FPDFFormObj_GetObject(item, row), (*forms, item))


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A string as it was shown: where it starts and where the next one would, in points."""

    text: str
    start: Point
    end: Point
    em: float
    face: str
    turned: bool

    def goes_on_in(self, other: "Shown") -> bool:
        """Whether another string goes on where this one ends."""
        return (
            self.turned == other.turned
            and self.face == other.face
            and abs(self.em - other.em) < 0.01
            and dist(self.end, other.start) < LETTERS_OFF
        )


class Words:
    """The strings of a page."""

    def __init__(self, page: Any) -> None:
        self._words = raw.FPDFText_LoadPage(page.raw)
        self._letters: dict[int, list[int]] = {}
        self._faces: dict[int, str] = {}
        words, owner_of = self._words, raw.FPDFText_GetTextObject
        for row in range(raw.FPDFText_CountChars(words)):
            owner = owner_of(words, row)
            if owner:  # else the library made it up, between strings
                self._letters.setdefault(addressof(owner.contents), []).append(row)

    def close(self) -> None:
        raw.FPDFText_ClosePage(self._words)

    def shown(self, item: Any, forms: Forms) -> Shown:
        """Read one string."""
        rows = self._letters[addressof(item.contents)]
        matrix, em = matrix_of(item, forms), c_float()
        assert raw.FPDFTextObj_GetFontSize(item, byref(em))
        turned = matrix.a == 0
        across, up = (matrix.b, -matrix.c) if turned else (matrix.a, matrix.d)
        assert turned or matrix.b == 0
        round_ = not turned and matrix.a < 0
        assert 0.9 < across / up < 1.1  # a printer's correction may stretch it
        last = self._place(rows[-1])
        return Shown(
            text="".join(self._text(rows)),
            start=(matrix.e, matrix.f),
            end=(matrix.e, last.top) if turned else (last.left if round_ else last.right, matrix.f),
            em=em.value * abs(matrix.b if turned else matrix.a),
            face=self._face(item),
            turned=turned,
        )

    def _text(self, rows: list[int]) -> Iterator[str]:
        """Give letter after letter; of several spaces the library tells but the first, and a
        hyphen where it believes that a word is divided is a sign of its own."""
        space = None
        words, letter_at = self._words, raw.FPDFText_GetUnicode
        for row in rows:
            letter = chr(letter_at(words, row))
            if space is None and letter != " ":  # nearly all
                yield "-" if letter == "\x02" else letter
                continue
            place = self._place(row)
            if space:
                wide, high = space.right - space.left, space.top - space.bottom
                past = place.left - space.right, place.bottom - space.top
                yield " " * round(max(past[0] / wide, past[1] / high))
            yield "-" if letter == "\x02" else letter
            space = place if letter == " " else None

    def _place(self, row: int) -> Any:
        """The box of a letter: along its line from where it starts to where the next one would."""
        place = raw.FS_RECTF()
        assert raw.FPDFText_GetLooseCharBox(self._words, row, byref(place))
        return place

    def _face(self, item: Any) -> str:
        """The name of a string's face, without the name of its part that is embedded."""
        font = raw.FPDFTextObj_GetFont(item)
        key = addressof(font.contents)
        if key not in self._faces:
            name = create_string_buffer(200)
            raw.FPDFFont_GetBaseFontName(font, name, len(name))
            self._faces[key] = name.value.decode().split("-")[-1]
        return self._faces[key]
