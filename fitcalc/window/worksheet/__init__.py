"""What was measured, row by row, in the order in which a person would measure."""
