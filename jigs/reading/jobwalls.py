"""The walls in the job file: `[[wall]]`, what stands at both ends of a run of boxes.

`id` begins the names of the wall's pieces. `left` and `right` say what stands there; `left_filler`
how wide the filler before the first box is, `left_reach` how far a handle or a casing reaches
out, `left_meets` which wall is round the corner; the same for `right`. An appliance
(`[[wall.appliance]]`) stands or hangs between the boxes: it has an ID of its own, and stands at `x`
along the wall or `after` a box or an earlier appliance of that wall.
"""

from collections.abc import Iterable, Sequence

from msgspec.structs import replace

from jigs.given.ids import check_id
from jigs.given.job import BoxSpec
from jigs.given.wallspec import END_KINDS, Appliance, WallEnd, WallSpec
from jigs.ground.believable import Range
from jigs.ground.errors import JigsheetError
from jigs.ground.geometry import HANDS, Hand, other_hand
from jigs.ground.nearest import suggest
from jigs.reading.fieldkeys import read_keys, read_over
from jigs.reading.tomltables import TomlTable

FILLER = Range(3, 500, zero=True)
"""How wide a filler is."""
REACHES = Range(3, 900)
"""How far a casing, a panel or a handle reaches out."""
LONGEST_ID = 6
"""Characters of a wall's own ID: what its pieces are called comes behind it."""


def read_walls(job: TomlTable, boxes: Iterable[BoxSpec]) -> tuple[WallSpec, ...]:
    """Read the `[[wall]]` tables of a job whose boxes these are."""
    boxes = tuple(boxes)
    standing = list(dict.fromkeys(box.wall for box in boxes))
    taken = [box.id for box in boxes]
    fronts = [front.id for box in boxes for front in box.fronts if front.id]
    rows: list[tuple[TomlTable, WallSpec]] = []
    for table in job.tables("wall"):
        table.require("name")
        name = table.text("name")
        ends = WallSpec(
            name=name or "", id=_read_id(table, fronts, [*taken, *(w.id for _, w in rows)]),
            left=_read_end(table, "left"), right=_read_end(table, "right"),
        )  # fmt: skip
        wall = _read_room(table, ends, [box.id for box in boxes if box.wall == name], taken)
        taken += [appliance.id for appliance in wall.appliances]
        if name is not None and name in [other.name for _, other in rows]:
            table.note("name", f"duplicate wall ('{name[:40]}' given); write each wall once")
        table.close()
        rows.append((table, wall))
    walls = [wall.name for _, wall in rows if wall.name]
    if not {*standing} <= {*walls, ""}:
        # Where a box stands on a wall that nobody names, that name is the slip, and is told.
        standing = list(dict.fromkeys([*walls, *standing]))
    for table, wall in rows:
        if wall.name and wall.name not in standing:
            table.note(
                "name",
                f"no box stands on it ('{wall.name[:40]}' given); {_which(wall.name, standing)}",
            )
    for table, wall in rows:
        for hand in HANDS:
            _check_corner(table, wall, hand, standing, [other for _, other in rows])
    _check_standing(job, boxes, walls)
    return tuple(wall for _, wall in rows)


def _read_room(
    table: TomlTable, wall: WallSpec, boxes: Sequence[str], taken: Sequence[str]
) -> WallSpec:
    """Read a wall's own sizes and its appliances. `boxes`: the IDs of its boxes; `taken`: all IDs
    of boxes and appliances so far."""
    wall = read_over(table, wall)
    counter, thickness = wall.counter, wall.counter_thickness
    if "counter_thickness" in table and "counter" not in table:
        table.note("counter_thickness", "stands without counter, its top above the floor")
    if counter is not None and thickness is not None and thickness >= counter:
        table.note(
            "counter_thickness",
            f"as thick as the counter is high ({table.given('counter')}), or thicker "
            f"({table.given('counter_thickness')} given); counter is the height of its top",
        )
    found: list[Appliance] = []
    for row in table.tables("appliance"):
        known = [*boxes, *(appliance.id for appliance in found)]
        read = _read_appliance(row, known, [*taken, *(appliance.id for appliance in found)])
        if read is not None:
            found.append(read)
    return replace(wall, appliances=tuple(found))


def _read_appliance(
    table: TomlTable, known: Sequence[str], taken: Sequence[str]
) -> Appliance | None:
    """Read one appliance; None where a size of it is missing or wrong."""
    table.require("id", "width", "height")
    name, after = table.part_id("id"), table.part_id("after")
    given = read_keys(table, Appliance)
    if name is not None and name in taken:
        table.note(
            "id", f"taken already ('{name[:40]}' given); every box and appliance has its own"
        )
    if "x" in table and "after" in table:
        table.note("after", "stands beside x; one of the two says where it stands")
    elif "x" not in table and "after" not in table:
        table.note(
            "id", "neither x nor after; say where it stands: x along the wall, or after which box"
        )
    elif after is not None and after not in known:
        near = suggest(after, known) if known else "no box stands on this wall"
        table.note(
            "after", f"no box of this wall, and no appliance above ('{after[:40]}' given); {near}"
        )
    table.close()
    if not name or not {"width", "height"} <= given.keys():
        return None
    return Appliance(id=name, after=after, **given)


def _check_standing(job: TomlTable, boxes: Sequence[BoxSpec], walls: Sequence[str]) -> None:
    """Note a box on a wall that no `[[wall]]` names, where there are any: a slip of its name would
    leave it without neighbours, fillers and ceiling."""
    for place, box in enumerate(boxes, start=1):
        if walls and box.wall and box.wall not in walls:
            job.book.note(
                ("box", place, "wall"),
                f"no [[wall]] has that name ('{box.wall[:40]}' given); {suggest(box.wall, walls)} "
                "write [[wall]] for each wall, or for none",
            )


def _read_id(table: TomlTable, fronts: Sequence[str], taken: Sequence[str]) -> str:
    """Read a wall's own ID, "" where none is given, or a wrong one."""
    text = table.text("id")
    if text is None:
        return ""
    try:
        name = check_id(text)
    except JigsheetError:
        name = ""
    if not name.strip("-") or name != name.strip("-") or len(name) > LONGEST_ID:
        table.note(
            "id",
            f"not the ID of a wall ({text[:40]!r} given); A-Z, 0-9 and - between them are "
            f"allowed, at most {LONGEST_ID} characters",
        )
        return ""
    if name in (*taken, *fronts):
        table.note(
            "id",
            f"taken already ('{name}' given); every wall, box, front and appliance has its own",
        )
        return ""
    return name


def _which(wanted: str, standing: Sequence[str]) -> str:
    named = [name for name in standing if name]
    if not named:
        return 'say at each box on which it stands: wall = "north"'
    return suggest(wanted, named)


def _read_end(table: TomlTable, hand: Hand) -> WallEnd:
    """Read one end of a wall."""
    stands = table.choice(hand, END_KINDS)
    filler = table.length(f"{hand}_filler", FILLER)
    reach = table.length(f"{hand}_reach", REACHES)
    meets = table.text(f"{hand}_meets")
    if hand not in table:
        for key in (f"{hand}_filler", f"{hand}_reach", f"{hand}_meets"):
            if key in table:
                allowed = ", ".join(END_KINDS)
                table.note(key, f"stands without {hand}; say what stands there: {allowed}")
    elif stands == "open":
        for key in (f"{hand}_filler", f"{hand}_reach"):
            if key in table:
                table.note(key, f'stands beside {hand} = "open", where nothing stands')
    if stands not in (None, "corner") and f"{hand}_meets" in table:
        table.note(f"{hand}_meets", f'is for {hand} = "corner" alone')
    if stands == "corner" and f"{hand}_meets" not in table and f"{hand}_reach" not in table:
        table.note(
            hand,
            f"a corner says what stands opposite: {hand}_meets, the other wall, or {hand}_reach, "
            "how far its pulls or handles stand out",
        )
    return WallEnd(stands=stands, filler=filler or 0.0, reach=reach, meets=meets)


def _check_corner(
    table: TomlTable, wall: WallSpec, hand: Hand, standing: Sequence[str], walls: Sequence[WallSpec]
) -> None:
    """Note a corner with a wall that is not there, or that says something else of it."""
    meets, key = wall.end(hand).meets, f"{hand}_meets"
    if meets is None:
        return
    if meets == wall.name:
        table.note(key, f"the wall itself ('{meets[:40]}' given); a corner is of two walls")
        return
    if meets not in standing:
        others = [name for name in standing if name and name != wall.name]
        table.note(
            key, f"no box stands on that wall ('{meets[:40]}' given); {_which(meets, others)}"
        )
        return
    there = other_hand(hand)
    for other in walls:
        end = other.end(there)
        if other.name == meets and (
            end.stands not in (None, "corner") or end.meets not in (None, wall.name)
        ):
            said = f'{there}_meets = "{end.meets}"' if end.meets else f'{there} = "{end.stands}"'
            table.note(
                key,
                f"a {hand} end meets the {there} end of the other wall, seen from the room, and "
                f"wall '{meets[:40]}' says {said[:60]}; let both say the same",
            )
