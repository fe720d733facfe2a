"""What one set of sheets is made from: the result, its record and parts, and the digest of its documents."""

import hashlib
from dataclasses import dataclass

from fitcalc.documents.fields import Document
from fitcalc.fit.certainty import Certainty
from fitcalc.fit.result import Result
from fitcalc.paper.frame import About
from fitcalc.present.bench import bench
from fitcalc.present.bench_parts import Bench
from fitcalc.present.record import ResultRecord

DIGITS = 12
"""Of the digest's 64 hexadecimal digits, how many stand on a sheet."""


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
    subject = f"{after.driver.name} in {after.car.name}; rules: {after.rules.id}"
    about = About(subject, date, digest(after.car, after.driver, after.setup))
    return Job(found, after, record, bench(after, sure), about)


def digest(*documents: Document) -> str:
    """Short SHA-256 of documents by what they say, whatever their layout and comments."""
    content = "\n".join(document.model_dump_json() for document in documents)
    return hashlib.sha256(content.encode()).hexdigest()[:DIGITS]
