"""What a front list does not say and nobody may guess: which column is which, which size comes
first, what an empty box cell means. Each is asked once for the whole list, with the words that
answer it: `--columns` for a list that stands alone, `[list]` for one that a job names.

>>> answer(("order", "width-first"), bare=True), answer(("height", "D"), bare=False)
('--columns order=width-first', 'columns = { height = "D" } in [list]')
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from jigs.given.job import FRONT_KINDS
from jigs.given.listspec import NOTHING, SETTINGS
from jigs.ground.errors import AskedBack
from jigs.reading.headings import LENGTH, LIST_COLUMNS, fold
from jigs.reading.listcolumns import Header, ListHeading, column_letter, shorten
from jigs.reading.listgiven import key_of, text_of

SIDES = ("width", "height")
ALIKE = ("note", "finish", "description")
"""Columns of which a second one is left alone: nothing is made by them."""
MOST_NAMED = 8
"""Rows that a sentence names."""


def answer(*pairs: tuple[str, str], bare: bool) -> str:
    """Write the words that answer a question."""
    if bare:
        said = ",".join(f"{key}={value}" for key, value in pairs)
        # Each shell would part a line or read a sign in it, were it not between quotes.
        return f"--columns {said}" if re.fullmatch(r"[\w.=-]+", said) else f'--columns "{said}"'
    settings = [f'{key} = "{value}"' for key, value in pairs if key in SETTINGS]
    columns: dict[str, list[str]] = {}
    for key, value in pairs:
        if key not in SETTINGS:
            columns.setdefault(key, []).append(f'"{value}"')
    if columns:
        stated = (
            f"{key} = {places[0]}" if len(places) == 1 else f"{key} = [{', '.join(places)}]"
            for key, places in columns.items()
        )
        settings.append(f"columns = {{ {', '.join(stated)} }}")
    return f"{', '.join(settings)} in [list]"


def answer_rows(rows: Iterable[int], meant: str, *, bare: bool) -> str:
    """Write the words that say what single rows are.

    >>> answer_rows([3], "nothing", bare=True), answer_rows([3, 9], "front", bare=False)
    ('--columns row.3=nothing', 'row = { 3 = "front", 9 = "front" } in [list]')
    """
    if bare:
        return answer(*((f"row.{number}", meant) for number in rows), bare=True)
    return f"row = {{ {', '.join(f'{number} = {text_of(meant)}' for number in rows)} }} in [list]"


def answer_kind(word: str, bare: bool) -> str:
    """Write the words that say which kind a word of the list means, or that it is no front."""
    return answer_word("kinds", word, "KIND", bare=bare)


def answer_word(table: str, word: str, meant: str, *, bare: bool) -> str:
    """Write the words that say what a word of the list means.

    >>> print(answer_word("kinds", "Door, upper", "pair", bare=True))
    --columns "kinds.'Door, upper'=pair"
    >>> print(answer_word("hands", '7" L', "left", bare=True))
    --columns "hands.7 inch L=left"
    """
    if bare:
        return answer((f"{table}.{typed_key(word)}", meant), bare=True)
    return f"{table} = {{ {text_of(word)} = {text_of(meant)} }} in [list]"


def typed_key(word: str) -> str:
    """Write a word of the list as the line has it, without the signs that shells read between
    double quotes; it is the same word, for a list is searched without them."""
    inches = re.sub("[\"”]|''", " inch ", word)
    plain = " ".join(re.sub(r"[“„‘’‚‛'`$\\!]", " ", inches).split())
    return key_of(plain if fold(plain) == fold(word) else word)


KINDS_ASKED: tuple[tuple[str, str], ...] = (
    ("a door", "door"),
    ("a double door, both leaves", "pair"),
    ("a drawer's front", "drawer"),
    ("a tall pull-out's front", "pullout"),
    ("a false front, that does not open", "false-front"),
    ("an appliance's panel", "panel"),
    ("a flap that goes up", "lift"),
    ("an opening, without a front", "opening"),
)
"""What a word for a front may mean, in words."""


def kinds_asked(words: str, key: str, *, nothing: bool) -> AskedBack:
    """Ask what a word of the list is, or what all are that do not say it."""
    choices = [(said, f"{key}={kind}") for said, kind in KINDS_ASKED]
    if nothing:
        choices.append(("no front: leave such rows alone", f"{key}={NOTHING}"))
    return AskedBack(words, tuple(choices))


def columns_asked(words: str, column: str, header: Header, leave: str = "") -> AskedBack:
    """Ask which of a list's columns is the one that is wanted; `leave`: what leaves it alone."""
    choices = [
        (f"{column_letter(place)} '{shorten(cell)}'", f"{column}={column_letter(place)}")
        for place, cell in enumerate(header.cells)
        if cell and not any(h.place == place and h.column in LIST_COLUMNS for h in header.headings)
    ]
    return AskedBack(words, (*choices, *([("none: leave it alone", leave)] if leave else [])))


def ask_columns(header: Header, bare: bool) -> Iterator[tuple[str | None, str, AskedBack]]:
    """Ask which column is which, where the headings do not say it: each question with the heading
    that it is of."""
    sized = header.find("size") is not None
    missing = [] if sized else [side for side in SIDES if header.find(side) is None]
    for other in header.unread:
        letter = column_letter(other.place)
        if other.twice and other.twice not in ALIKE:
            first = header.find(other.twice)
            assert first is not None, "an earlier heading is that column"
            yield (
                other.text,
                f"a second column for {other.twice} ('{other.text}' given, "
                f"'{first.text}' before it): which of them? "
                f"{answer((other.twice, column_letter(first.place)), bare=bare)} or "
                f"{answer((other.twice, letter), bare=bare)}",
                AskedBack(
                    f"Two columns may be the {other.twice}: which is it?",
                    tuple(
                        (f"{column_letter(at)} '{text}'", f"{other.twice}={column_letter(at)}")
                        for at, text in ((first.place, first.text), (other.place, other.text))
                    ),
                ),
            )
        elif _is_asked(other.like, header, sized) and other.like not in missing:
            yield (
                other.text,
                f"unknown column ('{other.text}' given); did you mean '{other.like}'? "
                f"{answer((other.like, letter), bare=bare)}, or "
                f"{answer((NOTHING, letter), bare=bare)}",
                AskedBack(
                    f"Is column {letter} '{other.text}' the {other.like}?",
                    (
                        ("yes", f"{other.like}={letter}"),
                        ("no: leave it alone", f"{NOTHING}={letter}"),
                    ),
                ),
            )
    length = header.find(LENGTH)
    if length and missing and bare:
        letter = column_letter(length.place)
        other_size = next((h for side in SIDES if (h := header.find(side))), None)
        beside = column_letter(other_size.place) if other_size else "D"
        yield (
            length.name,
            _ask_length(header, letter, length.name),
            AskedBack(
                f"Is '{length.name}' a front's height, as it hangs, or its width?",
                (
                    ("its height", f"width={beside},height={letter}"),
                    ("its width", f"width={letter},height={beside}"),
                ),
            ),
        )
        return
    for side in missing if bare else []:
        like = next((other for other in header.unread if other.like == side), None)
        free = [u for u in header.unread if not u.twice] if like is None else [like]
        said = ", ".join(f"'{u.text}' ({column_letter(u.place)})" for u in free[:MOST_NAMED])
        letter = column_letter(free[0].place) if free else "C"
        yield (
            None,
            f"no column '{side}'; a list without a job file gives every front's {side}"
            f"{' (of a pair: of one leaf)' if side == 'width' else ''}"
            f"{f'; is it {said}?' if said else '; where does it stand?'} "
            f"{answer((side, letter), bare=bare)}",
            columns_asked(f"Which column is the {side}?", side, header),
        )


def _is_asked(like: str, header: Header, sized: bool) -> bool:
    if not like or header.find(like) is not None or like not in LIST_COLUMNS:
        return False
    return not (sized and like in SIDES)


def _ask_length(header: Header, letter: str, name: str) -> str:
    """Ask which of a length and the size beside it is the height of a front as it hangs."""
    [*others] = [h for side in SIDES if (h := header.find(side))]
    other = column_letter(others[0].place) if others else "D"
    beside = f" beside '{others[0].name}' ({other})" if others else ""
    return (
        f"'{name}' ({letter}){beside}: is a length a front's height, as it hangs, or its "
        f"width? {answer(('width', other), ('height', letter), bare=True)} or "
        f"{answer(('width', letter), ('height', other), bare=True)}"
    )


def name_rows(numbers: Iterable[int]) -> str:
    """Name rows: `rows 5 to 7, 9`.

    >>> name_rows([5, 6, 7, 9]), name_rows([4])
    ('rows 5 to 7, 9', 'row 4')
    """
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    words = [f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs]
    more = f" and {len(words) - MOST_NAMED} more" if len(words) > MOST_NAMED else ""
    many = "rows" if sum(map(len, runs)) > 1 else "row"
    return f"{many} {', '.join(words[:MOST_NAMED])}{more}"


def ask_order(row: str, text: str, bare: bool) -> str:
    """Ask which of the sizes in a cell is the width."""
    return (
        f"which of '{shorten(text)}' ({row}) is the width? "
        f"{answer(('order', 'width-first'), bare=bare)} or order=height-first"
    )


def ask_box(rows: Sequence[int], above: str, bare: bool) -> str:
    """Ask what an empty box cell below a filled one means."""
    own = " or empty_box=own" if bare else ""
    each = "it" if len(rows) == 1 else "each"
    return (
        f"no box in {name_rows(rows)}, below a filled one: does {each} "
        f"hang on the box above ({name_rows(rows[:1])} on '{above}')"
        f"{', or on one of its own' if bare else ''}? "
        f"{answer(('empty_box', 'above'), bare=bare)}{own}"
    )


def ask_pairs(row: str, text: str, bare: bool) -> str:
    """Ask what the width and the count of a double door are of."""
    return (
        f"'{shorten(text)}' ({row}): is its width that of one leaf, or across both; and does its "
        f"count count pairs or leaves? {answer(('pairs', 'one-leaf'), bare=bare)}, "
        "pairs=both-leaves, or pairs=pieces for single leaves"
    )


ASKED_COLUMNS = {
    "count": "whole numbers", "hinged": "hands", "thickness": "sizes", "kind": "kinds",
    "pull side": "hands, as it seems of the handles, across from the hinges",
}  # fmt: skip
"""What stands in a column that may be this one."""


def ask_column(column: str, letter: str, some: Sequence[str], bare: bool) -> str:
    """Ask whether a column is what its cells look like."""
    return (
        f"unknown column ({letter}) of {ASKED_COLUMNS[column]} ({', '.join(some[:4])}): is it "
        f"'{column}'? {answer((column, letter), bare=bare)}, or "
        f"{answer((NOTHING, letter), bare=bare)}"
    )


def ask_doors_alike(rows: str, count: int, box: str, bare: bool) -> str:
    """Ask whether several doors of one row on one box hang side by side."""
    return (
        f"{count} doors alike on box '{box}' ({rows}): one above the other, or two and two side by "
        f"side? {answer(('doors_alike', 'stack'), bare=bare)} or doors_alike=pair; where each "
        "hangs on a box of its own, give each its row"
    )


def ask_hand(rows: str, text: str, bare: bool) -> str:
    """Ask whether a note that has a hand says on which side the hinges are."""
    left, right = (answer_word("hands", text, hand, bare=bare) for hand in ("left", "right"))
    return (
        f"no hand is said, but '{text}' has one ({rows}): are the hinges there? {left}, {right}, "
        "or nothing where it says something else"
    )


def ask_rows(box: str, words: str, more: Sequence[str], *, free: bool, bare: bool) -> str:
    """Ask whether the rows of a box stand from the top; `words` say what is strange in them, `free`
    whether one answer for the whole list settles it."""
    if bare:
        own = f"--columns rows.{box}=from-bottom turns them, rows.{box}=from-top keeps them"
        whole = ", rows=from-bottom or rows=from-top is for the whole list"
    else:
        own = f'box_rows = {{ "{box}" = "from-bottom" }} in [list] turns them, from-top keeps them'
        whole = ', rows = "from-bottom" or "from-top" is for the whole list'
    also = f"; box {', '.join(more[:MOST_NAMED])} too" if more else ""
    return f"{box}: {words}; meant so? {own}{whole if free else ''}{also}"


def ask_both_hands(rows: str, box: str, bare: bool) -> str:
    """Ask whether a left and a right door of one size on one box hang side by side."""
    return (
        f"a left and a right door of one size on box '{box}' ({rows}): side by side, or one above "
        f"the other? {answer(('both_hands', 'pair'), bare=bare)} or both_hands=stack"
    )


def ask_merged_count(row: str, text: str, bare: bool) -> str:
    """Ask what a count is of that stands in one cell for several rows."""
    return (
        f"the count '{shorten(text)}' ({row}) stands in one merged cell for several rows: is it "
        f"that of each of them? {answer(('merged_count', 'each'), bare=bare)}; if it is of all "
        "together, write each row's own count"
    )


def ask_apart(rows: str, box: str, others: Sequence[str], bare: bool) -> str:
    """Ask whether rows between which another box stands are of one box; `others`: boxes of which
    the same is asked."""
    more = f", and so with {', '.join(others[:MOST_NAMED])}" if others else ""
    return (
        f"rows of another box stand between those of box '{box}' ({rows}){more}: is it one box, "
        "its fronts from top to bottom in this order? "
        f"{answer(('apart', 'one-box'), bare=bare)}; if not, put its rows together from the top, "
        "or give a second box its own ID"
    )


def ask_dropped(rows: Mapping[int, str], bare: bool) -> str:
    """Ask whether rows are ordered that are crossed out, optional or cancelled; `rows`: each with
    what says so."""
    said = ", ".join(f"row {number} ({words})" for number, words in rows.items())
    left = answer_rows(rows, NOTHING, bare=bare)
    first = next(iter(rows))
    return (
        f"{said}: ordered, or not? {left} leaves {'it' if len(rows) == 1 else 'them'} alone, "
        f"{answer_rows([first], 'front', bare=bare)} reads row {first} as any other"
    )


def ask_titles(rows: str, text: str, bare: bool) -> str:
    """Ask whether rows of one word name the boxes of the rows below them."""
    return (
        f"no column says on which box a front hangs; does '{shorten(text)}' ({rows}) name that of "
        f"the rows below it? {answer(('titles', 'boxes'), bare=bare)}, or titles=nothing"
    )


def ask_hand_columns(left: ListHeading, right: ListHeading, bare: bool) -> str:
    """Ask whether two columns say which way doors hang, or how many each way."""
    at = column_letter(left.place), column_letter(right.place)
    return (
        f"columns '{left.text}' ({at[0]}) and '{right.text}' ({at[1]}): do they say which way "
        "doors hang, or how many hang left and how many right? "
        f"{answer(('left', at[0]), ('right', at[1]), bare=bare)}, or "
        f"{answer((NOTHING, at[0]), (NOTHING, at[1]), bare=bare)}"
    )


def ask_thousands(row: str, text: str, bare: bool) -> str:
    """Ask what a sign before three digits is."""
    sign, other = ("comma", "point") if "," in text else ("point", "comma")
    return (
        f"'{shorten(text)}' ({row}): does the {sign} part thousands? "
        f"{answer(('thousands', sign), bare=bare)}, or thousands={other} where it is a decimal's"
    )


assert {kind for _, kind in KINDS_ASKED} == {*FRONT_KINDS}
