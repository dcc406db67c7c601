"""Two states of a job held against each other, and against an independent comparison of the lists
that the tool prints."""

import json
import tempfile
from collections.abc import Mapping
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import fields, replace

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.changes.comparing import Changes, compare
from jigs.changes.given import list_given
from jigs.changes.keeping import FORM, is_known, is_untouched, made_data, read_made
from jigs.changes.made import (
    DrilledFor,
    Given,
    Made,
    MadeHole,
    MadeNeed,
    MadePart,
    MadeRow,
    MadeStation,
    MadeWall,
    Unsure,
)
from jigs.changes.making import make
from jigs.cutlist.cutlist import choose_parts, cut_job
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from templates.labels.labellist import list_labels
from templates.lists.digests import list_digests
from templates.lists.holelist import holes_json
from templates.lists.listpages import list_pages
from templates.lists.ordertables import order_listing
from templates.lists.partslist import parts_json
from templates.lists.partstables import parts_listing
from templates.lists.worklist import plan_listing
from templates.lists.workview import Paged, view_work
from templates.page.marks import Text
from templates.page.paper import PAPERS
from tests.jobs import jobs
from tests.jobtexts import HEAD, box_text
from tests.uneven import UNEVEN

REACH = 207.0
TEXT = HEAD + UNEVEN + box_text(
    "W1", "wall", 'kind = "pair"', more="x = 1000\nshelf = [{at = 300}]"
)  # fmt: skip


def state(job: Job) -> tuple[Layout, Made]:
    layout = lay_out(job)
    cut = cut_job(layout)
    stations = plan_stations(layout, reach=REACH)
    work = view_work(layout, cut, stations, Paged())
    lists = list_digests(layout, cut, work.order, work)
    return layout, make(layout, cut, work.order, stations, reach=REACH, lists=lists)


@cache
def stated(text: str) -> tuple[Layout, Made]:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "job.toml"
        path.write_text(text, encoding="utf-8")
        return state(read_job(path))


def changes(before: str, after: str, text: str = TEXT) -> Changes:
    assert before in text
    return compare(stated(text)[1], stated(text.replace(before, after, 1))[1])


def independent(layout: Layout) -> Mapping[str, object]:
    """Give size, holes and code of each part as the lists of the tool have them."""
    data: dict[str, list[Any]] = {}
    holes = json.loads(holes_json(layout))
    for key, name in (("fronts", "id"), ("sides", "board"), ("boxes", "part"), ("rollouts", "id")):
        for part in holes.get(key, []):
            sizes = {k: v for k, v in part.items() if k.endswith("_mm") and k[0] not in "xy"}
            seen = [sizes, part["code"], part.get("withheld"), part.get("hinged"), part.get("kind")]
            bored = [{k: v for k, v in h.items() if k != "part"} for h in part.get("holes", [])]
            data.setdefault(part[name], []).extend([seen, bored])
    for piece in json.loads(parts_json(choose_parts(layout, cut_job(layout))))["parts"]:
        kept = {k: v for k, v in piece.items() if k not in ("open", "assumed")}
        data.setdefault(piece["id"], []).append(kept)
    return data


def differing(one: Layout, other: Layout) -> set[str]:
    before, after = independent(one), independent(other)
    return {name for name in {*before, *after} if before.get(name) != after.get(name)}


def reported(found: Changes) -> set[str]:
    """Give all parts that are named, under both of their names."""
    return {part.id for change in found.parts for part in (change.before, change.after) if part}


@pytest.mark.parametrize("text", [TEXT, HEAD + UNEVEN])
def test_a_job_is_no_other_than_itself(text: str) -> None:
    """Nothing is stale, nothing was edited."""
    found = compare(stated(text)[1], stated(text)[1])
    assert found.nothing
    assert (found.edits, found.confirmed, found.labels, found.pages) == ((), (), (), ())


def test_what_a_pack_keeps_is_what_was_made() -> None:
    """Through JSON and back, value by value."""
    made = stated(TEXT)[1]
    data = json.loads(json.dumps(made_data(made)))
    assert is_known(data)
    assert is_untouched(data)
    assert read_made(data, job=made.job, tool=made.tool) == made


def test_another_value_is_another_form() -> None:
    """Whoever adds one, or takes one away, counts FORM up: packs of before are then compared by
    their codes alone, and not with a value missing."""
    kept = (
        Made,
        MadePart,
        DrilledFor,
        Unsure,
        MadeHole,
        MadeStation,
        MadeRow,
        MadeNeed,
        MadeWall,
        Given,
    )
    names = " ".join(f"{kind.__name__} {each.name}" for kind in kept for each in fields(kind))
    assert (FORM, sha256(names.encode()).hexdigest()[:12]) == (6, "abdad8b0dd8f")


@pytest.mark.parametrize(
    ("before", "after"),
    [('"x": 22.5', '"x": 22.4'), ('"x": 22.5', '"x": NaN'), ('{"id": "W1-1L"', '{"id": "W9"'),
     ('"what": "hinge"', '"what": "hinges"'), ('"part": "B1-3"', '"part": "B1-4"')],
)  # fmt: skip
def test_a_figure_that_was_edited_since_is_found(before: str, after: str) -> None:
    """Whatever it is; only how the text is spaced and sorted makes no difference."""
    text = json.dumps(made_data(stated(TEXT)[1]))
    assert is_untouched(json.loads(json.dumps(json.loads(text), indent=3, sort_keys=True)))
    assert before in text
    assert not is_untouched(json.loads(text.replace(before, after, 1)))


@pytest.mark.parametrize(
    "wrong",
    [None, [], {"parts": []}, {"parts": {"B1": 3}}, {"parts": {"B1": {"id": "B1"}}},
     {"reach": "far"}, {"whole": 1}, {"walls": [{"name": 3}]}, {"given": [{"kind": {}}]}],
)  # fmt: skip
def test_what_is_damaged_is_refused(wrong: object) -> None:
    """By one kind of error."""
    with pytest.raises(ValueError, match=r"."):
        read_made(wrong, job="Trial", tool="0")


EDITS = {
    "hinge": ("constant = 15", "constant = 17"),
    "pull": ("centers = 160", "centers = 128"),
    "slide": ("fixing_height = 33", "fixing_height = 34"),
    "box": ("width = 900", "width = 890"),
    "front": ("height = 200", "height = 190"),
    "hand": ('hinged = "right"', 'hinged = "left"'),
    "band": ("band = 0.6", "band = 1"),
    "board": ("side = 18.3", "side = 18.0"),
    "shelf": ("at = 300", "at = 332"),
    "pins": ("from = 200", "from = 232"),
    "hung": ("above_floor = 1370", "above_floor = 1400"),
    "reveal": ("bottom = 1.6", "bottom = 2.6"),
}


@pytest.mark.parametrize("edit", EDITS.values(), ids=EDITS)
def test_the_parts_named_are_those_whose_lists_differ(edit: tuple[str, str]) -> None:
    """An independent comparison of the holes and of the cut list finds the same ones; what else is
    named has another label or sheet."""
    before, after = edit
    found = changes(before, after)
    other = differing(stated(TEXT)[0], stated(TEXT.replace(before, after, 1))[0])
    assert other <= reported(found)
    more = reported(found) - other
    assert all(change.label or change.sheet for change in found.parts if change.id in more)
    [one] = found.edits
    assert all(change.edits == (one,) for change in found.parts)


@pytest.mark.parametrize("edit", EDITS.values(), ids=EDITS)
def test_lists_that_are_not_named_say_what_they_said(edit: tuple[str, str]) -> None:
    """Word for word, the plan but for the pages of other files; one that is named does not."""
    before, after = edit
    was, now = (said_in_lists(each) for each in (TEXT, TEXT.replace(before, after, 1)))
    assert {*changes(before, after).lists} == {name for name in now if was[name] != now[name]}


def said_in_lists(text: str) -> Mapping[str, list[str]]:
    """Give all texts of the lists of a pack as they are printed, made one by one."""
    layout = stated(text)[0]
    cut = cut_job(layout)
    work = view_work(layout, cut, plan_stations(layout, reach=REACH), Paged())
    lists = {
        "lists.pdf": (
            parts_listing(choose_parts(layout, cut)), order_listing(work.order, layout.job),
        ),
        "plan.pdf": (plan_listing(work),),
    }  # fmt: skip
    return {
        name: [
            mark.text
            for listing in each
            for page in list_pages(listing, PAPERS["common"])
            for mark in page.marks
            if isinstance(mark, Text)
        ]
        for name, each in lists.items()
    }


def test_where_a_drawer_box_stands_is_the_business_of_its_front() -> None:
    """Its own label and sheet say nothing of it: with wider side reveals a front is narrower, and
    its box stands nearer to its left end."""
    found = changes("side = 1.6", "side = 2.4")
    boxes = {name for name, part in found.new.parts.items() if part.kind == "drawer-box"}
    assert boxes
    assert not boxes & {*found.labels, *found.sheets}
    assert {found.new.parts[name].front for name in boxes} <= {*found.labels}


@pytest.mark.parametrize("edit", EDITS.values(), ids=EDITS)
def test_a_label_that_is_not_named_says_what_it_said(edit: tuple[str, str]) -> None:
    """Word for word."""
    before, after = edit
    found = changes(before, after)
    was, now = (
        {
            words.part: (words.payload, words.lines)
            for words in list_labels(
                layout, cut_job(layout).pieces, plan_stations(layout, reach=REACH)
            )
        }
        for layout in (stated(TEXT)[0], stated(TEXT.replace(before, after, 1))[0])
    )
    assert [name for name in now if name not in found.labels and was.get(name) != now[name]] == []


@pytest.mark.slow
@settings(max_examples=12)
@given(jobs(most_boxes=2), st.integers(0, 3), st.sampled_from(["width", "height", "depth"]))
def test_any_box_of_another_size_names_the_parts_that_differ(
    job: Job, number: int, key: str
) -> None:
    """One number of a made-up job."""
    boxes = list(job.boxes)
    at = number % len(boxes)
    boxes[at] = replace(boxes[at], **{key: getattr(boxes[at], key) + 3.0})
    (one, was), (other, now) = state(job), state(replace(job, boxes=tuple(boxes)))
    assert differing(one, other) <= reported(compare(was, now))
    assert compare(was, was).nothing


def test_a_renamed_box_is_labelled_anew_and_nothing_else() -> None:
    """Its parts are the same under other IDs: nothing is cut, bored or ordered."""
    found = changes('id = "W1"', 'id = "W7"')
    assert {change.lot for change in found.parts if change.id.startswith("W7")} == {"renamed"}
    assert {(c.before.id, c.id) for c in found.parts if c.before} >= {
        ("W1-1L", "W7-1L"), ("W1-SIDE-L", "W7-SIDE-L"),
    }  # fmt: skip
    assert found.needs == ()
    assert not any(change.holes or change.sizes for change in found.parts)


def test_boxes_that_change_names_change_names() -> None:
    """Neither is taken for a changed one."""
    text = TEXT.replace('"W1"', '"W9"').replace('"B1"', '"W1"').replace('"W9"', '"B1"')
    found = compare(stated(TEXT)[1], stated(text)[1])
    was = {c.before.id: c.id for c in found.parts if c.before and c.lot == "renamed"}
    assert (was["W1-1L"], was["B1-3"]) == ("B1-1L", "W1-3")


def test_a_plate_of_another_height_is_bought_and_bores_nothing() -> None:
    """The cup stays; the sides' page names the plate."""
    found = changes("plates = [0, 3]", "plates = [0, 3.3]")
    assert {(need.need.what, need.after - need.before > 0) for need in found.needs} == {
        ("plate", True), ("plate", False),
    }  # fmt: skip
    assert not any(change.holes for change in found.parts)
    assert any("sides" in name for name in found.pages)


def test_what_is_confirmed_makes_no_paper_stale_and_what_is_open_does() -> None:
    """Paper that says OPEN too much misleads nobody; paper that is silent does."""
    confirmed = 'fixing_inboard = 9.5\nconfirmed = "measured"'
    text = TEXT.replace(confirmed, "fixing_inboard = 9.5")
    was, now = stated(text)[1], stated(TEXT)[1]
    assert compare(was, now).nothing
    assert "hinge.mine.constant" in compare(was, now).confirmed
    assert {"B1-3", "W1-1L"} <= set(compare(now, was).labels)


def test_a_box_that_is_moved_along_its_wall_asks_for_no_wood() -> None:
    """Where it is screwed on is another place, and so is its picture."""
    found = changes("x = 1000", "x = 1100")
    [wall] = found.hung
    assert found.drawn == (wall,)
    assert (found.stations, found.sheets, found.needs) == ((), (), ())
    assert not any(change.holes or change.sizes for change in found.parts)


def test_a_card_that_is_another_one_makes_all_its_rows_stale() -> None:
    """Also where the row of one part alone is another one."""
    made = stated(TEXT)[1]
    station = next(each for each in made.stations if len({row.part for row in each.rows}) > 1)
    first = replace(station.rows[0], figures=("another",))
    rowed = replace(station, rows=(first, *station.rows[1:]))
    for new, parts in (
        (rowed, {first.part}),
        (replace(rowed, cards=("ZZZZZ",)), {row.part for row in station.rows}),
    ):
        others = tuple(new if each is station else each for each in made.stations)
        [change] = compare(made, replace(made, stations=others)).stations
        assert {*change.parts} == parts


def test_what_is_held_back_now_has_lost_no_hole() -> None:
    """A door that nobody said the hand of any more: neither it nor its side is said to be spoilt,
    cut or ordered no more; its side's other holes are told as ever."""
    [hand] = [line for line in TEXT.splitlines() if line.strip().startswith("hinged")]
    found = changes(f"{hand}\n", "")
    assert found.stopped == ("B1-3",)
    [door] = [change for change in found.parts if change.id == "B1-3"]
    assert (door.holes, door.sizes) == ((), ())
    side = next(change for change in found.parts if change.waits)
    assert side.waits == ("B1-3",)
    assert not [hole for change in found.parts for hole in change.holes]
    assert not [need for need in found.needs if need.need.what == "front"]
    back = compare(found.new, found.old)
    assert back.stopped == ()
    assert {hole.kind for change in back.parts for hole in change.holes} == {"new"}


def test_of_codes_alone_it_says_no_more_than_they_do() -> None:
    """A pack of before: its parts and their codes."""
    made = stated(TEXT)[1]
    codes = {
        name: replace(part, holes=(), size=(), cut=(), stations=())
        for name, part in made.parts.items()
    }
    old = Made(job=made.job, tool="0", parts=codes, whole=False)
    assert compare(old, made).nothing
    found = compare(old, stated(TEXT.replace("fixing_inboard = 9.5", "fixing_inboard = 10"))[1])
    assert set(found.recoded) == set(found.labels) == {"B1-3", "W1-1L", "W1-1R"}
    assert found.parts == ()
    wide = compare(old, stated(TEXT.replace("band = 0.6", "band = 0.8"))[1])
    drawn = {name for name, part in wide.new.parts.items() if part.stations}
    assert set(wide.sheets) == set(wide.recoded) & drawn < set(wide.recoded)


def test_how_a_list_was_read_is_no_edit_even_where_a_pack_keeps_it() -> None:
    """Another column, or another order of them, is told at the reading alone."""
    layout, made = stated(TEXT)
    told = replace(layout.job, list_told="Columns read: A 'Box' box.")
    assert list_given(told) == made.given
    kept = Given(kind="job", name="", key="list_told", value="Columns read: A 'Unit' box.")
    assert compare(replace(made, given=(*made.given, kept)), made).edits == ()


@pytest.mark.parametrize("door", ["W1-1L", "W1-1R"])
def test_a_door_that_is_said_to_be_bored_keeps_its_cups(door: str) -> None:
    """None is plugged and none is bored anew: they are used as they are."""
    made = stated(TEXT)[1]
    cups = sorted(hole.y for hole in made.parts[door].holes if hole.purpose == "cup")
    [tab] = {made.parts[door].drilled_for.fit[0]}
    bored = f'kind = "pair"\nbored = true\nbored_tab = {tab}\nhinges_at = {cups}'
    change = next(each for each in changes('kind = "pair"', bored).parts if each.id == door)
    kinds = {(hole.kind, hole.cure) for hole in change.holes}
    assert kinds == {("done", "stays")}
    assert {hole.before.y for hole in change.holes if hole.before} >= set(cups)
