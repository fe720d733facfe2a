"""The result as pictures and tables, as plain data."""
