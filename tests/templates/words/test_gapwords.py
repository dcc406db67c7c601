"""A front's own gaps in words."""

import pytest
from msgspec.structs import replace

from jigs.given.job import FrontSpec
from jigs.given.stated import BlindEnd, EndPanels, OwnReveals
from jigs.ground.geometry import HANDS, Hand, other_hand
from templates.words.frontfacts import back_facts
from tests.jigs.sample import box, lay


@pytest.mark.parametrize("hand", HANDS)
def test_beside_a_blind_panel_no_gap_is_said(hand: Hand) -> None:
    """The front laps the panel by 16.4 (1.9 of its side of 18.3 stay free): no gap to its edge."""
    door = FrontSpec(id="B1-1", kind="door", hinged=other_hand(hand))
    made = replace(box(door, width=1066.8), blind=BlindEnd(hand=hand, reach=700.0))
    layout = lay(replace(made, fronts=(replace(door, width=300.0),)))
    facts = [fact.text for fact in back_facts(layout, layout.fronts[0])]
    (gaps,) = (fact for fact in facts if fact.startswith("Gaps: "))
    assert f"{other_hand(hand)} " in gaps
    assert f"{hand} " not in gaps
    assert any(
        fact.startswith(f"BLIND PANEL on the {hand.upper()} from the room: ") for fact in facts
    )


def test_over_an_end_panel_it_says_how_far() -> None:
    """A drawer's front that reaches over a covered panel of 19 by 17.4, to 1.6 of its outside."""
    drawer = FrontSpec(id="B1-1", kind="drawer", reveals=OwnReveals(right=-17.4))
    made = replace(box(drawer), panels=EndPanels(right="covered"))
    layout = lay(made)
    facts = [fact.text for fact in back_facts(layout, layout.fronts[0])]
    (gaps,) = (fact for fact in facts if fact.startswith("Gaps: "))
    assert "left 1.6, right 17.4 over the end panel, " in gaps
