"""Shoulders, neck, eyes and helmet above the hips."""

from dataclasses import dataclass

from fitcalc.body.links import Links, eye_from_cervicale
from fitcalc.geometry.side import LEFT, RIGHT, leaning, point, scaled
from fitcalc.units import Deg, Mm, Points

EYE_BEHIND_FOREHEAD = 20.0
"""Eye behind the foremost point of the forehead, mm: design inference, no source."""


@dataclass(frozen=True, eq=False)
class Trunk:
    """The trunk and head of the seated driver.

    Attributes:
        recline: torso line (hip to shoulder) from the vertical, positive leaning rearward (SAE A40).
        helmet: centre of the helmet's outline; `helmet_length` and `helmet_height` are its axes.
    """

    hip: Points
    recline: Deg
    shoulder: Points
    shoulder_left: Points
    shoulder_right: Points
    cervicale: Points
    eye: Points
    head_top: Points
    helmet: Points
    helmet_length: Mm
    helmet_height: Mm


def trunk_on(hip: Points, recline: Deg, links: Links) -> Trunk:
    """The trunk along the back of the seat, the head carried more upright so that the eyes look level.

    Source: eye from C7 by recline after SAE J941, see `body/data/links.toml`; the helmet's place on the head is
    design inference from the 300 mm head circle of the student rules' template.
    """
    shoulder = hip + scaled(leaning(recline), links.trunk)
    cervicale = hip + scaled(leaning(recline), links.cervicale)
    forward, up = eye_from_cervicale(recline)
    eye = cervicale + point(-forward, 0.0, up)
    head_back = eye[:, 0] + links.head_length - EYE_BEHIND_FOREHEAD
    vertex = eye[:, 2] + links.eye_below_vertex
    helmet_x = head_back + links.helmet_above_vertex - links.helmet_length / 2
    helmet_z = vertex + links.helmet_above_vertex - links.helmet_height / 2
    return Trunk(
        hip=hip,
        recline=recline,
        shoulder=shoulder,
        shoulder_left=shoulder + point(0.0, LEFT * links.shoulder_half_spacing, 0.0),
        shoulder_right=shoulder + point(0.0, RIGHT * links.shoulder_half_spacing, 0.0),
        cervicale=cervicale,
        eye=eye,
        head_top=point(head_back - links.head_length / 2, eye[:, 1], vertex),
        helmet=point(helmet_x, eye[:, 1], helmet_z),
        helmet_length=links.helmet_length,
        helmet_height=links.helmet_height,
    )
