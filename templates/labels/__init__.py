"""Labels: one for each part, on sheets and rolls described by geometry.

`labellist` says which, and in which order; `labelplacing` gives each its field, from a `Stock`;
`labels` and `labelrows` draw it there; `raster` in `page` says what the printer asks for. `cuptag`
draws tags into the same fields, `fitpage` a stock's test page. Stocks are data: stocks.toml.
"""
