"""The findings of a box as they come up, and the fronts that they withhold."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from jigs.checks.closing import NOT_CLOSED
from jigs.ground.problems import Problem


@dataclass(slots=True, kw_only=True)
class Findings:
    """The findings of a box as they come up, and the fronts that they withhold."""

    fronts: frozenset[str]
    problems: list[Problem] = field(default_factory=list)
    held: dict[str, list[Problem]] = field(default_factory=dict)
    hushed: set[str | None] = field(default_factory=set)

    def add(self, problems: Iterable[Problem]) -> None:
        """Take up findings, but for parts of which enough is said."""
        for problem in problems:
            if problem.part in self.hushed:
                continue
            self.problems.append(problem)
            if problem.level == "error":
                for part in {problem.part, *problem.also} & self.fronts:
                    self.held.setdefault(str(part), []).append(problem)

    def hush_unclosed(self) -> None:
        """Say no more of parts whose sizes do not close: their holes follow from nothing."""
        for problem in self.problems:
            if problem.level == "error" and problem.code == NOT_CLOSED:
                self.hushed |= {problem.part, *problem.also}
