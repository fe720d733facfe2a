"""The parts that a rework asks for: which, how large, and where their holes are."""

import math

import numpy as np
import pytest
from sheet_jobs import PAIRS, SHAPES, car_and_driver, every_part_job, fitted_job

from fitcalc.documents.setup import Setup
from fitcalc.fit.certainty import Sampling, certainty
from fitcalc.fit.evaluate import evaluate
from fitcalc.present.bench import bench
from fitcalc.present.bench_parts import round_ended, rounded_out
from fitcalc.present.part_drawing import part_drawing
from fitcalc.present.seat_parts import seat_parts
from fitcalc.present.slot_parts import slot_parts


def parts_of(job):
    return {part.id: part for part in job.bench.parts}


def test_a_car_as_found_needs_no_bar_no_bracket_and_no_step():
    made = bench(evaluate(*car_and_driver("student", "otto"), Setup()))
    assert not made.steps
    assert not made.parts


@pytest.mark.parametrize("pair", PAIRS, ids="-".join)
def test_every_extension_has_its_bar_and_no_other_has(pair):
    job = fitted_job(*pair)
    wanted = {
        f"{name}.{way}"
        for name in job.after.work
        for way in ("stand_off", "longer_arm")
        if getattr(getattr(job.after.setup, name), way) > 0.0
    }
    assert {id for id in parts_of(job) if id.endswith(("stand_off", "longer_arm"))} == wanted


def test_a_bolted_bar_laps_the_arm_with_both_holes():
    bar = parts_of(every_part_job())["brake.stand_off"]
    pitch, edge = bar.size("pitch").value, bar.size("edge").value
    assert bar.size("length").value == pytest.approx(33.3 + pitch + 2 * edge)
    first, second = (hole.at for hole in bar.holes)
    assert first[0] == edge
    assert math.dist(first, second) == pytest.approx(pitch)
    assert first[1] == second[1] == bar.size("depth").value / 2


def test_a_welded_bar_has_no_holes_and_is_as_long_as_the_extension():
    bar = parts_of(every_part_job())["throttle.stand_off"]
    assert not bar.holes
    assert bar.size("length").value == 170.0


@pytest.mark.parametrize("shape", SHAPES)
def test_the_section_is_as_large_as_the_stock(shape):
    bar = parts_of(every_part_job(shape))["brake.stand_off"]
    wide, deep = np.ptp(bar.section, axis=0)
    assert deep == pytest.approx(30.0)
    assert wide == pytest.approx(4.0 if shape == "flat" else 30.0)


@pytest.mark.parametrize(
    ("shape", "wall"), [("flat", None), ("round tube", 4.0), ("square tube", 4.0), ("angle", None)]
)
def test_a_tube_is_drawn_hollow_by_its_wall(shape, wall):
    bar = parts_of(every_part_job(shape))["brake.stand_off"]
    if wall is None:
        assert bar.bore == ()
    else:
        assert (np.ptp(bar.section, axis=0) - np.ptp(bar.bore, axis=0)) / 2 == pytest.approx([wall, wall])


def test_slots_are_where_the_record_says():
    job = fitted_job("hillclimb", "ines")
    figures = {figure.id: float(figure.value[0]) for figure in job.after.figures if figure.value is not None}
    slot = parts_of(job)["seat.slot_shoulder"]
    for key in ("x", "y", "z", "length", "height"):
        expected = abs(figures[f"harness.shoulder_right.slot_{key}"])
        assert slot.size(key).value == pytest.approx(expected, abs=0.05)


@pytest.mark.parametrize("kind", ["lap", "crotch"])
def test_no_place_of_a_slot_is_a_negative_distance(kind):
    """The way is told in words: a minus sign at the bench is easily lost."""
    job = fitted_job("hillclimb", "ines")
    figures = {figure.id: float(figure.value[0]) for figure in job.after.figures if figure.value is not None}
    slots = {part.id: part for part in slot_parts(bare(job.after))}
    place = slots[f"seat.slot_{kind}"].size("x")
    assert figures[f"harness.{kind}_left.slot_x"] < 0.0
    assert "ahead of the junction" in place.name
    assert all(size.value >= 0.0 for part in slots.values() for size in part.sizes)
    assert all(low <= size.value <= high for size, (low, high) in _intervals(slots.values()))


def bare(result):
    """The same without a slot in the seat."""
    seat = result.car.seat.model_copy(update={"slots": ()})
    return evaluate(result.car.model_copy(update={"seat": seat}), result.driver, result.setup)


def _intervals(parts):
    sizes = [size for part in parts for size in part.sizes]
    return [(size, size.interval) for size in sizes if size.interval is not None]


def test_a_slot_that_suits_its_strap_is_not_cut_again():
    job = fitted_job("hillclimb", "robin")
    assert not [id for id in parts_of(job) if "slot" in id]


def test_mounts_off_their_holes_get_pattern_bracket_and_spacer():
    parts = parts_of(every_part_job())
    pattern = parts["seat.pattern"]
    assert pattern.size("forward").value == pytest.approx(35.0)
    assert len(pattern.holes) == 4
    assert sum(part.quantity for id, part in parts.items() if id.startswith("seat.bracket")) == 4
    assert parts["seat.spacer_12"].size("height").value == 12.0
    assert parts["wheel.spacer"].size("thickness").value == 15.0


def test_steps_say_which_way():
    told = " ".join(step.text for step in every_part_job().bench.steps)
    for words in ("35 mm forward", "12 mm higher", "20 mm forward", "30 mm lower", "4 deg further back"):
        assert words in told


def test_drawn_bodies_widen_the_interval_of_a_length():
    job = fitted_job("hillclimb", "ines")
    after = job.after
    sure = certainty(after.car, after.driver, after.setup, sampling=Sampling(200, 200))
    needed = {each.id: each for each in sure.lengths}["brake.stand_off"]
    length = {part.id: part for part in bench(after, sure).parts}["brake.stand_off"].size("length")
    lap = length.value - after.setup.brake.stand_off
    assert length.basis == "90 %"
    low, high = length.interval
    assert lap + needed.low - 1.0 <= low <= lap + needed.low + 1e-9  # told to a whole mm, never narrower
    assert lap + needed.high - 1e-9 <= high <= lap + needed.high + 1.0


def test_drawn_bodies_say_where_a_slot_may_lie():
    """The tape alone does not know the body that the strap lies on."""
    after = fitted_job("hillclimb", "ines").after
    sure = certainty(after.car, after.driver, after.setup, sampling=Sampling(200, 200))
    by_tape, by_draws = (
        {part.id: part for part in made.parts}["seat.slot_lap"].size("z")
        for made in (bench(after), bench(after, sure))
    )
    assert (by_tape.basis, by_draws.basis) == ("tape", "90 %")
    assert np.ptp(by_draws.interval) > np.ptp(by_tape.interval)
    assert by_draws.interval[0] < by_draws.value < by_draws.interval[1]


@pytest.mark.parametrize(
    ("ends", "told"),
    [((12.34, 80.2), (12.0, 81.0)), ((12.34, 15.61), (12.3, 15.7)), ((12.0, 81.0), (12.0, 81.0))],
)
def test_an_interval_is_rounded_outward(ends, told):
    assert rounded_out(*ends) == told


def test_a_slot_in_the_side_wall_lies_square_to_its_strap_and_says_its_slope():
    """By hand: a strap that runs down at 60 deg needs a slot 30 deg off level, its front end low."""
    job = fitted_job("hillclimb", "ines")
    slot = parts_of(job)["seat.slot_lap"]
    strap = job.after.check("harness.lap_left.side_angle").figure.value[0]
    slope = slot.size("slope")
    assert slope.name.endswith("front end low")
    assert slope.value == pytest.approx(90.0 - strap, abs=3.0)  # the strap leaves the body ahead of its slot
    (level,) = [line for line in slot.scribed if line.text == "level, front"]
    (x1, y1), (x2, y2) = level.points
    drawn = math.degrees(math.atan2(abs(y1 - y2), abs(x1 - x2)))
    assert drawn == pytest.approx(slope.value, abs=0.2)


def test_a_bolted_stand_off_says_how_much_metal_it_needs():
    bar = parts_of(every_part_job())["brake.stand_off"]
    told = " ".join(bar.notes)
    assert f"{bar.size('pitch').value + 2 * bar.size('edge').value:g} mm along this bar" in told
    assert "the end of the arm extension bar" in told


def test_a_bar_beyond_what_the_car_file_allows_says_so():
    assert any(
        "is the most that the car file allows" in note
        for note in parts_of(every_part_job())["throttle.stand_off"].notes
    )


@pytest.mark.parametrize(("height", "radius"), [(18.0, 9.0), (40.0, 10.0)])
def test_a_round_ended_outline_has_the_area_of_its_slot(height, radius):
    points = np.array(round_ended(85.0, height, radius).points())
    x, y = points.T
    area = 0.5 * abs(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)))
    corners_lost = (4.0 - math.pi) * radius**2
    assert area == pytest.approx(85.0 * height - corners_lost, rel=2e-3)  # chords of a twelfth of a quarter


@pytest.mark.parametrize(("shape", "hollow"), [("flat", False), ("square tube", True)])
def test_the_drawing_of_a_tube_shows_its_bore(shape, hollow):
    bar = parts_of(every_part_job(shape))["brake.stand_off"]
    keys = {primitive.key for primitive in part_drawing(bar, 0.5).primitives}
    assert (f"{bar.id}.bore" in keys) is hollow


def test_a_seat_that_is_only_raised_needs_spacers_alone():
    after = evaluate(*car_and_driver("student", "robin"), Setup(seat_raise=12.0))
    ids = {part.id for part in seat_parts(after)}
    assert ids == {"seat.spacer_12"}
