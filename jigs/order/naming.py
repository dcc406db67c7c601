"""A delivered list whose IDs stand in a column that is not headed so: `Nr.`, `Pos`. Where most of
its cells are IDs of the job's fronts it is that column: by sizes alone, fronts that are alike would
be exchanged. Where only some are, nobody may choose.
"""

from collections.abc import Collection

from msgspec.structs import replace

from jigs.given.ids import spell_id
from jigs.given.measured import DeliveredList, LeftColumn, find_twice
from jigs.ground.errors import Fault


def with_ids(delivered: DeliveredList, known: Collection[str]) -> DeliveredList:
    """Give a list with the IDs of the column that holds them, where none is headed so; what is
    wrong is among its faults. `known`: the names of the job's fronts, and of what else is
    delivered."""
    if not any(piece.id for piece in delivered.pieces):
        found = [(column, _named(column, known)) for column in delivered.left]
        most = [(column, names) for column, names in found if _are_most(column, names)]
        if len(most) == 1:
            delivered = _take(delivered, *most[0])
        else:
            some = most or [(column, names) for column, names in found if any(names)]
            doubts = tuple(_doubt(delivered, column, names) for column, names in some)
            delivered = replace(delivered, faults=(*delivered.faults, *doubts))
    unsized = (fault for place, fault in delivered.unsized if not _has_id(delivered, place))
    return replace(delivered, faults=(*delivered.faults, *unsized), unsized=())


def _has_id(delivered: DeliveredList, place: int) -> bool:
    if place >= 0:
        return bool(delivered.pieces[place].id)
    return all(piece.id for piece in delivered.pieces)


def _named(column: LeftColumn, known: Collection[str]) -> tuple[str, ...]:
    """Give the fronts that the cells of a column name, "" for a cell that names none."""
    spelled = ((text.upper(), spell_id(text)) for text in column.cells)
    return tuple(next((n for n in names if n and n in known), "") for names in spelled)


def _are_most(column: LeftColumn, names: tuple[str, ...]) -> bool:
    return sum(map(bool, names)) > sum(map(bool, column.cells)) / 2


def _take(delivered: DeliveredList, column: LeftColumn, names: tuple[str, ...]) -> DeliveredList:
    pieces = tuple(
        replace(piece, id=name or text.upper())
        for piece, name, text in zip(delivered.pieces, names, column.cells, strict=True)
    )
    said = (
        f"{column.called} is taken for the IDs: {_how_many(column, names)} are the job's. If it "
        "numbers rows alone, take it out, and pieces are matched by their sizes."
    )
    left = tuple(other for other in delivered.left if other is not column)
    faults = (*delivered.faults, *find_twice(pieces))
    return replace(delivered, pieces=pieces, left=left, also=(*delivered.also, said), faults=faults)


def _doubt(delivered: DeliveredList, column: LeftColumn, names: tuple[str, ...]) -> Fault:
    place = next(place for place, name in enumerate(names) if name)
    return Fault(
        delivered.pieces[place].where,
        f"column {column.called}: {_how_many(column, names)} are IDs of the job's fronts "
        f"('{column.cells[place]}' here): call it id if it names the fronts, and empty the cells "
        "that name none; or take it out, and pieces are matched by their sizes",
    )


def _how_many(column: LeftColumn, names: tuple[str, ...]) -> str:
    return f"{sum(map(bool, names))} of its {sum(map(bool, column.cells))} cells"
