"""Charts of the shapes: how far each moves, and which part of the clock pushes it."""
