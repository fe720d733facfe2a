"""A complete evaluation of N cases: every joint, figure and check; by the parts it is made of; and memory."""

import resource
import sys

from timing import CAR, LINKS, ROBIN, least, reworks

from fitcalc.checks.case import Case
from fitcalc.checks.catalogue import MEASURES
from fitcalc.fit.chunks import evaluated
from fitcalc.fit.evaluate import evaluate
from fitcalc.posture.sit import sit

PART = 2_000


def whole(count):
    for _ in evaluated(CAR, ROBIN, reworks(count), LINKS):
        pass


def sizes(largest):
    count = 1
    while count <= largest:
        spent = least(lambda n=count: whole(n), 3 if count < 10_000 else 1)
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        print(
            f"| evaluate, N = {count:,} | {spent * 1e3:.1f} ms | {spent / count * 1e6:.1f} us/case | {peak:.0f} MB |"
        )
        count *= 10


def parts():
    setup = reworks(PART)
    case = Case(CAR, ROBIN, LINKS, setup, sit(CAR, LINKS, setup))
    print(f"| joints (sit) | {least(lambda: sit(CAR, LINKS, setup)) / PART * 1e6:.2f} us/case |")
    for measure in MEASURES:
        print(f"| {measure.__name__} | {least(lambda m=measure: m(case)) / PART * 1e6:.2f} us/case |")
    print(
        f"| evaluate, all of it | {least(lambda: evaluate(CAR, ROBIN, setup, links=LINKS)) / PART * 1e6:.1f} us/case |"
    )


if __name__ == "__main__":
    parts()
    sizes(1_000_000 if "--all" in sys.argv else 100_000)
