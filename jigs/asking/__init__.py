"""What is asked before there is a job: questions as values, how an answer is read, and what the job
file will say by the answers. `interview` asks; who puts its questions to a person, and what they
are in words, is not known here.
"""
