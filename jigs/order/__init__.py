"""What is needed, bought and delivered.

`buying` says what is ordered, `needed` counts hardware and screws, `supplierrows` makes the
supplier's rows; `matching` and `handing` lay what came beside what was ordered.
"""
