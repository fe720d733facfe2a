"""Peers: six bare two-link legs written directly in numpy, and ikpy, a general chain solver, one case at a time."""

import numpy as np
from ikpy.chain import Chain
from ikpy.link import OriginLink, URDFLink
from timing import CAR, LINKS, ROBIN, least, reworks

from fitcalc.fit.chunks import evaluated
from fitcalc.posture.sit import sit

THIGH, SHANK, LEGS = 430.0, 420.0, 6


def legs(count):
    """Six hips and ankles a case, apart by less than the leg."""
    random = np.random.default_rng(1)
    hips = random.normal([1150.0, 0.0, 120.0], 20.0, (LEGS, count, 3))
    return hips, hips + random.uniform([-780.0, -60.0, -120.0], [-600.0, 60.0, 60.0], (LEGS, count, 3))


def bare(hips, ankles):
    """Knee and its angle of every leg."""
    found = []
    for hip, ankle in zip(hips, ankles, strict=True):
        span = ankle - hip
        reach = np.sqrt(np.einsum("ij,ij->i", span, span))
        along = span / reach[:, None]
        foot = (THIGH**2 - SHANK**2 + reach**2) / (2 * reach)
        high = np.sqrt(np.maximum(THIGH**2 - foot**2, 0.0))
        up = -along * along[:, 2:]
        up[:, 2] += 1.0
        up /= np.sqrt(np.einsum("ij,ij->i", up, up))[:, None]
        knee = hip + along * foot[:, None] + up * high[:, None]
        cosine = np.clip((THIGH**2 + SHANK**2 - reach**2) / (2 * THIGH * SHANK), -1.0, 1.0)
        found.append((knee, np.degrees(np.arccos(cosine))))
    return found


def general_leg():
    def joint(name, ahead, axis):
        return URDFLink(name, origin_translation=[ahead, 0, 0], origin_orientation=[0, 0, 0], rotation=axis)

    chain = [
        OriginLink(),
        joint("hip", 0.0, [0, 1, 0]),
        joint("splay", 0.0, [0, 0, 1]),
        joint("knee", THIGH / 1000, [0, 1, 0]),
        URDFLink(
            "ankle", origin_translation=[SHANK / 1000, 0, 0], origin_orientation=[0, 0, 0], joint_type="fixed"
        ),
    ]
    return Chain(chain, active_links_mask=[False, True, True, True, False])


def ikpy_case(chain, hips, ankles):
    for hip, ankle in zip(hips, ankles, strict=True):
        chain.inverse_kinematics((ankle - hip) / 1000, initial_position=[0, 0, 0, 0.3, 0])


def whole(count):
    for _ in evaluated(CAR, ROBIN, reworks(count), LINKS):
        pass


def run(count=100_000, few=20):
    one = least(lambda: bare(*legs_of), 3) / count if (legs_of := legs(count)) else 0.0
    setup = reworks(count)
    joints = least(lambda: sit(CAR, LINKS, setup), 3) / count
    every = least(lambda: whole(count), 1) / count
    chain, (hips, ankles) = general_leg(), legs(few)
    slow = least(lambda: [ikpy_case(chain, hips[:, at], ankles[:, at]) for at in range(few)], 1) / few
    print(f"| six bare two-link legs, numpy | {one * 1e6:.2f} us/case |")
    print(f"| all joints (sit) | {joints * 1e6:.2f} us/case | {joints / one:.1f} x bare |")
    print(f"| complete evaluation | {every * 1e6:.1f} us/case | {every / one:.0f} x bare |")
    print(
        f"| ikpy, six legs | {slow * 1e6:.0f} us/case | {slow / joints:,.0f} x joints, {slow / every:,.0f} x complete |"
    )


if __name__ == "__main__":
    run()
