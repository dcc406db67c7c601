"""Has everything arrived, and is it what was ordered? What a delivered list leaves open."""

from jigs.box.judged import BOARD, is_other_board
from jigs.given.delivery import Arrival, Delivery, Surplus
from jigs.ground.finding import error, warning
from jigs.ground.lengths import Unit, format_length
from jigs.ground.limits import is_beyond
from jigs.ground.problems import Problem


def check_arrival(
    front: str, delivery: Delivery, tolerance: float, unit: Unit
) -> tuple[Problem, ...]:
    """List what is to be said of what arrived for one front, besides its size."""
    arrival = delivery.arrivals.get(front)
    if arrival is None:
        return (
            warning(
                "not-delivered",
                front,
                "not delivered yet; its sheets are for the size that was ordered",
                "measure it when it comes, and print them anew",
            ),
        )
    return _check_thickness(front, arrival, tolerance, unit)


def check_surplus(delivery: Delivery, unit: Unit) -> tuple[Problem, ...]:
    """List the pieces that no front takes."""
    return tuple(_word_surplus(delivery.file.name, s, unit) for s in delivery.surplus)


def _word_surplus(file: str, surplus: Surplus, unit: Unit) -> Problem:
    piece = surplus.piece
    pieces = "a piece" if surplus.count == 1 else f"{surplus.count} pieces"
    if piece.id:
        return warning(
            "surplus",
            None,
            f"{file}, {piece.row}: {pieces} more than was ordered of {piece.id}",
            "put it aside; drill the one that you have measured",
        )
    size = " x ".join(format_length(sum(s) / len(s), unit) for s in (piece.width, piece.height))
    return warning(
        "surplus",
        None,
        f"{file}, {piece.row}: {pieces} of {size}, which no front still missing has",
        "look for its label; it may be another job's, or a front much out of size",
    )


def _check_thickness(
    front: str, arrival: Arrival, tolerance: float, unit: Unit
) -> tuple[Problem, ...]:
    made = arrival.piece.thickness
    if made is None or not is_beyond(made - arrival.thickness, BOARD):
        return ()
    text = (
        f"{format_length(made, unit)} thick, ordered {format_length(arrival.thickness, unit)} thick"
    )
    if is_other_board(arrival, tolerance):
        return (
            error(
                "thickness-differs",
                front,
                f"{text}: it is of another board",
                "send it back; if it stays, give its thickness at the front in the job",
            ),
        )
    return (
        warning(
            "thickness-differs",
            front,
            text,
            "its bores and screws follow what was measured; see that its face comes level with "
            "its neighbours",
        ),
    )
