"""From files to a library: YAML with line numbers, the schema, and mistakes that say how to mend them."""
