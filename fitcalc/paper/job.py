"""What one set of sheets is made from: the result, its record and parts, and the digest of its documents."""

from dataclasses import dataclass

from fitcalc.documents.digest import digest
from fitcalc.fit.certainty import Certainty
from fitcalc.fit.result import Result
from fitcalc.paper.frame import About
from fitcalc.present.bench import bench
from fitcalc.present.bench_parts import Bench
from fitcalc.present.record import ResultRecord


@dataclass(frozen=True, eq=False)
class Job:
    """One rework for the bench.

    Attributes:
        found: the car as found.
        after: with the rework.
        record: of the result after it, as `--json` prints it.
    """

    found: Result
    after: Result
    record: ResultRecord
    bench: Bench
    about: About


def job(found: Result, after: Result, record: ResultRecord, date: str, sure: Certainty | None = None) -> Job:
    """Everything that the sheets show, worked out once; `sure` gives the lengths to cut their intervals."""
    return Job(found, after, record, bench(after, sure), about_result(after, date))


def about_result(result: Result, date: str) -> About:
    """What pages on one result belong to."""
    subject = f"{result.driver.name} in {result.car.name}; rules: {result.rules.id}"
    return About(subject, date, digest(result.car, result.driver, result.setup))
