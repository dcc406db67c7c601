"""The gap budget drawn: each wall with its gaps marked by verdict, the worst ten with what takes
from them, and the chance of the whole kitchen by its reveal; the screws to turn, wall by wall.

Black alone: a verdict is told by the line's pattern and a sign beside it, so that any printer and
any eye serves.
"""
