"""What is needed, bought and delivered.

`buying` says what is ordered and makes the supplier's rows, `needed` counts hardware and screws;
`matching` lays what came beside what was ordered, by the best assignment (`assign`).
"""
