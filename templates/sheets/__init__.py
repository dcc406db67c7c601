"""Sheets: a part's faces with their words and cards, and the pages that faces share.

`panel`, `sheetwords`, `partwords`, `sums`, `pintable` and `picture` are a face's words; `field`
sets them with its cards, `sharing` puts fields on pages, `sheet` draws these. `guide` and
`guidedraw` are the guide pages in front.
"""
