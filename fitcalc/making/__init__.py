"""What is cut, drilled and welded, and whether it holds."""
