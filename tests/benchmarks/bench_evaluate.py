"""A complete evaluation of N cases: every joint, figure and check; by the parts it is made of; and memory.

With --all up to a million cases, some minutes. Seconds of the processor, which other work on the machine lengthens less.
"""

import resource
import sys

from timing import CAR, LINKS, ROBIN, reworks, spent

from fitcalc.checks.case import Case
from fitcalc.checks.catalogue import MEASURES
from fitcalc.fit.chunks import CHUNK, evaluated
from fitcalc.posture.sit import sit


def whole(count):
    setup = reworks(count)

    def run():
        for _ in evaluated(CAR, ROBIN, setup, LINKS):
            pass

    return spent(run, 5 if count < 10_000 else 1)


def sizes(largest):
    print("| cases | clock | processor | per case | peak memory |")
    print("|---|---|---|---|---|")
    count = 1
    while count <= largest:
        clock, processor = whole(count)
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        each = f"{processor / count * 1e6:,.0f} us"
        print(f"| {count:,} | {clock * 1e3:,.0f} ms | {processor * 1e3:,.0f} ms | {each} | {peak:.0f} MB |")
        count *= 10


def parts():
    setup = reworks(CHUNK)
    case = Case(CAR, ROBIN, LINKS, setup, sit(CAR, LINKS, setup))
    seated = spent(lambda: sit(CAR, LINKS, setup), 5)
    rows = [("all joints (sit)", seated)]
    rows += [(measure.__name__, spent(lambda m=measure: m(case), 5)) for measure in MEASURES]
    print(f"| part, {CHUNK:,} cases at once | us per case |")
    print("|---|---|")
    for name, (_, processor) in sorted(rows, key=lambda row: -row[1].processor):
        print(f"| {name} | {processor / CHUNK * 1e6:.1f} |")


if __name__ == "__main__":
    sizes(1_000_000 if "--all" in sys.argv else 100_000)
    parts()
