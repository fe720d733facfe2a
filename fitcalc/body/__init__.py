"""From any set of body measurements to link lengths with intervals."""
