"""A front as it came: the sizes that were measured, and its cups where it came bored.

A list that the tool wrote gives sizes with few decimals; what is the ordered size but for those is
the ordered size.
"""

from collections.abc import Iterator, Mapping, Sequence

from msgspec.structs import replace

from jigs.given.ids import name_leaves
from jigs.given.job import FrontSpec, Measures
from jigs.given.measured import Arrival, DeliveredPiece
from jigs.given.stated import Both, Taped
from jigs.ground.errors import Fault

OrderedSizes = tuple[float, float, float]
"""Width, height and thickness as ordered, mm."""
WRITTEN = 0.001
"""A size that differs by no more from the one ordered is that one, written with fewer decimals;
mm."""


def _pieces_of(spec: FrontSpec, arrivals: Mapping[str, Arrival]) -> list[DeliveredPiece]:
    names = name_leaves(spec.id) if spec.kind == "pair" else (spec.id,)
    return [arrivals[name].piece for name in names if name in arrivals]


def find_other_bores(spec: FrontSpec, arrivals: Mapping[str, Arrival]) -> Iterator[Fault]:
    """Find what a list says of a front's cups that the job, or the pair's other leaf, has
    otherwise: nobody bores by either."""
    pieces = _pieces_of(spec, arrivals)
    if len({(piece.boring, piece.hinges_at) for piece in pieces}) > 1:
        yield Fault(
            pieces[-1].where,
            f"bored otherwise than the other leaf of pair {spec.id}; a job has the cups of both "
            "leaves in the same places: give both rows the same, or make two doors of the pair",
        )
        return
    for piece in pieces[:1]:
        tab, heights = piece.boring.bored_tab, piece.hinges_at
        said = ((tab,) if tab else (), heights or ())
        known = (
            (spec.boring.bored_tab,) if spec.boring.bored_tab else (), spec.hung.hinges_at or (),
        )  # fmt: skip
        for column, one, other in zip(("bored tab", "hinges at"), said, known, strict=True):
            if one and other and not _are_same(one, other):
                yield Fault(
                    piece.where,
                    f"{column} ({_mm(one)} given): the job has {_mm(other)} for front {spec.id}; "
                    "measure the cups, and write the same in both",
                )


def _are_same(some: Sequence[float], others: Sequence[float]) -> bool:
    return len(some) == len(others) and all(
        abs(one - other) <= WRITTEN for one, other in zip(some, sorted(others), strict=True)
    )


def _mm(lengths: Sequence[float]) -> str:
    return "; ".join(f"{length:.1f} mm" for length in lengths)


def take_in_hand(
    spec: FrontSpec, arrivals: Mapping[str, Arrival], ordered: Mapping[str, OrderedSizes]
) -> FrontSpec:
    """Give a front as it is in hand; `ordered` by the ID of each front or leaf. What the job says
    of its cups stays."""
    for piece in _pieces_of(spec, arrivals)[:1]:
        came = piece.boring
        spec = replace(
            spec,
            boring=replace(
                spec.boring,
                bored=spec.boring.bored or came.bored,
                bored_tab=spec.boring.bored_tab or came.bored_tab,
            ),
            hung=replace(spec.hung, hinges_at=spec.hung.hinges_at or piece.hinges_at),
        )
    if spec.kind == "pair":
        left, right = (_measures(name, arrivals, ordered) for name in name_leaves(spec.id))
        return replace(spec, leaves=(left, right))
    return _measures(spec.id, arrivals, ordered).apply(spec)


def _measures(
    name: str, arrivals: Mapping[str, Arrival], ordered: Mapping[str, OrderedSizes]
) -> Measures:
    if name not in arrivals:
        return Measures()
    piece, (width, height, board) = arrivals[name].piece, ordered[name]
    thickness = None if piece.thickness is None else _as_ordered(piece.thickness, board)
    return Measures(
        measured=Taped(
            width=_both(piece.across, width),
            height=_both(piece.up, height),
            diagonals=piece.diagonals,
        ),
        thickness=thickness,
        note=f"delivered: {piece.note}" if piece.note else "",
    )


def _both(sizes: Both | None, ordered: float) -> Both | None:
    return sizes and (_as_ordered(sizes[0], ordered), _as_ordered(sizes[1], ordered))


def _as_ordered(size: float, ordered: float) -> float:
    return ordered if abs(size - ordered) <= WRITTEN else size
