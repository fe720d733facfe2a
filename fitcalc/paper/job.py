"""What one set of sheets is made from: the result, its record and parts, and the digest of its documents."""

from collections.abc import Sequence
from dataclasses import dataclass

from fitcalc.documents.digest import digest
from fitcalc.fit.certainty import FEW, Certainty, Sampling, certainty
from fitcalc.fit.result import Result
from fitcalc.paper.frame import About
from fitcalc.present.bench import bench
from fitcalc.present.bench_parts import Bench
from fitcalc.present.certainty_chart import certainty_charts
from fitcalc.present.certainty_record import certainty_record
from fitcalc.present.chart import Chart
from fitcalc.present.record import ResultRecord
from fitcalc.present.trade_chart import trade_chart
from fitcalc.present.usual_trade import usual_trade

ODDS_DRAWS = 20_000
"""Cars and bodies drawn for the odds of each check, as many as `fitcalc certainty` draws."""


@dataclass(frozen=True, eq=False)
class Job:
    """One rework for the bench.

    Attributes:
        found: the car as found.
        after: with the rework.
        record: of the result after it, as `--json` prints it.
        charts: plots that were asked for, behind those that every set has.
    """

    found: Result
    after: Result
    record: ResultRecord
    bench: Bench
    about: About
    charts: tuple[Chart, ...] = ()


def job(
    found: Result,
    after: Result,
    record: ResultRecord,
    date: str,
    sure: Certainty | None = None,
    charts: Sequence[Chart] = (),
) -> Job:
    """Everything that the sheets show, worked out once.

    Args:
        found: the car as found.
        after: with the rework.
        record: of the result after it.
        date: as it is to stand on the sheets.
        sure: of the same rework, for the intervals of the lengths to cut.
        charts: plots to put behind all else, as the trade map and the odds of each check.
    """
    return Job(found, after, record, bench(after, sure), about_result(after, date), tuple(charts))


def whole_job(
    found: Result,
    after: Result,
    record: ResultRecord,
    date: str,
    rules: str | None = None,
    with_odds: bool = False,
) -> Job:
    """As `job`, with the intervals drawn here, the trade map, and where it is asked for the odds of each check.

    Args:
        found: the car as found.
        after: with the rework.
        record: of the result after it.
        date: as it is to stand on the sheets.
        rules: as they were chosen for the results; the car's own when None.
        with_odds: adds pages on how sure it all is.
    """
    sampling = Sampling(ODDS_DRAWS if with_odds else FEW, FEW)
    sure = certainty(after.car, after.driver, after.setup, rules, sampling)
    trade = usual_trade(after, None, rules)
    charts = [] if trade is None else [trade_chart(trade)]
    charts += certainty_charts(certainty_record(after, sure)) if with_odds else []
    return job(found, after, record, date, sure, charts)


def about_result(result: Result, date: str) -> About:
    """What pages on one result belong to."""
    subject = f"{result.driver.name} in {result.car.name}; rules: {result.rules.id}"
    return About(subject, date, digest(result.car, result.driver, result.setup))
