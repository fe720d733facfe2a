"""Fit a driver to an open single-seater: from a tape measure to the dimensions for the bench."""
