"""The pictures of the pages: each is there, small, and of a part that the demo still has."""

import re
from pathlib import Path

import pytest
from PIL import Image

from tests.pages import PAGES, README, pictures
from tests.pictures import WALK, draw_pictures, draw_screens, page_of, walk, walk_to

SHOWN = sorted({file for page in PAGES for file in pictures(page)})


@pytest.mark.parametrize("file", SHOWN, ids=lambda file: file.name)
def test_each_picture_is_there_and_small(file: Path) -> None:
    """A reader sees the sheet at once, on a slow line too."""
    assert file.stat().st_size < 80_000
    with Image.open(file) as picture:
        assert 400 < picture.width < 900


@pytest.mark.slow
def test_every_picture_can_be_drawn_anew() -> None:
    """The demo still has the parts, and no picture is left over."""
    drawn = {f"{name}.png" for name in (*draw_pictures(), *draw_screens(), *walk())}
    assert drawn == {file.name for file in SHOWN}


def test_the_walks_figures_are_those_of_its_card(tmp_path: Path) -> None:
    """The lines to strike, and the height that they close on, as its README tells them."""
    text = README.read_text(encoding="utf-8")
    told = re.search(r"^\*\*6\. .*$", text, re.MULTILINE)
    assert told is not None
    walk_to(tmp_path)
    page = page_of(tmp_path, *WALK["walk-card"][:2]).get_textpage().get_text_range()
    figures = re.findall(r"\d+\.\d", told[0])
    assert len(figures) >= 3
    assert [figure for figure in figures if figure not in page] == []
