"""Where a page stands: on a server, where one may mark, or in a book, where one may not."""

from collections.abc import Callable

from msgspec import Struct


class Host(Struct, frozen=True, kw_only=True):
    """How the pages of one job link to each other, and what can be done on them."""

    href: Callable[[str], str]
    """The address of a part's page, by its ID."""
    home: str = "/"
    """The address of the home page."""
    marks: bool = False
    """Whether steps can be marked, notes written and photos taken; else the pages only tell."""
    sheet: Callable[[str], str] | None = None
    """The address of a part's sheet, where there are sheets."""
    stations: Callable[[str], str] | None = None
    """The address of a part's stations, where there are any."""
    photo: Callable[[str], str] | None = None
    """The address of a part's photo."""
    book: bool = False
    """Whether the pages are a book's: it does not know what is done, and what all pages have in
    common stands in it once."""
    drawings: str = ""
    """The address of the walls drawn to be printed, where there is one."""
    faults: tuple[str, ...] = ()
    """What is to be said on top of every page: the job cannot be read any more."""
