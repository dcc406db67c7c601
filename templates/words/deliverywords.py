"""What the check says first of a delivery: how much has arrived, what is missing, what was found
by its size alone. What is wrong with a front stands among the findings."""

from collections.abc import Iterable

from jigs.box.parts import Layout
from jigs.given.measured import Besides, DeliveredPiece, Delivery
from jigs.ground.grouped import grouped
from jigs.ground.lengths import format_length
from jigs.ground.problems import REFUSALS
from templates.words.textlines import counted


def delivery_words(layout: Layout) -> tuple[str, ...]:
    """Give the lines on the delivery, none where no list of it was read."""
    delivery = layout.job.delivery
    if delivery is None:
        return ()
    arrived = len(delivery.arrivals)
    measured = sum(arrival.piece.is_measured for arrival in delivery.arrivals.values())
    beyond = dict.fromkeys(
        str(p.part) for p in layout.problems if p.level == "error" and p.code in REFUSALS
    )
    limit = format_length(layout.job.tolerance, layout.job.shown)
    lines = [
        f"Delivered: {arrived} of {counted(delivery.ordered, 'front')}, {measured or 'none'} "
        f"measured ({delivery.file.name}); {limit} off the order is accepted."
    ]
    if delivery.missing:
        lines.append(f"Not yet: {', '.join(delivery.missing)}.")
    if out := [name for name in beyond if name in delivery.arrivals]:
        lines.append(f"Held back because of what arrived: {', '.join(out)}.")
    if found := _found_by_size(delivery):
        lines.append(f"Found by size, without an ID: {found}. Mark each piece with its ID.")
    if delivery.alike:
        alike = "; ".join(", ".join(group) for group in delivery.alike)
        lines.append(f"Alike, so that one serves for the other until drilled: {alike}.")
    if delivery.besides:
        names = ", ".join(map(_besides, delivery.besides))
        lines.append(
            f"Besides fronts: {names}. 'plan JOB --done ID cut' marks a board that came cut."
        )
    if delivery.surplus:
        over = ", ".join(f"{s.piece.row} ({counted(s.count, 'piece')})" for s in delivery.surplus)
        lines.append(f"Left over: {over}.")
    seen = grouped((each.piece.note, front) for front, each in delivery.arrivals.items())
    if noted := [f"{', '.join(ids)}: {note.rstrip('.')}" for note, ids in seen.items() if note]:
        lines.append(f"Noted in the list: {'; '.join(noted)}.")
    return tuple(lines)


def _besides(each: Besides) -> str:
    """Name what came and is no front: `T1-PANEL-L`, with its row where it was found by size."""
    return each.id if each.piece.id else f"{each.id} ({each.piece.row}, by size)"


def _found_by_size(delivery: Delivery) -> str:
    """Say which fronts the pieces of each row without an ID are: `row 8: S1-2-1, S1-2-2`."""
    rows: dict[str, list[str]] = {}
    for front, arrival in delivery.arrivals.items():
        if arrival.by_size:
            rows.setdefault(arrival.piece.row, []).append(front)
    pieces = _pieces(arrival.piece for arrival in delivery.arrivals.values())
    return "; ".join(f"{row}: {', '.join(rows[row])}" for row in pieces if row in rows)


def _pieces(pieces: Iterable[DeliveredPiece]) -> list[str]:
    """Give the rows in the order in which they stand in the list."""
    rows = dict.fromkeys(piece.row for piece in pieces)
    return sorted(rows, key=lambda row: (row.rpartition(" ")[0], int(row.rpartition(" ")[2])))
