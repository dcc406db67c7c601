"""The part code."""

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.ground.codes import ALPHABET, LENGTH, BoardPlace, board_code, part_code
from jigs.ground.geometry import Hand, Hole

QR_ALPHANUMERIC = set("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:")
"""ISO/IEC 18004:2015, the 45 characters of the alphanumeric mode (from memory)."""

CUP = Hole(purpose="cup", face="back", x=22.5, y=97.75, diameter=35.0, depth=13.0)
PULL = Hole(purpose="pull", face="front", x=404.0, y=547.5, diameter=5.0, depth=None)

DRAWER = (409.575, 88.9, 15.9)

lengths = st.floats(min_value=-50, max_value=3000)
holes = st.builds(
    Hole,
    purpose=st.sampled_from(["cup", "pull", "manual"]),
    face=st.sampled_from(["front", "back"]),
    x=lengths,
    y=lengths,
    diameter=st.floats(min_value=1, max_value=60),
    depth=st.none() | st.floats(min_value=1, max_value=20),
)


def test_the_alphabet_is_unambiguous_and_dense_in_qr() -> None:
    """Each character is one of QR's alphanumeric mode and looks like no other."""
    assert set(ALPHABET) <= QR_ALPHANUMERIC
    assert len(set(ALPHABET)) == len(ALPHABET)
    for alike in ("0O", "1IL", "8B", "6G", "5S", "2Z", "UV"):
        assert len(set(alike) & set(ALPHABET)) <= 1


@given(st.lists(holes, max_size=6), st.randoms(use_true_random=False))
def test_the_order_of_the_holes_does_not_matter(some: list[Hole], random: object) -> None:
    """The same holes in any order give the same four characters."""
    mixed = list(some)
    random.shuffle(mixed)  # type: ignore[attr-defined]
    code = part_code(454.0, 771.5, 19.05, some)
    assert part_code(454.0, 771.5, 19.05, mixed) == code
    assert len(code) == LENGTH
    assert set(code) <= set(ALPHABET)


CHANGES: list[Callable[[float], tuple[float, float, float, list[Hole]]]] = [
    lambda by: (454.0 + by, 771.5, 19.05, [CUP, PULL]),
    lambda by: (454.0, 771.5 + by, 19.05, [CUP, PULL]),
    lambda by: (454.0, 771.5, 19.05 + by, [CUP, PULL]),
    lambda by: (454.0, 771.5, 19.05, [replace(CUP, x=CUP.x + by), PULL]),
    lambda by: (454.0, 771.5, 19.05, [replace(CUP, y=CUP.y + by), PULL]),
    lambda by: (454.0, 771.5, 19.05, [replace(CUP, diameter=35.0 + by), PULL]),
    lambda by: (454.0, 771.5, 19.05, [replace(CUP, depth=13.0 + by), PULL]),
    lambda by: (454.0, 771.5, 19.05, [CUP, replace(PULL, x=PULL.x + by)]),
]


@pytest.mark.parametrize("by", [0.001, -0.001, 0.0001, 1.0])
@pytest.mark.parametrize("change", CHANGES)
def test_any_single_change_changes_the_code(
    change: Callable[[float], tuple[float, float, float, list[Hole]]], by: float
) -> None:
    """Size, place, diameter and depth each count, to 0.0001."""
    assert part_code(*change(by)) != part_code(*change(0.0))


@pytest.mark.parametrize(
    "others",
    [
        [CUP],
        [CUP, PULL, PULL],
        [replace(CUP, face="front"), PULL],
        [replace(CUP, purpose="manual"), PULL],
        [CUP, replace(PULL, depth=19.05)],
    ],
)
def test_another_set_of_holes_is_another_code(others: list[Hole]) -> None:
    """A hole fewer, doubled, from the other face, of another purpose or blind is a change."""
    assert part_code(454.0, 771.5, 19.05, others) != part_code(454.0, 771.5, 19.05, [CUP, PULL])


def test_width_and_height_are_not_exchangeable() -> None:
    """A part turned on its side is another part."""
    assert part_code(454.0, 613.0, 19.0, []) != part_code(613.0, 454.0, 19.0, [])


def test_floating_point_noise_does_not_count() -> None:
    """A negative zero and the noise of adding tenths leave the code alone."""
    noisy = replace(CUP, x=0.1 + 0.2, y=-0.0)
    clean = replace(CUP, x=0.3, y=0.0)
    assert part_code(454.0, 613.0, 19.0, [noisy]) == part_code(454.0, 613.0, 19.0, [clean])


def test_the_code_is_the_same_in_another_process() -> None:
    """The code does not hang on the run: hash seeds change nothing."""
    program = "from jigs.ground.codes import part_code; print(part_code(454.0, 613.0, 19.05, []))"
    root = Path(__file__).parents[3]
    run = subprocess.run(
        [sys.executable, "-c", program],
        cwd=root,
        env={"PYTHONHASHSEED": "7"},
        capture_output=True,
        text=True,
        check=True,
    )
    assert run.stdout.strip() == part_code(454.0, 613.0, 19.05, [])


@settings(max_examples=50)
@given(holes)
def test_a_hole_more_is_another_code(hole: Hole) -> None:
    """No hole is lost in the code."""
    assert part_code(454.0, 613.0, 19.0, [hole]) != part_code(454.0, 613.0, 19.0, [])


def test_codes_spread_over_the_alphabet() -> None:
    """A kitchen of three hundred different widths has next to no code twice."""
    codes = [part_code(300.0 + width, 613.0, 19.0, []) for width in range(300)]
    assert len(set(codes)) >= 298


def test_a_drawer_boxs_code_changes_with_its_length() -> None:
    """Two drawer boxes alike but for their length are not one part."""
    codes = {part_code(*DRAWER, [], length=length) for length in (None, 457.0, 533.0)}
    assert len(codes) == 3


PIN = Hole(purpose="shelf", face="inside", x=37.0, y=211.35, diameter=5.0, depth=12.0)
BOARD = (584.2, 774.7, 18.3)
HANDS: tuple[Hand, Hand] = ("left", "right")


def test_boards_with_the_same_holes_have_a_code_each() -> None:
    """Left side, right side and partition of one size, bored alike, are three boards."""
    boards: tuple[BoardPlace, ...] = ("left-side", "right-side", "partition")
    assert len({board_code(board, BOARD, [("left", PIN)]) for board in boards}) == 3


def test_a_partition_bored_from_its_other_face_is_another_board() -> None:
    """The same hole towards column 1 or towards column 2."""
    codes = {board_code("partition", BOARD, [(hand, PIN)]) for hand in HANDS}
    assert len(codes) == 2


def test_the_order_of_a_boards_holes_does_not_matter() -> None:
    """Whichever face is told first."""
    holes: list[tuple[Hand, Hole]] = [("left", PIN), ("right", replace(PIN, y=243.35))]
    assert board_code("partition", BOARD, holes) == board_code("partition", BOARD, holes[::-1])
