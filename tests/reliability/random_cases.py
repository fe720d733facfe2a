"""Random valid cars, drivers and reworks, evaluated in chunks: every number finite, everything out of reach named.

    PYTHONPATH=. nice python tests/reliability/random_cases.py [cases] [cars]

Cars and drivers come from the strategies of the tests; each stands for many cases: the car's points and the driver's
body drawn within what the tape leaves open, and the rework anywhere within the bounds of a setup file.
"""

import sys
import time
import traceback
from collections import Counter
from dataclasses import fields, is_dataclass
from pathlib import Path

import numpy as np
from hypothesis import HealthCheck, Phase, given, seed, settings

from fitcalc.documents.edit import field_at
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.tolerances import drawn
from fitcalc.posture.cases import spread
from tests import strategies

SEED = 9
RULES = ("club", "historic", "single_seater", "student")
CHUNK = 2_000


def random_people(count):
    """Cars with their drivers, as the strategies of the tests draw them."""
    found = []
    once = settings(
        max_examples=count,
        database=None,
        deadline=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )

    @seed(SEED)
    @once
    @given(strategies.cars(), strategies.drivers())
    def collect(car, driver):
        found.append((car, driver))

    collect()
    return found


def random_setup(random):
    """Reworks anywhere within the bounds of a setup file; one number in four stays as found."""
    spans = {path: (field_at(Setup, path).low, field_at(Setup, path).high) for path in PATHS}
    values = {
        path: random.uniform(*span, CHUNK) * (random.random(CHUNK) > 0.25) for path, span in spans.items()
    }
    return spread(Setup(), values)


def evaluated(random, car, driver, rules):
    """One chunk of cases, with any silent slip of arithmetic turned into an exception."""
    with np.errstate(invalid="raise", divide="raise", over="raise"):
        each = drawn(car, driver, CHUNK, int(random.integers(2**31)))
        result = evaluate(each.car, driver, random_setup(random), rules, each.links)
        margins = {check.id: check.margin for check in result.checks if check.margin is not None}
    return result.sitting, {
        "sitting": result.sitting,
        "work": result.work,
        "figures": result.figures,
        "margins": margins,
    }


def parts(thing):
    """What a part of a result consists of, by name."""
    if is_dataclass(thing):
        return {each.name: getattr(thing, each.name) for each in fields(thing)}
    if isinstance(thing, (tuple, list)):
        return dict(enumerate(thing))
    return thing if isinstance(thing, dict) else {}


def numbers(thing, path=""):
    """Every array of numbers in a result, with its path."""
    if isinstance(thing, np.ndarray):
        yield path, thing
    for name, part in parts(thing).items():
        yield from numbers(part, f"{path}.{name}")


def out_of_reach(sitting):
    """How many cases say of a limb that it can't reach."""
    short = [
        np.broadcast_to(array > 0.0, (CHUNK,))
        for path, array in numbers(sitting)
        if path.endswith("shortfall")
    ]
    return int(np.sum(np.any(short, axis=0)))


def own_line(error):
    """Where in the program an exception came from."""
    frames = [
        frame
        for frame in traceback.extract_tb(error.__traceback__)
        if "fitcalc" in Path(frame.filename).parts
    ]
    return f"{Path(frames[-1].filename).name}:{frames[-1].lineno}" if frames else "outside"


def one_chunk(random, car, driver, rules, seen, faults):
    """Adds one chunk to what was seen and to the faults."""
    try:
        sitting, everything = evaluated(random, car, driver, rules)
    except Exception as error:
        faults[f"{type(error).__name__}: {error} ({own_line(error)})"] += CHUNK
        return
    seen["out of reach"] += out_of_reach(sitting)
    for path, array in numbers(everything):
        seen["numbers"] += array.size
        wrong = int(np.sum(~np.isfinite(array)))
        faults.update({f"not finite: {path}": wrong} if wrong else {})


def run(wanted, cars):
    """Evaluates so many cases of so many cars; 1 where anything is wrong."""
    random, start, seen, faults = np.random.default_rng(SEED), time.perf_counter(), Counter(), Counter()
    people = random_people(cars)
    chunks = -(-wanted // CHUNK)
    for chunk in range(chunks):
        one_chunk(random, *people[chunk % len(people)], RULES[chunk % len(RULES)], seen, faults)
    print(f"{chunks * CHUNK} cases of {len(people)} cars in {time.perf_counter() - start:.0f} s")
    print(f"{seen['numbers']} numbers looked at; {seen['out of reach']} cases named as out of reach")
    for fault, count in faults.most_common():
        print(f"FAULT {count} x {fault}")
    return 1 if faults else 0


if __name__ == "__main__":
    counts = [int(text) for text in sys.argv[1:]]
    sys.exit(run(*counts, *(1_000_000, 300)[len(counts) :]))
