"""Assumptions in words, on the parts they touch."""

from msgspec.structs import replace

from jigs.box.assumed import keys_of_drawer, keys_of_front, keys_of_side, list_assumed
from jigs.given.job import FrontKind, FrontSpec, Job
from jigs.layout.layout import lay_out
from templates.words.standinwords import stand_in_words
from tests.jigs.sample import box, job

ASSUMED = frozenset(
    {
        "reveal.top", "reveal.bottom", "box.B1.depth", "box.B2.depth", "box.B1.above_floor",
        "material.back",
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
    found = list_assumed(sample(), keys, "runner-2", box=box())
    return [text.split(" (")[0] for text in stand_in_words(found, sample())]


def test_a_door_is_touched_by_its_reveals_its_hinge_and_its_pull() -> None:
    """Drawer defaults, depth and the height above the floor are no business of a base door."""
    assert set(words("door")) == {
        "pull bar door inset 50.8 mm", "bottom reveal 1.6 mm", "pull of doors bar", "hinge mine",
    }  # fmt: skip


def test_a_drawer_is_touched_by_depth_and_slide() -> None:
    """The slide named is the one the front really runs on."""
    assert set(words("drawer")) == {
        "box B1 depth 584.2 mm", "back thickness 6.0 mm", "pull bar drawer center",
        "bottom reveal 1.6 mm", "slide runner-2",
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


def test_a_front_of_its_own_thickness_is_not_stamped_with_the_jobs() -> None:
    """Only a front as thick as the job's is touched by that default."""
    kinds: tuple[FrontKind, ...] = ("door", "drawer", "false-front", "panel")
    for kind in kinds:
        plain = FrontSpec(id="B1-1", kind=kind)
        own = replace(plain, thickness=22.0)
        assert "material.front" in keys_of_front(plain, kind, box(), None)
        assert "material.front" not in keys_of_front(own, kind, box(), None)


def test_a_drawer_box_says_what_is_assumed_in_it() -> None:
    """Its slide, the depth and the boards its size follows from, and no reveal."""
    drawer = FrontSpec(id="B1-1", kind="drawer")
    keys = keys_of_drawer(drawer, box())
    assert {"use.slide", "material.drawer_side", "material.side", "box.B1.depth"} <= set(keys)
    assert "material.front" not in keys
    assert "material.front" in keys_of_drawer(replace(drawer, overlay="inset"), box())
    assumed = frozenset({"use.slide", "material.drawer_side"})
    layout = lay_out(job(box(drawer), assumed=assumed))
    (front,) = layout.fronts
    assert front.drawer is not None
    assert stand_in_words(front.drawer.assumed, layout.job) == (
        "drawer side thickness 5/8 in (15.9 mm)", "slide runner",
    )  # fmt: skip


def test_the_top_reveal_is_that_of_the_boxs_kind() -> None:
    """Under a counter it is another default than on a wall box."""
    spec = FrontSpec(id="B1-1", kind="door")
    assert "reveal.under_counter" in keys_of_front(spec, "door", box(), None)
    assert "reveal.top" not in keys_of_front(spec, "door", box(), None)
    assert "reveal.top" in keys_of_front(spec, "door", box(kind="wall"), None)
    assert "reveal.under_counter" in keys_of_side(box(), ())
