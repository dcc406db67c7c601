"""What is wrong or doubtful about a job: each module looks at one thing and lists its findings.

An error withholds its part, a warning is printed on every sheet it concerns. Every finding
states the fact with its figures, in the job's unit first, and then the remedy.
"""
