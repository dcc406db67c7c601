"""Assumptions in words, on the parts they touch."""

from jigs.assumed import keys_of_front, list_assumed
from tests.jigs.sample import box, job


def test_only_what_touches_the_part() -> None:
    """The box's own keys and its hardware's are named, those of other boxes are not."""
    sample = job(
        box(), units="mm",
        assumed=frozenset(
            {"reveal.top", "box.B1.depth", "box.B2.depth", "pull.bar.door_inset", "material.back"}
        ),
    )  # fmt: skip
    words = list_assumed(sample, "B1", keys_of_front("door"), ["bar"])
    assert len(words) == 3
    assert words[0].startswith("box B1 depth 584.2 mm")
    assert words[1].startswith("pull bar door inset 50.8 mm")
    assert words[2].startswith("top reveal 1.6 mm")
    assert "back thickness" not in " ".join(words)
