"""Every output says of what it carries that it rests on open numbers."""

import csv
import io
import json
import re

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import choose_parts, cut_job
from jigs.given.confirming import NumberValue, OpenNumber
from jigs.given.job import FrontSpec
from jigs.given.labelstock import Stock
from jigs.layout.layout import lay_out
from jigs.order.buying import make_order
from templates.binding.drilled import drilled_parts
from templates.binding.jobsheets import make_sheets
from templates.binding.openlist import HEADING
from templates.binding.sheetdata import sheets_json
from templates.cards.outlines import face_dxf, outline_page
from templates.labels.cuptag import find_tagged, tag_pages
from templates.labels.labellist import list_labels
from templates.labels.stocks import STOCKS
from templates.lists.holelist import holes_csv, holes_json, holes_text
from templates.lists.orderlist import order_csv, order_json, order_sheets
from templates.lists.partslist import parts_csv, parts_json
from templates.lists.partstables import parts_text
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.page.raster import Raster
from templates.sheets.sheetwords import set_words
from templates.words.facewords import drilled_words
from templates.words.openwords import MOST_WORDS, line_to_write, open_line
from tests.jigs.sample import HINGE, PULL, SLIDE, SURE, box, job

DRAWER = FrontSpec(id="B1-1", kind="drawer", height=152.4)
DOOR = FrontSpec(id="B1-2", kind="door", hinged="right")


def kitchen(*, sure: bool) -> Layout:
    """A drawer over a right-hung door; everything confirmed, or nothing."""
    confirmed = SURE if sure else {}
    return lay_out(
        job(
            box(DRAWER, DOOR),
            hinge=replace(HINGE, confirmed=confirmed),
            slide=replace(SLIDE, fixing_at=(37.0,), carry_at=(), confirmed=confirmed),
            pull=replace(PULL, confirmed=confirmed),
        )
    )


def number(kind: str, record: str, key: str, value: NumberValue = 15.0) -> OpenNumber:
    made = OpenNumber(kind="hinge", record=record, key=key, value=value)
    return made if kind == "hinge" else replace(made, kind="slide" if kind == "slide" else "pull")


def test_the_line_of_a_page_names_the_record_and_counts() -> None:
    """`page 1` lists them; a page of sheets names the records alone."""
    one = [number("slide", "runner", key) for key in ("fixing_height", "drawer_rise", "fixing_at")]
    assert open_line(one, "page 1") == "OPEN: slide runner, 3 numbers: page 1"
    assert open_line(one[:1], "page 1") == "OPEN: slide runner, 1 number: page 1"
    assert open_line(one, brief=True) == "OPEN: slide runner"
    two = [*one, number("hinge", "mine", "constant")]
    assert open_line(two, "page 1") == "OPEN: hinge mine, 1 number; slide runner, 3: page 1"
    assert open_line(two, brief=True) == "OPEN: hinge mine, slide runner"
    assert open_line([], "page 1") == ""


def test_the_line_is_never_long() -> None:
    """With many records, or with names of many words, it counts."""
    many = [number("hinge", f"packet no {row}", "constant") for row in range(5)]
    line = open_line(many, "page 1")
    assert line == "OPEN: 5 numbers of 5 pieces of hardware: page 1"
    assert len(line.split()) <= MOST_WORDS


@pytest.mark.parametrize(
    ("value", "line"),
    [
        (15.0, 'constant = "15 mm"'),
        (-4.5, 'constant = "-4.5 mm"'),
        ((0.0, 3.5), 'constant = ["0 mm", "3.5 mm"]'),
        ((), "constant = ..."),
    ],
)
def test_the_line_to_write(value: NumberValue, line: str) -> None:
    """As it stands in the job; of what nobody stated only the key."""
    assert line_to_write(number("hinge", "mine", "constant", value)) == line


def words(layout: Layout) -> list[list[str]]:
    """The texts of each page of a job's sheets."""
    return [
        [mark.text for mark in page.marks if isinstance(mark, Text)]
        for page in make_sheets(layout, PAPERS["common"]).pages
    ]


def test_each_page_says_what_decides_its_own_holes() -> None:
    """A face page of a drawer front has its pull alone, its back the slide alone."""
    first, *_ = words(kitchen(sure=False))
    said: dict[str, set[str]] = {}
    plans = make_sheets(kitchen(sure=False), PAPERS["common"]).told
    for field in (spot.field for plan in plans for spot in plan.spots):
        marks = set_words(
            field.words,
            field.cards,
            max((s.setting for s in field.shapes), key=lambda setting: setting.width),
        )
        page = [mark.text for mark in marks if isinstance(mark, Text)]
        face = next(text for text in page if text.startswith("DRILL THIS FACE"))
        # A narrow way to set the words breaks the line.
        said.setdefault(face, set()).update(re.findall(r"OPEN: .*?(?= STEPS)", " ".join(page)))
    assert said["DRILL THIS FACE: BACK OF DRAWER FRONT"] == {"OPEN: slide runner"}
    assert said["DRILL THIS FACE: FRONT FACE"] == {"OPEN: pull bar"}
    assert said["DRILL THIS FACE: BACK OF DOOR"] == {"OPEN: hinge mine"}
    assert said["DRILL THIS FACE: INSIDE OF LEFT SIDE"] == {"OPEN: slide runner"}
    both = "OPEN: hinge mine, slide runner"
    assert said["DRILL THIS FACE: INSIDE OF RIGHT SIDE"] == {both}
    listed = " ".join(first)
    for line in ('constant = "15 mm"', 'plates = ["0 mm", "2 mm", "3 mm"]', 'centers = "160 mm"',
                 'depth_allowance = "16 mm"', 'fixing_at = ["37 mm"]'):  # fmt: skip
        assert line in first, line
    assert "2 fronts have sheets. 2 depend on open numbers" in listed
    assert "ready" not in listed


def test_where_nothing_is_open_page_1_says_so() -> None:
    """And no page has a line."""
    first, *pages = words(kitchen(sure=True))
    assert "No number is open." in " ".join(first)
    assert not [text for page in pages for text in page if "OPEN" in text]


def test_more_open_numbers_than_page_1_holds_take_pages_of_their_own() -> None:
    """None is left out, and the pages of parts are counted on from there."""
    layout = kitchen(sure=False)
    slides = {
        f"runner {row}": replace(SLIDE, name=f"runner {row}", like="undermount-533", confirmed={})
        for row in range(30)
    }
    boxes = tuple(
        box(FrontSpec(id=f"D{row}", kind="drawer", slide=f"runner {row}"), name=f"C{row}")
        for row in range(30)
    )
    many = lay_out(replace(layout.job, slides={**layout.job.slides, **slides}, boxes=boxes))
    sheets = make_sheets(many, PAPERS["common"], only=["D0"])
    pages = [[mark.text for mark in sheet.page.marks if isinstance(mark, Text)] for sheet in sheets]
    listed = [text for page in pages for text in page if text.startswith('[slide."runner ')]
    assert len(listed) == 30
    # The stamps send to page 1: it says where the numbers are.
    numbered = [row for row, page in enumerate(pages) if HEADING in page]
    assert numbered
    assert numbered[0] == 1
    last = f"pages 2 to {numbered[-1] + 1}" if len(numbered) > 1 else "page 2"
    assert f"{HEADING}. They are listed on {last}." in " ".join(pages[0])
    first = next(row for row, page in enumerate(pages) if "FRONT OF DRAWER BOX" in " ".join(page))
    assert first > 1
    assert next(row for row, _ in sheets.cards) == first + 1
    assert sheets.cost.pages == len(pages)


@pytest.mark.parametrize("sure", [False, True])
def test_lists_of_holes_say_it(sure: bool) -> None:
    """A column, a value on the part, a line under its head."""
    layout = kitchen(sure=sure)
    rows = {
        (row["part"], row["purpose"]): row["open"]
        for row in csv.DictReader(io.StringIO(holes_csv(layout)))
    }
    slide = "slide.runner.fixing_height slide.runner.drawer_rise slide.runner.fixing_at"
    assert rows["B1-SIDE-L", "slide"] == ("" if sure else slide)
    assert rows["B1-1", "pull"] == ("" if sure else "pull.bar.centers")
    assert rows["B1-1", "front-fixing"] == (
        "" if sure else "slide.runner.drawer_rise slide.runner.width_less"
    )
    data = json.loads(holes_json(layout))
    door = next(front for front in data["fronts"] if front["id"] == "B1-2")
    assert {n["key"]: n["value_mm"] for n in door["open"] if n["kind"] == "hinge"} == (
        {} if sure else {"constant": 15.0, "plates": [0.0, 2.0, 3.0], "fixing_spacing": 45.0,
                         "fixing_inboard": 9.5, "cup_depth": 13.0}
    )  # fmt: skip
    assert all(bool(part["open"]) is not sure for part in (*data["sides"], *data["boxes"]))
    assert ("OPEN: slide 'runner'" in holes_text(layout)) is not sure


@pytest.mark.parametrize("sure", [False, True])
def test_the_cut_list_says_it_of_the_pieces_that_rest_on_a_slide(sure: bool) -> None:
    """A drawer box's pieces; a side's size is its box's alone."""
    layout = kitchen(sure=sure)
    parts = choose_parts(layout, cut_job(layout))
    rows = {row["part"]: row["open"] for row in csv.DictReader(io.StringIO(parts_csv(parts)))}
    keys = " ".join(f"slide.runner.{k}" for k in ("drawer_rise", "width_less", "drawer_shorter"))
    assert rows["B1-1-BOX-SIDE"] == ("" if sure else keys)
    assert rows["B1-SIDE-L"] == ""
    data = {piece["id"]: piece["open"] for piece in json.loads(parts_json(parts))["parts"]}
    assert len(data["B1-1-BOX-BOTTOM"]) == (0 if sure else 3)
    assert ("OPEN: slide 'runner'" in parts_text(parts)) is not sure


@pytest.mark.parametrize("sure", [False, True])
def test_the_order_says_it_of_what_is_bought(sure: bool) -> None:
    """Hinges and plates by constant and heights, slides by the depth they want, pulls."""
    layout = kitchen(sure=sure)
    order = make_order(layout, cut_job(layout))
    listed = csv.DictReader(io.StringIO(order_csv(order, layout.job)))
    rows = {row["what"]: row["open"] for row in listed}
    plates = "hinge.mine.constant hinge.mine.plates"
    assert rows["hinge"] == rows["mounting plate"] == ("" if sure else plates)
    assert rows["pair of slides"] == ("" if sure else "slide.runner.depth_allowance")
    assert rows["pull"] == ("" if sure else "pull.bar.centers")
    assert ("slide.runner.width_less" in rows["drawer box"]) is not sure
    data = json.loads(order_json(order, layout.job))
    assert any("for the hole at 37 alone" in term for term in data["terms"]) is not sure
    assert bool(data["open"]) is not sure
    assert {item["what"] for item in data["hardware"] if item["open"]} == (
        set() if sure else {"hinge", "plate", "slide", "pull"}
    )
    heads, lines = order_sheets(order, layout.job)["hardware"]
    assert any(line[heads.index("open")] for line in lines) is not sure


def test_the_supplier_is_told_what_is_assumed_in_a_front() -> None:
    """Its thickness, say, where nobody measured it."""
    layout = kitchen(sure=True)
    guessed = lay_out(replace(layout.job, assumed=frozenset({"material.front"})))
    heads, lines = order_sheets(make_order(guessed, cut_job(guessed)), guessed.job)["fronts"]
    assert all("assumed: " in str(line[heads.index("open")]) for line in lines)


@pytest.mark.parametrize("sure", [False, True])
def test_bare_faces_and_cards_as_data_say_it(sure: bool) -> None:
    """Beside the face, never on it; on a narrow part the word alone."""
    layout = kitchen(sure=sure)
    views = (view for part in drilled_parts(layout) for view in part.views)
    door = next(view for view in views if drilled_words(view) == "BACK OF DOOR")
    texts = [mark for mark in outline_page(door).marks if isinstance(mark, Text)]
    said = [mark for mark in texts if "OPEN" in mark.text]
    assert bool(said) is not sure
    assert all(mark.y >= door.height + 10.0 for mark in said)
    assert (b"OPEN: hinge mine, 5 numbers" in face_dxf(door)) is not sure
    narrow = [mark.text for mark in outline_page(replace(door, width=90.0)).marks
              if isinstance(mark, Text)]  # fmt: skip
    assert ("UP, OPEN" in narrow) is not sure
    data = json.loads(sheets_json(make_sheets(layout, PAPERS["common"], only=["B1-2"])))
    assert all(("open" in card) is not sure for card in data["cards"])


@pytest.mark.parametrize("sure", [False, True])
def test_labels_say_it(sure: bool) -> None:
    """Of fronts, drilled sides, drawer boxes and their pieces; not of a bottom."""
    layout = kitchen(sure=sure)
    labels = {words.part: words for words in list_labels(layout, cut_job(layout).pieces, ())}
    for part in ("B1-1", "B1-2", "B1-SIDE-L", "B1-1-BOX", "B1-1-BOX-BACK"):
        ways = [way for line in labels[part].lines for way in line.ways]
        assert ("OPEN" in ways) is not sure, part
    assert "OPEN" not in [way for line in labels["B1-BOTTOM"].lines for way in line.ways]


@pytest.mark.parametrize("sure", [False, True])
@pytest.mark.parametrize("stock", [stock for stock in STOCKS.values() if stock.bore is not None])
def test_cup_tags_say_it(sure: bool, stock: Stock) -> None:
    """Beside the code, of a door whose hinge is open."""
    layout = kitchen(sure=sure)
    fronts, _ = find_tagged(layout, stock)
    marks = [mark for page in tag_pages(layout, fronts, stock, Raster()) for mark in page.marks]
    codes = [mark.text for mark in marks if isinstance(mark, Text) and "code" in mark.text]
    assert any(text.endswith(" OPEN") for text in codes) is not sure
