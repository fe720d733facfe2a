"""Plain cars and bodies for posture tests."""

from fitcalc.body.links import Links, links_for
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver


def car(name: str = "hillclimb") -> Car:
    return load_car(sample_path(name))


def driver(name: str = "robin") -> Driver:
    return load_driver(sample_path(name))


def links(name: str = "robin") -> Links:
    return links_for(driver(name))


def of_stature(stature: float, sex: str = "male") -> Links:
    return links_for(Driver(name="of stature", sex=sex, measurements=Measurements(stature=stature)))
