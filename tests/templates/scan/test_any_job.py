"""Whatever a kitchen has, each of its parts has a sound page, and so has the book."""

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.given.job import ColumnSpec, FrontSpec, Job, ShelfSpec
from jigs.layout.layout import lay_out
from templates.scan.book import book
from templates.scan.homepage import home_page
from templates.scan.partpage import part_page
from templates.scan.scan import Scan
from tests.jigs.sample import box, lay
from tests.jobs import jobs
from tests.templates.scan.shown import SERVED, Node, read
from tests.templates.scan.test_pages import MOST, check_sound


def check_drawing(svg: Node) -> None:
    """All figures and holes lie within it."""
    left, top, wide, high = map(float, str(svg.given["viewbox"]).split())
    for name, x, y in (("text", "x", "y"), ("circle", "cx", "cy")):
        for node in svg.all(name):
            assert left <= float(str(node.given[x])) <= left + wide
            assert top <= float(str(node.given[y])) <= top + high


def check_all(job: Job) -> None:
    scan = Scan(lay_out(job))
    standings = scan.standings({})
    for part in scan.parts:
        page = part_page(scan, part, standings[part], SERVED)
        assert len(page.encode()) < MOST, part
        root = read(page)
        check_sound(root)
        for face in root.all("div", "face"):
            check_drawing(face.one("svg"))
    check_sound(read(home_page(scan, standings, SERVED)))
    assert {node.given["id"] for node in read(book(scan)).all("article")} == set(scan.parts)


@given(jobs())
@settings(max_examples=1)
def test_any_job_has_its_pages(job: Job) -> None:
    """Parts without a size, names in other scripts, walls without a name."""
    check_all(job)


@pytest.mark.slow
@given(jobs())
@settings(max_examples=4)
def test_many_jobs_have_their_pages(job: Job) -> None:
    """The same, for more of them."""
    check_all(job)


def test_the_page_with_the_most_holes_is_light() -> None:
    """A tall partition with rows of pins from end to end in either face."""
    fronts = (
        FrontSpec(id="PANTRY-NORTH-1", kind="door", hinged="left", column=1),
        FrontSpec(id="PANTRY-NORTH-2", kind="door", hinged="right", column=2),
    )
    tall = box(*fronts, name="PANTRY-NORTH", kind="tall", width=1200.0, height=2400.0)
    tall = replace(tall, columns=(ColumnSpec(), ColumnSpec()), shelves=(ShelfSpec(count=6),))
    scan = Scan(lay(tall))
    part = "PANTRY-NORTH-PARTITION-1"
    assert sum(len(face.holes) for face in scan.parts[part].faces) > 240
    page = part_page(scan, part, scan.standings({})[part], SERVED)
    assert len(page.encode()) < MOST
    for face in read(page).all("div", "face"):
        check_drawing(face.one("svg"))
