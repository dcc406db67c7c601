"""The drilled faces of a part, its stations with their lines, its sheet."""

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from jigs.bench.station import Offset, Row, Station
from jigs.bench.tracked import Tracked
from jigs.ground.geometry import SLACK, Fitting, Hole
from jigs.ground.grouped import grouped
from jigs.ground.lengths import Unit, format_length
from templates.faces.faceview import FaceView
from templates.scan.facepicture import (
    across,
    distance_words,
    face_picture,
    up,
)
from templates.scan.frame import section
from templates.scan.host import Host
from templates.scan.markup import Html, tag
from templates.scan.scan import Scan
from templates.words.facewords import drilled_words, seen_words
from templates.words.holewords import HOLE_WORDS, bore_words, operations
from templates.words.markingwords import marks_words
from templates.words.pagewords import counted_from
from templates.words.rowwords import open_names, sum_words
from templates.words.saying import finding_name
from templates.words.sidewords import used_words
from templates.words.stationwords import station_title
from templates.words.stepwords import lines_words
from templates.words.textlines import counted
from templates.words.wording import board_words

Own = tuple[Fitting, Hole]
"""A hole with the fitting that it is of."""


def drilled(scan: Scan, part: Tracked, host: Host) -> Html | None:
    """Show the drilled faces with their holes, the stations, the link to the sheet."""
    views = scan.views(part.id)
    rows = [(station, row) for station, row in scan.rows(part.id) if not (part.held and row.held)]
    if not views and not rows:
        return None
    unit = scan.layout.job.shown
    links = (
        ("Its stations at full scale (PDF)", host.stations if any(row.settings for _, row in rows)
         else None),
        ("Its sheet at full scale (PDF)", host.sheet if views else None),
    )  # fmt: skip
    return section(
        "Holes",
        *(_face(view, unit) for view in views),
        tag("h3", "Stations") if rows else None,
        tag("ul", *(_at_station(station, row, unit) for station, row in rows), class_="stations")
        if rows
        else None,
        *(
            tag("p", tag("a", words, href=address(part.id), class_="sheet"))
            for words, address in links
            if address is not None
        ),
    )


def _face(view: FaceView, unit: Unit) -> Html:
    """Show a face: its picture, what is bored, every hole as a row of a table."""
    name = drilled_words(view)
    holes = [(fitting, hole) for fitting in view.fittings for hole in fitting.holes]
    table = tag(
        "details",
        tag("summary", f"{counted(len(holes), 'hole')} as a table"),
        tag(
            "table",
            tag("tr", tag("th", "across", scope="col"), tag("th", "height", scope="col")),
            *(_group(view, words, of_it, unit) for words, of_it in _alike(view, holes).items()),
        ),
    )
    alt = f"{name}: its holes with their distances; the table below has them all."
    return tag(
        "div",
        tag("h3", f"DRILL THIS FACE: {name}"),
        tag("p", seen_words(view)),
        face_picture(view, unit, alt),
        tag("p", counted_from(view), class_="small"),
        *(tag("p", text) for text in operations(tuple(hole for _, hole in holes), view.thickness)),
        tag("p", marks_words(view.marks)) if view.marks is not None else None,
        table if holes else None,
        class_="face",
    )  # fmt: skip


def _alike(
    view: FaceView, holes: Sequence[tuple[Fitting, Hole]]
) -> Mapping[str, Sequence[tuple[Fitting, Hole]]]:
    """Put the holes together that are bored alike for one part, under what is said of them."""
    return grouped(
        (
            f"{HOLE_WORDS[hole.purpose].name}"
            f"{f' for {fitting.part}' if fitting.part not in (None, view.part) else ''}: "
            f"{bore_words(hole, view.thickness)}",
            (fitting, hole),
        )
        for fitting, hole in holes
    )


def _group(view: FaceView, words: str, holes: Sequence[Own], unit: Unit) -> Html:
    """Show holes that are bored alike, each with its two distances."""
    rows = (
        tag("tr", tag("td", distance_words(across(view, hole.x), unit)),
            tag("td", distance_words(up(view, hole.y, fitting), unit)))
        for fitting, hole in holes
    )  # fmt: skip
    return tag("tbody", tag("tr", tag("th", words, colspan=2, scope="rowgroup")), *rows)


def _at_station(station: Station, row: Row, unit: Unit) -> Html:
    """Say what is done with a part at a station: its card, its lines, the sums that close."""
    served = f" for {row.serves}" if row.serves and row.serves != row.part.id else ""
    board = row.part.board
    face = f", {board_words(board.side, board.partition)}" if board and board.partition else ""
    name = tag("b", f"{station_title(station)}{face}{served}")
    if row.held:
        why = ", ".join(finding_name(problem) for problem in row.held)
        return tag("li", name, f": to come, {row.serves} is held: {why}.")
    if row.bored:
        return tag("li", name, ": bored already, through the partition.")
    sums = [*dict.fromkeys(map(sum_words, row.closing))]
    said = [*_settings(station, row, unit), *sums]
    if row.spacer is not None and row.spacer.above_panel > SLACK:
        high = format_length(row.spacer.above_panel, unit)
        said.append(f"spacer {high} over the bottom panel")
    if row.open:
        said.append(open_names(row.open))
    return tag("li", name, f": {'; '.join(filter(None, said))}")


def _settings(station: Station, row: Row, unit: Unit) -> list[str]:
    """Name the cards with the lines that they are set on; each line with its own where they are
    not the same on all."""
    board = row.part.board
    on_line: dict[Offset | None, dict[str, None]] = {}
    for setting in row.settings:
        turned = " TURNED" if setting.turned else ""
        used = used_words(station.card(setting.card), setting, board.side) if board else ""
        on_line.setdefault(setting.y, {})[f"card {setting.card}{turned}{used}"] = None
    ways = grouped((" and ".join(cards), place) for place, cards in on_line.items())
    lines = {
        cards: lines_words(
            [replace(row, settings=tuple(s for s in row.settings if s.y in places))], unit
        )
        for cards, places in ways.items()
    }
    if len(lines) == 1:
        return [text for each in lines.items() for text in each]
    return [f"{where}: {cards}" if where else cards for cards, where in lines.items()]
