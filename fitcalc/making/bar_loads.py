"""What a foot on an extended pedal does to the bars that carry the pad.

One bar may run on along the arm, another may stand the pad off toward the driver; each is held at its root
(first bolt line or weld) and carries the pad at its free end.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.degrees import cosd, sind
from fitcalc.units import Deg, Floats, Mm, Newton


@dataclass(frozen=True, eq=False)
class FootForce:
    """Force on the pad.

    Attributes:
        force: its size.
        lean: off the arm's normal in side view, positive when it leans toward the arm's free end.
        sideways: off the side view, either way.
    """

    force: Newton
    lean: Deg
    sideways: Deg


@dataclass(frozen=True, eq=False)
class Reach:
    """How far the bars carry the pad.

    Attributes:
        longer: root to pad along the arm; 0 without such a bar.
        stand_off: root to pad square to the arm; 0 without such a bar.
        offset: foot contact off the stand-off bar's axis, along the arm.
    """

    longer: Mm
    stand_off: Mm
    offset: Mm


@dataclass(frozen=True, eq=False)
class RootLoad:
    """What one bar carries at its root; moments in N mm.

    Attributes:
        length: root to free end.
        push: along the bar, compression positive.
        across: along the section's depth.
        sideways: along the section's width.
        bend_depth: moment that bends in depth.
        bend_width: moment that bends in width.
        twist: torque.
        offset: of the push from the bar's axis, along the depth.
    """

    length: Mm
    push: Newton
    across: Newton
    sideways: Newton
    bend_depth: Floats
    bend_width: Floats
    twist: Floats
    offset: Mm


def foot_parts(foot: FootForce) -> tuple[Newton, Newton, Newton]:
    """The foot force square to the arm, along the arm (to the free end) and sideways."""
    in_plane = foot.force * cosd(foot.sideways)
    return in_plane * cosd(foot.lean), in_plane * sind(foot.lean), foot.force * sind(foot.sideways)


def on_longer_arm(foot: FootForce, reach: Reach) -> RootLoad:
    """Load at the root of the bar that runs on along the arm."""
    square, along, aside = foot_parts(foot)
    return RootLoad(
        length=reach.longer,
        push=-along,
        across=square,
        sideways=np.abs(aside),
        bend_depth=np.abs(square * reach.longer) + np.abs(along) * reach.stand_off,
        bend_width=np.abs(aside) * reach.longer,
        twist=np.abs(aside) * reach.stand_off,
        offset=np.zeros_like(reach.longer),
    )


def on_stand_off(foot: FootForce, reach: Reach) -> RootLoad:
    """Load at the root of the bar that stands the pad off."""
    square, along, aside = foot_parts(foot)
    return RootLoad(
        length=reach.stand_off,
        push=square,
        across=np.abs(along),
        sideways=np.abs(aside),
        bend_depth=np.abs(along) * reach.stand_off + np.abs(square * reach.offset),
        bend_width=np.abs(aside) * reach.stand_off,
        twist=np.abs(aside * reach.offset),
        offset=np.abs(reach.offset),
    )
