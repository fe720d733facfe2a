"""Joints and angles of the seated driver by name."""

from fitcalc.posture.sit import Sitting
from fitcalc.units import Deg, Points


def joints_of(sitting: Sitting) -> dict[str, Points]:
    """Every joint by name. The left leg is on its leftmost pedal, the right leg on its rightmost, both released."""
    trunk = sitting.trunk
    joints = {
        "hip": trunk.hip,
        "hip_left": sitting.hips[0],
        "hip_right": sitting.hips[1],
        "shoulder": trunk.shoulder,
        "shoulder_left": trunk.shoulder_left,
        "shoulder_right": trunk.shoulder_right,
        "cervicale": trunk.cervicale,
        "eye": trunk.eye,
        "head_top": trunk.head_top,
        "helmet": trunk.helmet,
    }
    for name, at in sitting.pedals.items():
        joints |= {
            f"knee_{name}": at.rest.knee,
            f"ankle_{name}": at.rest.ankle,
            f"ball_{name}": at.rest.foot.ball,
        }
        joints |= {f"knee_{name}_pressed": at.full.knee, f"ankle_{name}_pressed": at.full.ankle}
    for side, arm in zip(("left", "right"), sitting.hands or (), strict=False):
        joints |= {f"elbow_{side}": arm.elbow, f"grip_{side}": arm.grip}
    return joints


def angles_of(sitting: Sitting) -> dict[str, Deg]:
    """Every joint angle by name, deg; docs/frame.md says from where to where."""
    angles = {"recline": sitting.trunk.recline}
    for name, at in sitting.pedals.items():
        angles |= {
            f"knee_{name}": at.rest.knee_angle,
            f"knee_{name}_pressed": at.full.knee_angle,
            f"hip_{name}": at.rest.hip_angle,
            f"ankle_{name}": at.rest.ankle_angle,
            f"ankle_{name}_pressed": at.full.ankle_angle,
        }
    for side, arm in zip(("left", "right"), sitting.hands or (), strict=False):
        angles |= {f"elbow_{side}": arm.elbow_angle, f"shoulder_{side}": arm.shoulder_angle}
    return angles
