"""What a card is set by: bands and flaps, index lines, the middle, the edge ladder.

White meets black exactly on a reference edge; a drawn line would be ambiguous by its own width.
"""

from jigs.ground.lengths import format_mm
from templates.cards.cardplan import SMALL, CardPlan, middle_lines
from templates.cards.flap import BAND, Lines, cross_out, draw_edge, flap_words
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.marks import Line, Outline, Text
from templates.page.space import Space
from templates.page.typeface import wrap
from templates.words.facewords import edge_words, index_words
from templates.words.wording import ASSEMBLED, HALF_WORDS, LADDER, LADDER_OF_SEVERAL


def draw_line(
    space: Space, plan: CardPlan, u1: float, v1: float, u2: float, v2: float, width: float = 0.18
) -> None:
    """Draw a line between two places given from the references, mm."""
    (x1, y1), (x2, y2) = plan.at(u1, v1), plan.at(u2, v2)
    space.add(Line(x1=x1, y1=y1, x2=x2, y2=y2, width=width))


def draw_references(space: Space, plan: CardPlan) -> None:
    """Draw the bands and flaps, or the words along an index line, and what else sets the card."""
    view = plan.view
    edge_x, edge_y = plan.across.kind == "edge", plan.up.kind == "edge"
    both_fold = edge_x and edge_y and not view.rounded and not view.state.stand
    if both_fold:
        (x1, y1), (x2, y2) = plan.at(-plan.flap, -plan.flap), plan.at(0.0, 0.0)
        cross_out(space, (min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)))
    if edge_x:
        low = -BAND if edge_y and not both_fold else 0.0
        run = plan.y(0.0), plan.y(plan.v_high)
        black = plan.y(low), run[1]
        draw_edge(space, plan.across, run, plan.flap, edge_flap(view, plan.across), black=black)
    if edge_y:
        run = plan.x(plan.u_low), plan.x(plan.u_high)
        black = (plan.x(0.0) if edge_x else run[0], run[1])
        draw_edge(space, plan.up, run, plan.flap, edge_flap(view, plan.up), black=black)
    if plan.up.kind == "index":
        lines = wrap(
            index_words(view, plan.up), 2.5, True, plan.u_high - plan.u_low - 4.0
            - (9.0 if plan.across.kind == "index" else 0.0)
        )  # fmt: skip
        centre = (plan.u_low + plan.u_high + (9.0 if plan.across.kind == "index" else 0.0)) / 2
        for row, text in enumerate(lines if plan.up.inward < 0 else reversed(lines)):
            base = plan.y(1.8 + row * SMALL) if plan.up.inward > 0 else plan.y(3.6 + row * SMALL)
            space.add(Text(x=plan.x(centre), y=base, text=text, bold=True, anchor="middle"))
    if plan.across.kind == "index" or plan.half:
        words = HALF_WORDS if plan.half else index_words(view, plan.across)
        low = 10.0 if plan.up.kind == "index" else 2.0
        lines = wrap(words, 2.5, True, plan.v_high - low - 2.0)
        centre_y = plan.y((low + plan.v_high) / 2)
        right = plan.x(1.0) > plan.x(0.0)
        if plan.half and plan.u1 < 0.0:
            right = not right
        for row, text in enumerate(lines if right else reversed(lines)):
            x = plan.x(0.0) + (3.8 + row * SMALL if right else -1.8 - row * SMALL)
            space.add(Text(x=x, y=centre_y, text=text, bold=True, anchor="middle", angle=90))
    if plan.across.kind == "middle" and not plan.half:
        _draw_diamonds(space, plan)
    if view.state.panel is not None and edge_y and plan.up.edge == "bottom":
        panel = view.state.panel
        panel_line(space, panel, (plan.x(0.3), plan.x(plan.u_high - 0.3)), plan.y(panel))


def edge_flap(view: FaceView, edge: Reference) -> tuple[Lines, ...]:
    """Say what is done with the paper beyond an edge of a face that sets a card."""
    stand = edge.edge == "bottom" and view.state.stand
    return flap_words(edge_words(view, edge.edge), view.rounded, stand=stand)


def _draw_diamonds(space: Space, plan: CardPlan) -> None:
    lines = middle_lines()
    row = plan.diamond_row() if plan.words_low else 10.0
    near, far = plan.gap_start - row / 2, plan.far_diamond
    if plan.up.kind == "index":
        near = plan.gap_start - 5.0
    for v in (near, far):
        centre = (plan.x(0.0), plan.y(v))
        space.add(
            Outline(
                points=(
                    (centre[0] - 4.0, centre[1]),
                    (centre[0], centre[1] - 4.0),
                    (centre[0] + 4.0, centre[1]),
                    (centre[0], centre[1] + 4.0),
                )
            )
        )
        draw_line(space, plan, 0.0, v - 3.2, 0.0, v + 3.2)
    top = plan.y(near if plan.words_low else far) + len(lines) * SMALL / 2 - 3.0
    for row, text in enumerate(lines):
        space.add(Text(x=plan.x(0.0) + 5.5, y=top - row * SMALL, text=text))


def draw_middle_names(space: Space, plan: CardPlan) -> None:
    """Name the diamonds, where there is room beside them."""
    if plan.across.kind != "middle" or plan.half:
        return
    if not plan.words_low:
        return
    x, y = plan.x(0.0), plan.y(plan.far_diamond) - 1.25
    space.add_where_free(
        (
            Text(x=x + 5.5, y=y, text="MIDDLE"),
            Text(x=x - 5.5, y=y, text="MIDDLE", anchor="end"),
        ),
        plan.inside,
    )


def panel_line(space: Space, panel: float, ends: tuple[float, float], at: float) -> None:
    """Draw the bottom panel's upper face across a card from one end to the other, `at` its height,
    and say that a box already together has the paper cut there; `panel`: above the side's end."""
    left, right = min(ends), max(ends)
    lines = wrap(ASSEMBLED, 2.5, False, right - left - 3.4)
    rows = int((panel - 2.0) // SMALL)
    for row, text in enumerate(lines[:rows]):
        space.add(Text(x=left + 1.7, y=at - 3.8 - row * SMALL, text=text))
    space.add(Line(x1=ends[0], y1=at, x2=ends[1], y2=at, dash="dashed", width=0.25))


def draw_ladder(space: Space, plan: CardPlan) -> None:
    """Draw a card's edge ladder, if it reaches up to the part's top end."""
    if plan.ladder_v is not None:
        y = plan.y(plan.ladder_v)
        words = LADDER_OF_SEVERAL if plan.members else LADDER
        space.add(*ladder(plan.view, plan.x(0.0), plan.x(plan.u_high), y, words))


def ladder(
    view: FaceView, start: float, end: float, y: float, words: str = LADDER
) -> list[Line | Text]:
    """Draw the lines to cut at from `start` to `end`, 2 mm either side of the true height, with
    their figures; the true one lies at y, mm."""
    height = view.height
    along = 1.0 if end > start else -1.0
    marks: list[Line | Text] = [Line(x1=start, y1=y, x2=end, y2=y, width=0.35)]
    pitch = (abs(end - start) - 6.0) / 5
    for step in (-2, -1, 0, 1, 2):
        if step:
            marks.append(Line(x1=start, y1=y + step, x2=end, y2=y + step))
        x = start + along * (3.0 + pitch * (step + 2.5))
        marks.append(Line(x1=x, y1=y + step, x2=x, y2=y + 2.8))
        figure = format_mm(height + step)
        marks.append(Text(x=x, y=y + 4.1, text=figure, bold=step == 0, anchor="middle"))
    return [*marks, Text(x=(start + end) / 2, y=y - 5.6, text=words, anchor="middle")]
