"""What was really made and measured after the work: one file per driver, the builds in order."""

from datetime import date
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from fitcalc.documents.fields import Document, clash, mm, part, quantity, whole
from fitcalc.documents.setup import Setup
from fitcalc.errors import InputError

Tool = Literal["angle finder", "rule", "tape", "feeler gauge", "calliper", "scales", "other"]
DAY = r"^\d{4}-\d{2}-\d{2}$"


class Reading(Document):
    """One thing measured with the driver belted in."""

    figure: str = part("figure", "Id of the check, as `posture.knee_pressed.brake`, or a joint angle's name.")
    value: float = quantity("value", "As read, in the figure's own unit.", "", (-100_000, 100_000))
    error: float = quantity(
        "error", "What the tool can promise, plus or minus; left out, the usual one.", "", (0, 1_000), 1.0
    )
    tool: Tool = part("tool", "What it was measured with.", "other")
    note: str = part("note", "Anything worth remembering about this reading.", "")
    predicted: float | None = quantity(
        "predicted", "What the calculation said on that day.", "", (-1e9, 1e9), None
    )
    low: float | None = quantity("low", "Lower end of the prediction's 90 % interval.", "", (-1e9, 1e9), None)
    high: float | None = quantity(
        "high", "Upper end of the prediction's 90 % interval.", "", (-1e9, 1e9), None
    )


class CutBar(Document):
    """The length that one bar really has."""

    bar: str = part("bar", "Which one, as `brake.stand_off` or `clutch.longer_arm`.")
    length: float = mm("length", "Over all, end to end.", (1, 1_000))


class Measured(Document):
    """What a person enters after the work: a file of its own, or one entry of the history."""

    made: Setup = whole("made", "The rework as it was really made; what is left out is as planned.", Setup)
    bars: Annotated[tuple[CutBar, ...], Field(max_length=20)] = part(
        "bars", "Lengths of the bars as they were cut.", ()
    )
    readings: Annotated[tuple[Reading, ...], Field(max_length=500)] = part(
        "readings", "What was measured.", ()
    )
    note: str = part("note", "Anything worth remembering about it.", "")


class Readings(Measured):
    """A file of readings that is not yet in the history."""

    format: Literal[1] = part("format", "Version of the file: 1.", 1)
    date: str = Field(
        "", title="date", description="Day of the measuring, as 2026-05-31.", pattern=rf"^$|{DAY}"
    )

    @model_validator(mode="after")
    def _is_a_day(self) -> Self:
        _require_day(self.date)
        return self


class Build(Measured):
    """One state of the car with the driver in it."""

    date: str = Field(title="date", description="Day of the measuring, as 2026-05-31.", pattern=DAY)
    car: str = part("car", "Name of the car.")
    documents: str = part("documents", "Digest on the sheets that it was made from.", "")

    @model_validator(mode="after")
    def _is_a_day(self) -> Self:
        _require_day(self.date)
        return self


class History(Document):
    """Every build of one driver, oldest first."""

    format: Literal[1] = part("format", "Version of the as-built file: 1.", 1)
    driver: str = part("driver", "Whose builds these are.")
    builds: Annotated[tuple[Build, ...], Field(max_length=1000)] = part(
        "builds", "In order, oldest first.", ()
    )

    def with_build(self, build: Build) -> "History":
        """The history with one more build, kept in order of date; the same one twice stays one."""
        if build in self.builds:
            return self
        builds = tuple(sorted((*self.builds, build), key=lambda each: each.date))
        return History.model_validate({"driver": self.driver, "builds": builds})


def _require_day(text: str) -> None:
    if text and not is_day(text):
        raise clash("date", text, "there is no such day", "write it as 2026-05-31")


def is_day(text: str) -> bool:
    """Whether a text names a day of the calendar, as 2026-05-31."""
    try:
        return date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def require_driver(history: History, driver: str, where: str) -> None:
    """Refuses the history of somebody else.

    Raises:
        InputError: it names another driver.
    """
    if history.driver != driver:
        told = f"is the history of {history.driver}, not of {driver}"
        raise InputError(where, "", told, "name this driver's own file")
