"""The room: where boxes stand along the walls, and what is seen of them."""
