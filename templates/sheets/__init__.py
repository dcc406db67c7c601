"""One sheet: its words, its pages, which cards share one.

`panel`, `partwords`, `steps`, `sums` and `picture` are its words; `pattern` knows the ways to
divide a page between words and cards, `sharing` shares the cards among pages, in order and in a
few other orders, `sheet` draws.
"""
