"""What an edit of a job makes stale, and what wood it has spoilt.

`made` says as plain values what a job makes: its parts with sizes and holes, the rows of its
stations, what is ordered, the lines of its walls, and what was given for all that. `making` and
`makinglists` take them from a layout, `given` from the job; a pack keeps them (`keeping`).
`comparing` holds two of them against each other, `parting` one part against itself: by its holes
(`boring`), by its size (`sizing`), by its cups (`cups`), each with what saves the wood that was
worked on before. `deeds` says whether it was, `causing` by which edit it came.
"""
