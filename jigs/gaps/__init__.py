"""The gaps between fronts, and whether they stay open: `wood` says what a front gains,
`beside` which gaps there are, `budget` what each needs, what it can come to and what would help,
`reckoning` puts them together for a job, `even` says where fronts sit, so that gaps come out even
or come to their plan, `chance` how likely it is that all stay open. Once fronts hang, `screws` says
which screw to turn.
"""
