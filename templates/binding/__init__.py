"""Whole documents in their order: the drilling sheets of a job, first page, contents.

`jobsheets` binds them. `planning` says which way a face is planned; `alike` which parts share
their sheets: by the values of their faces, and by what their sheets say without the names of
parts (a `Sentence` that is `own` keeps none asunder); `tight` frames small faces on one page.
"""
