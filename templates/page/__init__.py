"""A page: marks in mm, the typeface, paper, scales, room on it."""
