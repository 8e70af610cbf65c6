"""The one schema of the content: what an entry may say, checked by pydantic and exported as JSON Schema."""
