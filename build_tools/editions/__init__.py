"""A league's own edition: what it is called, which rules bind, and what it adds, replaces and hides."""
