"""The catalogue of words: taken out of the code and the templates, and read back in a language."""
