"""What a tape said of a front in hand, and of a box as it was built."""

from dataclasses import dataclass, replace
from typing import Self

Both = tuple[float, float]
"""A size as measured in two places; mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taped:
    """Sizes that are measured twice, mm; None where one was not."""

    width: Both | None = None
    """At the top and at the bottom."""
    height: Both | None = None
    """At the left and at the right."""
    diagonals: Both | None = None
    """From corner to corner, both ways."""

    def over(self, before: Self) -> Self:
        """Give these sizes, and in place of a missing one what was measured before."""
        return replace(
            self,
            width=self.width or before.width,
            height=self.height or before.height,
            diagonals=self.diagonals or before.diagonals,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TapedBox(Taped):
    """The same of a box, mm; its diagonals are those of its front."""

    depth: float | None = None
    """From its back to the front edges of its sides."""
