"""Where everything on a card goes, before anything is drawn.

`u` and `v` run from the two references inward, mm. From the reference outward there follow the
holes, the figures beside and beyond them, and the card's own words, wherever there is room.
"""

from functools import cache, cached_property
from itertools import pairwise

from msgspec.structs import replace

from jigs.given.kinds import kind_of
from jigs.ground.geometry import Fitting
from templates.cards.flap import FLAP, WASTE
from templates.cards.lettering import CardHeading, Label, block, label_on
from templates.cards.ticks import Member, tick_boxes
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.space import Box, spread
from templates.page.typeface import wrap
from templates.words.facewords import index_words
from templates.words.fittingwords import card_lines, fitting_heading
from templates.words.wording import MIDDLE_WORDS

ARM = 5.0
"""Half a hole's cross: 10 mm over all."""
CORNER = 18.0
"""Room round the corner of a drawer box that stands on a card, where its edges alone are drawn."""
LADDER = 7.2
"""Paper beyond the part's true end, for the edge ladder and its figures."""
SMALL = 4.0
"""Line pitch of lettering 2.5."""
MIDDLE_ROOM = 50.0
"""Width of the words beside a middle's diamond, mm."""
CLEAR = 6.0
"""Between a row of holes and the boxes to tick between it and the next, mm."""
LEAST_CARD = 68.0
"""Least inside width of a card: room for its heading."""


@cache
def middle_lines() -> tuple[str, ...]:
    """The words beside a middle's diamond, in lines."""
    return tuple(wrap(MIDDLE_WORDS, 2.5, False, MIDDLE_ROOM))


class CardPlan:
    """The places of everything on one card."""

    def __init__(
        self,
        view: FaceView,
        fitting: Fitting,
        across: Reference,
        up: Reference,
        *,
        with_ladder: bool = True,
        members: tuple[Member, ...] = (),
        alike: Box | None = None,
    ) -> None:
        self.with_ladder, self.members, self.alike = with_ladder, members, alike
        self.view, self.fitting = view, fitting
        self.across, self.up = across, up
        self.places = [(across.distance(x), up.distance(y)) for x, y in fitting.places]
        pads = [max(h.diameter / 2 + 1.0, ARM + 1.0) for h in fitting.holes] or [CORNER]
        self.u0 = min(u - pad for (u, _), pad in zip(self.places, pads, strict=True))
        self.u1 = max(u + pad for (u, _), pad in zip(self.places, pads, strict=True))
        self.v0 = min(v - pad for (_, v), pad in zip(self.places, pads, strict=True))
        self.v1 = max(v + pad for (_, v), pad in zip(self.places, pads, strict=True))
        framed = kind_of(fitting).framed
        kept = framed == "always" or (framed == "one-hole" and len(fitting.holes) == 1)
        for polygon in fitting.outline if kept else ():
            us = [across.distance(x) for x, _ in polygon]
            vs = [up.distance(y) for _, y in polygon]
            if min(us) > self.u0 - 12 and max(us) < self.u1 + 12:
                self.u0, self.u1 = min(self.u0, *us), max(self.u1, *us)
            if min(vs) > self.v0 - 12 and max(vs) < self.v1 + 12:
                self.v0, self.v1 = min(self.v0, *vs), max(self.v1, *vs)
        self.columns = sorted({round(u, 6) for u, _ in self.places})
        self.rows = sorted({round(v, 6) for _, v in self.places})
        self.row_labels = self._labels(up, self.rows)
        self.column_labels = self._labels(across, self.columns)
        self.inner = len(self.rows) == 1 and self.widest_gap()[1] > 70.0
        self._place_column_of_figures()
        self._place_strip_of_figures()
        self._place_heading()

    def x(self, u: float) -> float:
        """Coordinate on the face of a distance from the reference across."""
        return self.across.at + self.across.inward * u

    def y(self, v: float) -> float:
        """Coordinate on the face of a distance from the reference up."""
        return self.up.at + self.up.inward * v

    def _labels(self, reference: Reference, distances: list[float]) -> list[Label]:
        """Label distances from one reference: the first says for all what they are counted from."""
        return [
            label_on(self.view, reference, each, self.fitting.stated_from, named=not row)
            for row, each in enumerate(distances)
        ]

    def widest_gap(self) -> tuple[float, float]:
        """Where, between two neighbouring columns of holes, there is most room: start, width."""
        gaps = [(b - a, a) for a, b in pairwise(self.columns)]
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
            start, gap = self.widest_gap()
            self.inner_u = start + (gap * 0.62 if start < 0.0 else 12.0)
            hole_v = self.rows[0]
            self.inner_above = hole_v - 8.0 - self.gap_start < label.height
            if self.inner_above:
                self.figure_v1 = max(self.v1, hole_v + 8.0 + label.height)
            self.column_start = self.u1
            self.column_end = max(self.u1, self.inner_u + 1.5 + width)
            return
        heights = [label.height + 0.8 for label in self.row_labels]
        wanted = self.rows
        if self.fitting.stands is not None:  # above the box's underside, which is drawn on
            wanted = [v + heights[0] / 2 + 0.8 for v in wanted]
        self.row_centres = spread(wanted, heights, self.gap_start)
        self.figure_v0 = min(self.v0, self.row_centres[0] - heights[0] / 2)
        self.figure_v1 = max(self.v1, self.row_centres[-1] + heights[-1] / 2)
        self.low_column = (
            self.across.kind != "middle" and self.u0 - self.side_start() >= width + 6.5
        )
        if self.low_column:
            self.column_start = self.u0 - 0.5
            self.column_end = self.u1
        else:
            self.column_start = self.u1 + 0.3
            self.column_end = self.u1 + 4.6 + width

    def side_start(self) -> float:
        """The first u that is free beside the reference across."""
        if self.half:
            return 14.0
        return 10.0 if self.across.kind == "index" else 1.0

    @cached_property
    def gap_start(self) -> float:
        """The first v that is free beside the reference up."""
        if self.up.kind == "index":
            width = LEAST_CARD - 8.0 if not self.inner else 150.0
            lines = wrap(index_words(self.view, self.up), 2.5, True, width)
            start = 2.0 + SMALL * max(2, len(lines))
            return start + (10.0 if self.across.kind == "middle" and not self.half else 0.0)
        start = 1.0
        if self.view.state.panel is not None and self.up.edge == "bottom":
            start = max(start, self.view.state.panel + 1.0)
        if self.across.kind == "middle" and not self.half:
            start = max(start, 1.0 + (self.diamond_row() if self.words_low else 10.0))
        return start

    @property
    def half(self) -> bool:
        """Whether a card set on the middle lies on one side of it: then the middle is cut."""
        return self.across.kind == "middle" and (self.u0 > 4.0 or self.u1 < -4.0)

    @property
    def words_low(self) -> bool:
        """Whether the words of the middle find room at the near diamond, before the holes."""
        return self.up.kind != "index" and self.v0 >= 1.0 + self.diamond_row()

    def diamond_row(self) -> float:
        """The room of a diamond with its words, mm."""
        return max(10.0, len(middle_lines()) * SMALL + 2.0)

    def _place_strip_of_figures(self) -> None:
        """The distances across: in a row beyond the holes, on the far side from the reference."""
        widths = [label.width + 2.0 for label in self.column_labels]
        low = -1e6 if self.across.kind == "middle" else self.side_start()
        self.turned = sum(widths) > 190.0
        if self.turned:
            self.column_labels = [
                replace(label, small=(), turned=True) for label in self.column_labels
            ]
            widths = [label.height + 0.8 for label in self.column_labels]
        wanted = self.columns
        if self.fitting.stands is not None:  # inside the box's side, which is drawn on
            wanted = [u + widths[0] / 2 + 0.8 for u in wanted]
        elif self.across.kind == "middle" and len(self.columns) == 2:
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
        if self.half:
            if self.u0 > 0.0:
                self.u_low = 0.0
            else:
                self.u_high = 0.0 if not self.low_column else max(self.u_high, 0.0)
        self.u_high = max(
            self.u_high, self.u_low + LEAST_CARD + (10.0 if self.across.kind == "index" else 0.0)
        )
        if self.across.kind == "middle" and not self.half:
            self.u_high = max(self.u_high, MIDDLE_ROOM + 7.0)

    @property
    def ladder_v(self) -> float | None:
        """Where the part's true top end lies, if the card reaches up to it."""
        if not self.with_ladder or not self.view.ladder or self.up.inward < 0:
            return None
        v = self.view.height - self.up.at
        topmost = self.fitting.index == self.fitting.count
        return v if topmost and v - self.v1 < 140.0 else None

    def _place_heading(self) -> None:
        """The card's own words: between the reference and the holes, or beyond the figures."""
        turned = self.across.kind == "index" or self.half
        self.heading_u0 = self.u_low + 1.5
        self.heading_width = self.u_high - self.u_low - 3.0
        if turned:
            self.heading_width -= self.side_start() - 1.0
            if not (self.half and self.u1 < 0.0):
                self.heading_u0 += self.side_start() - 1.0
        self.ticks = tick_boxes(self.members, self.heading_width, self.fitting.kind)
        self.ticks_v = self.between_rows(self.ticks.height) if self.members else None
        self.heading = self._heading()
        gap = self.figure_v0 - self.gap_start
        ladder = self.ladder_v
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
        between = None if self.heading_low else self._between()
        end = self.figure_v1 + (0.0 if self.strip_low_side else self.strip_height)
        self.heading_v = self.gap_start + 0.5 if self.heading_low else end + 0.5
        if between is not None:
            self.heading_v = between
        elif not self.heading_low:
            end += need
        self.far_diamond = end + 4.5
        if self.across.kind == "middle" and not self.half:
            inner = min(
                abs(centre) - label.width / 2
                for centre, label in zip(self.column_centres, self.column_labels, strict=True)
            )
            above = self.inner and self.inner_above
            if not self.words_low:
                self.far_diamond = end + self.diamond_row() / 2
                end += self.diamond_row()
            elif inner > 20.0 and self.heading_low and not above:
                self.far_diamond = end - 5.0
            else:
                end += 9.0
        self.v_high = max(end + 1.0, 78.0 if turned else 0.0)
        if ladder is not None:
            self.v_high = ladder + LADDER

    def _heading(self) -> CardHeading:
        return block(
            self.view,
            fitting_heading(self.view, self.fitting),
            card_lines(self.view, self.fitting),
            self.heading_width,
            with_bar=self.bar_in_strip() is None,
            short=fitting_heading(self.view, self.fitting, short=True),
            members=self.members,
            ticked=None if self.ticks_v is not None else self.ticks,
        )

    def _between(self) -> float | None:
        """The lower v of the heading, with the boxes to tick, where it finds room between two rows
        of holes; then the card is no higher than these ask for."""
        ticks_v, heading = self.ticks_v, self.heading
        if ticks_v is not None:
            self.ticks_v = None
            self.heading = self._heading()
        end = self.between_rows(self.heading.height)
        if end is None:
            self.ticks_v, self.heading = ticks_v, heading
            return None
        return end - self.heading.height

    def between_rows(self, height: float) -> float | None:
        """The v of the upper or lower end of so much free height between two rows of holes, the
        one further from the reference; None where no two are so far apart."""
        if self.inner:
            return None
        ends = [
            max(centre + label.height / 2, row + ARM)
            for centre, label, row in zip(self.row_centres, self.row_labels, self.rows, strict=True)
        ]
        # No line from a hole to its figure across runs through what stands there.
        spans = [[v for u, v in self.places if abs(u - column) < 1e-5] for column in self.columns]
        for (start, end), (row, after) in zip(pairwise(ends), pairwise(self.rows), strict=True):
            free = min(after - ARM, end - self.row_labels[0].height) - start
            crossed = any(min(span) > row + 1e-5 or max(span) < after - 1e-5 for span in spans)
            if free > height + 2 * CLEAR and not crossed:
                return start + CLEAR + height
        return None

    def bar_in_strip(self) -> float | None:
        """The u at which the bar of 50 stands between two far figures; None: in the heading."""
        if not kind_of(self.fitting).lined or len(self.columns) < 2 or self.turned:
            return None
        ends = [
            (self.column_centres[k] + self.column_labels[k].width / 2,
             self.column_centres[k + 1] - self.column_labels[k + 1].width / 2)
            for k in range(len(self.columns) - 1)
        ]  # fmt: skip
        start, end = max(ends, key=lambda pair: pair[1] - pair[0])
        return (start + end) / 2 if end - start > 66.0 else None

    # --- drawing -----------------------------------------------------------------------

    def at(self, u: float, v: float) -> tuple[float, float]:
        """Coordinates on the face of a place given from the two references."""
        return self.x(u), self.y(v)

    @property
    def flap(self) -> float:
        """Paper beyond a reference edge: band and flap, or band and waste."""
        return WASTE if self.view.rounded else FLAP

    @property
    def box(self) -> Box:
        """The card's border, flaps included, in the coordinates of the face."""
        u = -self.flap if self.across.kind == "edge" else self.u_low
        v = -self.flap if self.up.kind == "edge" else 0.0
        return self._box(u, v, 0.0)

    @property
    def inside(self) -> Box:
        """The card without its flaps, a little within its border."""
        return self._box(0.0 if self.across.kind == "edge" else self.u_low, 0.0, 0.4)

    @property
    def lined(self) -> Box:
        """Where the part's other edges are drawn: of a card for several parts no further than it
        reaches without its boxes to tick, for beyond that they may lie elsewhere on each part."""
        return self._within_alike(self.inside)

    @property
    def drawn_on(self) -> Box:
        """Where hardware is drawn: a drawer box no further than its figures, below the heading."""
        u = 0.0 if self.across.kind == "edge" else self.u_low
        high = None if self.fitting.stands is None else self.figure_v1 + self.strip_height
        return self._within_alike(self._box(u, 0.0, 0.4, high))

    def _within_alike(self, box: Box) -> Box:
        if self.alike is None:
            return box
        left, low, right, high = self.alike
        return max(box[0], left), max(box[1], low), min(box[2], right), min(box[3], high)

    def _box(self, u: float, v: float, within: float, high: float | None = None) -> Box:
        (x1, y1), (x2, y2) = (
            self.at(u, v),
            self.at(self.u_high, self.v_high if high is None else high),
        )
        return (
            min(x1, x2) + within,
            min(y1, y2) + within,
            max(x1, x2) - within,
            max(y1, y2) - within,
        )
