"""What is done at the bench: story sticks, the first article."""
