"""The feet of a strip's pieces stand at round figures that a tape shows."""

import pytest
from msgspec.structs import replace

from jigs.ground.geometry import Fitting, Hole
from templates.binding.jobsheets import make_sheets
from templates.page.ownpaper import named_paper
from templates.strips.strip import find_strip, joins_of
from tests.templates.printed import laid_out
from tests.templates.worked import only_cards, worked_layout
from tests.uneven import UNEVEN


@pytest.mark.slow
def test_every_piece_stands_at_a_figure_that_a_tape_shows() -> None:
    """Whole inches in a job in inches, whole 10 mm in one in millimetres: nothing between."""
    for layout, step in ((worked_layout("in"), 25.4), (laid_out(UNEVEN), 10.0)):
        sheets = make_sheets(layout, named_paper("common"), strip=True)
        feet = [
            line.value / step
            for _, placed in sheets.cards if placed.card.pieces
            for line in placed.card.index
        ]  # fmt: skip
        assert feet
        assert feet == pytest.approx([round(foot) for foot in feet])


def test_crowded_fittings_do_not_move_a_join_off_the_tapes_figures() -> None:
    """Plates every 64 mm leave 32 between two of them, in which a join at a whole 10 mm stands
    only if the words on its foot stand close to the hole: at whole millimetres it never does."""
    view = only_cards("B3-SIDE-L", "inside", "mm")[0].view
    plates = tuple(
        Fitting(
            kind="plate", index=row, count=9, part="B3-2", record="mine",
            holes=tuple(
                Hole(purpose="plate", face="inside", x=37.0, y=y, diameter=5.0, depth=12.0)
                for y in (20.0 + 64.0 * row, 52.0 + 64.0 * row)
            ),
        )
        for row in range(1, 10)
    )  # fmt: skip
    found = find_strip(replace(view, fittings=plates), 190.0, 75.0)
    assert found is not None
    parting = joins_of(found[0], 240.0, 240.0, 8.0)
    assert parting is not None
    assert parting.parted == 0
    assert len(parting.joins) > 3
    assert [join % 10.0 for join in parting.joins[1:-1]] == pytest.approx(
        [0.0] * (len(parting.joins) - 2)
    )
