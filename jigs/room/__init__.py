"""The room: where boxes stand along the walls, what is seen of them, and the gaps between fronts.

`elevation` sees the walls of what is laid out; whether all has room there, `jigs.checks.room` and
`neighbours` ask. How a wall is set says `hanging`: its order, and what each box gets then; its
lines and its sums are in `wallmeasures`.

Whether gaps stay open: `wood` says what a front gains, `beside` which gaps there are, `budget` what
each needs, what it can come to and what would help, `reckoning` puts them together for a job,
`even` says where fronts sit, so that gaps come out even or come to their plan, `chance` how likely
it is that all stay open. Once fronts hang, `screws` says which screw to turn.
"""
