"""What reaches the reader's browser: the page's script, the worker, the offline copy and the words they show."""
