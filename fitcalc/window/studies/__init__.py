"""Longer calculations beside the work: what each is, how it is asked for, and the window that shows it."""
