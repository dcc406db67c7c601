"""Browsers of the small job's site."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.cli.serving.asking import Browser, stranger


@pytest.fixture
def browser(small: Path) -> Iterator[Browser]:
    """Give a browser that has followed the link with the key."""
    with stranger(small) as opened:
        yield opened.let_in()


@pytest.fixture
def other(small: Path) -> Iterator[Browser]:
    """Give a browser without the key."""
    with stranger(small) as opened:
        yield opened
