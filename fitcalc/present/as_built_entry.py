"""From what a person entered after the work to one entry of the history: what was made, what was read."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from fitcalc.documents.amounts import amount_of, units_for
from fitcalc.documents.as_built import CutBar, Measured, Reading, Readings
from fitcalc.documents.edit import field_at, with_value
from fitcalc.documents.messages import nearest_hint, shown
from fitcalc.documents.setup import Setup
from fitcalc.errors import InputError
from fitcalc.fit.cases import PATHS
from fitcalc.fit.result import Result
from fitcalc.fit.variables import PEDAL_WAYS
from fitcalc.making.pedal_bars import lap
from fitcalc.present.as_built_wanted import LENGTH, MADE, wanted_reading
from fitcalc.present.bench_parts import set_length
from fitcalc.present.readings import named_values


@dataclass(frozen=True)
class Typed:
    """One value as it was typed.

    Attributes:
        text: a number, with or without a unit.
        unit: of a number that names none; empty for the figure's own.
        error: plus or minus; empty for the tool's usual one.
        where: for the sentence that refuses it, as "built.csv, line 7".
    """

    key: str
    text: str
    unit: str = ""
    error: str = ""
    tool: str = ""
    note: str = ""
    where: str = ""


def entered(file: Readings | None, typed: Sequence[Typed], result: Result) -> Measured:
    """Everything that was entered, as one; what was typed goes over what the file says was made.

    Args:
        file: of readings; None where there is none.
        typed: in any order; a key given twice is refused.
        result: of the rework as planned.

    Raises:
        InputError: a key is unknown, or a value is no number in a unit that belongs there.
    """
    said = file or Readings()
    _require_once([each.figure for each in said.readings] + [each.key for each in typed])
    made = [each for each in typed if each.key.startswith(MADE)]
    lengths = [each for each in made if each.key.endswith(LENGTH)]
    bars = (*said.bars, *(_bar(each) for each in lengths))
    setup = with_bars(_as_made(said, result.setup), bars, result)
    for each in made:
        if each not in lengths:
            setup = _set(setup, each)
    filed = (_from_file(each, result) for each in said.readings)
    readings = (*filed, *(_reading(each, result) for each in typed if each not in made))
    return Measured(made=setup, bars=bars, readings=readings, note=said.note)


def with_bars(made: Setup, bars: Sequence[CutBar], result: Result) -> Setup:
    """The rework with each pad where its bar's real length brings it.

    Raises:
        InputError: no pedal of the car has such a bar, or it is shorter than its lap.
    """
    pedals = result.car.fitted_pedals()
    for bar in bars:
        name, _, way = bar.bar.partition(".")
        if name not in pedals or way not in PEDAL_WAYS:
            known = [f"{pedal}.{each}" for pedal in pedals for each in PEDAL_WAYS]
            raise InputError(shown(bar.bar), "not a bar of this car", nearest_hint(bar.bar, known))
        over = float(lap(pedals[name].bar)[0])
        if bar.length < over:
            told = f"must be {over:g} mm or more, which is what lies on the old arm"
            raise InputError(f"{bar.bar} length", f"{bar.length:g}", told, "measure it end to end")
        made = with_value(made, bar.bar, set_length(bar.length - over))
    return made


def _as_made(file: Measured, planned: Setup) -> Setup:
    """The rework as planned, but for what a file of readings names."""
    plain = {"name": "", "note": ""}
    return Setup.model_validate(_over(planned.model_dump() | plain, file.made.model_dump(exclude_unset=True)))


def _over(base: dict[str, Any], upper: dict[str, Any]) -> dict[str, Any]:
    both = {k: _over(base[k], v) if isinstance(v, dict) else v for k, v in upper.items()}
    return {**base, **both}


def _require_once(keys: Sequence[str]) -> None:
    twice = next((key for at, key in enumerate(keys) if key in keys[:at]), None)
    if twice is not None:
        raise InputError(shown(twice), "given twice", "each may stand once", "keep one of the two")


def _require_known(name: str, known: Mapping[str, Any], where: str) -> None:
    if name not in known:
        told = "is no figure of this car and driver"
        hint = nearest_hint(name, list(known)) or "run `fitcalc built` without readings to see them"
        raise InputError(where or name, shown(name), told, hint)


def _set(setup: Setup, typed: Typed) -> Setup:
    path = typed.key.removeprefix(MADE)
    if path not in PATHS:
        known = [MADE + each for each in PATHS]
        told = "is nothing that a rework sets"
        raise InputError(typed.where or typed.key, shown(typed.key), told, nearest_hint(typed.key, known))
    return with_value(setup, path, _value(typed, field_at(Setup, path).unit))


def _bar(typed: Typed) -> CutBar:
    bar = typed.key.removeprefix(MADE).removesuffix(LENGTH)
    return with_value(CutBar(bar=bar, length=1.0), "length", _value(typed, "mm"))


def _reading(typed: Typed, result: Result) -> Reading:
    _require_known(typed.key, named_values(result), typed.where)
    wanted = wanted_reading(typed.key, result)
    error = _value(typed, wanted.unit, typed.error) if typed.error else wanted.error
    plain = Reading(figure=typed.key, value=_value(typed, wanted.unit), note=typed.note)
    return with_value(with_value(plain, "error", error), "tool", typed.tool or wanted.tool)


def _from_file(reading: Reading, result: Result) -> Reading:
    """The reading with the usual tool and error where the file names none."""
    _require_known(reading.figure, named_values(result), "")
    usual = wanted_reading(reading.figure, result)
    told = {"tool": usual.tool, "error": usual.error}
    missing = {name: value for name, value in told.items() if name not in reading.model_fields_set}
    return reading.model_copy(update=missing)


def _value(typed: Typed, unit: str, text: str | None = None) -> float:
    given = typed.text if text is None else text
    value = amount_of(given, unit, typed.unit)
    if value is None:
        units = ", ".join(units_for(unit))
        told = f"must be a number in {unit}" + (
            f" (or with one of {units} behind it)" if "," in units else ""
        )
        written = shown(f"{given} {typed.unit}".strip())
        raise InputError(typed.where or typed.key, written, told, "write it as 12.5")
    return value
