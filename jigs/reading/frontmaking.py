"""How a front of a list is made: its frame, its edges, its boring, where its hinges are.

All of it stands in columns that `jigsheet order --fronts` writes; a supplier's list seldom has any.
"""

from msgspec.structs import replace

from jigs.given.job import FrontSpec
from jigs.given.stated import PROFILES, Boring, FivePieceSpec, FrontEdges, Hung, Profile
from jigs.reading.frontwords import read_yes
from jigs.reading.headings import ListColumn
from jigs.reading.listcolumns import shorten
from jigs.reading.listrows import RowReader
from jigs.reading.listtable import ListRow


class FrontMaking(RowReader):
    """Reads the cells that say how a front is made."""

    def with_making(self, row: ListRow, front: FrontSpec) -> FrontSpec:
        """Give a front with what its row says of its frame, its edges and its boring."""
        for column in ("rail", "groove", "panel"):
            if self.cell(row, column) and not self.cell(row, "stile"):
                self.note_at(
                    row, column, "stands without stile; a five-piece front states its stile's width"
                )
        boring, hung = self.read_boring(row)
        return replace(
            front,
            five_piece=FivePieceSpec(
                stile=self.read_size(row, "stile"),
                rail=self.read_size(row, "rail"),
                groove=self.read_size(row, "groove"),
                panel=self.read_size(row, "panel"),
                glass=self._read_yes(row, "glass"),
            ),
            edges=FrontEdges(
                edge_radius=self.read_size(row, "edge radius"), profile=self._read_profile(row)
            ),
            boring=boring,
            hung=hung,
        )

    def read_boring(self, row: ListRow) -> tuple[Boring, Hung]:
        """Read whether the cups are bored, and where they are."""
        bored = self._read_yes(row, "bored")
        if self.cell(row, "bored tab") and not bored:
            self.note_at(row, "bored tab", "stands without bored; say yes there if the cups are")
        boring = Boring(bored=bored, bored_tab=self.read_size(row, "bored tab"))
        return boring, Hung(hinges_at=self._read_heights(row))

    def _read_yes(self, row: ListRow, column: ListColumn) -> bool:
        text = self.cell(row, column)
        said = read_yes(text)
        if text and said is None:
            self.note_at(row, column, f"not yes or no ('{shorten(text)}' given); allowed: yes, no")
        return bool(said)

    def _read_profile(self, row: ListRow) -> Profile | None:
        text = self.cell(row, "profile").lower()
        profile = next((word for word in PROFILES if word == text), None)
        if text and profile is None:
            self.note_at(
                row,
                "profile",
                f"unknown profile ('{shorten(text)}' given); allowed: {', '.join(PROFILES)}",
            )
        return profile

    def _read_heights(self, row: ListRow) -> tuple[float, ...] | None:
        """Read the heights of the cups above the bottom edge, in one cell, parted by semicolons."""
        texts = [text.strip() for text in self.cell(row, "hinges at").split(";")]
        found = [self.measure(row, "hinges at", text) for text in texts if text]
        places = sorted(place for place in found if place is not None)
        if len(set(places)) < len(places):
            self.note_at(
                row, "hinges at", f"a height stands twice ('{'; '.join(texts)[:40]}' given)"
            )
        return tuple(places) or None
