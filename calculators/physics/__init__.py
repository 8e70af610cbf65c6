"""The flight of a pitched ball: units, air, ball, spin, flight, movement, and the way back."""
