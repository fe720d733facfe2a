"""How the joint at an extension bar's root can fail: bolts, holes and the section between, or the weld."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from fitcalc.making.bar_loads import RootLoad
from fitcalc.making.bars import SHEAR_YIELD
from fitcalc.making.bolts import (
    SLIVER,
    Bolt,
    Grade,
    bearing_factors,
    bearing_resistance,
    bearing_stress,
    edge_pivot_tension,
    elastic_shear,
    hole_offset,
    inner_bearing_factor,
    interaction,
    net_area,
    net_inertia,
    punching_resistance,
    shear_resistance,
    tear_out_stress,
    tension_resistance,
    thread_shear_factor,
    turning_forces,
    ultimate_stress,
)
from fitcalc.making.materials import Material, tensile_strength, welded_tensile, yield_stress
from fitcalc.making.modes import Mode
from fitcalc.making.sections import Section
from fitcalc.making.welds import all_round, line_force, throat, weld_strength
from fitcalc.units import Floats, Mm, MPa, Newton


@dataclass(frozen=True, eq=False)
class Bolted:
    """A lap joint: bolts in one line along the bar, through its width, threads in the shear plane.

    Attributes:
        bolt: size.
        grade: property class.
        number: of bolts.
        pitch: between bolts, along the bar.
        edge: last hole centre to the bar's end.
    """

    bolt: Bolt
    grade: Grade
    number: Literal[2, 3, 4]
    pitch: Mm
    edge: Mm


@dataclass(frozen=True, eq=False)
class Welded:
    """A fillet weld all round the bar, with equal legs."""

    leg: Mm


Joint: TypeAlias = Bolted | Welded


def welded_modes(load: RootLoad, section: Section, material: Material, joint: Welded) -> tuple[Mode, ...]:
    """The weld's only mode: its throat."""
    direct = np.stack([load.push, load.across, load.sideways], axis=-1)
    bending = np.stack([load.bend_depth, load.bend_width], axis=-1)
    line = line_force(all_round(section), direct, load.twist, bending)
    strength = weld_strength(
        welded_tensile(material, section.wall), np.full_like(joint.leg, material.weld_beta)
    )
    return (
        Mode("weld throat", "N/mm", line, strength * throat(joint.leg), "failure", "EN 1993-1-8 simplified"),
    )


def bolted_modes(load: RootLoad, section: Section, material: Material, joint: Bolted) -> tuple[Mode, ...]:
    """Modes of bolts, holes and the section between the holes."""
    worst = bolt_shear(load, joint)
    pulled = bolt_tension(load, section, joint)
    return (
        *_shank_modes(worst, pulled, joint),
        *_hole_modes(worst, section, material, joint),
        _pull_through_mode(pulled, section, material, joint),
        _net_mode(load, section, yield_stress(material, section.wall), joint),
    )


def bolt_shear(load: RootLoad, joint: Bolted) -> Newton:
    """Force across the worst bolt: its share, and the moment over the bolts' pitch."""
    lever = joint.pitch[:, None] * (np.arange(joint.number) - (joint.number - 1) / 2.0)
    group = np.stack([lever, np.zeros_like(lever)], axis=-1)
    moment = load.bend_depth + np.abs(load.across) * joint.pitch * (joint.number - 1) / 2.0
    share = np.stack([np.abs(load.push), np.abs(load.across)], axis=-1)[:, None, :] / joint.number
    total = share + turning_forces(group, moment)
    return np.max(np.hypot(total[..., 0], total[..., 1]), axis=-1)


def bolt_tension(load: RootLoad, section: Section, joint: Bolted) -> Newton:
    """Pull in the worst bolt: the bar pries about its end when pushed sideways, about its side by twist."""
    lever = joint.edge[:, None] + joint.pitch[:, None] * np.arange(joint.number)
    moment = load.bend_width + load.sideways * lever[:, -1]
    pried = np.max(edge_pivot_tension(moment, lever), axis=-1)
    return pried + load.twist / (joint.number * section.depth / 2.0)


def _shank_modes(worst: Newton, pulled: Newton, joint: Bolted) -> tuple[Mode, ...]:
    area, one = joint.bolt.stress_area, np.ones_like(worst)
    ultimate = ultimate_stress(joint.grade) * one
    elastic = elastic_shear(joint.bolt.proof_stress(joint.grade) * one, area * one, one)
    shear = shear_resistance(thread_shear_factor(joint.grade) * one, ultimate, area * one)
    both = interaction(worst, pulled, (shear, tension_resistance(ultimate, area * one)))
    return (
        Mode("bolt shear, elastic", "N", worst, elastic, "yield", "distortion energy, ISO 898-1 proof"),
        Mode("bolt shear", "N", worst, shear, "failure", "EN 1993-1-8 Table 3.4"),
        Mode("bolt shear and tension", "", both, one, "failure", "EN 1993-1-8 Table 3.4"),
    )


def _hole_modes(worst: Newton, section: Section, material: Material, joint: Bolted) -> tuple[Mode, ...]:
    size, hole, plate = joint.bolt.diameter, joint.bolt.hole, section.bearing
    yields = yield_stress(material, section.wall)
    nearest = np.minimum(joint.edge, section.depth / 2.0)
    pressed = bearing_stress(worst, np.full_like(plate, size), plate)
    torn = tear_out_stress(worst, nearest, plate)
    allowed = _hole_resistance(section, material, joint, np.full_like(nearest, hole))
    return (
        Mode("bearing, elastic", "MPa", pressed, yields, "yield", "mean pressure on the hole"),
        Mode("bearing", "N", worst, allowed, "failure", "EN 1993-1-8 Table 3.4"),
        Mode(
            "tear-out, elastic",
            "MPa",
            torn,
            SHEAR_YIELD * yields,
            "yield",
            "two shear planes to the nearest edge",
        ),
    )


def _pull_through_mode(pulled: Newton, section: Section, material: Material, joint: Bolted) -> Mode:
    head, wall = np.full_like(section.wall, joint.bolt.flats), section.wall
    allowed = punching_resistance(head, wall, tensile_strength(material, wall))
    return Mode("bolt pull-through", "N", pulled, allowed, "failure", "EN 1993-1-8 Table 3.4")


def _hole_resistance(section: Section, material: Material, joint: Bolted, hole: Mm) -> Newton:
    plate = tensile_strength(material, section.wall)
    strengths = (np.full_like(plate, ultimate_stress(joint.grade)), plate)
    nearest = np.minimum(joint.edge, section.depth / 2.0)
    sideways, end = bearing_factors(hole, nearest, nearest, strengths)
    least = np.minimum(end, inner_bearing_factor(hole, joint.pitch, strengths))
    return bearing_resistance(
        (sideways, least), plate, np.full_like(hole, joint.bolt.diameter), section.bearing
    )


def _net_mode(load: RootLoad, section: Section, yields: MPa, joint: Bolted) -> Mode:
    stress = net_stress(load, section, np.full_like(section.bearing, joint.bolt.hole))
    return Mode("net section", "MPa", stress, yields, "yield", "elastic bending through the first hole")


def net_stress(load: RootLoad, section: Section, hole: Mm) -> Floats:
    """Stress in the section through the first hole, MPa; weak-way bending is raised by the area lost."""
    left = np.maximum(net_area(section.area, 1, hole, section.bearing), SLIVER * section.area)
    drilled = net_inertia(section.inertia_depth, hole, section.bearing, hole_offset(section)[:, None])
    inertia = np.maximum(drilled, SLIVER * section.inertia_depth)
    strong = load.bend_depth / section.modulus_depth * section.inertia_depth / inertia
    weak = load.bend_width / section.modulus_width * section.area / left
    return np.abs(load.push) / left + strong + weak
