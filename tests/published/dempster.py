"""Dempster's fractions as in Winter, Biomechanics and Motor Control of Human Movement (second-hand).

Percent: a segment's mass of the body's, its centre of its length from the upper end.
"""

import csv
from pathlib import Path

with Path(__file__).with_name("dempster_winter.csv").open(encoding="utf-8", newline="") as file:
    ROWS = {row["segment"]: row for row in csv.DictReader(file)}


def mass(segment):
    return float(ROWS[segment]["mass"])


def centre(segment):
    return float(ROWS[segment]["centre"])
