"""Vectors, linkages and outlines over a leading case axis; knows no cars."""
