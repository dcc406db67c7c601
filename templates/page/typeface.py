"""The printed face: Fira Sans Condensed, regular and semibold, and how wide its words are.

Lettering is sized as on a drawing, by the height of a capital (ISO 3098-1: 2.5, 3.5, 5, 7 mm),
not by the em. The face comes from a font package; its metrics are read once, when first asked
for. No kerning and no ligatures: the writers set one glyph after the other, as measured here.

>>> round(text_width("B3-2", 7.0), 2) < round(text_width("B3-2", 7.0, bold=True), 2)
True
>>> known("Łódź 9″ ☃")
'Łódź 9" ?'
"""

import re
import unicodedata
from collections.abc import Sequence
from functools import lru_cache
from importlib.util import find_spec
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct

from templates.page.marks import Text

if TYPE_CHECKING:
    from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

EM_PER_CAP = 1000 / 688
"""Em size for a capital height of 1: units per em over sCapHeight of the regular face (`head`,
`OS/2` tables). The semibold's capitals (692) come out 0.6 % taller."""

PITCH = 4.0
"""Line pitch of lettering 2.5, mm."""
ELLIPSIS = "…"
_EXACT = 1e-9
"""A line may be so much longer than its room, mm: lengths added up in another order differ."""

ASCENT = 1.09
_DESCENT = 0.385
"""Room kept above and below the base line, in capital heights, whatever the letters: the
ascenders of b, d, l, and the font's own descent of 265/1000 em."""

_STAND_INS = {
    "\u2032": "'",
    "\u2033": '"',
    "⌀": "dia ",
    "✓": "x",
    "\u2010": "-",
    "\u2011": "-",
    "\u00a0": " ",
}
"""Trade signs that the face lacks, and what stands for them."""

_LONE_X = re.compile(r"(?<=[0-9+\-\"] )x(?= )|(?<=[A-Z] )x(?= [A-Z])")
"""An x behind a figure, which may end with the sign of its inches, or between names in capitals."""


def font_path(bold: bool = False) -> Path:
    """Give the TrueType file of the regular or the semibold face."""
    package = find_spec("fontpkg_fira_sans_condensed")
    if package is None or package.origin is None:
        raise ModuleNotFoundError("the font package fontpkg-fira-sans-condensed is not installed")
    weight = "SemiBold" if bold else "Regular"
    return Path(package.origin).with_name("files") / f"FiraSansCondensed-{weight}.ttf"


@lru_cache(maxsize=2)
def _font(bold: bool) -> "TTFont":
    from fontTools.ttLib import TTFont

    return TTFont(BytesIO(font_path(bold).read_bytes()), lazy=True)


@lru_cache(maxsize=2)
def _advances(bold: bool) -> dict[str, float]:
    """The advance width of every character the face has, in capital heights."""
    font = _font(bold)
    cap = font["head"].unitsPerEm / EM_PER_CAP
    widths = font["hmtx"].metrics
    return {chr(code): widths[name][0] / cap for code, name in font.getBestCmap().items()}


@lru_cache(maxsize=1024)
def _ink(character: str, bold: bool) -> tuple[float, float]:
    """The lowest and the highest ink of a character, in capital heights."""
    font = _font(bold)
    cap = font["head"].unitsPerEm / EM_PER_CAP
    glyph = font["glyf"][font.getBestCmap()[ord(character)]]
    return (glyph.yMin / cap, glyph.yMax / cap) if glyph.numberOfContours else (0.0, 0.0)


def missing(text: str, bold: bool = False) -> set[str]:
    """Give the characters of a text that the face cannot show as they are."""
    advance = _advances(bold)
    composed = unicodedata.normalize("NFC", text)
    return {c for c in composed if c not in advance and unicodedata.category(c)[0] != "C"}


_FRACTION = re.compile(r"[0-9]+/[0-9]")


def with_times(text: str) -> str:
    """Give the text as it is printed: an x between sizes, or behind a count, is the sign for times.

    >>> with_times("454.0 x 613.0 at x 60"), with_times('15" x 22 1/2- x 3/4 in')
    ('454.0 × 613.0 at x 60', '15" × 22 1/2- × 3/4 in')
    """
    return _LONE_X.sub("×", text) if " x " in text else text


@lru_cache(maxsize=1)
def _as_it_is() -> frozenset[str]:
    """The characters of the face that stand for themselves, whatever is beside them."""
    return frozenset(
        character
        for character in _advances(False)
        if character.isprintable()
        and character not in _STAND_INS
        and unicodedata.category(character) not in ("Mn", "Me")
        and unicodedata.normalize("NFC", character) == character
    )


@lru_cache(maxsize=4096)
def known(text: str) -> str:
    """Give the text in characters that the face has, with the sign for times.

    White space of any kind becomes a space, control characters go, accents that cannot be
    composed go, then what is still unknown becomes `?`, visibly.
    """
    text = with_times(text)
    if (text.isascii() and text.isprintable()) or _as_it_is().issuperset(text):
        return text
    advance = _advances(False)
    kept: list[str] = []
    for character in unicodedata.normalize("NFC", text):
        if character in _STAND_INS:
            kept.append(_STAND_INS[character])
        elif character.isspace():
            kept.append(" ")
        elif unicodedata.category(character) in ("Cc", "Cf", "Mn", "Me"):
            continue
        elif character in advance:
            kept.append(character)
        else:
            plain = [c for c in unicodedata.normalize("NFKD", character) if c in advance]
            kept.append("".join(c for c in plain if not unicodedata.combining(c)) or "?")
    return "".join(kept)


@lru_cache(maxsize=16384)
def _unit_width(text: str, bold: bool) -> float:
    advance = _advances(bold)
    return sum([advance[character] for character in known(text)])


def text_width(text: str, size: float, bold: bool = False) -> float:
    """Give the width in mm of one line of text whose capitals are `size` mm high."""
    return _unit_width(text, bold) * size


@lru_cache(maxsize=16384)
def _unit_heights(text: str, bold: bool) -> tuple[float, float]:
    inks = [_ink(character, bold) for character in set(known(text))]
    return (
        min([-_DESCENT, *(low for low, _ in inks)]),
        max([ASCENT, *(high for _, high in inks)]),
    )


def text_box(mark: Text) -> tuple[float, float, float, float]:
    """Give the extents (x0, y0, x1, y1) in mm that keep clear of all ink of a line of text.

    Ascenders, descenders and accents are always allowed for.
    """
    width = text_width(mark.text, mark.size, mark.bold)
    low, high = _unit_heights(mark.text, mark.bold)
    before = 0.0
    if mark.anchor != "start":
        before = width / 2 if mark.anchor == "middle" else width
    if mark.angle == 90:
        return (
            mark.x - high * mark.size,
            mark.y - before,
            mark.x - low * mark.size,
            mark.y - before + width,
        )
    if mark.angle == 180:
        return (
            mark.x + before - width,
            mark.y - high * mark.size,
            mark.x + before,
            mark.y - low * mark.size,
        )
    return (
        mark.x - before,
        mark.y + low * mark.size,
        mark.x - before + width,
        mark.y + high * mark.size,
    )


def shorten(text: str, size: float, bold: bool, width: float) -> str:
    """Give the text, or as much of its beginning as fits `width` mm with an ellipsis.

    Empty where not even the ellipsis fits.
    """
    shown = known(text)
    if text_width(shown, size, bold) <= width:
        return shown
    advance = _advances(bold)
    room = width / size - advance[ELLIPSIS]
    if room < 0:
        return ""
    kept = 0
    for character in shown:
        room -= advance[character]
        if room < 0:
            break
        kept += 1
    return shown[:kept].rstrip(" ,;:/-(") + ELLIPSIS


class CutText(Struct, frozen=True, kw_only=True):
    """A text cut into words, measured, to be set in lines of any width; mm."""

    words: tuple[str, ...]
    widths: tuple[float, ...]
    whole: float
    """How long it is in one line."""
    size: float
    bold: bool

    def count(self, width: float) -> int:
        """Give how many lines of at most `width` mm it takes."""
        limit = width + _EXACT
        if self.whole <= limit:
            return 1 if self.words else 0
        if max(self.widths) > limit:
            return len(self.lines(width))
        space = text_width(" ", self.size, self.bold)
        count, used = 1, -space
        for wide in self.widths:
            used = used + space + wide
            if used > limit:
                count, used = count + 1, wide
        return count

    def lines(self, width: float) -> list[str]:
        """Break it into lines of at most `width` mm, as full as they go."""
        limit = width + _EXACT
        if self.whole <= limit:
            return [" ".join(self.words)] if self.words else []
        lines: list[str] = []
        line: list[str] = []
        used = 0.0
        space = text_width(" ", self.size, self.bold)
        for word, wide in zip(self.words, self.widths, strict=True):
            if line and used + space + wide <= limit:
                line.append(word)
                used += space + wide
                continue
            if line:
                lines.append(" ".join(line))
            while wide > limit and len(word) > 1:
                kept = 1
                while text_width(word[: kept + 1], self.size, self.bold) <= limit:
                    kept += 1
                kept = word.rfind("-", 1, kept) + 1 or kept
                lines.append(word[:kept])
                word = word[kept:]
                wide = text_width(word, self.size, self.bold)
            line, used = [word], wide
        if line:
            lines.append(" ".join(line))
        return lines


def _kept_together(words: Sequence[str]) -> list[str]:
    """Join what no line's end may part, for it would be read as something else: a fraction behind
    its whole number, a sum's total behind its sign.

    >>> _kept_together("34.1 + 5.6 = 39.7 (1 9/16 in)".split())
    ['34.1', '+', '5.6', '= 39.7', '(1 9/16', 'in)']
    """
    joined: list[str] = []
    for word in words:
        before = joined[-1] if joined else ""
        if before == "=" or (before[-1:].isdigit() and _FRACTION.match(word)):
            joined[-1] = f"{before} {word}"
        else:
            joined.append(word)
    return joined


@lru_cache(maxsize=1024)
def cut_text(text: str, size: float, bold: bool) -> CutText:
    """Cut a text into words and measure them.

    Kept, since a text is measured for several widths, and many stand on many pages."""
    words = known(text).split()
    if "/" in text or "=" in text:
        words = _kept_together(words)
    widths = [_unit_width(word, bold) * size for word in words]
    spaces = max(0, len(words) - 1) * text_width(" ", size, bold)
    return CutText(
        words=tuple(words),
        widths=tuple(widths),
        whole=sum(widths) + spaces,
        size=size,
        bold=bold,
    )


def wrap(text: str, size: float, bold: bool, width: float) -> list[str]:
    """Break a text into lines of at most `width` mm, as full as they go.

    A word that is longer than a line is broken behind its last hyphen there, as an ID has them, or
    where the line ends; a line holds at least one character.
    """
    return cut_text(text, size, bold).lines(width)
