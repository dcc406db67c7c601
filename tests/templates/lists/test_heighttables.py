"""The heights of boxes as a list: the golden stack, the uneven box, a box together."""

from pathlib import Path

from msgspec.structs import replace

from jigs.bench.boxtable import box_tables
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import FrontSpec, ShelfSpec
from templates.lists.heighttables import heights_listing
from templates.lists.listing import Group, Table, Words
from templates.lists.listpages import list_pages
from templates.page.paper import PAPERS
from tests.clashes import clashes_of_marks
from tests.jigs.bench.test_boxtable import STACK, golden
from tests.jigs.cases import kitchen
from tests.jigs.sample import box, lay
from tests.templates.printed import laid_out
from tests.uneven import UNEVEN


def groups_of(layout: Layout) -> tuple[Group, ...]:
    listing = heights_listing(box_tables(plan_stations(layout)), layout)
    (table,) = (each for section in listing.sections for each in section.blocks
                if isinstance(each, Table))  # fmt: skip
    return table.groups


def rows_of(group: Group) -> list[tuple[str, ...]]:
    return [tuple(cell.text for cell in row.cells) for row in group.rows]


def notes_of(group: Group) -> str:
    return " ".join(note.text for note in group.notes)


def test_the_golden_stack() -> None:
    """Derived: hole lines 51.3, 275.3, 467.3, 659.3; less 18.3 of the bottom over the panel; the
    spacer of the second drawer 275.3 - 33 - 18.3 = 224.0."""
    (group,) = groups_of(golden())
    assert group.title.startswith("BOX B1. LEFT: B1-SIDE-L, code ")
    assert group.title.count("584.2 deep by 774.7 high") == 2
    assert rows_of(group)[1] == ("S", "B1-3", "275.3", "275.3", "257.0", SPACER)
    assert [row[2] for row in rows_of(group)] == ["51.3", "275.3", "467.3", "659.3"]
    assert "51.3 + 224.0 + 192.0 + 192.0 + 115.4 = 774.7" in notes_of(group)
    assert "From the finished FRONT edge: S 37.0 and 165.0." in notes_of(group)


SPACER = "spacer 224.0 over the bottom panel"


def test_the_uneven_box_has_a_table_for_each_column() -> None:
    """Its door's plates stand on the right of the second column alone; the first is towards a
    partition, whose heights count from its own end 18.3 higher."""
    first, second = groups_of(laid_out(UNEVEN))
    assert "COLUMN 1" in first.title
    assert "offcut" in first.title
    for mark, _, left, right, panel, _ in rows_of(first):
        assert mark == "S"
        assert abs(float(left) - float(right) - 18.3) < 0.11
        assert right == panel
    assert {(row[0], row[2]) for row in rows_of(second) if row[0] == "P"} == {("P", "")}


def test_a_box_already_together_counts_from_its_panel() -> None:
    """No second column says the same."""
    (group,) = groups_of(lay(replace(STACK, assembled=True)))
    assert "BOX ALREADY TOGETHER" in group.title
    assert [row[2] for row in rows_of(group)] == ["33.0", "257.0", "449.0", "641.0"]
    assert {row[4] for row in rows_of(group)} == {""}


def test_pins_and_what_is_held_are_said() -> None:
    """A shelf's rows by their holes; a door without a hand by its reason."""
    door = FrontSpec(id="B1-1", kind="door")
    layout = lay(replace(box(door), shelves=(ShelfSpec(count=1),)))
    (group,) = groups_of(layout)
    assert {row[1] for row in rows_of(group)} == {"pins"}
    assert all("32 apart" in row[5] for row in rows_of(group))
    assert "HOLD B1-1: a single door, and nobody said" in notes_of(group)
    assert [note.stamp for note in group.notes if note.text.startswith("HOLD")] == [True]


def test_holes_by_hand_are_named_by_their_station(tmp_path: Path) -> None:
    """Boards with holes by hand alone have no table; the list says where they are bored, their
    IDs and the station's as they stand on labels and pages."""
    arm = "[[box.front.hole]]\nx = 45\ny = 60\ndiameter = 3\ndepth = 12\nface = 'back'\n"
    hole = "[[box.hole]]\nside = 'both'\nx = 70\ny = 45\ndiameter = 5\ndepth = 12\n"
    lift = f"{hole}purpose = 'lift arm'\nfront = 'W1-1'"
    layout = kitchen.lay(
        tmp_path,
        kitchen.box(
            f"kind = 'lift'\n{arm}purpose = 'lift arm'",
            name="W1",
            kind="wall",
            height=380,
            floor=1600,
            more=lift,
        ),
        kitchen.box("kind = 'drawer'"),
    )
    stations = plan_stations(layout)
    (_, section) = heights_listing(box_tables(stations), layout, stations).sections
    said = [each.text for each in section.blocks if isinstance(each, Words)]
    assert said == ["W1-SIDE-L, W1-SIDE-R: holes BY HAND, at station BY HAND W1-1 B."]


def test_nothing_touches_on_its_pages() -> None:
    """Mm large, inches small, a box to tick."""
    for layout in (golden(), laid_out(UNEVEN)):
        listing = heights_listing(box_tables(plan_stations(layout)), layout)
        for page in list_pages(listing, PAPERS["common"]):
            assert clashes_of_marks(page) == []
