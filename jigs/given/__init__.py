"""What was said: a job and its parts as values, hardware records too.

The generic records are data (`records/`, read by `catalogue`); what a kind of fitting is to the
rest of the tool says `kinds`. Who asks for a record or a kind places no hole: that is done in
`jigs.fittings`.
"""
