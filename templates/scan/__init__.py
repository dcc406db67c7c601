"""The pages that a phone shows: where a part goes, what comes next; values in, HTML text out."""
