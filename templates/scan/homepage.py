"""The home page: how far the job is, what is wrong, lists of what comes next, all walls."""

from collections.abc import Iterator, Mapping, Sequence

from jigs.bench.agenda import due
from jigs.bench.standing import Standing
from jigs.bench.tracked import Tracked
from jigs.box.bypart import open_in
from templates.scan.frame import Banner, banner, section, whole_page
from templates.scan.host import Host
from templates.scan.markup import Html, join, tag
from templates.scan.scan import Scan
from templates.scan.wallpicture import WallPicture
from templates.words.findings import Finding, merge_findings
from templates.words.pagewords import kind_words, open_counts
from templates.words.sentence import closed
from templates.words.stepwords import list_title, step_done, step_order
from templates.words.textlines import counted
from templates.words.wallwords import wall_title

UNNAMED = "A kitchen"
"""What a job without a name is called."""
ALL_DONE = "done"
"""The list of what has no step left is asked for by this."""
GONE = "gone"
"""And that of what the job has no more."""


def home_page(
    scan: Scan,
    standings: Mapping[str, Standing],
    host: Host,
    search: str = "",
    chosen: str = "",
) -> str:
    """Make the home page; `search`: part of an ID, `chosen`: the key of a list, "" for neither."""
    title = scan.layout.job.name or UNNAMED
    return whole_page(title, home_body(scan, standings, host, search, chosen), host)


def home_body(
    scan: Scan, standings: Mapping[str, Standing], host: Host, search: str = "", chosen: str = ""
) -> Html:
    """Make what stands on the home page."""
    lists = _lists(standings)
    return join(
        (
            tag("h1", scan.layout.job.name or UNNAMED),
            tag("p", scan.layout.echo) if scan.layout.echo else None,
            _found(scan, standings, host, search) if search else None,
            _list(scan, standings, host, *lists[chosen]) if chosen in lists else None,
            *(() if host.book else (_progress(scan, standings), _all_lists(lists, host))),
            _problems(scan, host),
            *(_wall(scan, wall, standings, host) for wall in scan.walls),
            tag("p", tag("a", "The walls to print (PDF)", href=host.drawings, class_="sheet"))
            if host.drawings
            else None,
        )
    )


def _found(scan: Scan, standings: Mapping[str, Standing], host: Host, search: str) -> Html:
    """List the parts whose ID has what was typed, what begins with it first."""
    typed = search.strip().upper()
    found = [name for name in standings if typed in name.upper()]
    found.sort(key=lambda name: not name.upper().startswith(typed))
    title = f"{counted(len(found), 'part')} with {typed}"
    return section(title, _listed(scan, standings, host, found))


PartList = tuple[str, Sequence[str], Sequence[str]]
"""A list's title, the parts of it that are ready, and those that wait for others."""


def _lists(standings: Mapping[str, Standing]) -> dict[str, PartList]:
    """Put the parts into lists by their next step, in the order of the work; then what is done,
    and what the job has no more."""
    found: dict[str, PartList] = {
        each.key: (list_title(each.step), each.ready, each.waiting)
        for each in due(standings.values())
    }
    gone = [name for name, standing in standings.items() if standing.vanished]
    done = [
        name
        for name, standing in standings.items()
        if standing.steps and standing.next is None and not standing.vanished
    ]
    for key, title, parts in ((ALL_DONE, "Done", done), (GONE, "Not in the job any more", gone)):
        if parts:
            found[key] = (title, parts, ())
    return found


def _all_lists(lists: Mapping[str, PartList], host: Host) -> Html:
    """Link to every list, with how much is ready and how much waits."""
    lines = []
    for key, (title, ready, waiting) in lists.items():
        more = f", {len(waiting)} wait" if waiting else ""
        link = tag("a", tag("b", title), f" {len(ready)}{more}", href=f"{host.home}?list={key}")
        lines.append(tag("li", link))
    return section("Lists", tag("ul", *lines, class_="lists"), kind="nav")


def _list(
    scan: Scan,
    standings: Mapping[str, Standing],
    host: Host,
    title: str,
    ready: Sequence[str],
    waiting: Sequence[str],
) -> Html:
    """Show one list: what is ready first, then what waits."""
    waits = None
    if waiting:
        waits = join((tag("h3", "These wait"), _listed(scan, standings, host, waiting)))
    return section(f"{title}: {len(ready)} ready", _listed(scan, standings, host, ready), waits)


def _listed(
    scan: Scan, standings: Mapping[str, Standing], host: Host, names: Sequence[str]
) -> Html:
    """List parts, each with what it is and its next step."""
    unit = scan.layout.job.shown
    lines = []
    for name in names:
        part, standing = scan.parts.get(name), standings[name]
        said = kind_words(part) if part is not None else "not in the job any more"
        if part is not None and part.held:
            said += ", HOLD"
        elif standing.next is not None:
            said += f". {step_order(standing.next, scan.rows(name), unit)}"
        lines.append(tag("li", tag("a", tag("b", name), f" {said}", href=host.href(name))))
    return tag("ul", *lines, class_="lists") if lines else tag("p", "None.")


def _progress(scan: Scan, standings: Mapping[str, Standing]) -> Html:
    """Show how much of all is done: steps, and fronts at their place."""
    known = [standing for standing in standings.values() if not standing.vanished]
    steps = sum(len(standing.steps) for standing in known)
    done = _done(known)
    fronts = [
        standing
        for standing in known
        if (part := scan.parts.get(standing.part)) is not None and part.drawer is None
        and part.front is not None
    ]  # fmt: skip
    hung = sum(bool({"hung", "fitted"} & standing.done) for standing in fronts)
    of_fronts = f"{hung} of {counted(len(fronts), 'front')} at their place"
    return section(
        "Progress",
        tag("p", f"{done} of {counted(steps, 'step')} done; {of_fronts}."),
        tag("progress", value=done, max=max(steps, 1), aria_label="Steps done"),
    )


def _done(standings: Sequence[Standing]) -> int:
    return sum(step.key in standing.done for standing in standings for step in standing.steps)


def _problems(scan: Scan, host: Host) -> Html | None:
    """Say what is held back, what is open, and what else the check found."""
    findings = merge_findings(scan.layout.problems, scan.layout.job.shown)
    errors = [finding for finding in findings if finding.level == "error"]
    others = [finding for finding in findings if finding.level != "error"]
    numbers = open_in(scan.layout)
    if not findings and not numbers:
        return None
    more = None
    if others:
        more = tag(
            "details",
            tag("summary", f"{counted(len(others), 'warning')} of the check"),
            *(_finding(each, Banner.LOOK, scan, host) for each in others),
        )
    return section(
        "Problems",
        *(_finding(each, Banner.HOLD, scan, host) for each in errors),
        banner(Banner.OPEN, open_counts(numbers), "") if numbers else None,
        more,
    )


def _finding(finding: Finding, kind: Banner, scan: Scan, host: Host) -> Html:
    """Show a finding with links to its parts."""
    fact = list[Html | str]()
    for name in finding.parts:
        fact += [tag("a", name, href=host.href(name)) if name in scan.parts else name, " "]
    words = join((*fact, closed(finding.text)))
    return banner(kind, words, closed(finding.remedy))


def _wall(scan: Scan, wall: WallPicture, standings: Mapping[str, Standing], host: Host) -> Html:
    """Show a wall: its picture, and box by box its parts."""
    name = wall.elevation.wall
    title = wall_title(name) if wall.elevation.placed else "Boxes that stand nowhere yet"
    boxes = {seen.box.id for seen in wall.elevation.boxes}
    here = [part for part in scan.tracked if boxes & set(part.boxes)]
    alone = [part for part in here if len(part.boxes) == 1]
    own = [part for part in here if len(part.boxes) > 1]
    alt = f"{title}: {', '.join(seen.box.id for seen in wall.elevation.boxes)}, from the left"
    groups = [
        (f"{seen.box.id}, {seen.box.kind} box", [p for p in alone if p.boxes == (seen.box.id,)])
        for seen in wall.elevation.boxes
    ]
    groups.append(("Along the wall", own))
    return section(
        title,
        *wall.pictures(alt, shared=host.book),
        *(_box(words, parts, standings, host) for words, parts in groups if parts),
    )


def _box(
    words: str, parts: Sequence[Tracked], standings: Mapping[str, Standing], host: Host
) -> Html:
    """Show the parts of a box, folded up, with how far they are."""
    said = f"{words}: {counted(len(parts), 'part')}"
    if not host.book:
        known = [standings[part.id] for part in parts if part.id in standings]
        said += f", {_done(known)} of {sum(len(each.steps) for each in known)} steps done"
    return tag(
        "details",
        tag("summary", said),
        tag("ul", *_chips(parts, standings, host), class_="chips"),
        data_find=True,
    )


def _chips(
    parts: Sequence[Tracked], standings: Mapping[str, Standing], host: Host
) -> Iterator[Html]:
    for part in parts:
        word = ""
        if part.held:
            word = " HOLD"
        elif not host.book and (standing := standings.get(part.id)) and standing.last is not None:
            word = f" {step_done(standing.last)}"
        yield tag("li", tag("a", part.id, href=host.href(part.id)), word)
