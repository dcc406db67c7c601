"""A card: a small paper template at full scale for the holes of one fitting.

A card is set on two references (`templates.reference`), one along each axis. On an edge of the
part, white meets black exactly on the edge: a solid band 3 mm wide lies outside it, and beyond
it a flap to fold down. An index line is the card's own cut edge, or, at the middle of a part,
two diamonds to cut out. Each hole has its distance from both references written beside it, so
that a steel rule alone can replace the paper.

Everything here is in the coordinates of the face as seen, mm; the sheet moves the whole card to
its place on the page.
"""

from dataclasses import dataclass, replace

from jigs.geometry import Fitting, Hole
from templates.faces import FaceView
from templates.lettering import Label, axis_label, bar_of_50, block, hole_note
from templates.marks import Area, Circle, Line, Mark, Outline, Text
from templates.reference import REACH, Reference, Wish, choose_reference
from templates.space import Box, Space, spread
from templates.typeface import text_box, text_width, wrap
from templates.wording import card_lines, fitting_heading, index_words, middle_words

BAND = 3.0
"""Width of the black band outside a reference edge."""
FLAP = 13.0
"""Width of band and flap together."""
ARM = 5.0
"""Half a hole's cross: 10 mm over all."""
CLEAR = 20.0
"""Least distance from an index line to a hole's centre: room for the words along the line."""
LADDER = 8.0
"""Paper beyond the part's true end, for the edge ladder and its figures."""
SMALL = 4.0
"""Line pitch of lettering 2.5."""
LEAST = 68.0
"""Least inside width of a card: room for its heading."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """A card in the coordinates of the face as seen, mm.

    `box` is its border, flaps included; `edges` the references with a black band, `index` the
    index lines and middles; `ladder` the y of the part's true top where it may be cut longer.
    """

    number: int
    view: FaceView
    fitting: Fitting
    box: Box
    edges: tuple[Reference, ...]
    index: tuple[Reference, ...]
    ladder: float | None
    marks: tuple[Mark, ...]

    @property
    def width(self) -> float:
        """Width over all, mm."""
        return self.box[2] - self.box[0]

    @property
    def height(self) -> float:
        """Height over all, mm."""
        return self.box[3] - self.box[1]

    @property
    def holes(self) -> tuple[Hole, ...]:
        """The holes on this card."""
        return self.fitting.holes


def make_cards(view: FaceView, rooms: tuple[tuple[float, float], ...]) -> tuple[Card, ...]:
    """Make the cards of a face: one a fitting, or several where no paper holds it whole.

    `rooms` are the widths and heights that a page can give to a card, mm.
    """
    cards: list[Card] = []
    for fitting in sorted(view.fittings, key=_reading_order):
        for part in _parts_that_fit(view, fitting, rooms):
            cards.append(compose_card(view, part, len(cards) + 1, rooms))
    return tuple(cards)


def _reading_order(fitting: Fitting) -> tuple[int, float]:
    """Cards follow each other from the bottom up; side by side, from the driller's left."""
    kinds = ("hinge", "slide", "plate", "pull", "front-fixing", "clearance", "manual")
    across = fitting.kind in ("pull", "front-fixing", "clearance")
    return kinds.index(fitting.kind), min(hole.x if across else hole.y for hole in fitting.holes)


def _parts_that_fit(
    view: FaceView, fitting: Fitting, rooms: tuple[tuple[float, float], ...]
) -> list[Fitting]:
    if len(fitting.holes) == 1 or _fits(compose_card(view, fitting, 1, rooms), rooms):
        return [fitting]
    spread_x = max(hole.x for hole in fitting.holes) - min(hole.x for hole in fitting.holes)
    spread_y = max(hole.y for hole in fitting.holes) - min(hole.y for hole in fitting.holes)
    across = spread_x >= spread_y
    rest = sorted(fitting.holes, key=lambda hole: (hole.x, hole.y) if across else (hole.y, hole.x))
    parts: list[Fitting] = []
    while rest:
        take = len(rest)
        while take > 1 and not _fits(
            compose_card(view, replace(fitting, holes=tuple(rest[:take])), 1, rooms), rooms
        ):
            take -= 1
        parts.append(replace(fitting, holes=tuple(rest[:take])))
        rest = rest[take:]
    return parts


def _fits(card: Card, rooms: tuple[tuple[float, float], ...]) -> bool:
    return any(card.width <= width and card.height <= height for width, height in rooms)


def _wishes(view: FaceView, fitting: Fitting) -> tuple[Wish, Wish]:
    """From which edges a fitting is set out: across, then up."""
    xs = [hole.x for hole in view_of_whole(view, fitting).holes]
    central = abs((min(xs) + max(xs)) / 2 - view.width / 2) < 1e-6
    match fitting.kind:
        case "hinge":
            return ("low" if view.hinge_edge == "left" else "high"), "low"
        case "plate" | "slide":
            return ("low" if view.front_edge == "left" else "high"), "low"
        case "pull":
            return ("middle" if central else "near"), ("near" if view.hinge_edge else "high")
        case "front-fixing" | "clearance":
            return ("middle" if central else "near"), "low"
        case "manual":
            return "near", "near"


def view_of_whole(view: FaceView, part: Fitting) -> Fitting:
    """Give the whole fitting of which `part` may be only some holes."""
    for fitting in view.fittings:
        if (fitting.kind, fitting.index, fitting.part, fitting.record) == (
            part.kind,
            part.index,
            part.part,
            part.record,
        ):
            return fitting
    return part


def choose_references(
    view: FaceView, fitting: Fitting, *, lowered: float = 0.0, no_edge: bool = False
) -> tuple[Reference, Reference]:
    """Choose where the card of a fitting is set, across and up.

    `lowered` moves an index line that much further from the holes, mm; `no_edge` asks for an
    index line up the part even where an edge is near.
    """
    wish_x, wish_y = _wishes(view, fitting)
    xs = [hole.x for hole in fitting.holes]
    ys = [hole.y for hole in fitting.holes]
    if wish_x == "middle" and max(abs(x - view.width / 2) for x in xs) > REACH:
        wish_x = "near"
    across = choose_reference(
        "x", min(xs), max(xs), view.width, wish_x, step=view.step, clear=CLEAR
    )
    up = choose_reference(
        "y",
        min(ys),
        max(ys),
        view.height,
        "low" if lowered else wish_y,
        step=view.step,
        clear=CLEAR + lowered,
        fallback="near" if wish_y == "high" else "low",
        edge=not no_edge,
    )
    return across, up


def compose_card(
    view: FaceView, fitting: Fitting, number: int, rooms: tuple[tuple[float, float], ...]
) -> Card:
    """Compose the card of some holes that belong together, set on edges where that fits."""
    across, up = choose_references(view, fitting)
    composer = _Composer(view, fitting, number, across, up)
    if composer.shortage > 0.0 and up.kind == "index":
        # Too little room below the door's top end: the index line goes lower instead.
        across, up = choose_references(view, fitting, lowered=composer.shortage)
        composer = _Composer(view, fitting, number, across, up)
    card = composer.card()
    if up.kind == "edge" and not _fits(card, rooms):
        across, up = choose_references(view, fitting, no_edge=True)
        other = _Composer(view, fitting, number, across, up).card()
        if up.kind == "index" and _fits(other, rooms):
            return other
    return card


class _Composer:
    """One card in the making. `u` and `v` run from the two references inward, mm."""

    def __init__(
        self, view: FaceView, fitting: Fitting, number: int, across: Reference, up: Reference
    ) -> None:
        self.view, self.fitting, self.number = view, fitting, number
        self.across, self.up = across, up
        self.space = Space()
        self.places = [(across.distance(h.x), up.distance(h.y), h) for h in fitting.holes]
        pads = [max(h.diameter / 2 + 1.0, ARM + 1.0) for h in fitting.holes]
        self.u0 = min(u - pad for (u, _, _), pad in zip(self.places, pads, strict=True))
        self.u1 = max(u + pad for (u, _, _), pad in zip(self.places, pads, strict=True))
        self.v0 = min(v - pad for (_, v, _), pad in zip(self.places, pads, strict=True))
        self.v1 = max(v + pad for (_, v, _), pad in zip(self.places, pads, strict=True))
        for polygon in fitting.outline if fitting.kind == "hinge" else ():
            us = [across.distance(x) for x, _ in polygon]
            vs = [up.distance(y) for _, y in polygon]
            if min(us) > self.u0 - 12 and max(us) < self.u1 + 12:
                self.u0, self.u1 = min(self.u0, *us), max(self.u1, *us)
            if min(vs) > self.v0 - 12 and max(vs) < self.v1 + 12:
                self.v0, self.v1 = min(self.v0, *vs), max(self.v1, *vs)
        self.columns = sorted({round(u, 6) for u, _, _ in self.places})
        self.rows = sorted({round(v, 6) for _, v, _ in self.places})
        self.row_labels = [self._label(up, v) for v in self.rows]
        self.column_labels = [self._label(across, u) for u in self.columns]
        self.inner = len(self.rows) == 1 and self._widest_gap()[1] > 70.0
        self._place_column_of_figures()
        self._place_strip_of_figures()
        self._place_heading()

    # --- where things go ---------------------------------------------------------------

    def x(self, u: float) -> float:
        """Coordinate on the face of a distance from the reference across."""
        return self.across.at + self.across.inward * u

    def y(self, v: float) -> float:
        """Coordinate on the face of a distance from the reference up."""
        return self.up.at + self.up.inward * v

    def _label(self, reference: Reference, distance: float) -> Label:
        view = self.view
        return axis_label(
            reference,
            distance,
            edge_name=view.edges[reference.edge],
            length=view.width if reference.axis == "x" else view.height,
            panel=view.panel if reference.axis == "y" else None,
            band=view.band if reference.edge == view.front_edge else 0.0,
        )

    def _widest_gap(self) -> tuple[float, float]:
        """Where, between two neighbouring columns of holes, there is most room: start, width."""
        gaps = [(b - a, a) for a, b in zip(self.columns, self.columns[1:], strict=False)]
        if not gaps:
            return 0.0, 0.0
        width, start = max(gaps)
        return start, width

    def _place_column_of_figures(self) -> None:
        """The distances up: in a column beside the holes, or between two holes far apart."""
        self.figure_v0, self.figure_v1 = self.v0, self.v1
        width = max(label.width for label in self.row_labels)
        self.low_column = False
        if self.inner:
            label = self.row_labels[0]
            start, gap = self._widest_gap()
            self.inner_u = start + (gap * 0.62 if start < 0.0 else 12.0)
            hole_v = self.rows[0]
            self.inner_above = hole_v - 8.0 - self._gap_start() < label.height
            if self.inner_above:
                self.figure_v1 = max(self.v1, hole_v + 8.0 + label.height)
            self.column_start = self.u1
            self.column_end = max(self.u1, self.inner_u + 1.5 + width)
            return
        heights = [label.height + 0.8 for label in self.row_labels]
        self.row_centres = spread(self.rows, heights, self._gap_start())
        self.figure_v0 = min(self.v0, self.row_centres[0] - heights[0] / 2)
        self.figure_v1 = max(self.v1, self.row_centres[-1] + heights[-1] / 2)
        self.low_column = (
            self.across.kind != "middle" and self.u0 - self._side_start() >= width + 6.5
        )
        if self.low_column:
            self.column_start = self.u0 - 0.5
            self.column_end = self.u1
        else:
            self.column_start = self.u1 + 0.3
            self.column_end = self.u1 + 4.6 + width

    def _side_start(self) -> float:
        """The first u that is free beside the reference across."""
        return 10.0 if self.across.kind == "index" else 1.0

    def _gap_start(self) -> float:
        """The first v that is free beside the reference up."""
        if self.up.kind == "index":
            return 10.0
        start = 1.0
        if self.view.panel is not None and self.up.edge == "bottom":
            start = max(start, self.view.panel + 1.0)
        if self.across.kind == "middle" and not self._half:
            start = max(start, 1.0 + self._diamond_row())
        return start

    @property
    def _half(self) -> bool:
        """Whether a card set on the middle lies on one side of it: then the middle is cut."""
        return self.across.kind == "middle" and (self.u0 > 4.0 or self.u1 < -4.0)

    def _diamond_row(self) -> float:
        return max(10.0, len(self._middle_lines()) * SMALL + 2.0)

    def _middle_lines(self) -> list[str]:
        return wrap(middle_words(self.view), 2.5, False, 62.0)

    def _place_strip_of_figures(self) -> None:
        """The distances across: in a row beyond the holes, on the far side from the reference."""
        widths = [label.width + 2.0 for label in self.column_labels]
        low = -1e6 if self.across.kind == "middle" else self._side_start()
        self.turned = sum(widths) > 190.0
        if self.turned:
            self.column_labels = [
                replace(label, small=(), turned=True) for label in self.column_labels
            ]
            widths = [label.height + 0.8 for label in self.column_labels]
        wanted = self.columns
        if self.across.kind == "middle" and len(self.columns) == 2:
            # Towards the middle, so that the card is no wider than its holes need.
            wanted = [
                self.u0 + max(self.columns[0] - self.u0, widths[0] / 2),
                self.u1 - max(self.u1 - self.columns[1], widths[1] / 2),
            ]
        elif not self.turned:
            # The outermost label keeps inside the holes' own room where that is wide enough.
            last = self.u1 - widths[-1] / 2
            if len(wanted) == 1 or last - widths[-1] / 2 > wanted[-2] + widths[-2] / 2:
                wanted = [*wanted[:-1], min(wanted[-1], last)]
        self.column_centres = spread(wanted, widths, low)
        self.strip_low = self.column_centres[0] - widths[0] / 2
        self.strip_high = self.column_centres[-1] + widths[-1] / 2
        self.strip_height = 4.4 + max(
            label.width if self.turned else label.height for label in self.column_labels
        )
        self.u_low = 0.0 if self.across.kind != "middle" else min(self.u0, self.strip_low) - 1.5
        self.u_high = max(self.column_end, self.strip_high, self.u1) + 1.5
        if self._half:
            if self.u0 > 0.0:
                self.u_low = 0.0
            else:
                self.u_high = 0.0 if not self.low_column else max(self.u_high, 0.0)
        self.u_high = max(self.u_high, self.u_low + LEAST)
        if self.across.kind == "middle" and not self._half:
            self.u_high = max(self.u_high, 69.0)

    @property
    def _ladder_v(self) -> float | None:
        """Where the part's true top end lies, if the card reaches up to it."""
        if not self.view.ladder or self.up.inward < 0:
            return None
        v = self.view.height - self.up.at
        topmost = self.fitting.index == self.fitting.count
        return v if topmost and v - self.v1 < 140.0 else None

    def _place_heading(self) -> None:
        """The card's own words: between the reference and the holes, or beyond the figures."""
        self.heading = block(
            self.view,
            self.number,
            fitting_heading(self.view, self.fitting),
            card_lines(self.view, self.fitting, self.up),
            self.u_high - self.u_low - 3.0,
            with_bar=self._bar_in_strip() is None,
        )
        gap = self.figure_v0 - self._gap_start()
        ladder = self._ladder_v
        far = 1e6 if ladder is None else ladder - 7.0 - self.figure_v1
        need = self.heading.height + 1.5
        figures = self.row_labels[0].height + 4.0 if self.inner and not self.inner_above else 0.0
        self.heading_low = gap >= need + figures
        self.strip_low_side = far < self.strip_height
        roomy = not self.inner and gap >= need + self.strip_height
        if self.strip_low_side or roomy:
            self.strip_low_side = True
            self.heading_low = True
            self.shortage = max(0.0, need + self.strip_height - gap)
        elif not self.heading_low and far < self.strip_height + need:
            self.heading_low = True
            self.shortage = max(0.0, need - gap)
        else:
            self.shortage = 0.0
        end = self.figure_v1 + (0.0 if self.strip_low_side else self.strip_height)
        self.heading_v = self._gap_start() + 0.5 if self.heading_low else end + 0.5
        if not self.heading_low:
            end += need
        self.far_diamond = end + 4.5
        if self.across.kind == "middle" and not self._half:
            inner = min(
                abs(centre) - label.width / 2
                for centre, label in zip(self.column_centres, self.column_labels, strict=True)
            )
            if inner > 20.0 and self.heading_low:
                self.far_diamond = end - 5.0
            else:
                end += 9.0
        self.v_high = end + 1.0
        if ladder is not None:
            self.v_high = ladder + LADDER

    def _bar_in_strip(self) -> float | None:
        """The u at which the bar of 50 stands between two far figures; None: in the heading."""
        if self.fitting.kind != "slide" or len(self.columns) < 2 or self.turned:
            return None
        ends = [
            (self.column_centres[k] + self.column_labels[k].width / 2,
             self.column_centres[k + 1] - self.column_labels[k + 1].width / 2)
            for k in range(len(self.columns) - 1)
        ]  # fmt: skip
        start, end = max(ends, key=lambda pair: pair[1] - pair[0])
        return (start + end) / 2 if end - start > 66.0 else None

    # --- drawing -----------------------------------------------------------------------

    def card(self) -> Card:
        """Draw everything and give the card."""
        edge_x, edge_y = self.across.kind == "edge", self.up.kind == "edge"
        u_low = -FLAP if edge_x else self.u_low
        v_low = -FLAP if edge_y else 0.0
        corners = [self._at(u_low, v_low), self._at(self.u_high, self.v_high)]
        box = (
            min(x for x, _ in corners),
            min(y for _, y in corners),
            max(x for x, _ in corners),
            max(y for _, y in corners),
        )
        inner = [
            self._at(0.0 if edge_x else u_low, 0.0),
            self._at(self.u_high, self.v_high),
        ]
        self.inside: Box = (
            min(x for x, _ in inner) + 0.4,
            min(y for _, y in inner) + 0.4,
            max(x for x, _ in inner) - 0.4,
            max(y for _, y in inner) - 0.4,
        )
        self._draw_references(edge_x, edge_y)
        self._draw_holes()
        if self.inner:
            self._draw_inner_figures()
        else:
            self._draw_column()
        self._draw_strip()
        self._draw_heading()
        self._draw_ladder()
        self._draw_notes()
        self._draw_outlines()
        self.space.add(
            Outline(
                points=(
                    (box[0], box[1]),
                    (box[2], box[1]),
                    (box[2], box[3]),
                    (box[0], box[3]),
                )
            )
        )
        return Card(
            number=self.number,
            view=self.view,
            fitting=self.fitting,
            box=box,
            edges=tuple(r for r in (self.across, self.up) if r.kind == "edge"),
            index=tuple(r for r in (self.across, self.up) if r.kind != "edge"),
            ladder=None if self._ladder_v is None else self.y(self._ladder_v),
            marks=tuple(self.space.marks),
        )

    def _at(self, u: float, v: float) -> tuple[float, float]:
        return self.x(u), self.y(v)

    def _line(self, u1: float, v1: float, u2: float, v2: float, width: float = 0.18) -> None:
        (x1, y1), (x2, y2) = self._at(u1, v1), self._at(u2, v2)
        self.space.add(Line(x1=x1, y1=y1, x2=x2, y2=y2, width=width))

    def _band(self, u1: float, v1: float, u2: float, v2: float) -> None:
        a, b = self._at(u1, v1), self._at(u2, v2)
        self.space.add(Area(points=(a, (b[0], a[1]), b, (a[0], b[1]))))

    def _draw_references(self, edge_x: bool, edge_y: bool) -> None:
        view = self.view
        if edge_x:
            self._band(-BAND, -BAND if edge_y else 0.0, 0.0, self.v_high)
            self._flap_words(self.across, self.v_high)
        if edge_y:
            self._band(0.0 if edge_x else self.u_low, -BAND, self.u_high, 0.0)
            self._flap_words(self.up, self.u_high - self.u_low)
        if self.up.kind == "index":
            lines = wrap(
                index_words(view, self.up), 2.5, True, self.u_high - self.u_low - 4.0
                - (9.0 if self.across.kind == "index" else 0.0)
            )  # fmt: skip
            centre = (self.u_low + self.u_high + (9.0 if self.across.kind == "index" else 0.0)) / 2
            for row, text in enumerate(lines if self.up.inward < 0 else reversed(lines)):
                base = (
                    self.y(1.8 + row * SMALL) if self.up.inward > 0 else self.y(3.6 + row * SMALL)
                )
                self.space.add(
                    Text(x=self.x(centre), y=base, text=text, bold=True, anchor="middle")
                )
        if self.across.kind == "index" or self._half:
            words = middle_words(view) if self._half else index_words(view, self.across)
            low = 10.0 if self.up.kind == "index" else 2.0
            lines = wrap(words, 2.5, True, self.v_high - low - 2.0)
            centre_y = self.y((low + self.v_high) / 2)
            right = self.x(1.0) > self.x(0.0)
            if self._half and self.u1 < 0.0:
                right = not right
            for row, text in enumerate(lines if right else reversed(lines)):
                x = self.x(0.0) + (3.8 + row * SMALL if right else -1.8 - row * SMALL)
                self.space.add(
                    Text(x=x, y=centre_y, text=text, bold=True, anchor="middle", angle=90)
                )
        if self.across.kind == "middle" and not self._half:
            self._draw_diamonds()
        if view.panel is not None and edge_y and self.up.edge == "bottom":
            self._panel_words(view.panel)

    def _flap_words(self, reference: Reference, length: float) -> None:
        name = self.view.edges[reference.edge]
        for words in (f"FOLD DOWN OVER THE {name}", f"FOLD: {name}", "FOLD DOWN"):
            if text_width(words, 2.5) < length - 4.0:
                break
        if reference.axis == "x":
            shift = 1.2 if reference.inward < 0 else -1.2
            x = self.x(-(BAND + FLAP) / 2) + shift
            self.space.add(
                Text(
                    x=x + (1.25 if reference.inward > 0 else 1.25),
                    y=self.y(self.v_high / 2),
                    text=words,
                    anchor="middle",
                    angle=90,
                )
            )
        else:
            self.space.add(
                Text(
                    x=self.x((self.u_low + self.u_high) / 2),
                    y=self.y(-(BAND + FLAP) / 2) - 1.25,
                    text=words,
                    anchor="middle",
                )
            )

    def _draw_diamonds(self) -> None:
        lines = self._middle_lines()
        near, far = self._gap_start() - self._diamond_row() / 2, self.far_diamond
        if self.up.kind == "index":
            near = 14.5
        for v in (near, far):
            centre = (self.x(0.0), self.y(v))
            self.space.add(
                Outline(
                    points=(
                        (centre[0] - 4.0, centre[1]),
                        (centre[0], centre[1] - 4.0),
                        (centre[0] + 4.0, centre[1]),
                        (centre[0], centre[1] + 4.0),
                    )
                )
            )
            self._line(0.0, v - 3.2, 0.0, v + 3.2)
            if v == far or self.up.kind == "index":
                self.space.add(Text(x=centre[0] + 5.5, y=centre[1] - 1.25, text="MIDDLE"))
        if self.up.kind != "index":
            top = self.y(near) + len(lines) * SMALL / 2 - 3.0
            for row, text in enumerate(lines):
                self.space.add(Text(x=self.x(0.0) + 5.5, y=top - row * SMALL, text=text))

    def _panel_words(self, panel: float) -> None:
        words = (
            "BOX ALREADY ASSEMBLED? Cut along the dashed line and stand the paper on the "
            "bottom panel."
        )
        lines = wrap(words, 2.5, False, self.u_high - self.u_low - 4.0)
        rows = int((panel - 2.0) // SMALL)
        for row, text in enumerate(lines[:rows]):
            self.space.add(
                Text(
                    x=min(self.x(2.0), self.x(self.u_high - 2.0)),
                    y=self.y(panel) - 3.8 - row * SMALL,
                    text=text,
                )
            )
        (x1, y1), (x2, y2) = self._at(0.3, panel), self._at(self.u_high - 0.3, panel)
        self.space.add(Line(x1=x1, y1=y1, x2=x2, y2=y2, dash="dashed", width=0.25))

    def _draw_holes(self) -> None:
        for hole in self.fitting.holes:
            self.space.add(
                Circle(x=hole.x, y=hole.y, diameter=hole.diameter),
                Line(x1=hole.x - ARM, y1=hole.y, x2=hole.x + ARM, y2=hole.y),
                Line(x1=hole.x, y1=hole.y - ARM, x2=hole.x, y2=hole.y + ARM),
            )

    def _draw_column(self) -> None:
        for v, centre, label in zip(self.rows, self.row_centres, self.row_labels, strict=True):
            us = [u for u, w, _ in self.places if abs(w - v) < 1e-5]
            if self.low_column:
                start, bend = min(us) - ARM - 0.8, self.column_start
                end, text = bend - 3.5, bend - 4.2
            else:
                start, bend = max(us) + ARM + 0.8, self.column_start
                end, text = bend + 3.5, bend + 4.2
            if abs(bend - start) > 0.3:
                self._line(start, v, bend, v)
            self._line(bend, v, end, centre)
            grows_right = (self.across.inward > 0) != self.low_column
            left = self.x(text) if grows_right else self.x(text) - label.width
            self.space.add(*label.marks(left, self.y(centre) + label.height / 2))

    def _draw_inner_figures(self) -> None:
        v, label, u = self.rows[0], self.row_labels[0], self.inner_u
        for tick in (0.0, v):
            (x, y) = self._at(u, tick)
            self.space.add(Line(x1=x - 1.0, y1=y - 1.0, x2=x + 1.0, y2=y + 1.0))
        if self.inner_above:
            centre = v + 7.0 + label.height / 2
        else:
            centre = (self._gap_start() + v - 8.0) / 2
            if self.heading_low:
                centre = v - 8.0 - label.height / 2
        left = self.x(u + 1.5) if self.across.inward > 0 else self.x(u + 1.5) - label.width
        self.space.add(*label.marks(left, self.y(centre) + label.height / 2))

    def _draw_strip(self) -> None:
        side = -1.0 if self.strip_low_side else 1.0
        edge = self.figure_v0 - 0.5 if self.strip_low_side else self.figure_v1 + 0.5
        for u, centre, label in zip(
            self.columns, self.column_centres, self.column_labels, strict=True
        ):
            vs = [v for w, v, _ in self.places if abs(w - u) < 1e-5]
            start = (min(vs) - ARM - 0.8) if self.strip_low_side else (max(vs) + ARM + 0.8)
            if abs(edge - start) > 0.3:
                self._line(u, start, u, edge)
            self._line(u, edge, centre, edge + side * 2.8)
            extent = label.width if self.turned else label.height
            near = self.y(edge + side * 3.4)
            top = near if (side * self.up.inward < 0) else near + extent
            if self.turned:
                self.space.add(*label.turned_marks(self.x(centre), top - extent))
            else:
                self.space.add(*label.marks(self.x(centre) - label.width / 2, top))

    def _draw_heading(self) -> None:
        middle = self._bar_in_strip()
        if middle is not None:
            v = self.figure_v1 + self.strip_height / 2
            self.space.add(*bar_of_50(min(self.x(middle - 30.0), self.x(middle + 30.0)), self.y(v)))
        left = min(self.x(self.u_low + 1.5), self.x(self.u_high - 1.5))
        v = self.heading_v
        if self.heading_low and self.strip_low_side:
            v = self._gap_start() + 0.5
        y = self.y(v) if self.up.inward < 0 else self.y(v + self.heading.height)
        self.space.add(*self.heading.marks(left, y))

    def _draw_ladder(self) -> None:
        v = self._ladder_v
        if v is None:
            return
        self._line(0.0, v, self.u_high, v, 0.35)
        pitch = (self.u_high - 6.0) / 5
        for step in (-2, -1, 0, 1, 2):
            if step:
                self._line(0.0, v + step, self.u_high, v + step)
            place = 3.0 + pitch * (step + 2.5)
            self._line(place, v + step, place, v + 3.0)
            self.space.add(
                Text(
                    x=self.x(place),
                    y=self.y(v + 3.8),
                    text=f"{self.view.height + step:.1f}",
                    bold=step == 0,
                    anchor="middle",
                )
            )
        self.space.add(
            Text(
                x=self.x(self.u_high / 2),
                y=self.y(v - 5.6),
                text="CUT AT THE HEIGHT YOU MEASURED",
                anchor="middle",
            )
        )

    def _draw_notes(self) -> None:
        """A hole's diameter and depth beside it, once for each kind of hole, where there is room."""
        noted: set[str] = set()
        for hole in self.fitting.holes:
            words = hole_note(hole)
            if words in noted:
                continue
            width = text_width(words, 2.5)
            out = hole.diameter / 2 + 1.2
            if hole.diameter > 25.0:
                lines = words.split(", ")
                for sx in (1, -1):
                    room = [text_width(line, 2.5) for line in lines]
                    texts = [
                        Text(
                            x=hole.x + (1.5 if sx > 0 else -1.5 - room[row]),
                            y=hole.y - 5.0 - row * 4.0,
                            text=line,
                        )
                        for row, line in enumerate(lines)
                    ]
                    if all(self.space.is_free(text_box(text)) for text in texts):
                        self.space.add(*texts)
                        noted.add(words)
                        break
                continue
            spots = [
                (hole.x + sx * max(out, 1.5) - (width if sx < 0 else 0.0), hole.y + dy)
                for dy in (1.6, -3.9, 6.0, -9.0)
                for sx in (1, -1)
            ]
            spots += [(hole.x - width / 2, hole.y + dy) for dy in (ARM + 1.8, -ARM - 4.2)]
            if self.space.add_where_free(
                (Text(x=x, y=y, text=words) for x, y in spots), self.inside
            ):
                noted.add(words)

    def _draw_outlines(self) -> None:
        """The hardware as it lies, and the part's other edges: a second check, never a cut."""
        for polygon in self.fitting.outline:
            self.space.add_between_texts((*polygon, polygon[0]), self.inside, "dashed", 0.18)
        if self.view.drawer_outline:
            outline = self.view.drawer_outline
            self.space.add_between_texts((*outline, outline[0]), self.inside, "dashed", 0.18)
        view = self.view
        referenced = {r.edge for r in (self.across, self.up) if r.kind == "edge"}
        if self._ladder_v is not None:
            referenced.add("top")
        for edge, run in (
            ("left", ((0.0, -1e4), (0.0, 1e4))),
            ("right", ((view.width, -1e4), (view.width, 1e4))),
            ("bottom", ((-1e4, 0.0), (1e4, 0.0))),
            ("top", ((-1e4, view.height), (1e4, view.height))),
        ):
            if edge not in referenced:
                self.space.add_between_texts(run, self.inside, "dashed", 0.25)
        if self.inner:
            u, v = self.inner_u, self.rows[0]
            line = (self._at(u, 0.0), self._at(u, v))
            self.space.add_between_texts(line, self.inside, "", 0.18)
        for fitting_line in self._axes():
            self.space.add_between_texts(fitting_line, self.inside, "axis", 0.18)
        if self.across.kind == "middle" and not self._half:
            middle = ((self.x(0.0), -1e4), (self.x(0.0), 1e4))
            self.space.add_between_texts(middle, self.inside, "axis", 0.18)

    def _axes(self) -> list[tuple[tuple[float, float], ...]]:
        """A slide's centre line, run out to the back of the side."""
        if self.fitting.kind != "slide":
            return []
        us = [u for u, _, _ in self.places]
        v = self.rows[0]
        points = [min(us) + ARM + 0.8, max(us) - ARM - 0.8, max(us) + ARM + 0.8, self.u_high]
        return [(self._at(points[0], v), self._at(points[1], v))] * (len(us) > 1) + [
            (self._at(points[2], v), self._at(points[3], v))
        ]
