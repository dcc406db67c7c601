"""What is wrong or doubtful about a job: a fact, and its remedy.

An *error* withholds its part: no sheet is made, the label says HOLD. A *warning* is printed on
every sheet it concerns.
"""

from dataclasses import dataclass
from typing import Literal

from jigs.ground.ranks import RANKS, Rank

Level = Literal["error", "warning"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One finding of the check.

    `code` is short, stable and of our own (`hinge-off-grid`); `part` is the front, side, drawer
    box or box it stands at, None for the whole job; `also` names further parts on whose sheets
    it is printed. `text` states the fact with its figures, `remedy` what to do.
    """

    level: Level
    code: str
    part: str | None
    text: str
    remedy: str
    also: tuple[str, ...] = ()

    @property
    def rank(self) -> Rank:
        """How much it matters: 1 an error, 2 spoils wood or money, 3 worth a look."""
        return 1 if self.level == "error" else RANKS[self.code]

    @property
    def name(self) -> str:
        """Its code as words: `hinge off grid`."""
        return self.code.replace("-", " ")

    @property
    def reason(self) -> str:
        """Why a part is held back, in one line: its name, then the fact."""
        return f"{self.name}: {self.text}"
