"""What is printed: cards, sheets and labels as marks in millimetres, and the writers."""
