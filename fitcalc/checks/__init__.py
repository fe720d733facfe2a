"""Each figure against its published limit."""
