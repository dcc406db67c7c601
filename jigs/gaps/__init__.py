"""The gaps between fronts, and whether they stay open: `wood` and `film` say what a front gains,
`beside` which gaps there are, `needs` what each needs, `budget` what it can come to, `reckoning`
puts them together for a job, `cures` says what would help, `even` where measured fronts sit,
`chance` how likely it is that all stay open. Once fronts hang, `screws` says which screw to turn,
by `level`, which brings gaps to their plan.
"""
