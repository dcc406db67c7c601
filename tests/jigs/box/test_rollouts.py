"""Rollouts behind doors: their place, their spacers, and what holds them back.

A box of our own, 457.2 x 774.7 x 584.2, sides 18.3, opening 457.2 - 2 x 18.3 = 420.6 (derived);
undermount slide a 33, b 14, 42 less wide inside; drawer sides 15.9.
"""

from pathlib import Path

import pytest

from jigs.box.drawerbox import Rollout
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_job
from jigs.ground.errors import ReadingError
from jigs.ground.geometry import SLACK
from jigs.order.buying import make_order
from tests.jigs.cases.kitchen import DB, HB, TS, WB, T, box, check, codes, front, heights, lay, side
from tests.said import fact_of

DOOR = 'kind = "door"\nhinged = "left"'
PAIR = 'kind = "pair"'
OPENING = WB - 2 * TS
LESS, SIDE, A, B = 42.0, 15.9, 33.0, 14.0
LENGTH = 533.0


def rollout(at: float, height: float, more: str = "") -> str:
    return f"[[box.rollout]]\nat = {at}\nheight = {height}\n{more}\n"


def rolling(folder: Path, *rollouts: str, fronts: tuple[str, ...] = (DOOR,), **more: str) -> Layout:
    start = more.pop("start", "")
    return lay(folder, box(*fronts, more=start + "".join(rollouts)), **more)


def the(layout: Layout, name: str = "B1-ROLLOUT-1") -> Rollout:
    return next(each for each in layout.rollouts if each.id == name)


def slide_heights(layout: Layout, board: str, part: str = "B1-ROLLOUT-1") -> set[float]:
    return {
        round(hole.y, 6)
        for fitting in side(layout, board).fittings
        if fitting.part == part
        for hole in fitting.holes
    }


def test_a_rollout_stands_as_given(tmp_path: Path) -> None:
    """Underside at 300; slide line at + (a - b); a spacer of 20 on the hinge side alone (common
    practice, no source); inside LW - 20 - 42, built to whole millimetres."""
    layout = rolling(tmp_path, rollout(300, 120))
    made = the(layout)
    assert not made.held
    assert codes(layout, made.id) == set()
    assert (made.spacer_left, made.spacer_right) == (20, 0)
    nominal = OPENING - 20 - LESS + 2 * SIDE
    assert made.width == int(nominal) == 390
    assert (made.height, made.length, made.y, made.z) == (120, LENGTH, 300, 0)
    assert made.x == pytest.approx(TS + 20 + (OPENING - 20 - 390) / 2)
    for board in ("B1-SIDE-L", "B1-SIDE-R"):
        assert slide_heights(layout, board) == {300 + A - B}
        slides = [f for f in side(layout, board).fittings if f.part == made.id]
        assert slides[0].holes[0].x == 37
        assert slides[0].spacer == (20.0 if board.endswith("L") else 0.0)


@pytest.mark.parametrize(
    ("fronts", "keys", "spacers"),
    [
        ((DOOR,), "", (20, 0)),
        ((DOOR.replace("left", "right"),), "", (0, 20)),
        ((PAIR,), "", (20, 20)),
        ((DOOR,), "spacer_left = 25", (25, 0)),
        ((DOOR,), "spacer_left = 22\nspacer_right = 3", (22, 3)),
        (('kind = "opening"',), "", (0, 0)),
    ],
)
def test_spacers_go_where_doors_hang(
    tmp_path: Path, fronts: tuple[str, ...], keys: str, spacers: tuple[float, float]
) -> None:
    """20 where a door before it hangs, else none, unless they are given; the box is as much
    narrower."""
    made = the(rolling(tmp_path, rollout(300, 120, keys), fronts=fronts))
    assert (made.spacer_left, made.spacer_right) == spacers
    assert made.width == int(OPENING - sum(spacers) - LESS + 2 * SIDE + SLACK)


def test_only_the_door_before_it_counts(tmp_path: Path) -> None:
    """Of two doors one above the other, the one it stands behind says where the spacer goes."""
    upper = f"{DOOR}\nheight = 380"
    lower = DOOR.replace("left", "right")
    layout = rolling(tmp_path, rollout(120, 100), rollout(500, 100), fronts=(upper, lower))
    below, above = the(layout), the(layout, "B1-ROLLOUT-2")
    assert (below.behind, below.spacer_left, below.spacer_right) == (("B1-2",), 0, 20)
    assert (above.behind, above.spacer_left, above.spacer_right) == (("B1-1",), 20, 0)


def test_a_side_mount_runs_on_its_centre_line(tmp_path: Path) -> None:
    """Outside LW - 20 - 26; the line stands the record's centre height above the underside."""
    layout = rolling(tmp_path, rollout(300, 120, 'slide = "sidemount-500"'))
    made = the(layout)
    centre = layout.job.slides["sidemount-500"].centre_height
    assert made.width == int(OPENING - 20 - 26)
    assert made.length == 500
    assert slide_heights(layout, "B1-SIDE-L") == {300 + centre}


def test_an_inset_door_sets_it_back(tmp_path: Path) -> None:
    """X 37 + T, and the box stands T further back; the slide needs as much more depth."""
    keys = 'slide = "undermount-457"'
    layout = lay(
        tmp_path,
        box(
            f'{DOOR}\nhinge = "cup35-inset"',
            more='overlay = "inset"\n' + rollout(300, 120, keys),
        ),
    )
    made = the(layout)
    assert made.z == pytest.approx(T)
    slide = next(f for f in side(layout, "B1-SIDE-R").fittings if f.part == made.id)
    assert slide.holes[0].x == pytest.approx(37 + T)


@pytest.mark.parametrize("at", range(100, 661, 16))
def test_hinge_plates_keep_clear_of_its_slides(tmp_path: Path, at: int) -> None:
    """Wherever a rollout stands, plate and slide do not lie on each other, or the door is held;
    and the cups answer the plates."""
    layout = rolling(tmp_path, rollout(at, 60))
    made, door = the(layout), front(layout, "B1-1")
    assert not made.held
    if door.held:
        (told,) = [problem for problem in door.held if problem.code == "hinge-no-room"]
        assert fact_of(told).endswith(
            "clear of other holes; the slides of rollouts lie on this side too"
        )
        return
    fittings = side(layout, "B1-SIDE-L").fittings
    spans = {
        kind: [
            (min(y for _, y in f.outline[0]), max(y for _, y in f.outline[0]))
            for f in fittings
            if f.kind == kind
        ]
        for kind in ("slide", "plate")
    }
    (low, high) = spans["slide"][0]
    assert all(top <= low - 2 + SLACK or foot >= high + 2 - SLACK for foot, top in spans["plate"])
    plates = heights(side(layout, "B1-SIDE-L"), "plate")
    assert [door.place.y + cup for cup in heights(door, "cup")] == pytest.approx(
        [(low + high) / 2 for low, high in zip(plates[::2], plates[1::2], strict=True)]
    )


FLOOR = TS
HELD = [
    ((DOOR,), rollout(300, 40), "drawer-too-low"),
    ((DOOR,), rollout(300, 120, 'slide = "undermount-550"'), "slide-too-long"),
    ((DOOR,), rollout(FLOOR + B - 1, 100), "rollout-into-panel"),
    ((DOOR,), rollout(HB - TS - 119, 120), "rollout-into-panel"),
    ((DOOR,), "[[box.shelf]]\nat = 400\n" + rollout(300, 120), "rollout-into-panel"),
    ((DOOR,), f"[[box.shelf]]\nat = {420 + 9.9 + TS}\n" + rollout(300, 120), "rollout-into-panel"),
    ((DOOR,), rollout(300, 120, "spacer_left = 180\nspacer_right = 180"), "rollout-too-narrow"),
    (('kind = "door"',), rollout(300, 120), "rollout-hand-open"),
    (('kind = "drawer"\nheight = 152', DOOR), rollout(560, 100), "rollout-behind-front"),
]


@pytest.mark.parametrize(("fronts", "text", "code"), HELD, ids=[row[2] for row in HELD])
def test_what_will_not_run_is_held_alone(
    tmp_path: Path, fronts: tuple[str, ...], text: str, code: str
) -> None:
    """An error leaves the rollout's slide holes out of both sides, says so there, and is exit 1."""
    layout = rolling(tmp_path, text, fronts=fronts)
    assert code in codes(layout, "B1-ROLLOUT-1")
    assert the(layout).held
    for each in layout.sides:
        assert not [f for f in each.fittings if f.part == "B1-ROLLOUT-1"]
        assert "B1-ROLLOUT-1" in each.missing
    for made in layout.fronts:
        assert not any(reason.code.startswith("rollout") for reason in made.held)
    told = check(tmp_path, box(*fronts, more=text))
    assert told.status == 1
    assert f"[{code}]" in told.text
    assert "holes for" in told.text


def test_the_least_places_are_free(tmp_path: Path) -> None:
    """Its slides lie on the bottom panel at floor + b; under the top 10 stay free (common
    practice, no source)."""
    layout = rolling(tmp_path, rollout(FLOOR + B, 100), rollout(HB - TS - 10 - 120, 120))
    assert not the(layout).held
    assert not the(layout, "B1-ROLLOUT-2").held
    assert codes(layout, "B1-ROLLOUT-1") | codes(layout, "B1-ROLLOUT-2") == set()


def test_a_rollout_10_under_a_fixed_shelf_and_one_that_stands_on_it_run(tmp_path: Path) -> None:
    """10 from its box up to the board; its slides' floor line b under it on the board (derived)."""
    shelf = f"[[box.shelf]]\nat = {420 + 10 + TS}\n"
    layout = rolling(tmp_path, shelf + rollout(300, 120) + rollout(420 + 10 + TS + B, 100))
    assert codes(layout, "B1-ROLLOUT-1") | codes(layout, "B1-ROLLOUT-2") == set()


@pytest.mark.parametrize(
    ("gap", "code"),
    [(25, None), (24, "rollout-tight"), (B, "rollout-tight"), (B - 1, "rollouts-overlap")],
)
def test_two_rollouts_keep_apart(tmp_path: Path, gap: float, code: str | None) -> None:
    """25 from a box to the next one's underside (common practice, no source); where the upper
    one's slides would meet the lower box, both are held: nobody knows which is meant."""
    layout = rolling(tmp_path, rollout(200, 120), rollout(200 + 120 + gap, 100))
    assert codes(layout, "B1-ROLLOUT-1") == ({code} if code else set())
    clash = code == "rollouts-overlap"
    assert [bool(each.held) for each in layout.rollouts] == [clash, clash]
    assert not front(layout, "B1-1").held


def test_rollouts_that_meet_are_named_where_both_are_told(tmp_path: Path) -> None:
    """Whoever reads at the upper one why it is held reads the lower one's reach as the lower's."""
    layout = rolling(tmp_path, rollout(200, 120), rollout(200 + 120 + B - 1, 100))
    for each in layout.rollouts:
        [problem] = each.held
        assert fact_of(problem).startswith("B1-ROLLOUT-1 reaches from ")
        assert "and B1-ROLLOUT-2 with its slides from" in fact_of(problem)


def test_a_thin_spacer_is_told(tmp_path: Path) -> None:
    """Where the door hangs less than 20 is a warning: the open door stands in the way."""
    layout = rolling(tmp_path, rollout(300, 120, "spacer_left = 12"))
    assert codes(layout, "B1-ROLLOUT-1") == {"rollout-spacer"}
    assert not the(layout).held


def test_columns(tmp_path: Path) -> None:
    """In column 2 it hangs on the partition and the right side."""
    layout = lay(
        tmp_path,
        box(
            DOOR,
            f"{DOOR.replace('left', 'right')}\ncolumn = 2",
            width=914.4,
            more="columns = [{share = 1}, {share = 1}]\n" + rollout(300, 120, "column = 2"),
        ),
        hinge='"mine"',
    )
    boards = {s.board for s in layout.sides if any(f.part == "B1-ROLLOUT-1" for f in s.fittings)}
    assert boards == {"B1-PARTITION-1", "B1-SIDE-R"}
    assert (the(layout).spacer_left, the(layout).spacer_right) == (0, 20)
    assert the(layout).behind == ("B1-2",)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[[box.rollout]]\nat = 100\n", "height is missing"),
        ("[[box.rollout]]\nheight = 100\n", "at is missing"),
        (rollout(775, 100), "above its box"),
        (rollout(100, 100, "column = 2"), "column"),
        (rollout(100, 100, 'slide = "runer"'), "runner"),
        (rollout(100, 100, "spacer = 20"), "unknown key"),
    ],
)
def test_faults_are_named(tmp_path: Path, text: str, said: str) -> None:
    """A fault in a rollout's table is told with its place in the file."""
    with pytest.raises(ReadingError) as told:
        rolling(tmp_path, text)
    words = " ".join(f"{fault.where}: {fault.what}" for fault in told.value.faults)
    assert "box[1].rollout[1]" in words
    assert said in words


def test_no_front_takes_its_name(tmp_path: Path) -> None:
    """B1-ROLLOUT-1 is the rollout's ID, not to be given to a front."""
    with pytest.raises(ReadingError, match="duplicate ID"):
        lay(tmp_path, box(f'id = "B1-ROLLOUT-1"\n{DOOR}', depth=DB))


def test_a_spacer_is_cut_and_counted_for_each_hand_it_stands_on(tmp_path: Path) -> None:
    """Hinged left: one of 20 under the left slide, as long as the slide, 60 high (common practice,
    no source); a right spacer of one's own is another board; a box without spacers has none."""
    more = "spacer_right = 25"
    layout = rolling(tmp_path, rollout(100, 120), rollout(400, 120, more))
    cut = cut_job(layout)
    spacers = {p.id: p for p in cut.pieces if p.kind == "spacer"}
    assert {name: (p.length, p.width, p.thickness) for name, p in spacers.items()} == {
        "B1-ROLLOUT-1-SPACER-L": (LENGTH, 60, 20),
        "B1-ROLLOUT-2-SPACER-L": (LENGTH, 60, 20),
        "B1-ROLLOUT-2-SPACER-R": (LENGTH, 60, 25),
    }
    items = make_order(layout, cut).items
    assert {i.size: (i.count, i.spare) for i in items if i.group == "spacer"} == {
        20: (2, 0),
        25: (1, 0),
    }
    bare = rolling(tmp_path, rollout(300, 120, "spacer_left = 0"))
    assert not [p for p in cut_job(bare).pieces if p.kind == "spacer"]
