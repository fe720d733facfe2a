"""What may be changed and what it costs as a file to edit: the program's own figures, with remarks."""

from collections.abc import Iterator

from fitcalc.documents.car import Car
from fitcalc.fit.variables import PEDAL_WAYS, Variable, defaults, dues, variables_for
from fitcalc.present.change_words import TITLES, sense_of

HEAD = """\
# What a rework may change, how far, in which steps, and what it costs in minutes at the bench, for
# `fitcalc solve CAR DRIVER --effort THIS_FILE`. Leave out what may stay as it is here.
# low, high: mm or deg from as found; the car file's own ends hold too. low = 0 with high = 0 forbids a change.
# step: what can be set; left out, the car's hole pitch where it has one.
# work: bolt_on, drilling, welding or new_bracket. fixed: minutes due once, in place of those of its kind of work.
# per_unit: minutes for every mm or deg on top.
format = 1
"""


def effort_text(car: Car | None = None) -> str:
    """The file; with a car, its own spans and steps are filled in."""
    sections = _plain() if car is None else _of_car(variables_for(car))
    return "\n".join([HEAD, *_work(), *sections])


def _work() -> Iterator[str]:
    yield "[work]  # minutes due once for each change of this kind"
    yield from (f"{name} = {minutes:g}" for name, minutes in dues().items())
    yield ""


def _plain() -> Iterator[str]:
    for path, row in defaults().items():
        also = ", on every pedal; [brake.stand_off] would be the brake's alone" if path == "stand_off" else ""
        yield f"[{path}]  # {TITLES[path][0]}, {row['unit']}; {sense_of(path)}{also}"
        if "low" in row:
            yield from (f"low = {row['low']:g}", f"high = {row['high']:g}")
        yield f"per_unit = {row['per_unit']:g}"
        yield ""


def _of_car(variables: tuple[Variable, ...]) -> Iterator[str]:
    for each in variables:
        pedal, _, kind = each.path.rpartition(".")
        which = f"{pedal} {TITLES[kind][0]}" if kind in PEDAL_WAYS else TITLES[kind][0]
        yield f"[{each.path}]  # {which}, {each.unit}; {sense_of(each.path)}"
        yield from (f"low = {each.low:g}", f"high = {each.high:g}", f"step = {each.step:g}")
        yield f'work = "{each.work}"'
        yield from (f"per_unit = {each.per_unit:g}", "")
