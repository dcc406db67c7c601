"""What is done at the bench: stations, the table of a box, story sticks, the first article."""
