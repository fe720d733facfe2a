"""What a person waits for: fit, solve, trade map, certainty, on the samples."""

from timing import CAR, ROBIN, least

from fitcalc.documents.samples import sample_cars, sample_drivers, sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.certainty import certainty
from fitcalc.fit.coverage import coverage
from fitcalc.fit.rework import fit
from fitcalc.fit.solve import solve
from fitcalc.fit.trade import MapOptions, spans, trade_map


def run():
    for name in sample_cars():
        car = load_car(sample_path(name))
        for person in sample_drivers():
            driver = load_driver(sample_path(person))
            fitted, solved = (
                least(lambda c=car, d=driver: fit(c, d)),
                least(lambda c=car, d=driver: solve(c, d), 1),
            )
            print(f"| {name}, {person} | fit {fitted * 1e3:.0f} ms | solve {solved:.1f} s |")
    axes = spans(CAR, "seat_travel", "brake.stand_off", 200)
    closed = least(lambda: trade_map(CAR, ROBIN, Setup(), axes, MapOptions(meshed=False)))
    every = least(lambda: trade_map(CAR, ROBIN, Setup(), axes))
    print(f"| trade map 200 x 200, closed-form limits | {closed * 1e3:.0f} ms |")
    print(f"| the same with swept clearances on a mesh | {every * 1e3:.0f} ms |")
    best = fit(CAR, ROBIN).after.setup
    print(f"| certainty, 100,000 draws | {least(lambda: certainty(CAR, ROBIN, best)):.2f} s |")
    print(f"| coverage, 300 bodies | {least(lambda: coverage(CAR, 'male')):.2f} s |")


if __name__ == "__main__":
    run()
