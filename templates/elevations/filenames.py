"""What the file of a wall's drawing is called."""

import re
import unicodedata

from jigs.room.elevation import Elevation


def file_name(
    elevation: Elevation, number: int, count: int, names: dict[str, int], what: str = "elevation"
) -> str:
    """Name a sheet's file after its wall, in plain small letters: `elevation-north`."""
    words = elevation.wall if elevation.placed else "boxes"
    folded = unicodedata.normalize("NFKD", words.casefold())
    plain = re.sub(r"[^a-z0-9]+", "-", "".join(c for c in folded if not unicodedata.combining(c)))
    name = f"{what}-{plain.strip('-') or 'wall'}"
    if number == 1:
        names[name] = names.get(name, 0) + 1
    if names[name] > 1:
        name = f"{name}-{names[name]}"
    return name if count == 1 else f"{name}-sheet-{number}"
