"""The trade of hanging frameless cabinet fronts: values in, values out.

Nothing in this package draws or prints. Lengths are millimetres as float throughout.
"""

__version__ = "0.1.0"
