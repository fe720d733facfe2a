"""Jobs of the samples, each worked out once: what `fit` finds, and a rework that needs every kind of part."""

from dataclasses import replace
from functools import cache

from fitcalc.documents.car_pedals import Bar
from fitcalc.documents.edit import with_value
from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.rework import fit
from fitcalc.paper.job import job
from fitcalc.present.record import check_record, fit_record

DATE = "2026-05-31"
PAIRS = [(car, driver) for car in sample_cars() for driver in sample_drivers()]
EVERY_PART = Setup(
    seat_travel=35.0,
    seat_raise=12.0,
    recline=4.0,
    box_travel=-20.0,
    wheel_spacer=15.0,
    shoulder_anchor_raise=-30.0,
    brake={"stand_off": 33.3, "longer_arm": 12.0},
    throttle={"stand_off": 170.0, "longer_arm": 0.0},
)
SHAPES = ("flat", "round tube", "square tube", "angle")


@cache
def car_and_driver(car, driver):
    return load_car(sample_cars()[car]), load_driver(sample_drivers()[driver])


@cache
def fitted_job(car, driver):
    found = fit(*car_and_driver(car, driver))
    return job(found.found, found.after, fit_record(found), DATE)


@cache
def every_part_job(shape="flat"):
    car, driver = car_and_driver("student", "robin")
    bar = Bar(shape=shape, depth=30.0, thickness=4.0, joint="bolted")
    car = with_value(car, "pedals.brake.bar", bar)
    found, after = evaluate(car, driver), evaluate(car, driver, EVERY_PART)
    return job(found, after, check_record(after), DATE)


@cache
def small_job():
    """A job whose findings fill one page, for what is written many times."""
    whole = fitted_job("hillclimb", "robin")
    return replace(
        whole, record=whole.record.model_copy(update={"checks": whole.record.checks[:5], "checklist": []})
    )
