"""The book: all pages in one file that asks nobody for anything."""

import re
from functools import cache

from cli.jobs import read_in_hand
from jigs.layout.layout import lay_out
from templates.scan.book import book
from tests.templates.kitchens import workshop
from tests.templates.scan.shown import Node, read, show
from tests.templates.scan.test_pages import ROOT

MOST = 1_500_000
"""Bytes of the demo's book: it is sent from phone to phone (our own choice)."""


@cache
def workshops() -> str:
    """Give the book of the workshop."""
    return book(show(workshop()).scan)


@cache
def opened() -> Node:
    """Give the same as it is read."""
    return read(workshops())


def test_all_parts_are_in_it_and_every_link_leads_within() -> None:
    """What is touched opens without a network."""
    shown, root = show(workshop()), opened()
    places = [node.given["id"] for node in root.all("*") if "id" in node.given]
    assert len(set(places)) == len(places)
    assert {node.given["id"] for node in root.all("article")} == set(shown.scan.parts)
    for node in root.all("*"):
        for name in ("href", "src"):
            link = node.given.get(name) or "#"
            assert link == "data:," or link[0] == "#"
            assert link in ("#", "data:,") or link[1:] in places
    assert list(root.all("form")) == []


def test_it_asks_nobody_for_anything() -> None:
    """Neither its style nor its script names an address."""
    assert not re.search(r"https?:|url\(|@import|fetch|XMLHttp", workshops())


def test_the_same_job_makes_the_same_text() -> None:
    """A book that did not change need not be sent again."""
    shown = show(workshop())
    again = show(lay_out(shown.layout.job))
    assert workshops() == book(again.scan)


def test_the_demos_book_is_of_moderate_size() -> None:
    """It goes through a message or a cable in a moment."""
    shown = show(lay_out(read_in_hand(ROOT / "templates" / "demo" / "job.toml")))
    text = book(shown.scan)
    assert len(text.encode()) < MOST
    assert "station CUPS RIGHT" in text


def test_each_wall_is_drawn_once() -> None:
    """All pictures of a wall refer to the one drawing of it."""
    shown, root = show(workshop()), opened()
    walls = {node.given["id"] for node in root.one("svg", "shared").all("g")}
    assert len(walls) == len(shown.scan.walls)
    used = {str(node.given["href"])[1:] for node in root.all("use")}
    assert used == walls


def test_each_step_says_after_what_it_comes() -> None:
    """Without a server too one sees what a door waits for, and gets there by a touch."""
    [page] = (node for node in opened().all("article") if node.given["id"] == "T1-1")
    [hung] = (step for step in page.one("ol").all("li") if step.text.startswith("Hang it"))
    assert hung.text == "Hang it, after T1-SIDE-L: plates and slides on"
    assert hung.one("a").given["href"] == "#T1-SIDE-L"
