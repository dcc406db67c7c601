"""The README's pictures: each is there, small, and of a part that the demo still has."""

import re
from pathlib import Path

import pytest
from PIL import Image

from tests.pictures import ROOT, draw_pictures, draw_screens

SHOWN = re.findall(r"!\[[^\]]+\]\(([^)]+\.png)\)", (ROOT / "README.md").read_text("utf-8"))


@pytest.mark.parametrize("shown", SHOWN)
def test_each_picture_is_there_and_small(shown: str) -> None:
    """A reader sees the sheet at once, on a slow line too."""
    file = ROOT / shown
    assert file.stat().st_size < 80_000
    with Image.open(file) as picture:
        assert 400 < picture.width < 900


def test_every_picture_can_be_drawn_anew() -> None:
    """The demo still has the parts, and no picture is left over."""
    drawn = {f"{name}.png" for name in (*draw_pictures(), *draw_screens())}
    assert drawn == {Path(shown).name for shown in SHOWN}
