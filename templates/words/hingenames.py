"""Which hinge a door takes, said where not all doors of its job take the same: a wrong one spoils
the overlay, and is bored alike. A job of one hinge has no word of it."""

from collections.abc import Iterable

from jigs.box.parts import Front, Layout
from templates.words.hardwarewords import HUNG


def hinge_name(layout: Layout, front: Front) -> str:
    """Name a door's hinge: `HALF-OVERLAY HINGE cuphalf`."""
    record = _record(layout, front)
    if not record:
        return ""
    hung = HUNG[layout.job.hinges[record].kind].upper().replace(" ", "-")
    return f"{hung} HINGE {record}"


def hinge_words(layout: Layout, parts: Iterable[str]) -> str:
    """Name the hinges of some doors shortly: `hinge cuphalf`."""
    fronts = {front.id: front for front in layout.fronts}
    served = [fronts[part] for part in parts if part in fronts]
    records = dict.fromkeys(filter(None, (_record(layout, front) for front in served)))
    return f"hinge {', '.join(records)}" if records else ""


def _record(layout: Layout, front: Front) -> str:
    several = len(layout.hinges) > 1
    return front.hinge.record if several and front.hinge is not None else ""
