"""The rows of the supplier's list: a pair as one row of two leaves, and boxes where a list can
say them.

A front list that stands alone works its boxes out from their fronts, stacked in one column of one
width. What has an opening, several columns or fronts of different widths is more than that; its
rows name no box, so that each front is read back as one by itself.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from jigs.given.ids import name_leaves
from jigs.given.job import BoxSpec, FrontSpec, Job, Reveal
from jigs.order.buying import FrontOrder, Order
from jigs.reading.listedfront import ListedFront, check_widths


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplierRow:
    """One row: its ID and kind, how many leaves of this size it brings, the order of one of them,
    and the box that a list read back may build from it, "" where none."""

    id: str
    kind: str
    leaves: int
    order: FrontOrder
    box: str


def supplier_rows(order: Order, job: Job) -> tuple[SupplierRow, ...]:
    """Give the rows of the fronts to be ordered, in the job's order."""
    rows = tuple(_rows(order))
    own: dict[str, list[SupplierRow]] = {}
    for row in rows:
        own.setdefault(row.box, []).append(row)
    plain = {box.id for box in job.boxes if box.id in own and _is_plain(box, own[box.id])}
    return tuple(row if row.box in plain else replace(row, box="") for row in rows)


def _rows(order: Order) -> Iterator[SupplierRow]:
    fronts = {front.front.id: front for front in order.fronts}
    for name, one in fronts.items():
        if one.spec.kind == "pair":
            left, right = (fronts.get(leaf) for leaf in name_leaves(one.spec.id))
            if left and right:
                if left is one:
                    yield SupplierRow(
                        id=one.spec.id, kind="pair", leaves=2, order=one, box=one.front.box
                    )
                continue
        yield SupplierRow(id=name, kind=one.front.kind, leaves=1, order=one, box=one.front.box)


def _is_plain(box: BoxSpec, rows: list[SupplierRow]) -> bool:
    """Tell whether the rows of a box, one below the other, make up a box by themselves."""
    if box.columns or any(front.kind == "opening" for front in box.fronts):
        return False
    listed = [
        ListedFront(
            spec=FrontSpec(
                id=row.id,
                kind="pair" if row.kind == "pair" else row.order.front.kind,
                width=row.order.width,
                height=row.order.height,
            ),
            box=box.id,
            count=1,
            where="",
        )
        for row in rows
    ]
    return not check_widths(listed, Reveal().between)
