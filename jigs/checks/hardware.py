"""Which parts depend on hardware whose numbers nobody has confirmed yet?"""

from collections.abc import Sequence

from jigs.checks.finding import warning
from jigs.hardware import HingeRecord, SlideRecord
from jigs.parts import DrawerBox
from jigs.problems import Problem


def check_hinge_confirmed(front: str, record: HingeRecord, board: str) -> tuple[Problem, ...]:
    """Find a door hung on an unconfirmed hinge; its side is concerned too."""
    if record.confirmed is not None:
        return ()
    return (
        warning(
            "unconfirmed-hinge",
            front,
            f"hinge '{record.name}' is not confirmed: constant {record.constant:g} mm, pattern "
            f"{record.fixing_spacing:g}/{record.fixing_inboard:g} mm",
            "measure it or read its leaflet, say so with confirmed; or try a scrap door first",
            (board,),
        ),
    )


def check_slide_confirmed(
    front: str, record: SlideRecord, boards: Sequence[str], drawer: DrawerBox | None
) -> tuple[Problem, ...]:
    """Find a drawer that runs on an unconfirmed slide; both sides are concerned too."""
    if record.confirmed is not None:
        return ()
    return (
        warning(
            "unconfirmed-slide",
            front,
            f"slide '{record.name}' is not confirmed: fixing height {record.fixing_height:g} mm, "
            f"drawer rise {record.drawer_rise:g} mm",
            "set it on a flat board, measure both, say so with confirmed",
            (*boards, *((drawer.id,) if drawer else ())),
        ),
    )
