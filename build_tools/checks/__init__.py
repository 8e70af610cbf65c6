"""Checks across entries: every name leads somewhere, every mark is well formed."""
