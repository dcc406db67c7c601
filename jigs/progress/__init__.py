"""How far each part is: the steps it goes through, what is done, what comes next."""
