"""Tables and charts of a study in the units that the person reads; a study itself is in mm."""

from fitcalc.present.tables import Table
from fitcalc.window.shown import Shown

IN_MM = Shown()


def in_units(table: Table, shown: Shown) -> Table:
    """The table with its lengths in the units shown."""
    return table
