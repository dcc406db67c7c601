"""What is needed, bought and delivered."""
