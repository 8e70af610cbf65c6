"""Stands in for the handbook's calculators where a test only needs one that answers."""
