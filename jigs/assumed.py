"""Which assumptions touch which part: the defaults that stand in for numbers nobody gave.

Every sheet of a part is stamped with them. A part is touched by the default of a number that
its size or a place on it is computed from.

>>> word_key("material.side", "18.0 mm")
'side thickness 18.0 mm'
"""

from collections.abc import Iterable

from jigs.job import FrontKind, Job
from jigs.lengths import format_length

WORDS = {
    "material.side": "side thickness",
    "material.front": "front thickness",
    "material.front_kind": "front material",
    "material.front_density": "front density",
    "material.back": "back thickness",
    "material.band": "edge band",
    "material.drawer_side": "drawer side thickness",
    "reveal.side": "side reveal",
    "reveal.top": "top reveal",
    "reveal.bottom": "bottom reveal",
    "reveal.between": "gap between fronts",
}
"""Keys of a job in the words of the trade."""

REVEALS = ("reveal.side", "reveal.top", "reveal.bottom", "reveal.between")
HINGED = ("material.side", "material.front", "material.front_kind", "material.front_density")
RUNNING = ("material.side", "material.front", "material.back", "material.drawer_side")
FALSE = ("material.side", "material.front", "material.drawer_side")
SIDES = ("material.side", "material.band", *REVEALS)


def keys_of_front(kind: FrontKind) -> tuple[str, ...]:
    """Give the keys outside its box that a front's size and holes are computed from."""
    match kind:
        case "door" | "pair":
            return (*REVEALS, *HINGED)
        case "drawer" | "pullout":
            return (*REVEALS, *RUNNING)
        case "false-front":
            return (*REVEALS, *FALSE)
        case _:
            return (*REVEALS, "material.front")


def list_assumed(
    job: Job, box: str, keys: Iterable[str], records: Iterable[str]
) -> tuple[str, ...]:
    """Give in words the defaults among `keys`, those of the box, and those of its hardware.

    `records` are the names of the hardware records that the part depends on.
    """
    wanted = set(keys)
    prefixes = (f"box.{box}.", *(f"{kind}.{name}." for name in records for kind in _KINDS))
    return tuple(
        word_key(key, _figure(job, key))
        for key in sorted(job.assumed)
        if key in wanted or key.startswith(prefixes)
    )


_KINDS = ("hinge", "slide", "pull")


def word_key(key: str, figure: str) -> str:
    """Say a job's key, and its value, in words."""
    if key in WORDS:
        words = WORDS[key]
    else:
        table, _, rest = key.partition(".")
        name, _, field = rest.rpartition(".")
        words = f"{table} {name} {field.replace('_', ' ')}".replace("  ", " ")
    return f"{words} {figure}".rstrip()


def _figure(job: Job, key: str) -> str:
    """Give the value that stands behind a key, "" where it is not a plain one."""
    table, _, rest = key.partition(".")
    name, _, field = rest.rpartition(".")
    holders: dict[str, object] = {
        "material": job.material,
        "reveal": job.reveal,
        "box": next((box for box in job.boxes if box.id == name), None),
        "hinge": job.hinges.get(name),
        "slide": job.slides.get(name),
        "pull": job.pulls.get(name),
    }
    value = getattr(holders.get(table), field, None)
    if isinstance(value, float):
        return format_length(value, job.units)
    return value if isinstance(value, str) else ""
