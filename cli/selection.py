"""The parts that --only names: found in the job, and what the check says of them alone."""

from collections.abc import Collection, Iterable
from typing import TYPE_CHECKING

import click
from msgspec.structs import replace

from cli.failures import Failure

if TYPE_CHECKING:
    from jigs.box.parts import Layout


def select(
    layout: "Layout", names: Iterable[str], more: Iterable[str] = (), *, what: str = ""
) -> frozenset[str] | None:
    """Give the names of --only in capitals, as the job writes them; None for no choice at all.

    Unknown ones are wrong usage; the message has all of them, each with the nearest. `more`:
    further names that a command knows; `what`: what they are of.
    """
    known = {**known_names(layout), **dict.fromkeys(more)}
    given = dict.fromkeys(name.strip() for name in names)
    if unknown := [name for name in given if name.upper() not in known]:
        kinds = f"part, box, wall or {what}" if what else "part, box or wall"
        said = [unknown_name(name, tuple(known), kinds) for name in unknown]
        raise click.BadParameter("\n".join(said), param_hint="'--only'")
    return frozenset(name.upper() for name in given) or None


def known_names(layout: "Layout") -> dict[str, None]:
    """Give the names of a job's boxes, walls, fronts, drawer boxes, sides and rollouts, in order
    and in capitals."""
    known: dict[str, None] = {}
    for box in layout.boxes:
        known |= dict.fromkeys([box.id, *([box.wall.upper()] if box.wall else [])])
    for front in layout.fronts:
        known[front.id] = None
        if front.drawer is not None:
            known[front.drawer.id] = None
    known |= dict.fromkeys(side.board for side in layout.sides)
    return known | dict.fromkeys(rollout.id for rollout in layout.rollouts)


def select_first(layout: "Layout") -> frozenset[str]:
    """Give the parts that are tried on scrap; a job without any is told so."""
    from jigs.bench.firstarticle import first_articles

    names = frozenset(name for article in first_articles(layout) for name in article.names)
    if not names:
        raise Failure("Nothing to try: no door on a hinge and no drawer on a slide is ready.")
    return names


def narrow(layout: "Layout", only: Collection[str] | None) -> "Layout":
    """Give the layout with the fronts, sides and findings of the chosen parts alone.

    A drawer box stands and falls with its front, a rollout by itself; a side is concerned by
    those whose holes it still lacks. What is said of the whole job concerns every part.
    """
    if only is None:
        return layout
    boxes = {box.id for box in layout.boxes if {box.id, box.wall.upper()} & set(only)}
    sides = [side for side in layout.sides if side.board in only or side.box in boxes]
    lacking = {front for side in sides for front in side.missing}
    fronts = [
        front
        for front in layout.fronts
        if front.box in boxes
        or front.id in lacking
        or front.id in only
        or (front.drawer is not None and front.drawer.id in only)
    ]
    rollouts = [
        rollout
        for rollout in layout.rollouts
        if rollout.box in boxes or rollout.id in lacking or rollout.id in only
    ]
    parts = {*only, *boxes, *(side.board for side in sides), *(front.id for front in fronts)}
    parts |= {front.drawer.id for front in fronts if front.drawer is not None}
    parts |= {rollout.id for rollout in rollouts}
    return replace(
        layout,
        rollouts=tuple(rollouts),
        fronts=tuple(fronts),
        sides=tuple(sides),
        problems=tuple(
            problem
            for problem in layout.problems
            if problem.part is None or parts & {problem.part, *problem.also}
        ),
    )


def boxes_with(layout: "Layout", chosen: "Layout", only: Collection[str]) -> frozenset[str]:
    """Give the boxes that were chosen, or of which a part was; `chosen`: the narrowed layout."""
    boxes = {front.box for front in chosen.fronts} | {side.box for side in chosen.sides}
    return frozenset(
        boxes | {box.id for box in layout.boxes if {box.id, box.wall.upper()} & set(only)}
    )


def nothing_drawn(chosen: "Layout") -> str:
    """Say why none of the chosen parts has a sheet; `chosen` is the narrowed layout."""
    held = [part.id for part in chosen.units if part.withheld]
    bare = [part.id for part in chosen.units if not part.withheld]
    bare += [side.board for side in chosen.sides]
    said = []
    if held:
        said.append(f"{', '.join(held)} {'is' if len(held) == 1 else 'are'} held back")
    if bare:
        said.append(f"{', '.join(bare)} {'has' if len(bare) == 1 else 'have'} no holes")
    if chosen.rollouts and not chosen.sides:
        said.append("the slides of rollouts are on the sheets of their box's sides")
    return f"Nothing to draw: {'; '.join(said)}. No file is written."


def unknown_name(name: str, known: tuple[str, ...], kinds: str) -> str:
    """Say that nothing of some kinds is called so, with the nearest names that are known."""
    from difflib import get_close_matches

    near = get_close_matches(name.upper(), known, n=4, cutoff=0.5)
    if near:
        return f"no {kinds} is called {name!r}; the nearest: {', '.join(near)}."
    boxes = ", ".join(known[:12])
    return f"no {kinds} is called {name!r}; there are {boxes} ..."
