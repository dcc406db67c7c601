"""Which hinge a door takes, said where not all doors of its job take the same: a wrong one spoils
the overlay, and is bored alike. A job of one hinge has no word of it."""

from collections.abc import Iterable

from jigs.bench.boxtable import BoxTable, HeightLine
from jigs.box.parts import Front, Layout
from templates.words.hardwarewords import HUNG


def hinge_name(layout: Layout, front: Front) -> str:
    """Name a door's hinge: `HALF-OVERLAY HINGE cuphalf`."""
    return next(iter(hinge_names(layout, front)), "")


def hinge_names(layout: Layout, front: Front) -> tuple[str, ...]:
    """Name a door's hinge in full and in short: `HALF-OVERLAY HINGE cuphalf`, `HINGE cuphalf`."""
    record = _record(layout, front)
    if not record:
        return ()
    hung = HUNG[layout.job.hinges[record].kind].upper().replace(" ", "-")
    return f"{hung} HINGE {record}", f"HINGE {record}"


def hinge_words(layout: Layout, parts: Iterable[str]) -> str:
    """Name the hinge of some doors shortly: `hinge cuphalf`; of leaves on two, of each."""
    fronts = layout.front_of
    served = {part: _record(layout, fronts[part]) for part in parts if part in fronts}
    records = dict.fromkeys(filter(None, served.values()))
    if len(records) > 1:
        return ", ".join(f"{part} hinge {record}" for part, record in served.items() if record)
    return "".join(f"hinge {record}" for record in records)


def hinges_of_lines(layout: Layout, table: BoxTable) -> dict[HeightLine, str]:
    """Name the hinge of each line of plates where the doors of a table do not all hang on the same:
    of one alone it is said below the lines."""
    plates = [line for line in table.lines if line.purpose == "plate"]
    doors = {part for line in plates for part in line.serves}
    if len({hinge_words(layout, [door]) for door in doors}) < 2:
        return {}
    return {line: hinge_words(layout, line.serves) for line in plates}


def _record(layout: Layout, front: Front) -> str:
    several = len(layout.hinges) > 1
    return front.hinge.record if several and front.hinge is not None else ""
