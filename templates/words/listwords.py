"""What stands on each page of a list besides the list."""


def numbered(title: str, number: int, count: int) -> str:
    """Number a page: `Cut list, page 2 of 9`."""
    return f"{title}, page {number} of {count}"


def going_on(title: str) -> str:
    """Head what goes on from the page before."""
    return f"{title}, GOES ON"
