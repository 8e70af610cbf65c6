"""From a library to pages: real Markdown files in build/docs, and what the calculators need beside them."""
