"""What part of the published population fits one car with its adjustments, and which limit turns away whom."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np

from fitcalc.body.dimensions import MASS, prior, reported, titles
from fitcalc.body.links import links_of
from fitcalc.body.survey import Sex
from fitcalc.checks.check import ROUNDING
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS, crossed, setup_of, taken
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.placing import COARSE, thinned
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.shared import QUICK, TRIES
from fitcalc.fit.sweep import required_room
from fitcalc.fit.variables import Variable, value_at, variables_for
from fitcalc.posture.cases import spread
from fitcalc.units import Bools, Floats

SEED = 1
"""Same bodies every time."""
CHUNK = 2_000
"""Cases worked out at a time: what bounds the memory."""
ALWAYS = 1e-6
"""A margin that differs by less from body to body, mm or deg, has nothing to do with the body."""


@dataclass(frozen=True, eq=False)
class TurnedAway:
    """A limit that is broken for some bodies however the car is set.

    Attributes:
        share: of all bodies, 0 to 1.
        alone: share for which it is the only limit broken.
        stature: 5 %, 50 % and 95 % of the stature of those turned away, mm.
    """

    check: str
    label: str
    share: float
    alone: float
    stature: tuple[float, float, float]


@dataclass(frozen=True, eq=False)
class Coverage:
    """Who fits.

    Attributes:
        bodies: how many were drawn.
        fits: share of them, 0 to 1, that breaks nothing with some quick change.
        stature: of each body, `(n,)`, and `fitting`, whether it fits.
        turned_away: by share, largest first.
        regardless: ids of checks that are broken for everybody by the same amount; they are no part of `fits`.
        adjustments: paths that were set for each body.
        complete: False where it was stopped before its end; then fewer bodies were looked at.
    """

    bodies: int
    fits: float
    stature: Floats
    fitting: Bools
    turned_away: tuple[TurnedAway, ...]
    regardless: tuple[str, ...]
    adjustments: tuple[str, ...]
    complete: bool


def population(sex: Sex, count: int, seed: int) -> dict[str, Floats]:
    """Bodies as the survey has them, dimension -> `(count,)`, mm and kg.

    Source: joint normal on the published means, spreads and correlations (`body.survey`).
    """
    model = prior(sex)
    draws = np.random.default_rng(seed).standard_normal((count, len(model.names)))
    body = (model.mean + draws @ np.linalg.cholesky(model.covariance).T) @ reported(model.names).T
    bodies = dict(zip(titles(), body.T, strict=True))
    return bodies | {MASS: np.exp(bodies[MASS])}


def coverage(
    car: Car,
    sex: Sex,
    setup: Setup | None = None,
    count: int = 300,
    rules: str | None = None,
    progress: Progress = unheeded,
) -> Coverage:
    """Draw bodies of one sex and seat each as well as the quick changes allow.

    Args:
        car: as found.
        sex: which survey.
        setup: what has been fixed; as found when None.
        count: how many bodies.
        rules: id of the limit set; the car's own when None.
        progress: told the part done; answers whether to go on.
    """
    bodies = population(sex, count, SEED)
    driver = Driver(name="somebody", sex=sex, measurements=Measurements(stature=1700.0))
    adjustments = {each.path: each for each in variables_for(car) if each.path in QUICK}
    ways = _ways(adjustments, setup or Setup())
    each = max(1, CHUNK // len(ways["seat_travel"]))
    found: list[tuple[dict[str, Floats], dict[str, str]]] = []
    for start in range(0, count, each):
        some = {name: values[start : start + each] for name, values in bodies.items()}
        found.append(_rooms(car, driver, some, ways, rules))
        if not progress(min(start + each, count) / count):
            break
    done = min(count, len(found) * each)
    rooms = {id: np.concatenate([part[id] for part, _ in found if id in part]) for id in found[0][0]}
    summed = _summed(rooms, found[0][1], bodies["stature"][:done])
    return replace(summed, adjustments=tuple(adjustments), complete=done == count)


def _ways(adjustments: Mapping[str, Variable], setup: Setup) -> dict[str, Floats]:
    """Every quick change on top of what is fixed."""
    fixed = {path: value_at(setup, path) for path in PATHS}
    free = {path: thinned(each, COARSE.get(path, TRIES)) for path, each in adjustments.items()}
    grid = crossed(free) if free else {}
    count = max((len(values) for values in grid.values()), default=1)
    return {path: np.broadcast_to(value, (count,)) for path, value in (fixed | grid).items()}


def _rooms(
    car: Car, driver: Driver, bodies: Mapping[str, Floats], ways: Mapping[str, Floats], rules: str | None
) -> tuple[dict[str, Floats], dict[str, str]]:
    """Margins of every check for each body at its best quick change, and their labels."""
    count, many = len(bodies["stature"]), len(ways["seat_travel"])
    links = taken(links_of(bodies, driver), np.repeat(np.arange(count), many))
    setup = setup_of({path: np.tile(value, count) for path, value in ways.items()})
    checks = evaluate(spread(car, {}), driver, setup, rules, links).checks
    every = {check.id: (check.label, room) for check in checks if (room := required_room(check)) is not None}
    rooms = {
        id: np.broadcast_to(room, (count * many,)).reshape(count, many) for id, (_, room) in every.items()
    }
    lacking = np.sum([np.maximum(-room, 0.0) for room in rooms.values()], axis=0)
    best = np.argmin(np.round(lacking, 6), axis=1)
    at = np.arange(count)
    return {id: room[at, best] for id, room in rooms.items()}, {id: label for id, (label, _) in every.items()}


def _summed(rooms: Mapping[str, Floats], words: Mapping[str, str], stature: Floats) -> Coverage:
    regardless = [id for id, room in rooms.items() if np.ptp(room) < ALWAYS and room[0] < -ROUNDING]
    broken = {
        id: room < -ROUNDING
        for id, room in rooms.items()
        if id not in regardless and len(room) == len(stature)
    }
    counts = np.sum(list(broken.values()), axis=0)
    turned = sorted(_turned_away(broken, words, stature, counts), key=lambda each: -each.share)
    return Coverage(
        bodies=len(stature),
        fits=float(np.mean(counts == 0)),
        stature=stature,
        fitting=counts == 0,
        turned_away=tuple(turned),
        regardless=tuple(regardless),
        adjustments=(),
        complete=True,
    )


def _turned_away(
    broken: Mapping[str, Bools], words: Mapping[str, str], stature: Floats, counts: Floats
) -> Iterator[TurnedAway]:
    for id, away in broken.items():
        if np.any(away):
            low, middle, high = np.quantile(stature[away], [0.05, 0.5, 0.95])
            alone = float(np.mean(away & (counts == 1)))
            yield TurnedAway(
                id, words[id], float(np.mean(away)), alone, (float(low), float(middle), float(high))
            )
