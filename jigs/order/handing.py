"""The delivery taken in hand: the sizes that were measured take the place of those ordered.

A front's thickness as measured is its thickness from then on: overlay, depth of bores, screws
and gaps follow it. The leaves of a pair are measured apart.
"""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from jigs.given.delivery import Arrival, DeliveredList, Delivery
from jigs.given.ids import name_leaves
from jigs.given.job import FrontSpec, Job, Measures
from jigs.given.taped import Taped
from jigs.ground.errors import ReadingError
from jigs.ground.lengths import Unit
from jigs.order.matching import find_strangers, match_pieces
from jigs.order.ordering import list_openings, list_ordered
from jigs.reading.inputs import read_job


def read_in_hand(path: Path, units: Unit | None = None, delivered: Path | None = None) -> Job:
    """Read a job (`jigs.reading.inputs`), its fronts as they are in hand where it has a list of
    what has arrived. Raises ReadingError."""
    job = read_job(path, units, delivered)
    return job if job.delivered is None else with_delivery(job, job.delivered)


def with_delivery(job: Job, delivered: DeliveredList) -> Job:
    """Give the job with the fronts of a delivered list as they are in hand.

    Raises ReadingError with the list's faults and the IDs that the job does not know.
    """
    ordered = list_ordered(job)
    strangers = find_strangers(delivered.pieces, ordered, list_openings(job))
    if delivered.faults or strangers:
        raise ReadingError([*delivered.faults, *strangers])
    matching = match_pieces(delivered.pieces, ordered, tolerance=job.tolerance)
    delivery = Delivery(
        file=delivered.file,
        ordered=len(ordered),
        arrivals={f.id: matching.arrivals[f.id] for f in ordered if f.id in matching.arrivals},
        missing=tuple(front.id for front in matching.open),
        surplus=tuple(matching.surplus),
        alike=tuple(matching.alike),
    )
    boxes = tuple(
        replace(box, fronts=tuple(_in_hand(spec, delivery.arrivals) for spec in box.fronts))
        for box in job.boxes
    )
    return replace(job, boxes=boxes, delivery=delivery)


def _in_hand(spec: FrontSpec, arrivals: Mapping[str, Arrival]) -> FrontSpec:
    if spec.kind == "pair":
        left, right = (_measures(arrivals.get(name)) for name in name_leaves(spec.id))
        return replace(spec, leaves=(left, right))
    return _measures(arrivals.get(spec.id)).apply(spec)


def _measures(arrival: Arrival | None) -> Measures:
    if arrival is None:
        return Measures()
    piece = arrival.piece
    return Measures(
        measured=Taped(width=piece.across, height=piece.up, diagonals=piece.diagonals),
        thickness=piece.thickness,
        note=f"delivered: {piece.note}" if piece.note else "",
    )
