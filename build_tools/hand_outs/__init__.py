"""What a team takes to the field on paper: pocket cards, sheets for pencil, a set for the bag."""
