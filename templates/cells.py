"""Cells of a table that goes into a spreadsheet.

>>> safe_cell("=1+1"), safe_cell("B1-SIDE-L")
("'=1+1", 'B1-SIDE-L')
"""

_FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""A cell that begins with one of these is run by a spreadsheet; it gets an apostrophe."""


def safe_cell(text: str) -> str:
    """Give a text as a cell that no spreadsheet takes for a formula."""
    return f"'{text}" if text.startswith(_FORMULA) else text
