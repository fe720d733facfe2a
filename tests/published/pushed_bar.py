"""The stress that the program gives a bar pushed or pulled off its middle."""

import numpy as np

from fitcalc.making.bar_loads import RootLoad
from fitcalc.making.bar_modes import bar_modes
from fitcalc.making.materials import material


def greatest_stress(section, push, moment):
    """Bending and direct stress, without sign, of a force along the bar and a moment in its depth."""
    none = np.zeros(len(section.area))
    push, moment = none + push, none + moment
    load = RootLoad(none, push, none, none, moment, none, none, none)
    return bar_modes(load, section, material("S355J2"), none + 355.0)[0].demand
