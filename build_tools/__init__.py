"""Checks the content, draws the figures, makes the pages and joins them to the calculators."""
