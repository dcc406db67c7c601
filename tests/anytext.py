"""Any character that a text may have, for what a person may write."""

from hypothesis import strategies as st

ANY = st.characters(exclude_categories=["Cs"])
"""All but the halves of surrogate pairs, which no text in UTF-8 has. The same as hypothesis takes
by itself; but told so, it need not try a codec on every one, which takes seconds when it has not
done so yet."""
