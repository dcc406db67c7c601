"""What a list is asked, for a person who is asked one thing at a time: each question in plain
words, its answers in words and as `--columns` takes them. `listquestions` has the same for all who
are told every question at once.
"""

from collections.abc import Mapping, Sequence

from jigs.given.listspec import NOTHING
from jigs.ground.errors import AskedBack
from jigs.reading.listcolumns import ListHeading, column_letter, shorten
from jigs.reading.listquestions import name_rows, typed_key


def asked_order(text: str) -> AskedBack:
    """Ask a person which of the sizes in a cell is the width."""
    return AskedBack(
        f"Which of the sizes in '{shorten(text)}' is the width?",
        (
            ("the first is the width", "order=width-first"),
            ("the first is the height", "order=height-first"),
        ),
    )


def asked_box(rows: Sequence[int], above: str, bare: bool) -> AskedBack:
    """Ask a person what an empty box cell below a filled one means."""
    own = [("each has a box of its own", "empty_box=own")] if bare else []
    return AskedBack(
        f"No box is named in {name_rows(rows)}, below one that is ('{above}'): where do these "
        "fronts hang?",
        (("on the box named above them", "empty_box=above"), *own),
    )


def asked_pairs(row: str, text: str, shown: Sequence[str]) -> AskedBack:
    """Ask a person what the width and the count of a double door are of; `shown`: what each answer
    makes."""
    words = (
        "the width is one leaf's, the count counts double doors",
        "the width goes across both leaves",
        "the width is one leaf's, the count counts single leaves",
    )
    ways = ("one-leaf", "both-leaves", "pieces")
    return AskedBack(
        f"'{shorten(text)}' ({row}): what are its width and its count of?",
        tuple(
            (f"{said}: {made}", f"pairs={way}")
            for said, made, way in zip(words, shown, ways, strict=True)
        ),
    )


def asked_column(column: str, letter: str, heading: str, some: Sequence[str]) -> AskedBack:
    """Ask a person whether a column is what its cells look like."""
    named = f" '{heading}'" if heading else ""
    return AskedBack(
        f"Column {letter}{named} holds {', '.join(some[:4])}: is it the "
        f"{'hand' if column == 'hinged' else column}?",
        (("yes", f"{column}={letter}"), ("no: leave it alone", f"{NOTHING}={letter}")),
    )


def asked_both_hands(rows: str, box: str) -> AskedBack:
    """Ask a person whether a left and a right door of one size on one box hang side by side."""
    return AskedBack(
        f"A left and a right door of one size on box '{box}' ({rows}): how do they hang?",
        (
            ("side by side, a pair before one opening", "both_hands=pair"),
            ("one above the other", "both_hands=stack"),
        ),
    )


def asked_doors_alike(rows: str, count: int, box: str) -> AskedBack:
    """Ask a person whether several doors of one row on one box hang side by side."""
    return AskedBack(
        f"{count} doors alike on box '{box}' ({rows}): how do they hang?",
        (
            ("two and two side by side, a pair before one opening", "doors_alike=pair"),
            ("one above the other", "doors_alike=stack"),
        ),
    )


def asked_hand(rows: str, text: str) -> AskedBack:
    """Ask a person what a note says of a door's hand."""
    key = f"hands.{typed_key(text)}"
    return AskedBack(
        f"'{text}' ({rows}): on which side are the hinges, as you face the door?",
        (
            ("left", f"{key}=left"),
            ("right", f"{key}=right"),
            ("it does not say", f"{key}=nothing"),
        ),
    )


def asked_rows(box: str, words: str, stacks: Mapping[str, str]) -> AskedBack:
    """Ask a person which end of a box its first row is; `stacks`: the box from the top by each
    answer."""
    return AskedBack(
        f"Box {box}: {words}. Which is right, from the top?",
        tuple((stack, f"rows.{box}={way}") for way, stack in stacks.items()),
    )


def asked_thousands(text: str) -> AskedBack:
    """Ask a person what a sign before three digits is."""
    sign, other = ("comma", "point") if "," in text else ("point", "comma")
    return AskedBack(
        f"'{shorten(text)}': what is the {sign} in it?",
        (
            ("it parts thousands", f"thousands={sign}"),
            ("it is a decimal's", f"thousands={other}"),
        ),
    )


def asked_merged_count(row: str, text: str) -> AskedBack:
    """Ask a person what a count is of that stands in one cell for several rows."""
    return AskedBack(
        f"The count '{shorten(text)}' ({row}) stands in one merged cell: whose is it?",
        (("that of each of its rows", "merged_count=each"),),
    )


def asked_apart(rows: str, box: str) -> AskedBack:
    """Ask a person whether rows between which another box stands are of one box."""
    return AskedBack(
        f"Rows of another box stand between those of box '{box}' ({rows}): is it one box?",
        (("yes, one box, its fronts in this order", "apart=one-box"),),
    )


def asked_dropped(rows: Mapping[int, str]) -> AskedBack:
    """Ask a person whether rows are ordered that are crossed out, optional or cancelled; `rows`:
    each with what says so."""
    said = ", ".join(f"row {number} ({words})" for number, words in rows.items())
    return AskedBack(
        f"{said}: {'is this front' if len(rows) == 1 else 'are these fronts'} ordered?",
        (
            ("no: leave such rows alone", ",".join(f"row.{n}={NOTHING}" for n in rows)),
            ("yes: read them as the others", ",".join(f"row.{n}=front" for n in rows)),
        ),
    )


def asked_titles(rows: str, text: str) -> AskedBack:
    """Ask a person whether rows of one word name the boxes of the rows below them."""
    return AskedBack(
        f"No column says on which box a front hangs. Does '{text}' ({rows}) name the box of the "
        "rows below it?",
        (
            ("yes: they hang on it, from its top down", "titles=boxes"),
            ("no: each front has a box of its own", f"titles={NOTHING}"),
        ),
    )


def asked_hand_columns(left: ListHeading, right: ListHeading) -> AskedBack:
    """Ask a person whether two columns say which way doors hang."""
    at = column_letter(left.place), column_letter(right.place)
    return AskedBack(
        f"Columns {at[0]} '{left.text}' and {at[1]} '{right.text}': do they say how doors hang?",
        (
            ("yes: how many hang left, how many right", f"left={at[0]},right={at[1]}"),
            ("no: leave them alone", f"{NOTHING}={at[0]},{NOTHING}={at[1]}"),
        ),
    )
