"""Names of the pieces that belong to a wall: a short tag for each wall, then the piece.

A tag is the wall's name in capitals without accents, its letters A-Z and digits alone, at most six
of them; a name in another script gives `WALL1`, `WALL2`. No two walls of a job have one tag, and no
wall has the ID of a box. A wall with an `id` of its own in the job has that.

>>> wall_tags(("north", "island", "northern", "Βόρειος"), taken=())["island"]
'ISLAND'
"""

from collections.abc import Collection, Iterable, Mapping

from jigs.ground.latin import plain_capitals

LONGEST_TAG = 6


def wall_tags(
    walls: Iterable[str], taken: Collection[str], given: Mapping[str, str] | None = None
) -> dict[str, str]:
    """Give each wall's tag; `taken` are the IDs that none may have, `given` the walls' own IDs.
    "" for a wall unnamed."""
    own = given or {}
    tags: dict[str, str] = {}
    for number, wall in enumerate(dict.fromkeys(walls), start=1):
        if not wall:
            tags[wall] = ""
            continue
        if wall in own:
            tags[wall] = own[wall]
            continue
        plain = plain_capitals(wall)
        words = "".join(c for c in plain if c.isascii() and c.isalnum())[:LONGEST_TAG]
        tag = words or f"WALL{number}"
        used = {*tags.values(), *taken, *own.values()}
        more = 2
        while tag in used:
            ending = str(more)
            tag = f"{(words or 'WALL')[: LONGEST_TAG - len(ending)]}{ending}"
            more += 1
        tags[wall] = tag
    return tags


def name_wall_piece(tag: str, *words: str) -> str:
    """Name a piece of a wall: `NORTH-TOE-1-FRONT`."""
    return "-".join((*([tag] if tag else []), *words))
