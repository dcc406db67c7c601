"""What a wall is called: the name that the person gave it, with the word behind it once.

Who calls a wall "north wall" reads NORTH WALL, as who calls it "north".

>>> wall_title("north"), wall_title("North wall"), wall_title("")
('NORTH WALL', 'NORTH WALL', 'WALL')
>>> bare_wall("North wall"), wall_phrase("north"), wall_phrase("North Wall")
('NORTH', 'north wall', 'North Wall')
"""

from templates.words.capitals import capitals

WALL = "WALL"


def wall_title(name: str) -> str:
    """Name a wall in capitals."""
    title = capitals(name)
    if not title:
        return WALL
    return title if title.endswith(WALL) else f"{title} {WALL}"


def bare_wall(name: str) -> str:
    """Give a wall's name in capitals without the word."""
    return without_wall(capitals(name))


def without_wall(title: str) -> str:
    """Take the word from the end of a name in capitals."""
    return title.removesuffix(WALL).strip()


def wall_phrase(name: str) -> str:
    """Name a wall within a sentence, as the person writes it."""
    return name if name.upper().endswith(WALL) else f"{name} {WALL.lower()}"
