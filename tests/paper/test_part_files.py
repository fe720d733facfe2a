"""Parts as DXF and SVG, read back: sizes as in the parts, no fault for the auditor."""

import io
import math
import xml.etree.ElementTree as ET

import ezdxf
import numpy as np
import pytest
from ezdxf import bbox
from sheet_jobs import every_part_job, fitted_job

from fitcalc.paper.dxf import dxf_bytes
from fitcalc.paper.svg import svg_bytes
from fitcalc.present.part_drawing import part_bounds

PARTS = {
    part.id: part
    for job in (every_part_job(), fitted_job("hillclimb", "ines"))
    for part in job.bench.parts
    if part.drawn
}
SVG = "{http://www.w3.org/2000/svg}"


def read(part):
    return ezdxf.read(io.StringIO(dxf_bytes(part, "0123456789ab").decode()))


@pytest.mark.parametrize("part", PARTS.values(), ids=PARTS)
def test_dxf_is_r2010_or_later_in_mm_and_sound(part):
    document = read(part)
    assert document.acad_release >= "R2010"
    assert document.units == ezdxf.units.MM
    assert {"CUT", "DRILL", "ENGRAVE"} <= {layer.dxf.name for layer in document.layers}
    assert not document.audit().has_errors


@pytest.mark.parametrize("part", PARTS.values(), ids=PARTS)
def test_dxf_has_the_part_s_own_sizes(part):
    space = read(part).modelspace()
    cut = space.query('*[layer=="CUT"]')
    if part.outlines:
        box = bbox.extents(cut, fast=False)
        points = np.array([point for outline in part.outlines for point in outline.points()])
        assert (box.size.x, box.size.y) == pytest.approx(tuple(np.ptp(points, axis=0)), abs=0.01)
    drilled = {
        (round(c.dxf.center.x, 6), round(c.dxf.center.y, 6), c.dxf.radius) for c in space.query("CIRCLE")
    }
    assert drilled == {(*hole.at, hole.diameter / 2) for hole in part.holes}


def test_a_bar_s_dxf_measures_as_the_cut_list_says():
    bar = PARTS["brake.stand_off"]
    space = read(bar).modelspace()
    box = bbox.extents(space.query('*[layer=="CUT"]'))
    first, second = (circle.dxf.center for circle in space.query("CIRCLE"))
    assert box.size.x == pytest.approx(bar.size("length").value)
    assert box.size.y == pytest.approx(bar.size("depth").value)
    assert first.distance(second) == pytest.approx(bar.size("pitch").value)
    assert space.query("CIRCLE")[0].dxf.radius * 2 == bar.size("hole").value


def test_a_slot_s_dxf_has_true_arcs_of_the_stated_radius():
    slot = PARTS["seat.slot_shoulder"]
    arcs = [
        each
        for each in read(slot).modelspace().query("LWPOLYLINE")[0].virtual_entities()
        if each.dxftype() == "ARC"
    ]
    assert [arc.dxf.radius for arc in arcs] == pytest.approx([slot.size("radius").value] * 4)
    assert sum(
        math.radians((arc.dxf.end_angle - arc.dxf.start_angle) % 360) for arc in arcs
    ) == pytest.approx(2 * math.pi)


@pytest.mark.parametrize("part", PARTS.values(), ids=PARTS)
def test_svg_is_true_scale_in_mm(part):
    root = ET.fromstring(svg_bytes(part, "0123456789ab"))
    box = [float(each) for each in root.get("viewBox").split()]
    assert root.get("width") == f"{box[2]:g}mm"
    left, bottom, right, top = part_bounds(part)
    assert (box[2], box[3]) == pytest.approx((right - left + 10.0, top - bottom + 10.0), rel=1e-4)
    circles = [
        (float(c.get("cx")), -float(c.get("cy")), 2 * float(c.get("r"))) for c in root.iter(f"{SVG}circle")
    ]
    assert circles == [(*hole.at, hole.diameter) for hole in part.holes]
