"""Forces that a tight strap puts on an edge and on the spine."""

import numpy as np

from fitcalc.geometry.degrees import cosd, sind
from fitcalc.units import Deg, Newton


def edge_force(before: Newton, after: Newton, turn: Deg) -> Newton:
    """Force of a strap on the edge that turns it; `turn` is the change of its direction.

    Source: triangle of forces; with both tensions equal it is 2 T sin(turn / 2).
    """
    square = before * before + after * after - 2.0 * before * after * cosd(turn)
    return np.sqrt(np.maximum(square, 0.0))


def spine_load(chest: Newton, rear: Newton, side_angle: Deg, recline: Deg) -> Newton:
    """Load along the spine from one shoulder strap: the run over the chest, and the run behind the shoulder.

    Positive presses the spine together. The rear run is square to the spine where the strap drops by just
    the angle that the torso leans back; lower anchors press, higher ones stretch.

    Source: statics; the chest run is taken parallel to the torso line.
    """
    return chest + rear * sind(side_angle - recline)
