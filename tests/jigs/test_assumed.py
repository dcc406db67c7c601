"""Assumptions in words, on the parts they touch."""

from jigs.assumed import keys_of_front, keys_of_side, list_assumed
from jigs.job import FrontKind, FrontSpec, Job
from tests.jigs.sample import box, job

ASSUMED = frozenset(
    {
        "reveal.top", "box.B1.depth", "box.B2.depth", "box.B1.above_floor", "material.back",
        "pull.bar.door_inset", "pull.bar.drawer", "pull.bar.tall_height", "use.slide", "use.hinge",
        "use.door_pull",
    }
)  # fmt: skip


def sample() -> Job:
    """Give a job with many defaults."""
    return job(box(), units="mm", assumed=ASSUMED)


def words(kind: FrontKind, pull: str | None = "bar") -> list[str]:
    """Give what is assumed for a front of this kind, without the inches."""
    keys = keys_of_front(FrontSpec(id="B1-1", kind=kind), kind, box(), pull)
    return [text.split(" (")[0] for text in list_assumed(sample(), keys, "runner-2")]


def test_a_door_is_touched_by_its_reveals_its_hinge_and_its_pull() -> None:
    """Drawer defaults, depth and the height above the floor are no business of a base door."""
    assert set(words("door")) == {
        "pull bar door inset 50.8 mm", "top reveal 1.6 mm", "pull of doors bar", "hinge mine",
    }  # fmt: skip


def test_a_drawer_is_touched_by_depth_and_slide() -> None:
    """The slide named is the one the front really runs on."""
    assert set(words("drawer")) == {
        "box B1 depth 584.2 mm", "back thickness 6.0 mm", "pull bar drawer center",
        "top reveal 1.6 mm", "slide runner-2",
    }  # fmt: skip


def test_a_tall_door_is_touched_by_the_floor() -> None:
    """Only a tall door's pull is measured from the floor."""
    tall = box(kind="tall")
    keys = keys_of_front(FrontSpec(id="B1-1", kind="door"), "door", tall, "bar")
    assert "box.B1.above_floor" in keys
    assert "pull.bar.tall_height" in keys
    without = keys_of_front(FrontSpec(id="B1-1", kind="door"), "door", tall, None)
    assert not [key for key in without if key.startswith("pull.")]


def test_a_side_is_touched_by_what_it_carries() -> None:
    """A side without slides is not stamped with the slide."""
    assert "use.slide" not in keys_of_side(box(), ["plate"])
    assert "use.hinge" in keys_of_side(box(), ["plate"])
