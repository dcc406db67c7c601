"""A delivery: what arrived, matched with what was ordered, and measured."""
