"""The measuring guide for body and kit."""

import numpy as np
import pytest

from fitcalc.body.dimensions import FIELDS
from fitcalc.body.estimate import estimate_many
from fitcalc.body.guide import guide_for, guides
from fitcalc.documents.driver import Driver, Helmet, Kit, Measurements, Shoe

KIT = {"shoe": Shoe, "helmet": Helmet, "kit": Kit}
MEASURED = [f"measurements.{name}" for name in Measurements.model_fields]
PATHS = ["mass", *MEASURED, *(f"{part}.{name}" for part, model in KIT.items() for name in model.model_fields)]
KNOWN = {"stature": 1756.0, "weightkg": 85.0}
FOOT = {"footbreadthhorizontal": np.array([102.0])}


def test_every_measurement_of_the_driver_file_has_a_guide_and_nothing_else_has():
    assert sorted(guides()) == sorted(PATHS)
    assert guide_for("name") is None


@pytest.mark.parametrize("guide", guides().values(), ids=lambda guide: guide.field)
def test_drawing_stays_in_its_box_and_its_tape_has_length(guide):
    drawing = guide.drawing
    spots = np.array([*(spot for line in drawing.lines for spot in line), *drawing.tape])
    assert spots.min() >= 0
    assert spots.max() <= 100
    assert all(r < min(x, y, 100 - x) and y + r <= 100 for x, y, r in drawing.circles)
    assert drawing.tape[0] != drawing.tape[1]


@pytest.mark.parametrize("guide", guides().values(), ids=lambda guide: guide.field)
def test_texts_come_from_the_driver_file_and_add_to_it(guide):
    assert guide.how == _declared(guide.field).description
    assert guide.care
    assert guide.decides
    assert guide.error > 0


def _declared(path):
    part, _, name = path.rpartition(".")
    models = {"": Driver, "measurements": Measurements, **KIT}
    return models[part].model_fields[name]


@pytest.mark.parametrize(
    "guide", [guide for guide in guides().values() if guide.informs], ids=lambda guide: guide.field
)
def test_dimensions_said_to_be_sharpened_are_those_that_the_model_sharpens_most(guide):
    own = FIELDS[guide.field.rpartition(".")[2]]
    base = {name: np.array([value]) for name, value in KNOWN.items() if own not in ("stature", name)} or FOOT
    before = estimate_many(base, "male")
    after = estimate_many(base | {own: before.means()[own]}, "male")
    cut = dict(zip(before.names, 1 - after.sd[0] / before.sd[0], strict=True))
    ranked = sorted(cut.keys() - {own}, key=cut.__getitem__, reverse=True)
    assert set(guide.informs) <= set(ranked[:8])
