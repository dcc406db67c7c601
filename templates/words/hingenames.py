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
    """Name the hinge of some doors shortly: `hinge cuphalf`; of leaves on two, of each."""
    fronts = {front.id: front for front in layout.fronts}
    served = {part: _record(layout, fronts[part]) for part in parts if part in fronts}
    records = dict.fromkeys(filter(None, served.values()))
    if len(records) > 1:
        return ", ".join(f"{part} hinge {record}" for part, record in served.items() if record)
    return "".join(f"hinge {record}" for record in records)


def _record(layout: Layout, front: Front) -> str:
    several = len(layout.hinges) > 1
    return front.hinge.record if several and front.hinge is not None else ""
