"""As built as one JSON record: what was made, what was read, what would explain the difference, and the history."""

from typing import Literal

from pydantic import Field

from fitcalc.checks.check import Status
from fitcalc.documents.as_built import Tool
from fitcalc.documents.setup import Setup
from fitcalc.present.parts import Record


class WantedRecord(Record):
    """One thing that may be entered after the work."""

    group: str
    key: str
    title: str
    unit: str
    tool: str
    error: float = Field(description="What the tool promises by hand, plus or minus.")
    expected: float | None = Field(description="As planned, or as predicted.")
    low: float | None = Field(description="Lower end of the prediction's 90 % interval.")
    high: float | None
    how: str
    allowed: str


class MadeRecord(Record):
    """One thing set or cut, as planned and as made."""

    key: str
    title: str
    unit: str
    planned: float
    made: float
    difference: float
    tolerance: float | None = Field(
        description="General tolerance of a length, plus or minus; null for angles."
    )
    within: bool | None


class ReadingRecord(Record):
    """One reading beside its prediction; null where there is none."""

    figure: str
    label: str
    unit: str
    measured: float
    error: float
    tool: Tool
    note: str
    predicted: float | None
    difference: float | None = Field(description="Measured less predicted.")
    low: float | None = Field(description="Lower end of the prediction's 90 % interval.")
    high: float | None
    expected: bool | None = Field(description="Whether reading and interval agree within the tool's error.")
    status: Status | None = Field(description="Of the check with the reading in place of the prediction.")
    left: float | None = Field(description="What would still differ with all shifts of `would_explain`.")


class ShiftRecord(Record):
    """One figure that would explain the difference. It is arithmetic, not a finding."""

    kind: Literal["body", "proportion", "car", "made"]
    path: str
    title: str
    unit: str
    now: float
    u: float = Field(description="Standard uncertainty of the figure.")
    together: float = Field(description="By how much it would be off if all figures shared the difference.")
    alone: float = Field(description="By how much if it alone were off.")
    explains: float = Field(description="Part of the difference that it alone would then explain, 0 to 1.")


class ExplanationRecord(Record):
    """What would explain the differences."""

    surprise: float = Field(
        description="Size of the differences over what uncertainties let expect; 1 = ordinary."
    )
    verdict: str
    would_explain: list[ShiftRecord]


class BuildRecord(Record):
    """One build of the history."""

    date: str
    car: str
    documents: str
    note: str
    made: Setup
    readings: dict[str, float]
    predicted: dict[str, float]


class BuiltRecord(Record):
    """What was made and measured, against the plan and the prediction. mm, deg, kg."""

    format: Literal[1] = 1
    command: Literal["built"] = "built"
    date: str
    car: str
    driver: str
    rules: str
    documents: str = Field(description="Digest of car, driver and planned rework, as on the bench sheets.")
    planned: Setup
    made: Setup
    wanted: list[WantedRecord] = Field(description="What may be entered; only where nothing was read.")
    work: list[MadeRecord]
    readings: list[ReadingRecord]
    explanation: ExplanationRecord | None
    history: list[BuildRecord]
    cautions: list[str]

    @property
    def is_empty(self) -> bool:
        """Whether nothing was entered."""
        return not self.readings and not self.work

    @property
    def anything_fails(self) -> bool:
        """Whether a limit that must hold is broken by a reading."""
        return any(row.status == "fail" for row in self.readings)
