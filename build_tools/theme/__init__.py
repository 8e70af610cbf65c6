"""The look: style sheet, page frame and the words that stand on every page."""
