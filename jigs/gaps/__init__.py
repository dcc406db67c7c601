"""The gaps between fronts, and whether they stay open: `wood` and `film` say what a front gains,
`beside` which gaps there are, `budget` what each can come to, `cures` what would help, `even` how
fronts are set so that gaps come out alike, `chance` how likely it is that all stay open.
"""
