"""Random valid cars, drivers and reworks, evaluated in chunks: every number finite, everything out of reach named.

    nice python tests/reliability/random_cases.py [cases] [cars]

Cars, drivers and reworks come from the strategies of the tests; each car stands for many cases: its points and its
driver's body drawn within what the tape leaves open, and the rework anywhere within the bounds of a setup file.
"""

import sys
import time
import traceback
from collections import Counter
from dataclasses import fields, is_dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

import numpy as np
from hypothesis import HealthCheck, Phase, given, seed, settings
from pydantic import BaseModel

from fitcalc.documents.edit import field_at
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.tolerances import drawn
from fitcalc.posture.cases import spread
from tests import strategies

RULES = ("club", "historic", "single_seater", "student")
CHUNK = 2_000


def random_cars(count):
    """Cars with their drivers, as the strategies of the tests draw them."""
    found = []

    @seed(9)
    @settings(
        max_examples=count,
        database=None,
        deadline=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(strategies.cars(), strategies.drivers())
    def collect(car, driver):
        found.append((car, driver))

    collect()
    return found


def random_setup(random, count):
    """Reworks anywhere within the bounds of a setup file; one in four keeps each number as found."""
    spans = {path: (field_at(Setup, path).low, field_at(Setup, path).high) for path in PATHS}
    values = {
        path: random.uniform(*span, count) * (random.random(count) > 0.25) for path, span in spans.items()
    }
    return spread(Setup(), values)


def numbers(thing, path=""):
    """Every array of numbers in a result, with its path."""
    if isinstance(thing, np.ndarray):
        yield path, thing
    elif is_dataclass(thing) and not isinstance(thing, type):
        for each in fields(thing):
            yield from numbers(getattr(thing, each.name), f"{path}.{each.name}")
    elif isinstance(thing, dict):
        for name, part in thing.items():
            yield from numbers(part, f"{path}.{name}")
    elif isinstance(thing, (tuple, list)):
        for index, part in enumerate(thing):
            yield from numbers(part, f"{path}.{index}")
    elif isinstance(thing, BaseModel):
        return


def out_of_reach(result, count):
    """By limb, the cases in which it can't reach; a limb on no pedal or wheel has none."""
    return {
        path: np.broadcast_to(array > 0.0, (count,))
        for path, array in numbers(result.sitting, "sitting")
        if path.endswith("shortfall")
    }


def own_line(error):
    """Where in the program an exception came from."""
    frames = [
        frame
        for frame in traceback.extract_tb(error.__traceback__)
        if "fitcalc" in Path(frame.filename).parts
    ]
    return f"{Path(frames[-1].filename).name}:{frames[-1].lineno}" if frames else "outside"


def run(wanted, cars):
    random, start = np.random.default_rng(9), time.perf_counter()
    people = random_cars(cars)
    print(f"{len(people)} cars drawn in {time.perf_counter() - start:.0f} s", flush=True)
    done, held, unreachable, faults, slowest = 0, 0, 0, Counter(), 0.0
    while done < wanted:
        car, driver = people[done // CHUNK % len(people)]
        began = time.perf_counter()
        try:
            with np.errstate(invalid="raise", divide="raise", over="raise"):
                each = drawn(car, driver, CHUNK, int(random.integers(2**31)))
                result = evaluate(
                    each.car, driver, random_setup(random, CHUNK), RULES[done // CHUNK % 4], each.links
                )
                margins = [
                    (f"margin.{check.id}", check.margin)
                    for check in result.checks
                    if check.margin is not None
                ]
        except Exception as error:
            fault = f"{type(error).__name__}: {error} ({own_line(error)})"
            if fault not in faults:
                print(f"chunk {done // CHUNK}: {fault}", flush=True)
            faults[fault] += CHUNK
        else:
            for path, array in [
                *numbers(result.sitting, "sitting"),
                *numbers(result.work, "work"),
                *numbers(result.figures, "figures"),
                *margins,
            ]:
                held += array.size
                if not np.all(np.isfinite(array)):
                    faults[f"not finite: {path}"] += int(np.sum(~np.isfinite(array)))
            unreachable += int(np.sum(np.any(list(out_of_reach(result, CHUNK).values()), axis=0)))
        done += CHUNK
        slowest = max(slowest, time.perf_counter() - began)
        if done % 100_000 == 0:
            print(
                f"{done} cases, {sum(faults.values())} faults, {time.perf_counter() - start:.0f} s",
                flush=True,
            )
    print(
        f"{done} cases of {len(people)} cars in {time.perf_counter() - start:.0f} s, slowest {CHUNK}: {slowest:.1f} s"
    )
    print(f"{held} numbers looked at; {unreachable} cases named as out of reach")
    for fault, count in faults.most_common():
        print(f"FAULT {count} x {fault}")
    return 1 if faults else 0


if __name__ == "__main__":
    given_counts = [int(text) for text in sys.argv[1:]]
    sys.exit(run(*(given_counts + [1_000_000, 300][len(given_counts) :])))
