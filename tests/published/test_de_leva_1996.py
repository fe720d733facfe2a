"""Segment masses, centres and lengths.

Source: de Leva, J. Biomech. 29:1223 (1996), adjusted Zatsiorsky-Seluyanov parameters; two agreeing copies
(second-hand), the men's lengths from memory. 100 men 73.0 kg, 1741 mm; 15 women 61.9 kg, 1735 mm.
"""

import numpy as np
import pytest

from fitcalc.body.estimate import estimate
from fitcalc.body.links import links_of
from fitcalc.body.mass import table
from fitcalc.documents.driver import Driver

pytestmark = pytest.mark.published
WHOLE = {
    "head_neck": 1,
    "trunk": 1,
    "upper_arm": 2,
    "forearm": 2,
    "hand": 2,
    "thigh": 2,
    "shank": 2,
    "foot": 2,
}


@pytest.mark.parametrize(("column", "printed"), [("men", 100.00), ("women", 99.99)])
def test_masses_sum_to_the_whole(column, printed):
    total = sum(many * float(table()[name][f"mass_{column}"]) for name, many in WHOLE.items())
    assert total == pytest.approx(printed, abs=0.015)  # eight terms rounded to 0.01, the limbs doubled


@pytest.mark.parametrize(("column", "from_midhip"), [("men", 293.3), ("women", 309.6)])
@pytest.mark.parametrize("name", ["trunk", "trunk_suprasternale", "trunk_midshoulder"])
def test_trunk_has_one_centre_however_its_upper_end_is_chosen(column, from_midhip, name):
    row = table()[name]
    reached = float(row[f"length_{column}"]) * (1 - float(row[f"centre_{column}"]) / 100)
    assert reached == pytest.approx(from_midhip, abs=0.1)


@pytest.mark.parametrize(("column", "from_knee"), [("men", 193.5), ("women", 190.9)])
@pytest.mark.parametrize("name", ["shank", "shank_malleolus", "shank_sphyrion"])
def test_shank_has_one_centre_however_its_lower_end_is_chosen(column, from_knee, name):
    row = table()[name]
    assert float(row[f"length_{column}"]) * float(row[f"centre_{column}"]) / 100 == pytest.approx(
        from_knee, abs=0.1
    )


@pytest.mark.parametrize(
    ("sex", "stature", "mass", "link", "printed", "allowed"),
    [
        # Allowed: the spread that `links.toml` states for the relation; his athletes are long-legged.
        ("male", 1741.0, 73.0, "upper_arm", 281.7, 5),
        ("female", 1735.0, 61.9, "upper_arm", 275.1, 12),
        ("male", 1741.0, 73.0, "thigh", 422.2, 12),
        ("male", 1741.0, 73.0, "shank", 440.3, 25),
        ("female", 1735.0, 61.9, "shank", 438.6, 12),
        ("male", 1741.0, 73.0, "cervicale", 603.3 - 15.0, 15),
    ],
)
def test_links_of_his_mean_athlete(sex, stature, mass, link, printed, allowed):
    """The cervicale's link is his standing one less the 10-20 mm that sitting shortens the lumbar spine.

    His women's hip lies lower than a hip joint (their thigh is 54 mm shorter than the men's at the same
    stature), so their thigh and trunk are not compared.
    """
    who = Driver(name="x", sex=sex, mass=mass, measurements={"stature": stature})
    ours = getattr(links_of(estimate(who).means(), who), link)
    assert ours == pytest.approx(np.array([printed]), abs=allowed)
