"""The words of a row at a station."""

from jigs.bench.station import Closing
from jigs.ground.geometry import FaceEdge
from templates.words.rowwords import sum_words


def test_a_sum_that_reads_the_same_from_both_ends_is_said_once() -> None:
    """60 + 257.8 + 60 is that of the right end too; 37 + 32 + 515.2 is not, nor one up a part."""

    def said(start: FaceEdge, *places: float, length: float) -> str:
        return sum_words(Closing(start=start, places=places, length=length))

    alike = "→ 60.0 + 257.8 + 60.0 = 377.8"
    assert {said(end, 60.0, 317.8, length=377.8) for end in ("left", "right")} == {alike}
    uneven = said("right", 37.0, 69.0, length=584.2)
    assert uneven == "← 37.0 + 32.0 + 515.2 = 584.2"
    assert said("left", 37.0, 69.0, length=584.2) == "→ 37.0 + 32.0 + 515.2 = 584.2"
    assert said("top", 100.0, length=200.0) == "↓ from TOP 100.0 + 100.0 = 200.0"
    assert said("bottom", 106.0, length=396.0) == "↑ 106.0 + 290.0 = 396.0"
