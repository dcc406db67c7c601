"""The words on a part's label: its name, what it is, where it goes, its size.

Its lines are worded in `words/labellines.py`; pieces of the cut list have theirs in
`piecewords.py`.
"""

from collections.abc import Sequence

from msgspec import Struct

from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.cutlist.piece import Piece
from jigs.ground.lengths import format_mm
from templates.labels.keyplan import Black, black_front, black_rollout, black_side
from templates.labels.labelmarks import Stripe, Toward, to_the_front
from templates.words.labellines import (
    ASSUMED,
    Wording,
    cut_lines,
    drawer_line,
    finished_line,
    hinge_lines,
    hung_line,
    kind_line,
    open_lines,
    place_line,
    reason_line,
    size_lines,
    stick_line,
    told_lines,
)
from templates.words.payload import Payload, Phrase
from templates.words.scanwords import (
    drawer_box_payload,
    front_payload,
    rollout_payload,
    side_payload,
)


class LabelWords(Struct, frozen=True, kw_only=True):
    """What a label says. `lines` from top to bottom, under the ID. `hold`: a large HOLD stands
    under the ID. `arrow`: the word at the arrow, which points `toward` a side of the label.
    `stripe`: the edge of the label that carries a black stripe, and its words. `black`: what the
    key plan shows black."""

    part: str
    box: str
    code: str
    payload: Payload
    lines: tuple[Wording, ...]
    black: Black
    hold: bool = False
    arrow: str = "UP"
    toward: Toward = "up"
    stripe: Stripe | None = None
    link: str = ""
    """What the symbol says in place of `payload`."""


def words_of_front_label(layout: Layout, front: Front, work: Sequence[Phrase] = ()) -> LabelWords:
    """Give the words for a door, a drawer front, or any other front; `work`: at which stations it
    is drilled."""
    lines = [
        kind_line(layout, front),
        stick_line(front),
        hung_line(layout, front),
        *size_lines((front.width, front.height, front.make.thickness)),
    ]
    if front.withheld:
        lines.insert(1, reason_line(front.held[0], layout.job.shown))
    else:
        lines[1:1] = open_lines(front.open)
        lines += hinge_lines(layout, front)
        if front.drawer is not None:
            lines.append(drawer_line(front, front.drawer))
        lines += told_lines(front.make.note, front.make.finish)
    return LabelWords(
        part=front.id,
        box=front.box,
        code="" if front.withheld else front.code,
        payload=front_payload(layout, front, work),
        lines=tuple(lines),
        black=black_front(front),
        hold=front.withheld,
    )


def words_of_side_label(
    layout: Layout,
    side: Side,
    piece: Piece | None = None,
    work: Sequence[Phrase] = (),
    *,
    assumed: bool = False,
) -> LabelWords:
    """Give the words for a box side, `piece` as it is cut; its label sticks on the outside face.
    `assumed`: its size hangs on numbers that nobody gave.

    Seen from outside, upright, a left side has its front edge on the right. A partition has no
    outside: its label sticks on its left face, which is turned as that of a left side.
    """
    ways: tuple[str, ...] = (
        f"{side.side.upper()} SIDE, THIS FACE OUT", "THIS FACE OUT", "FACE OUT",
    )  # fmt: skip
    if side.partition:
        between = f"COLUMNS {side.partition} AND {side.partition + 1}"
        ways = (
            f"PARTITION {side.partition}, THIS FACE LEFT, BETWEEN {between}",
            f"PARTITION {side.partition}, THIS FACE LEFT",
            "THIS FACE LEFT",
            "FACE LEFT",
        )
    lines = [
        Wording(ways=ways, worth=10, most=5.0, bold=True),
        place_line(side.board, side.wall, side.box, ""),
        *_side_sizes(side, piece),
    ]
    if side.missing:
        come = f"{', '.join(side.missing)} TO COME"
        lines[1:1] = [
            Wording(
                ways=(f"INCOMPLETE: {come}", come, "HOLES TO COME", "TO COME"), worth=8, bold=True
            )
        ]
    if assumed:
        lines.insert(1, ASSUMED)
    lines[1:1] = open_lines(side.open)
    if not side.holes and not side.missing:
        lines.append(Wording(ways=("NO HOLES",), worth=5))
    if side.band > 0 and side.band_state == "later":
        lines.append(Wording(ways=("FRONT EDGE STILL RAW", "FRONT RAW", "RAW"), worth=5))
    elif side.band > 0:
        lines.append(Wording(ways=("FRONT EDGE BANDED", "FRONT BANDED", "BANDED"), worth=5))
    if not side.partition:
        ways = ("STICK ON THE OUTSIDE, NEAR THE REAR TOP", "STICK NEAR THE REAR TOP",
                "NEAR REAR TOP")  # fmt: skip
        lines.append(Wording(ways=ways, worth=3, figure=True))
    return LabelWords(
        part=side.board,
        box=side.box,
        code=side.code,
        payload=side_payload(layout, side, work),
        lines=tuple(lines),
        black=black_side(side),
        stripe=to_the_front("right" if side.side == "left" or side.partition else "left"),
    )


def _side_sizes(side: Side, piece: Piece | None) -> list[Wording]:
    """Say what the saw is set to; what the side measures with its band on, under that word alone:
    sawn to it, the side would be too deep. Of a box that is built nothing is sawn."""
    if piece is None:
        return [finished_line(side.height, side.depth)]
    finished = [finished_line(side.height, side.depth)] if piece.band else []
    return [*cut_lines(piece), *finished]


def words_of_drawer_box_label(
    layout: Layout, drawer: DrawerBox, front: Front, work: Sequence[Phrase] = ()
) -> LabelWords:
    """Give the words for a drawer box; its label sticks under the bottom, arrow to the front."""
    lines = [
        Wording(ways=("DRAWER BOX", "BOX"), worth=9, most=5.0, bold=True),
        place_line(drawer.id, front.wall, front.box, f"BEHIND {front.id}"),
    ]
    if front.withheld:
        lines.insert(1, reason_line(front.held[0], layout.job.shown))
    else:
        lines[1:1] = open_lines(drawer.open)
        lines += size_lines((drawer.width, drawer.height, drawer.length))
    return LabelWords(
        part=drawer.id,
        box=front.box,
        code="" if front.withheld else drawer.code,
        payload=drawer_box_payload(layout, drawer, front, work),
        lines=tuple(lines),
        black=black_front(front),
        hold=front.withheld,
        arrow="FRONT",
    )


def words_of_rollout_label(
    layout: Layout, rollout: Rollout, work: Sequence[Phrase] = ()
) -> LabelWords:
    """Give the words for a rollout; its label sticks under the bottom, arrow to the front."""
    lines = [
        Wording(ways=("ROLLOUT, DRAWER BOX", "ROLLOUT"), worth=9, most=5.0, bold=True),
        place_line(
            rollout.id,
            rollout.wall,
            rollout.box,
            f"BEHIND {', '.join(rollout.behind)}" if rollout.behind else "",
        ),
    ]
    if rollout.withheld:
        lines.insert(1, reason_line(rollout.held[0], layout.job.shown))
    else:
        lines[1:1] = open_lines(rollout.open)
        lines += size_lines((rollout.width, rollout.height, rollout.length))
        up = f"UNDERSIDE {format_mm(rollout.y)} UP"
        lines.append(Wording(ways=(f"{up} IN THE BOX", up), worth=5, figure=True))
    return LabelWords(
        part=rollout.id,
        box=rollout.box,
        code="" if rollout.withheld else rollout.code,
        payload=rollout_payload(layout, rollout, work),
        lines=tuple(lines),
        black=black_rollout(rollout),
        hold=rollout.withheld,
        arrow="FRONT",
    )
