"""What was really made and measured after the work: one file per driver, the builds in order."""

from typing import Annotated, Literal

from pydantic import Field

from fitcalc.documents.fields import Document, part, quantity
from fitcalc.documents.setup import Setup

Tool = Literal["angle finder", "rule", "tape", "feeler gauge", "calliper", "scales", "other"]


class Reading(Document):
    """One thing measured with the driver belted in."""

    figure: str = part("figure", "Id of the check, as `posture.brake.knee_pressed`, or a joint angle's name.")
    value: float = quantity("value", "As read, in the figure's own unit.", "", (-100_000, 100_000))
    error: float = quantity("error", "What the tool can promise, plus or minus.", "", (0, 1_000), 1.0)
    tool: Tool = part("tool", "What it was measured with.", "other")
    note: str = part("note", "Anything worth remembering about this reading.", "")


class Build(Document):
    """One state of the car with the driver in it."""

    date: str = Field(
        title="date", description="Day of the measuring, as 2026-05-31.", pattern=r"^\d{4}-\d{2}-\d{2}$"
    )
    car: str = part("car", "Name of the car.")
    documents: str = part("documents", "Digest on the sheets that it was made from.", "")
    made: Setup = part("made", "The rework as it was really made.")
    readings: Annotated[tuple[Reading, ...], Field(max_length=500)] = part(
        "readings", "What was measured.", ()
    )
    note: str = part("note", "Anything worth remembering about it.", "")


class AsBuilt(Document):
    """Every build of one driver, oldest first."""

    format: Literal[1] = part("format", "Version of the as-built file: 1.", 1)
    driver: str = part("driver", "Whose builds these are.")
    builds: Annotated[tuple[Build, ...], Field(max_length=1000)] = part(
        "builds", "In order, oldest first.", ()
    )

    def with_build(self, build: Build) -> "AsBuilt":
        """The history with one more build, kept in order of date."""
        builds = tuple(sorted((*self.builds, build), key=lambda each: each.date))
        return AsBuilt.model_validate({"driver": self.driver, "builds": builds})
