"""Faces as values: a drilled face as the driller sees it, and the lines that cards are set on."""
