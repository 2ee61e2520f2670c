"""Envelopes of six units by brute force: every slew of a raster of 1 degree, rope directions on rasters, finer and finer.

Writes expected/unit_envelopes.json. What a pull does comes from PyNiteFEA; the greatest value is looked for among directions,
not computed from the cone. The rope hangs slack or pulls with its tension, the weight acts always.

Directions are charted so that the borders of the cone are borders of the chart: angle from straight down and azimuth; with
limits of lean, the lean in the plane across the facade and the share of what is left sideways; with nothing that holds the
slew, the angle in the arm's plane.
"""

import math
import random

import numpy as np

from units import FORCE_UNIT_N, Solved, random_unit, turned, write

SEED = 20260106
DEGREE = math.pi / 180
# Kind and head, half-angle of the cone, limits of lean inward and outward, whether the slew is held, slews from and to.
ASKED = [
    ("none rigid", 30, None, True, (-180, 179)),
    ("rear_to_mast pinned", 100, None, True, (-180, 179)),
    ("rear_to_base rigid", 45, (15, 30), True, (-70, 80)),
    ("front pinned", 25, None, False, (-90, 90)),
    ("foot_from_head rigid", 35, None, True, (-60, 60)),
    ("foot_from_tail rigid", 180, None, True, (-50, 50)),
]
BASE = ["Fx", "Fy", "Fz", "Mx", "My", "Mz"]


def describe():
    rng = random.Random(SEED)
    units = []
    for number, (what, half, lean, held, (first, last)) in enumerate(ASKED):
        kind, head = what.split()
        unit = {"name": f"envelope {number + 1} {what}"} | random_unit(rng, kind, head)
        unit["stations"] = []
        unit["points"] = unit["points"][:1]
        bearing = 0
        if kind.startswith("foot"):
            bearing = rng.randrange(-120, 121)
            unit["brace"]["bearing_rad"] = bearing * DEGREE
            unit["brace"]["allowed_turn_rad"] = last * DEGREE
        unit["envelope"] = {
            "tension_n": round(rng.uniform(4e3, 12e3), 1),
            "weight_factor": rng.choice([0.9, 1.0, 1.35]),
            "half_angle_rad": half * DEGREE,
            "lean_rad": [limit * DEGREE for limit in lean] if lean else None,
            "slew_is_held": held,
            "slews_deg": [bearing + first, bearing + last],
        }
        units.append(unit)
    return units


def chart(asked, slew):
    """Ranges of the chart's two coordinates, and the directions (structure axes) at given coordinates."""
    alpha = asked["half_angle_rad"]
    if not asked["slew_is_held"]:
        def in_plane(p, _):
            return np.array([np.sin(p) * math.cos(slew), np.sin(p) * math.sin(slew), -np.cos(p)])
        return (-alpha, alpha), (0.0, 0.0), in_plane
    if asked["lean_rad"] is None:
        def cone(p, q):
            return np.array([np.sin(p) * np.cos(q), np.sin(p) * np.sin(q), -np.cos(p)])
        return (0.0, alpha), (-math.pi, math.pi), cone

    def leaning(p, q):
        sideways = q * np.arccos(np.minimum(1.0, math.cos(alpha) / np.cos(p)))
        return np.array([np.sin(p) * np.cos(sideways), np.sin(sideways), -np.cos(p) * np.cos(sideways)])

    inward, outward = asked["lean_rad"]
    return (-min(inward, alpha), min(outward, alpha)), (-1.0, 1.0), leaning


def solve(unit, slew, force, weight_factor):
    """Base (6), brace (1) and foot (3) under one pull at the first rope point, structure axes, one column."""
    case = {"slew_rad": slew, "pulls_n": [list(force)], "weight_factor": weight_factor}
    solved, brace = Solved(unit, case), unit["brace"]
    axial = solved.brace_axial() if brace else 0.0
    foot = solved.foot() if brace and brace["kind"].startswith("foot") else np.zeros(3)
    return np.concatenate([solved.base(), [axial], foot])


def influence(unit, slew, weight_factor):
    """What the weight does, and a matrix of what unit pulls along the structure axes do."""
    pulls = [solve(unit, slew, 1000.0 * axis, 0.0) / 1000.0 for axis in np.eye(3)]
    return solve(unit, slew, np.zeros(3), weight_factor), np.array(pulls).T


def influences(unit, slews, weight_factor):
    """At every slew. Without a foot of its own a unit answers alike in its own axes: solved once and turned."""
    if unit["brace"] and unit["brace"]["kind"].startswith("foot"):
        return [influence(unit, slew, weight_factor) for slew in slews]
    weight, pulls = influence(unit, 0.0, weight_factor)

    def at(slew):
        turn = np.array([turned(axis, slew) for axis in np.eye(3)]).T
        whole = np.eye(10)
        for block in (0, 3, 7):
            whole[block : block + 3, block : block + 3] = turn
        return whole @ weight, whole @ pulls @ turn.T

    for once, again in zip(at(0.7), influence(unit, 0.7, weight_factor)):
        assert np.abs(once - again).max() < 1e-8 * np.abs(again).max()
    return [at(slew) for slew in slews]


def measured(unit):
    """What is looked at: names and functions of the ten components."""
    row = lambda i: lambda v: v[i]
    found = {name: row(i) for i, name in enumerate(BASE)}
    found |= {"V": lambda v: np.hypot(v[0], v[1]), "M": lambda v: np.hypot(v[3], v[4])}
    if unit["brace"]:
        found["brace"] = row(6)
        if unit["brace"]["kind"].startswith("foot"):
            found |= {"foot Fx": row(7), "foot Fy": row(8), "foot Fz": row(9), "foot V": lambda v: np.hypot(v[7], v[8])}
    return found


def raster(asked, slew):
    (p0, p1), (q0, q1), direction = chart(asked, slew)
    p = np.linspace(p0, p1, max(61, round((p1 - p0) / DEGREE) + 1))
    q = np.linspace(q0, q1, 181 if q1 > q0 else 1)
    p, q = (axis.ravel() for axis in np.meshgrid(p, q))
    return p, q, direction(p, q)


def refine(asked, slew, value, p, q):
    """Ever finer rasters around the best direction so far; beyond a border the border is taken."""
    (p0, p1), (q0, q1), direction = chart(asked, slew)
    wide_p, wide_q = (p1 - p0) / 30, (q1 - q0) / 90
    turns_around = asked["slew_is_held"] and asked["lean_rad"] is None
    best = -math.inf
    steps = np.linspace(-1.0, 1.0, 15)
    for _ in range(30):
        ps, qs = (axis.ravel() for axis in np.meshgrid(np.clip(p + steps * wide_p, p0, p1), q + steps * wide_q))
        qs = qs if turns_around else np.clip(qs, q0, q1)
        values = value(direction(ps, qs))
        index = int(np.argmax(values))
        p, q, best = ps[index], qs[index], max(best, float(values[index]))
        wide_p, wide_q = wide_p / 2.5, wide_q / 2.5
    return best


def envelope(unit):
    asked, tension = unit["envelope"], unit["envelope"]["tension_n"]
    first, last = asked["slews_deg"]
    slews = [degree * DEGREE for degree in range(first, last + 1)]
    answers = influences(unit, slews, asked["weight_factor"])
    wanted = [(name, sense, f) for name, f in measured(unit).items() for sense in ("max", "min")]
    wanted = [(name, sense, f) for name, sense, f in wanted if sense == "max" or name[-1] not in "VM"]
    best = {(name, sense): [] for name, sense, _ in wanted}
    for index, (slew, (weight, pulls)) in enumerate(zip(slews, answers)):
        p, q, directions = raster(asked, slew)
        values = weight[:, None] + tension * (pulls @ directions)
        for name, sense, of in wanted:
            sign = 1.0 if sense == "max" else -1.0
            found = sign * of(values)
            k = int(np.argmax(found))
            best[(name, sense)].append((float(found[k]), index, p[k], q[k]))
    extremes = {}
    for name, sense, of in wanted:
        sign = 1.0 if sense == "max" else -1.0
        slack = max(sign * float(of(weight)) for weight, _ in answers)
        greatest = slack
        for _, index, p, q in sorted(best[(name, sense)], reverse=True)[:12]:
            weight, pulls = answers[index]
            value = lambda d: sign * of(weight[:, None] + tension * (pulls @ d))
            greatest = max(greatest, refine(asked, slews[index], value, p, q))
        extremes.setdefault(name, {})[sense] = round(sign * greatest / FORCE_UNIT_N, 12)
    return extremes


def main():
    units = describe()
    for unit in units:
        unit["envelope"]["expected"] = envelope(unit)
    write("unit_envelopes.json", {"made_by": "unit_envelopes.py", "force_unit_n": FORCE_UNIT_N, "units": units})
    print(len(units), "envelopes")


if __name__ == "__main__":
    main()
