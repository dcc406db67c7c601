"""What the order of work is told from: its days, what is bought, and where the stations stand on
paper."""

from collections.abc import Mapping, Sequence

from msgspec import Struct, field

from jigs.bench.jobplan import MOST_A_DAY, JobPlan, plan_job
from jigs.bench.kept import Kept
from jigs.bench.station import Station
from jigs.bench.workplan import Stage, is_wanted
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import Cut
from jigs.order.buying import Order, make_order
from jigs.order.needed import Item
from jigs.room.hanging import Hanging, plan_hanging
from jigs.room.wallmeasures import boxes_of


class Paged(Struct, frozen=True, kw_only=True):
    """Where the stations stand in their file: the pages of each by its name, how many stand before
    the first; the files of a pack, and what those that are drilled by ask for at the bench."""

    pages: Mapping[str, Sequence[int]] = field(default_factory=dict)
    before: int = 0
    files: Sequence[str] = ()
    costs: Mapping[str, str] = field(default_factory=dict)


class WorkView(Struct, frozen=True, kw_only=True):
    """The work of a job, with what is bought for it and where its stations stand."""

    plan: JobPlan
    order: Order
    paged: Paged

    def to_hand(self, stage: Stage) -> tuple[Item, ...]:
        """Give the hardware that is to hand in a stage."""
        items = self.order.items
        return tuple(item for item in items if is_wanted(item.group, item.name, stage))


def view_work(
    layout: Layout,
    cut: Cut,
    stations: Sequence[Station],
    paged: Paged,
    kept: Mapping[str, Kept] | None = None,
    *,
    most: int = MOST_A_DAY,
) -> WorkView:
    """Plan the work of a job as it is printed; `kept`: what is kept of its parts, `most`: how much
    is done in a day."""
    order = make_order(layout, cut)
    plan = plan_job(
        layout, cut, stations, kept,
        setting={wall.elevation.wall: _in_turn(wall) for wall in plan_hanging(layout)},
        ordering=bool(order.fronts) or not order.boxes_made,
        most=most,
    )  # fmt: skip
    return WorkView(plan=plan, order=order, paged=paged)


def _in_turn(wall: Hanging) -> list[str]:
    """Name the boxes of a wall in the order in which they are set; from the left where nobody
    said where they stand."""
    if wall.order:
        return [each.seen.box.id for each in wall.order]
    return [seen.box.id for seen in boxes_of(wall.elevation)]
