"""A full set of bench sheets for the sample with the most parts, and for the others."""

from timing import least

from fitcalc.documents.samples import sample_cars, sample_drivers, sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.certainty import Sampling, certainty
from fitcalc.fit.rework import fit
from fitcalc.paper.job import job
from fitcalc.paper.page import A4
from fitcalc.paper.sheets import sheet_files
from fitcalc.present.record import fit_record


def sheets(car, driver):
    found = fit(car, driver)
    sure = certainty(car, driver, found.after.setup, sampling=Sampling(1_000, 1_000))
    return sheet_files(job(found.found, found.after, fit_record(found), "2026-05-31", sure), A4)


def run():
    for name in sample_cars():
        for person in sample_drivers():
            car, driver = load_car(sample_path(name)), load_driver(sample_path(person))
            spent = least(lambda c=car, d=driver: sheets(c, d), 2)
            parts = sum(file.endswith(".dxf") for file in sheets(car, driver))
            print(f"| {name}, {person}: {parts} parts | {spent:.1f} s |")


if __name__ == "__main__":
    run()
