"""The printed face: widths, extents, shortening, and characters it lacks."""

import unicodedata

import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]
from hypothesis import given, settings
from hypothesis import strategies as st

from templates.page.marks import Text
from templates.page.typeface import (
    ELLIPSIS,
    EM_PER_CAP,
    _as_it_is,
    cut_text,
    font_path,
    known,
    missing,
    shorten,
    text_box,
    text_width,
    wrap,
)
from tests.anytext import ANY


def test_size_is_the_height_of_a_capital() -> None:
    """The em follows from the font's own capital height (OS/2 table)."""
    font = TTFont(font_path())
    assert pytest.approx(font["head"].unitsPerEm / font["OS/2"].sCapHeight) == EM_PER_CAP


def test_both_weights_know_the_same_characters() -> None:
    """What the regular face shows, the semibold shows too."""
    regular, bold = (set(TTFont(font_path(weight)).getBestCmap()) for weight in (False, True))
    assert regular == bold


def test_width_is_the_sum_of_advances() -> None:
    """A word is as wide as its glyphs' advances, taken from the font's own table."""
    font = TTFont(font_path())
    names, advances = font.getBestCmap(), font["hmtx"].metrics
    units = sum(advances[names[ord(letter)]][0] for letter in "Wide Łódź 454.0")
    assert text_width("Wide Łódź 454.0", 3.5) == pytest.approx(units / 1000 * 3.5 * EM_PER_CAP)


@pytest.mark.parametrize(
    ("given_text", "shown"),
    [
        ("Küche Łódź Νότια Кухня", "Küche Łódź Νότια Кухня"),
        ('5′ 6″', "5' 6\""),
        ("⌀ 35", "dia  35"),
        ("one\ttwo\nthree", "one two three"),
        ("bell\x07 and\u200bjoiner", "bell andjoiner"),
        ("e\u0301", "é"),
        ("x\u0323\u0323", "x"),
        ("漢字 ☃", "?? ?"),
        ("𝐁𝟑", "B3"),
        ('4 x 32.0, 15" x 22 1/2- x 3/4 in', '4 × 32.0, 15" × 22 1/2- × 3/4 in'),
        ("WIDTH x HEIGHT x THICKNESS", "WIDTH × HEIGHT × THICKNESS"),
        ("x 12.0, at x 60; x or y; 24x60", "x 12.0, at x 60; x or y; 24x60"),
        ("", ""),
    ],
)  # fmt: skip
def test_unknown_characters_are_replaced_visibly(given_text: str, shown: str) -> None:
    """Accents that do not compose go, signs have stand-ins, the rest is a question mark."""
    assert known(given_text) == shown


def test_missing_names_what_cannot_be_shown() -> None:
    """Only the characters that the face lacks are listed."""
    assert missing("Łódź ☃ 漢 3") == {"☃", "漢"}


@given(st.text(ANY))
@settings(max_examples=100)
def test_known_text_is_always_printable(text: str) -> None:
    """Whatever comes in, only characters of the face come out, and they stay as they are."""
    shown = known(text)
    assert missing(shown) == set()
    assert known(shown) == shown
    assert text_width(shown, 2.5) >= 0


@given(
    st.text(ANY, max_size=60),
    st.floats(0, 120),
    st.sampled_from([2.5, 3.5, 7.0]),
    st.booleans(),
)
@settings(max_examples=100)
def test_shortened_text_fits(text: str, width: float, size: float, bold: bool) -> None:
    """A shortened text is a beginning of the whole and never wider than its room."""
    short = shorten(text, size, bold, width)
    assert text_width(short, size, bold) <= width + 1e-9
    if short != known(text):
        assert short == "" or (
            short.endswith(ELLIPSIS) and known(text).startswith(short.removesuffix(ELLIPSIS))
        )


@given(st.text(alphabet="ab cde-WW fgŁé", max_size=80), st.floats(12, 80))
@settings(max_examples=100)
def test_wrapped_lines_fit_and_lose_nothing(text: str, width: float) -> None:
    """Every line fits, and the letters come through in order."""
    lines = wrap(text, 3.5, False, width)
    assert cut_text(text, 3.5, False).count(width) == len(lines)
    assert all(text_width(line, 3.5) <= width for line in lines)
    assert "".join("".join(lines).split()) == "".join(known(text).split())


@pytest.mark.parametrize("width", range(14, 60, 3))
def test_no_line_parts_a_fraction_from_its_number_or_a_sum_from_its_total(width: int) -> None:
    """1 9/16 at a line's end read as 1; the lines lose nothing, and keep to their width."""
    text = "a gap of 1 9/16 in, so 97.8 + 416.0 + 100.6 = 614.4; it is 24 3/16- in"
    lines = wrap(text, 2.5, False, float(width))
    assert " ".join(lines) == text
    assert all(text_width(line, 2.5) <= width for line in lines)
    assert not any(line.endswith(("1", " =", "24")) for line in lines)


def test_a_word_longer_than_the_line_is_broken() -> None:
    """Nothing hangs over, and a line is never empty."""
    assert all(wrap("Seitenwandverkleidung", 5.0, False, 20.0))
    assert wrap("WW", 7.0, True, 0.1) == ["W", "W"]


def test_an_id_is_broken_behind_a_hyphen() -> None:
    """Broken elsewhere it would be read as another."""
    name = "PANTRY-L-ROLLOUT-1"
    room = text_width("PANTRY-L-ROL", 2.5, False)
    assert wrap(name, 2.5, False, room) == ["PANTRY-L-", "ROLLOUT-1"]
    assert "".join(wrap(name, 2.5, False, room / 2)) == name


@pytest.mark.parametrize("text", ["gjpqy", "ÅÄẪ", "Щщ", "ΐΏ", "Q,;|", "B3-2"])
@pytest.mark.parametrize("bold", [False, True])
def test_the_box_holds_all_ink(text: str, bold: bool) -> None:
    """No outline of a glyph leaves the box (glyf table), except a serif's breadth sideways."""
    font = TTFont(font_path(bold))
    outlines, names = font["glyf"], font.getBestCmap()
    glyphs = [outlines[names[ord(letter)]] for letter in text]
    _, y0, _, y1 = text_box(Text(x=0, y=0, text=text, size=5.0, bold=bold))
    unit = 5.0 * EM_PER_CAP / 1000
    assert y0 <= min(glyph.yMin for glyph in glyphs) * unit
    assert y1 >= max(glyph.yMax for glyph in glyphs) * unit


def test_the_box_follows_anchor_and_angle() -> None:
    """A turned text reads from the right: its feet are on the right of its head."""
    width = text_width("B3-2", 5.0)
    start = text_box(Text(x=10, y=20, text="B3-2", size=5.0))
    middle = text_box(Text(x=10, y=20, text="B3-2", size=5.0, anchor="middle"))
    end = text_box(Text(x=10, y=20, text="B3-2", size=5.0, anchor="end"))
    turned = text_box(Text(x=10, y=20, text="B3-2", size=5.0, anchor="end", angle=90))
    assert start[0::2] == pytest.approx((10, 10 + width))
    assert middle[0::2] == pytest.approx((10 - width / 2, 10 + width / 2))
    assert end[0::2] == pytest.approx((10 - width, 10))
    assert turned[1::2] == pytest.approx((20 - width, 20))
    assert turned[2] - 10 == pytest.approx(20 - start[1])
    assert 10 - turned[0] == pytest.approx(start[3] - 20)


@given(st.text(alphabet=sorted(_as_it_is()), min_size=1, max_size=8))
@settings(max_examples=60)
def test_characters_that_stand_for_themselves_do_so_beside_any_other(text: str) -> None:
    """Normalising (Unicode Standard Annex 15) leaves a text of them alone, and none is a mark."""
    assert known(text) == text == unicodedata.normalize("NFC", text)
    assert not any(map(unicodedata.combining, text))
