"""The pictures of the pages: each is there, small, and of a part that the demo still has."""

from pathlib import Path

import pytest
from PIL import Image

from tests.pages import PAGES, pictures
from tests.pictures import draw_pictures, draw_screens

SHOWN = sorted({file for page in PAGES for file in pictures(page)})


@pytest.mark.parametrize("file", SHOWN, ids=lambda file: file.name)
def test_each_picture_is_there_and_small(file: Path) -> None:
    """A reader sees the sheet at once, on a slow line too."""
    assert file.stat().st_size < 80_000
    with Image.open(file) as picture:
        assert 400 < picture.width < 900


def test_every_picture_can_be_drawn_anew() -> None:
    """The demo still has the parts, and no picture is left over."""
    drawn = {f"{name}.png" for name in (*draw_pictures(), *draw_screens())}
    assert drawn == {file.name for file in SHOWN}
