"""Kitchens whose parts are labelled: a small one, and one with every kind of piece."""

from functools import cache

from msgspec.structs import replace

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_list
from jigs.given.job import ColumnSpec, FrontSpec, ShelfSpec
from jigs.given.labelstock import Stock
from jigs.given.stated import BlindEnd, EndPanels, RolloutSpec
from jigs.given.wallspec import Appliance, WallEnd, WallSpec
from jigs.layout.layout import lay_out
from templates.labels.labellist import Kinds, LabelOrder, list_labels
from templates.labels.labelwords import LabelWords
from templates.page.marks import Page
from tests.jigs.sample import box, job, lay
from tests.templates.labelpages import label_pages


@cache
def galley(name: str = "B3", wall: str = "North") -> Layout:
    """Give a box with a drawer over a door, a wall box beside it, and one front held."""
    layout = lay(
        box(
            FrontSpec(id=f"{name}-1", kind="drawer", height=152.4),
            FrontSpec(id=f"{name}-2", kind="door", hinged="left"),
            name=name,
            wall=wall,
        ),
        box(FrontSpec(id="W1-1", kind="pair"), name="W1", kind="wall", wall=wall, width=914.4,
            above_floor=1370),
        box(FrontSpec(id="B9-1", kind="door"), name="B9", wall=wall),
    )  # fmt: skip
    assert [front.id for front in layout.fronts if front.withheld] == ["B9-1"]
    return layout


@cache
def workshop() -> Layout:
    """Give a kitchen with a piece of every kind: a north wall with a tall box, drawers, a sink, a
    blind corner and a wall box, an island of two, and a box that belongs to no wall."""
    door = FrontSpec(id="", kind="door", hinged="left")
    boxes = (
        replace(
            box(replace(door, id="T1-1"), name="T1", kind="tall", height=2133.6),
            shelves=(ShelfSpec(at=900.0), ShelfSpec(count=2)),
        ),
        replace(
            box(
                FrontSpec(id="B1-1", kind="drawer", height=152.4),
                FrontSpec(id="B1-2", kind="drawer"),
                name="B1",
            ),
            panels=EndPanels(right="flush"),
        ),
        box(FrontSpec(id="B2-1", kind="pair"), name="B2", kind="sink", width=762.0, x=1600.0),
        replace(
            box(replace(door, id="B3-1", hinged="right"), name="B3", width=1066.8),
            blind=BlindEnd(hand="right", reach=400.0),
        ),
        box(FrontSpec(id="W1-1", kind="pair"), name="W1", kind="wall", width=914.4, height=762.0,
            depth=317.5, above_floor=1370.0, x=1600.0),
        replace(
            box(
                FrontSpec(id="S1-1", kind="door", hinged="left"),
                FrontSpec(id="S1-2", kind="door", hinged="right", column=2),
                name="S1", wall="Island", width=914.4,
            ),
            columns=(ColumnSpec(), ColumnSpec()), panels=EndPanels(left="covered", back=True),
        ),
        replace(
            box(replace(door, id="S2-1"), name="S2", wall="Island", width=609.6),
            rollouts=(RolloutSpec(at=150.0, height=120.0),),
            panels=EndPanels(right="covered", back=True),
        ),
        box(replace(door, id="L1-1"), name="L1", wall=""),
    )  # fmt: skip
    walls = (
        WallSpec(
            name="north",
            left=WallEnd(stands="wall", filler=41.0),
            right=WallEnd(stands="panel", filler=60.0),
            appliances=(Appliance(id="FRIDGE", width=600.0, height=1800.0, x=985.0),),
        ),
    )
    return lay_out(replace(job(*boxes), walls=walls))


def labels_of(
    layout: Layout, *, order: LabelOrder = "box", kinds: Kinds = "all", only: set[str] | None = None
) -> tuple[LabelWords, ...]:
    """Give the words of a job's labels."""
    stations = plan_stations(layout)
    return list_labels(layout, cut_list(layout), stations, order=order, kinds=kinds, only=only)


def one_of_each(layout: Layout) -> tuple[LabelWords, ...]:
    """Give a label of each look: one for each kind of part, stripe and turn of the arrow. What a
    part is its symbol says, or its ID spells it."""
    looks = {
        (
            words.payload.words,
            next((word for word in words.part.split("-")[::-1] if len(word) > 1), ""),
            words.stripe and words.stripe.end,
            words.toward,
            words.hold,
        ): words
        for words in labels_of(layout)
    }
    return tuple(looks.values())


@cache
def workshop_looks() -> tuple[LabelWords, ...]:
    """Give a label of each look that the workshop has."""
    return one_of_each(workshop())


def pages_of(layout: Layout, stock: Stock, *, start: int = 1) -> tuple[Page, ...]:
    """Give the sheets with all labels of a job."""
    return label_pages(layout, labels_of(layout), stock, start=start)
