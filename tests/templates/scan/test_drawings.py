"""The pictures on the pages, read back from their paths: nothing mirrored, nothing upside down."""

import re
from collections.abc import Iterable
from itertools import pairwise

import pytest
from msgspec.structs import replace

from jigs.given.job import FrontSpec
from jigs.ground.geometry import Fitting, Hole
from jigs.ground.lengths import format_mm
from templates.faces.faceview import FaceView
from templates.page.marks import Area, Circle, Line, Outline, Qr, Text
from templates.scan.facepicture import FIGURE, face_picture
from templates.scan.standpicture import front_stand, piece_stand, side_stand
from templates.scan.wallpicture import WINDOW
from templates.words.pagewords import counted_from
from templates.writers.inlinesvg import draw_inline
from tests.jigs.sample import box, lay
from tests.templates.kitchens import galley, workshop
from tests.templates.scan.shown import Node, read, show

Room = tuple[float, float, float, float]


def points_of(path: Node) -> list[tuple[float, float]]:
    """Give the corners of a path of straight lines."""
    said = str(path.given["d"])
    assert re.fullmatch(r"(?:[MLz]|-?\d+(?:\.\d+)?| )+", said)
    figures = [float(each) for each in re.findall(r"-?\d+(?:\.\d+)?", said)]
    return list(zip(figures[::2], figures[1::2], strict=True))


def around(points: Iterable[tuple[float, float]]) -> Room:
    across, down = zip(*points, strict=True)
    return min(across), min(down), max(across), max(down)


def room_of(svg: Node, layer: str) -> Room:
    """Give the rectangle of a picture's outline of one class."""
    return around(points_of(svg.one("path", layer)))


def band_of(svg: Node) -> Room:
    """Give the rectangle along the edge that a part is known by: it is drawn before the arrow."""
    return around(points_of(next(iter(svg.all("path", "solid"))))[:4])


def wall_of(part: str) -> Node:
    shown = show(galley())
    tracked = shown.scan.parts[part]
    wall = shown.scan.wall(tracked)
    assert wall is not None
    return read(wall.picture(shown.scan.black(tracked), "where", shared=False)).one("svg")


def test_a_part_is_filled_where_it_stands_on_its_wall() -> None:
    """The lower front is drawn below the upper one, both within their box, true to size."""
    drawer, door = wall_of("B3-1"), wall_of("B3-2")
    upper, lower = room_of(drawer, "rim"), room_of(door, "rim")
    assert upper[3] < lower[1]  # y grows downwards
    own = room_of(door, "own")
    assert own == room_of(drawer, "own")
    assert own[0] < lower[0] < lower[2] < own[2]
    front = next(each for each in galley().fronts if each.id == "B3-2")
    assert lower[2] - lower[0] == pytest.approx(front.width, abs=0.2)
    assert lower[3] - lower[1] == pytest.approx(front.height, abs=0.2)


def test_the_left_leaf_is_left_and_the_left_side_leftmost() -> None:
    """Seen from the room, as the words beside it say."""
    assert room_of(wall_of("W1-1L"), "rim")[2] < room_of(wall_of("W1-1R"), "rim")[0]
    left, right = wall_of("B3-SIDE-L"), wall_of("B3-SIDE-R")
    own = room_of(left, "own")
    middle = (own[0] + own[2]) / 2
    assert room_of(left, "rim")[2] < middle < room_of(right, "rim")[0]


def test_a_thin_part_has_an_arrow_that_points_to_it() -> None:
    """A board of 18 mm is a hair on a telephone."""
    svg = wall_of("B3-SIDE-L")
    arrow, part = room_of(svg, "solid"), room_of(svg, "rim")
    assert (arrow[0] + arrow[2]) / 2 == pytest.approx((part[0] + part[2]) / 2, abs=0.2)
    assert arrow[3] <= part[1]


def test_an_arrow_leaves_its_boxs_name_free() -> None:
    """Over a box that hangs stands its name: the arrow comes from below, and is in the picture."""
    shown = show(galley())
    (name,) = [each.id for each in shown.scan.tracked if each.id.startswith("W1-SIDE-L")]
    svg = wall_of(name)
    arrow, part = room_of(svg, "solid"), room_of(svg, "rim")
    assert part[3] <= arrow[1]
    (word,) = [each for each in svg.all("text") if each.text == "W1"]
    assert float(str(word.given["y"])) < part[1]
    _, top, _, high = map(float, str(svg.given["viewbox"]).split())
    assert arrow[3] <= top + high


def test_of_a_long_wall_the_stretch_round_the_part_is_shown() -> None:
    """Forty boxes on a telephone would be forty lines."""
    fronts = [FrontSpec(id=f"B{n}-1", kind="drawer") for n in range(40)]
    shown = show(lay(*(box(front, name=f"B{n}") for n, front in enumerate(fronts))))
    tracked = shown.scan.parts["B20-1"]
    [wall] = shown.scan.walls
    svg = read(wall.picture(shown.scan.black(tracked), "where", shared=False)).one("svg")
    left, _, wide, _ = map(float, str(svg.given["viewbox"]).split())
    part = room_of(svg, "rim")
    assert wide == WINDOW
    assert left < part[0] < part[2] < left + wide
    ids = {each.text for each in svg.all("text")}
    assert "B20" in ids
    assert len(ids) < 12
    home = wall.pictures("wall", shared=False)
    assert len(set(home)) == len(home) > 3


def holes_in(svg: Node) -> list[tuple[float, float]]:
    return [
        (float(str(each.given["cx"])), float(str(each.given["cy"]))) for each in svg.all("circle")
    ]


def test_the_drilled_back_is_the_other_way_about_than_the_room() -> None:
    """A left-hung door: cups on the left from the room, on the right from its back."""
    front = next(each for each in galley().fronts if each.id == "B3-2")
    room = read(front_stand(front, "stands")).one("svg")
    band, edge = band_of(room), room_of(room, "edge")
    behind = list(room.one("g", "behind").all("circle"))
    assert behind
    middle = (edge[0] + edge[2]) / 2
    assert all(float(str(hole.given["cx"])) < middle for hole in behind)
    back = next(view for view in show(galley()).scan.views("B3-2") if view.face == "back")
    drilled = read(face_picture(back, "mm", "back")).one("svg")
    face = room_of(drilled, "edge")
    assert all(x > (face[0] + face[2]) / 2 for x, _ in holes_in(drilled))
    assert band[0] < middle


def test_a_hole_is_drawn_where_its_figures_say() -> None:
    """The drawing is true: a place is its share of the width and of the height."""
    for view in show(galley()).scan.views("B3-2"):
        svg = read(face_picture(view, "mm", "face")).one("svg")
        left, top, right, bottom = room_of(svg, "edge")
        wanted = sorted((hole.x / view.width, hole.y / view.height)
                        for fitting in view.fittings for hole in fitting.holes)  # fmt: skip
        found = sorted(
            ((x - left) / (right - left), (bottom - y) / (bottom - top)) for x, y in holes_in(svg)
        )
        for (x, y), (wx, wy) in zip(found, wanted, strict=True):
            assert x == pytest.approx(wx, abs=0.003)
            assert y == pytest.approx(wy, abs=0.003)


def test_holes_stated_from_the_top_are_shown_from_the_top() -> None:
    """As a lift's leaflet counts them, as its card is set and as the table has them: a hole 38.1
    below the top is not shown from below; cups beside it stay counted from below."""
    view = next(view for view in show(galley()).scan.views("B3-2") if view.face == "back")
    hole = Hole(
        purpose="manual", face="back", x=100.0, y=view.height - 38.1, diameter=5.0, depth=11.0
    )
    lift = Fitting(kind="manual", index=1, count=1, part=view.part, record=None, holes=(hole,),
                   stated_from="top")  # fmt: skip
    both, up = replace(view, fittings=(*view.fittings, lift)), f"↑ {format_mm(hole.y)}"

    def said(view: FaceView) -> set[str]:
        svg = read(face_picture(view, "mm", "back")).one("svg")
        return {text.text.split("(")[0].strip() for text in svg.all("text")}

    assert {"↓ 38.1", "↑ 97.8", "↑ 513.8"} <= said(both)
    assert up not in said(both)
    assert "↓ down from the top edge" in counted_from(both)
    assert "↓" not in counted_from(view)
    # No paper reaches a bevelled edge, or the top of a box that is together.
    assert up in said(replace(both, bevel="top"))


@pytest.mark.parametrize("part", ["B3-2", "B3-SIDE-L", "B3-1", "B3-1-BOX", "T1-SIDE-R"])
def test_no_figure_stands_on_another(part: str) -> None:
    """Each can be read by itself, and lies within the drawing, those of many pins too."""
    shown = show(workshop() if part == "T1-SIDE-R" else galley())
    for view in shown.scan.views(part):
        svg = read(face_picture(view, "in", "face")).one("svg")
        _, _, wide, high = map(float, str(svg.given["viewbox"]).split())
        beside: list[float] = []
        below: list[float] = []
        for text in svg.all("text"):
            x, y = float(str(text.given["x"])), float(str(text.given["y"]))
            assert 0 <= x <= wide
            assert FIGURE <= y <= high
            if text.text.startswith("↑"):
                beside.append(y)
            elif "transform" in text.given:
                below.append(x)
        for places in (sorted(beside), sorted(below)):
            steps = [after - before for before, after in pairwise(places)]
            assert all(step > 12.5 for step in steps)


def test_many_pins_have_figures_for_the_first_and_the_last_and_their_step() -> None:
    """Forty figures, and as many lines to them, would be a grey wedge; plates and slides keep
    theirs. The picture is no higher than its face and its figures ask for."""
    [view] = show(workshop()).scan.views("T1-SIDE-R")
    svg = read(face_picture(view, "mm", "face")).one("svg")
    said = [text.text for text in svg.all("text") if text.text.startswith("↑")]
    every = [text.text for text in svg.all("text") if text.text.startswith("every 32.0")]
    pins = {y for each in view.fittings if each.kind == "shelf" for _, y in each.places}
    own = {y for each in view.fittings if each.kind != "shelf" for _, y in each.places}
    assert every
    assert len(said) < len(pins | own) / 2
    figures = {float(text.split()[1]) for text in said}
    assert {round(y, 1) for y in (*own, min(pins), max(pins))} <= figures
    assert float(str(svg.given["viewbox"]).split()[3]) < 800.0


def test_a_left_side_has_its_front_edge_on_the_left_seen_from_inside() -> None:
    """As it lies inside up with its top away, and as it stands in its box."""
    for hand, side in (("left", 0), ("right", 1)):
        found = [each for each in galley().sides if each.box == "B3"][side]
        assert found.side == hand
        svg = read(side_stand(found, "stands")).one("svg")
        edge = room_of(svg, "edge")
        band = band_of(svg)
        middle = (edge[0] + edge[2]) / 2
        assert (band[2] < middle) == (hand == "left")
        dots = points_of(svg.one("path", "dot"))
        assert len(dots) == 2 * len(found.holes)
        assert all((x < middle) == (hand == "left") for x, _ in dots)


def test_a_piece_that_lies_points_to_its_front_and_one_that_stands_up() -> None:
    """A bottom is seen from above, a back from the room, a panel from outside."""
    shown = show(workshop())
    words = {"bottom": "FRONT", "back": "UP", "end-panel": "UP"}
    for kind, word in words.items():
        piece = next(part.piece for part in shown.scan.tracked
                     if part.piece is not None and part.piece.kind == kind)  # fmt: skip
        block = next(iter((*piece.blocks, *piece.spread, *piece.on_wall)))
        svg = read(piece_stand(piece, block, "stands")).one("svg")
        assert [text.text for text in svg.all("text")] == [word]
        edge = room_of(svg, "edge")
        shape = (edge[2] - edge[0]) / (edge[3] - edge[1])
        sizes = {"bottom": (block.dx, block.dz), "back": (block.dx, block.dy),
                 "end-panel": (block.dz, block.dy)}  # fmt: skip
        assert shape == pytest.approx(sizes[kind][0] / sizes[kind][1], rel=0.02)


def test_marks_become_paths_circles_and_texts() -> None:
    """y is turned over, what a person wrote is escaped, what looks alike is written together."""
    drawn = draw_inline(
        (
            Outline(points=((0, 0), (2, 0), (2, 1)), layer="edge"),
            Line(x1=0, y1=0, x2=1.26, y2=9.94, layer="edge"),
            Area(points=((0, 0), (1, 0), (1, 1)), layer="solid"),
            Circle(x=3, y=4, diameter=5, layer="hole"),
            Circle(x=4, y=4, diameter=5, layer="hole"),
            Text(x=1, y=2, text="<B&1>", size=6.88, anchor="end", angle=90, layer="strong"),
        ),
        10.0,
    )
    assert drawn == (
        '<path class="edge" d="M0 10L2 10L2 9zM0 10L1.3 0.1"/>'
        '<path class="solid" d="M0 10L1 10L1 9z"/>'
        '<g class="hole"><circle cx="3" cy="6" r="2.5"/><circle cx="4" cy="6" r="2.5"/></g>'
        '<text class="strong" font-size="10" text-anchor="end" x="1" y="8"'
        ' transform="rotate(-90 1 8)">&lt;B&amp;1&gt;</text>'
    )
    with pytest.raises(NotImplementedError):
        draw_inline((Qr(x=0, y=0, text="B1"),), 10.0)
