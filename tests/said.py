"""What a finding says, for tests that ask it."""

from jigs.ground.lengths import Unit
from jigs.ground.problems import Problem
from templates.words import saying


def fact_of(problem: Problem, unit: Unit = "in") -> str:
    """Give what was found."""
    return saying.say(problem, unit).fact


def remedy_of(problem: Problem, unit: Unit = "in") -> str:
    """Give what is to be done about it."""
    return saying.say(problem, unit).remedy


def reason_of(problem: Problem, unit: Unit = "in") -> str:
    """Give why a part is held, in one line."""
    return saying.reason_of(problem, unit)
