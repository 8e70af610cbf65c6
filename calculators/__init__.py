"""What the handbook computes: plain Python, standard library only, the same in CPython and in the browser."""
