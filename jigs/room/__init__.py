"""The room: where boxes stand along the walls, and what is seen of them.

`elevation` sees the walls of what is laid out; whether all has room there, `jigs.checks.room` and
`neighbours` ask. How a wall is set says `hanging`: its order, and what each box gets then; its
lines and its sums are in `wallmeasures`.
"""
