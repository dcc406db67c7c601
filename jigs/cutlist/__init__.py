"""The cut list: every piece of board a kitchen is built from, with its true size and its place.

`cutlist` cuts a `Layout` into `Piece`s, each with its place in the box (`Block`), so that a test
can put the box together again; and chooses those that are asked for.
"""
