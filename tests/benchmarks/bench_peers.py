"""Peers: six bare two-link legs written directly in numpy, and ikpy, a general chain solver, one case at a time.

Seconds of the processor, which other work on the machine lengthens less. The bare legs are timed in one call and in the
same chunks as the evaluation; the quicker counts.
"""

import numpy as np
from ikpy.chain import Chain
from ikpy.link import OriginLink, URDFLink
from timing import CAR, LINKS, ROBIN, in_chunks, reworks, spent

from fitcalc.checks.catalogue import CLOSED_FORM
from fitcalc.fit.chunks import CHUNK, evaluated
from fitcalc.fit.evaluate import evaluate
from fitcalc.geometry.linkage import two_link
from fitcalc.geometry.side import point
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


def own(hips, ankles):
    """The same by this program's two links."""
    thigh, shank, up = np.array([THIGH]), np.array([SHANK]), np.array([[0.0, 0.0, 1.0]])
    return [two_link(hip, ankle, thigh, shank, up) for hip, ankle in zip(hips, ankles, strict=True)]


def whole(setup):
    for _ in evaluated(CAR, ROBIN, setup, LINKS):
        pass


def processor(run, cases, times=3):
    """Microseconds per case."""
    return spent(run, times).processor / cases * 1e6


def run(count=100_000, few=20):
    hips, ankles = legs(count)
    cut = [slice(start, start + CHUNK) for start in range(0, count, CHUNK)]
    one = min(
        processor(lambda: bare(hips, ankles), count),
        processor(lambda: [bare(hips[:, part], ankles[:, part]) for part in cut], count),
    )
    ends = [[[point(*leg[part].T) for leg in side] for side in (hips, ankles)] for part in cut]
    links = processor(lambda: [own(*both) for both in ends], count)
    parts, setup = in_chunks(count), reworks(count)
    joints = processor(lambda: [sit(CAR, LINKS, part) for part in parts], count)
    closed = processor(
        lambda: [evaluate(CAR, ROBIN, part, links=LINKS, measures=CLOSED_FORM) for part in parts], count, 1
    )
    every = processor(lambda: whole(setup), count, 1)
    chain = general_leg()
    slow = processor(lambda: [ikpy_case(chain, hips[:, at], ankles[:, at]) for at in range(few)], few, 1)
    print(f"| {count:,} cases (ikpy: {few}) | us per case | bare legs = 1 | ikpy is so many times slower |")
    print("|---|---|---|---|")
    for name, took in (
        ("six bare two-link legs in numpy", one),
        ("six legs by geometry.linkage, with shortfall", links),
        ("all joints", joints),
        ("all joints and all closed-form checks", closed),
        ("complete evaluation", every),
        ("ikpy, six legs", slow),
    ):
        print(f"| {name} | {took:,.2f} | {took / one:,.1f} | {slow / took:,.0f} |")


if __name__ == "__main__":
    run()
