"""What a longer calculation found, ready to be shown, and how each of them is worked out."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from itertools import combinations

from fitcalc.documents.setup import Setup
from fitcalc.fit.progress import Progress
from fitcalc.present.chart import Chart
from fitcalc.present.tables import Table
from fitcalc.window.work import Work

Pair = tuple[str, str]
DRAWS, BODIES = 20_000, 300
"""As on the command line: a probability is then known within about 0.5 %, a share of people within about 3 %."""


@dataclass(frozen=True)
class Trial:
    """A rework that can be tried.

    Attributes:
        words: what it is.
        setups: the rework of each driver of the work, by place.
    """

    words: str
    setups: Mapping[int, Setup]


@dataclass(frozen=True, eq=False)
class Study:
    """One calculation, whole.

    Attributes:
        heading: what came out, in lines.
        trials: reworks that it proposes.
        pair: paths of the two changes on the map, where a place on the chart is a rework.
        pairs: pairs that there may be a map of.
        odds: by check, how likely it passes, 0 to 1.
        again: paths of the measurements worth taking again, with words.
        is_weighed: whether what work costs decides about it.
        has_pads: whether each driver may bolt pads of his own on; None where that is not asked.
    """

    heading: str
    tables: tuple[Table, ...]
    charts: tuple[Chart, ...] = ()
    trials: tuple[Trial, ...] = ()
    pair: Pair | None = None
    pairs: tuple[Pair, ...] = ()
    odds: Mapping[str, float] = field(default_factory=dict)
    again: tuple[tuple[str, str], ...] = ()
    is_weighed: bool = False
    has_pads: bool | None = None


def trade_study(work: Work, rules: str, pair: Pair | None, progress: Progress) -> Study:
    """The map of two changes about the rework as it is."""
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.fit.trade_axes import usual_pairs
    from fitcalc.fit.variables import variables_for
    from fitcalc.present.trade_chart import trade_chart
    from fitcalc.present.trade_tables import trade_heading, trade_tables
    from fitcalc.present.usual_trade import usual_trade

    car, chosen = work.car.document, rules or None
    result = evaluate(car, work.driver, work.setup, chosen)
    fitted = fit(car, work.driver, chosen).after.setup
    record = usual_trade(result, fitted, chosen, pair, progress)
    if record is None:
        return Study("This car lets no two such things move: give it rails, or pedals that take a bar.", ())
    movable = [each.path for each in variables_for(car)]
    return Study(
        trade_heading(record),
        tuple(trade_tables(record)),
        (trade_chart(record),),
        pair=(record.x.path, record.y.path),
        pairs=tuple(dict.fromkeys((*usual_pairs(car), *combinations(movable, 2)))),
    )


def certainty_study(work: Work, rules: str, progress: Progress) -> Study:
    """How sure the rework is as it stands."""
    from fitcalc.fit.certainty import Sampling, certainty
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.present.certainty_chart import certainty_charts
    from fitcalc.present.certainty_record import certainty_record
    from fitcalc.present.certainty_tables import certainty_heading, certainty_tables

    car, driver, chosen = work.car.document, work.driver, rules or None
    result = evaluate(car, driver, work.setup, chosen)
    sure = certainty(car, driver, work.setup, chosen, Sampling(draws=DRAWS), progress)
    record = certainty_record(result, sure)
    return Study(
        certainty_heading(record),
        tuple(certainty_tables(record)),
        tuple(certainty_charts(record)),
        odds={each.id: each.passes for each in record.odds},
        again=tuple((each.path, each.title) for each in record.again),
    )


def search_study(work: Work, rules: str, progress: Progress) -> Study:
    """The least work that passes, the next best, and what shuts out a better one."""
    from fitcalc.fit.solve import solve
    from fitcalc.present.solve_record import solve_record
    from fitcalc.present.solve_tables import solve_heading, solve_tables

    car, driver, chosen, effort = work.car.document, work.driver, rules or None, work.effort.document
    found = solve(car, driver, chosen, effort, progress=progress)
    record = solve_record(car, driver, found, chosen, effort)
    trials = tuple(
        Trial(
            f"{'; '.join(change.words for change in each.changes) or 'leave the car as found'} "
            f"({each.minutes:.0f} min{'' if each.passes else ', does not pass'})",
            {work.chosen: each.setup},
        )
        for each in (record.best, *record.others)
    )
    return Study(solve_heading(record), tuple(solve_tables(record)), trials=trials, is_weighed=True)


def shared_study(work: Work, rules: str, pads: bool, progress: Progress) -> Study:
    """One set of holes and bars for all drivers of the work; with `pads`, each may bolt pads of his own on."""
    from fitcalc.fit.shared import PAD, QUICK, share
    from fitcalc.present.shared_car_record import shared_car_record
    from fitcalc.present.shared_car_tables import shared_car_heading, shared_car_tables

    car, chosen, effort = work.car.document, rules or None, work.effort.document
    drivers = [person.driver.document for person in work.occupants]
    own = tuple(f"{name}{PAD}" for name in car.fitted_pedals()) if pads else ()
    found = share(car, drivers, rules=chosen, effort=effort, quick=(*QUICK, *own), progress=progress)
    record = shared_car_record(car, drivers, found, chosen, effort)
    trial = Trial("every driver as above", {at: each.setup for at, each in enumerate(record.drivers)})
    return Study(
        shared_car_heading(record),
        tuple(shared_car_tables(record)),
        trials=(trial,),
        is_weighed=True,
        has_pads=pads,
    )


def straps_study(work: Work, rules: str, progress: Progress) -> Study:
    """Straps, places of their anchors and slots to cut, for all drivers of the work, each with his own rework."""
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.present.strap_record import straps_record
    from fitcalc.present.strap_tables import strap_heading, strap_tables

    results = []
    for at, each in enumerate(work.occupants, start=1):
        results.append(evaluate(work.car.document, each.driver.document, each.setup.document, rules or None))
        progress(at / len(work.occupants))
    record = straps_record(results)
    return Study(strap_heading(record), tuple(strap_tables(record)))


def coverage_study(work: Work, rules: str, progress: Progress) -> Study:
    """Who of the published population fits the car with this rework."""
    from fitcalc.body.survey import Sex
    from fitcalc.fit.coverage import coverage
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.present.coverage_record import coverage_record
    from fitcalc.present.coverage_tables import coverage_charts, coverage_heading, coverage_tables

    car, chosen = work.car.document, rules or None
    sexes: tuple[Sex, ...] = ("female", "male")

    def part(at: int) -> Progress:
        return lambda done: progress((at + done) / len(sexes))

    found = [(sex, coverage(car, sex, work.setup, BODIES, chosen, part(at))) for at, sex in enumerate(sexes)]
    record = coverage_record(evaluate(car, work.driver, work.setup, chosen), found)
    return Study(coverage_heading(record), tuple(coverage_tables(record)), tuple(coverage_charts(record)))


def with_trial(work: Work, trial: Trial) -> Work:
    """The work with a proposed rework in the place of each driver's own."""
    people = tuple(
        replace(person, setup=replace(person.setup, document=trial.setups.get(at, person.setup.document)))
        for at, person in enumerate(work.occupants)
    )
    return replace(work, occupants=people)
