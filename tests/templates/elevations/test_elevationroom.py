"""What an elevation says of the room in words."""

from jigs.given.job import FrontSpec
from templates.elevations.elevation import draw_elevations
from templates.page.marks import Text
from templates.page.paper import PAPERS
from tests.clashes import clashes_of_marks
from tests.jigs.sample import box, lay


def test_what_hangs_outside_of_the_chain_is_said_in_words() -> None:
    """Three boxes at heights of their own are too many for the chain at the right: it has the last
    one's, and the words those of the others."""
    standing = box(FrontSpec(id="B1-1", kind="drawer"), name="B1", width=1800.0)
    hanging = [
        box(FrontSpec(id=f"W{k}-1", kind="pair"), name=f"W{k}", width=600.0, kind="wall",
            height=300.0 + 50.0 * k, above_floor=1400.0 + 70.0 * k, x=600.0 * k)
        for k in range(3)
    ]  # fmt: skip
    [drawn] = draw_elevations(lay(standing, *hanging, units="mm"), PAPERS["common"])
    words = " ".join(m.text for m in drawn.page.marks if isinstance(m, Text))
    assert "W0: from 1400.0 mm (55 1/8- in) to 1700.0 mm" in words
    assert "W1: from 1470.0 mm" in words
    assert "W2: from" not in words
    assert clashes_of_marks(drawn.page) == []
