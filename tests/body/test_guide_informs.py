"""The measuring guide's word on which estimates a measurement sharpens."""

import numpy as np
import pytest

from fitcalc.body.dimensions import FIELDS
from fitcalc.body.estimate import estimate_many
from fitcalc.documents.driver import Driver
from fitcalc.documents.guide import guides

KNOWN = {"stature": 1756.0, "weightkg": 85.0}
FOOT = {"footbreadthhorizontal": np.array([102.0])}
INFORMING = [guide for guide in guides(Driver).values() if guide.informs]


@pytest.mark.parametrize("guide", INFORMING, ids=lambda guide: guide.field)
def test_dimensions_said_to_be_sharpened_are_those_that_the_model_sharpens_most(guide):
    own = FIELDS[guide.field.rpartition(".")[2]]
    base = {name: np.array([value]) for name, value in KNOWN.items() if own not in ("stature", name)} or FOOT
    before = estimate_many(base, "male")
    after = estimate_many(base | {own: before.means()[own]}, "male")
    cut = dict(zip(before.names, 1 - after.sd[0] / before.sd[0], strict=True))
    ranked = sorted(cut.keys() - {own}, key=cut.__getitem__, reverse=True)
    assert set(guide.informs) <= set(ranked[:8])
