"""What the rows of the table are written with. Unless a row says otherwise: millimetres; boxes of
457.2 x 774.7 x 584.2; sides 18.3, fronts 19.05, back 6, band 0.6, drawer sides 15.9; reveals 1.6
(3.2 at the top), 3.2 between fronts; a hinge of constant 15, tab 5, plates of 0 and 3 at hand; an
undermount slide; pulls of 160; all of it confirmed.
"""

from dataclasses import dataclass

from tests.jobtexts import HEAD
from tests.mistakes.made import Expect

LEFT = 'kind = "door"\nhinged = "left"'
RIGHT = 'kind = "door"\nhinged = "right"'
DRAWER = 'kind = "drawer"'
TOP = 'kind = "drawer"\nheight = 152.4'
PAIR = 'kind = "pair"'
PANEL = 'kind = "panel"\nwidth = 594\nreveal_bottom = 97'
TWO = "columns = [{share = 1}, {share = 1}]"
BUILT = "built = true\nmeasured_height = [774.7, 774.7]"
TRUE = f"{BUILT}\nmeasured_width = [457.2, 457.2]"
BARE = 'schema = 1\nname = "Bare"\nunits = "mm"\n'
"""A job that says nothing of its boards, gaps and hardware."""
INCHES = """\
schema = 1
name = "Quayside"
units = "in"
[material]
side = "18.3 mm"
band = 0.6
[[box]]
id = "B1"
kind = "base"
width = "18"
height = "30 1/2"
depth = "23"
[[box.front]]
kind = "door"
hinged = "left"
"""
HALF = """
[hinge.half]
like = "cup35-half"
constant = 5.5
plates = [0, 3]
cup_depth = 13
fixing_spacing = 45
fixing_inboard = 9.5
confirmed = "measured"
"""
BACK_TO_BACK = (f'{RIGHT}\nhinge = "half"', f'{LEFT}\ncolumn = 2\nhinge = "half"')
"""Two doors that hang on both faces of one partition."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mistake:
    """One of the 25 by its number, the variant that is planted, and what must come of it."""

    number: int
    variant: str
    job: str
    expect: tuple[Expect, ...]
    delivered: str = ""
    file: str = "job.toml"


def planted(number: int, variant: str, job: str, *expect: Expect, delivered: str = "") -> Mistake:
    """Plant a variant in a job file, or in the list of what came."""
    return Mistake(number=number, variant=variant, job=job, expect=expect, delivered=delivered)


def wall(*lines: str, name: str = "north") -> str:
    """Write a wall."""
    return "\n".join(["[[wall]]", f'name = "{name}"', *lines, ""])


def open_record(name: str) -> str:
    """Give the head with one record's word `confirmed` taken out."""
    before, table, rest = HEAD.partition(f"[{name}]")
    return before + table + rest.replace('confirmed = "measured"\n', "", 1)
