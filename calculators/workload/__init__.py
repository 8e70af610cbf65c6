"""Pitches thrown, rest owed and who may pitch, under rule sets that arrive as data."""
