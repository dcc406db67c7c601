"""The work at the bench, and how far it is.

`stations` puts together what shares a bit, a stop and a pattern (`station`); beside it stand the
table of a box, the story stick, the first article. `tracked` says which parts are kept track of,
`course` the steps that each goes through and what they wait for, `standing` how far it is,
`workplan` puts all steps into stages, `jobplan` these into days: all that of a job.
"""
