"""Whole documents in their order: the drilling sheets of a job, first page, contents.

`jobsheets` binds them. `drilled` gives what is drilled of a job, `planning` makes the cards of a
face, `once` finds those that are the same for several parts: each is printed with the first.
`pincards` sets rows of pins from the stations' pin card; `pageorder` puts pages in the order of
the work.
"""
