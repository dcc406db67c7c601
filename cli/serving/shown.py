"""A link's QR symbol on the terminal, to be scanned from there."""

import os
import sys

BLACK_ON_WHITE, PLAIN = "\x1b[30;107m", "\x1b[0m"
"""Stated, whatever the terminal's own colours: few readers read white on black. SGR codes
(ECMA-48; 107 is xterm's, from memory)."""
HALVES = {(False, False): " ", (True, False): "▀", (False, True): "▄", (True, True): "█"}


def may_show() -> bool:
    """Tell whether standard output is a terminal that can draw a symbol in black on white."""
    if not sys.stdout.isatty() or os.environ.get("TERM") == "dumb" or os.environ.get("NO_COLOR"):
        return False
    try:
        "".join(HALVES.values()).encode(sys.stdout.encoding)
    except UnicodeEncodeError:
        return False
    return True


def symbol_lines(text: str) -> list[str]:
    """Draw the symbol of a text, two rows of modules to a line, with its quiet zone."""
    from templates.writers.qr import QUIET, qr_matrix

    matrix = qr_matrix(text)
    side = len(matrix) + 2 * QUIET
    rows = [[False] * side for _ in range(side + side % 2)]
    for down, row in enumerate(matrix, QUIET):
        rows[down][QUIET : QUIET + len(row)] = row
    return [
        BLACK_ON_WHITE + "".join(HALVES[pair] for pair in zip(upper, lower, strict=True)) + PLAIN
        for upper, lower in zip(rows[::2], rows[1::2], strict=True)
    ]
