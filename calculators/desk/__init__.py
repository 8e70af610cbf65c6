"""What a reader meets: fields with units and ranges, answers, figures; one module a calculator."""
