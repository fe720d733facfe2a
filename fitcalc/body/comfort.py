"""Joint angles that people prefer: published sets, the single-seater's own windows, and how far joints move.

All angles in degrees, included unless said otherwise: hip is trunk to thigh, knee 180 = straight, ankle is
shank to bare sole, elbow 180 = straight; shoulder is upper arm to trunk, recline the torso line from the
vertical, neck the head bent forward on the trunk.
"""

import tomllib
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from pydantic import BaseModel, ConfigDict, Field

from fitcalc.body.survey import DATA, Sex
from fitcalc.documents.driver import Driver, Targets
from fitcalc.sources import Confidence, Source

Span = tuple[float, float]


class Row(BaseModel):
    """Base of a row of a data file."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)


class PostureSet(Row):
    """One author's joint angles; an angle has low and high, and the mean where people were observed."""

    id: str
    title: str
    basis: str
    document: str
    edition: str
    confidence: Confidence
    angles: dict[str, tuple[float, float] | tuple[float, float, float]]

    @property
    def source(self) -> Source:
        """Where the angles come from."""
        return Source(document=self.document, edition=self.edition, confidence=self.confidence)


class Window(Row):
    """What is recommended and what is permitted of one angle, deg."""

    quantity: str
    recommended: Span
    permitted: Span


class MotionTable(Row):
    """How far joints move from the neutral standing posture, deg, by sex."""

    id: str
    document: str
    edition: str = ""
    confidence: Confidence
    women: dict[str, float] = Field(min_length=1)
    men: dict[str, float] = Field(min_length=1)

    @property
    def source(self) -> Source:
        """Where the ranges come from."""
        return Source(document=self.document, edition=self.edition, confidence=self.confidence)


def _read(name: str) -> dict[str, Any]:
    return tomllib.loads((DATA / name).read_text(encoding="utf-8"))


@cache
def posture_sets() -> Mapping[str, PostureSet]:
    """The published sets by id."""
    return MappingProxyType({row["id"]: PostureSet(**row) for row in _read("posture_sets.toml")["set"]})


@cache
def single_seater() -> Mapping[str, Window]:
    """The reclined single-seater's windows by angle; design inference throughout."""
    rows = _read("single_seater.toml").items()
    return MappingProxyType({name: Window(**row) for name, row in rows if isinstance(row, dict)})


@cache
def single_seater_source() -> Source:
    """What the single-seater's windows rest on."""
    file = _read("single_seater.toml")
    return Source(document=file["document"], clause=file["clause"], confidence=file["confidence"])


@cache
def motion_tables() -> Mapping[str, MotionTable]:
    """The published ranges of motion by id."""
    rows = _read("joint_ranges.toml")["table"]
    return MappingProxyType({row["id"]: MotionTable(**row) for row in rows})


def motion_limits(table: MotionTable, sex: Sex) -> dict[str, Span]:
    """What a joint can do at most, as included angles: hip, knee, ankle and elbow, deg."""
    move = table.women if sex == "female" else table.men
    return {
        "hip": (180 - move["hip_flexion"], 180 + move["hip_extension"]),
        "knee": (180 - move["knee_flexion"], 180.0),
        "ankle": (90 - move["dorsiflexion"], 90 + move["plantar_flexion"]),
        "elbow": (180 - move["elbow_flexion"], 180.0),
    }


def windows_for(driver: Driver) -> dict[str, Window]:
    """The single-seater's windows with the driver's own wishes as recommended; what is permitted stays."""
    wishes = _wishes(driver.targets)
    free = (None, None)
    return {name: _wished(window, *wishes.get(name, free)) for name, window in single_seater().items()}


def _wishes(targets: Targets) -> dict[str, tuple[float | None, float | None]]:
    return {
        "knee_released": (targets.knee_released_low, targets.knee_released_high),
        "knee_pressed": (None, targets.knee_pressed_high),
        "elbow": (targets.elbow_low, targets.elbow_high),
    }


def _wished(window: Window, low: float | None, high: float | None) -> Window:
    """A window with ends of what is recommended replaced; an end left alone gives way where it must."""
    start, end = window.recommended
    lowest = min(start, high if high is not None else start) if low is None else low
    highest = max(end, lowest) if high is None else high
    return Window(quantity=window.quantity, recommended=(lowest, highest), permitted=window.permitted)
