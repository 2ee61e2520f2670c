"""Rigid plates on concrete without tension by concreteproperties: from a plane of strain to the force and the moments.

Writes expected/plates.json. Outlines are rectangles, triangles, L's and circles of 24 corners; anchors stand in corners, rings and
rows. A plane is drawn at random so that part of the plate presses; the program integrates the pressed part on its mesh and sums
the anchors, which carry only tension. Anchors are laid over the concrete, which is not cut for them. The neutral axis of each
case crosses the plate, so that every case has contact and most have pulled anchors. Lengths in mm, forces in N, E_c = 30000 MPa.
"""

import json
import math
import random
import warnings
from pathlib import Path

from concreteproperties.concrete_section import ConcreteSection
from concreteproperties.material import Concrete, SteelBar
from concreteproperties.results import MomentCurvatureResults
from concreteproperties.stress_strain_profile import ConcreteLinearNoTension, RectangularStressBlock, StressStrainProfile
from concreteproperties.utils import calculate_extreme_fibre
from sectionproperties.pre.geometry import CompoundGeometry, Geometry
from sectionproperties.pre.library import circular_section_by_area
from shapely import Point, Polygon

SEED = 20260311
CONCRETE_MPA = 30000.0
SHAPES = ["rectangle", "triangle", "l", "circle"]
PER_SHAPE = 20


def outline(rng, shape):
    a, b = (round(rng.uniform(220, 480), 1) for _ in range(2))
    if shape == "rectangle":
        return [(0, 0), (a, 0), (a, b), (0, b)]
    if shape == "triangle":
        return [(0, 0), (a, 0), (round(rng.uniform(0.2, 0.8) * a, 1), b)]
    if shape == "l":
        u, v = round(0.55 * a, 1), round(0.5 * b, 1)
        return [(0, 0), (a, 0), (a, v), (u, v), (u, b), (0, b)]
    turns = [math.tau * i / 24 for i in range(24)]
    return [(round(a / 2 * math.cos(t), 4), round(a / 2 * math.sin(t), 4)) for t in turns]


def anchors(rng, corners, count):
    inside = Polygon(corners).buffer(-30)
    middle = inside.centroid
    radius = inside.exterior.distance(middle) * rng.uniform(0.7, 0.95) if inside.contains(middle) else 0
    ring = rng.random() < 0.5 and radius > 40
    places = []
    while len(places) < count:
        if ring:
            turn = math.tau * len(places) / count
            place = Point(middle.x + radius * math.cos(turn), middle.y + radius * math.sin(turn))
        else:
            x, y, far_x, far_y = inside.bounds
            place = Point(rng.uniform(x, far_x), rng.uniform(y, far_y))
            if not inside.contains(place) or any(place.distance(Point(p)) < 40 for p in places):
                continue
        places.append((round(place.x, 2), round(place.y, 2)))
    return places


def case(rng, shape):
    corners = outline(rng, shape)
    places = anchors(rng, corners, rng.choice([3, 4, 6, 8]))
    area, n = round(rng.uniform(80, 500), 1), round(rng.uniform(6, 20), 2)
    steel = n * CONCRETE_MPA
    concrete = Concrete(
        name="concrete", density=0, colour="k", flexural_tensile_strength=0,
        stress_strain_profile=ConcreteLinearNoTension(elastic_modulus=CONCRETE_MPA),
        ultimate_stress_strain_profile=RectangularStressBlock(30, 0.8, 0.8, 0.003),
    )
    tension_only = StressStrainProfile(strains=[-1, 0, 1e-9, 1], stresses=[-steel, 0, 0, 0])
    # The elastic modulus that the program asks of every bar, between pulled and pressed, has no part in this.
    tension_only.get_elastic_modulus = lambda: steel
    bar = SteelBar(name="bar", density=0, colour="k", stress_strain_profile=tension_only)
    concrete_geometry = Geometry(Polygon(corners), material=concrete)
    bars = [
        circular_section_by_area(area=area, n=16, material=bar).shift_section(x, y) for x, y in places
    ]
    section = ConcreteSection(CompoundGeometry([concrete_geometry, *bars]), moment_centroid=(0.0, 0.0))
    theta = rng.uniform(-math.pi, math.pi) if rng.random() < 0.8 else rng.choice([0, math.pi / 2])
    extreme, _ = calculate_extreme_fibre(points=section.compound_geometry.points, theta=theta)
    across = [-math.sin(theta) * x + math.cos(theta) * y for x, y in corners]
    depth = rng.uniform(0.08, 0.7) * (max(across) - min(across))
    kappa = rng.uniform(2e-7, 2e-6)
    results = MomentCurvatureResults(theta=theta, n_target=0)
    section.service_normal_force_convergence(kappa * depth, kappa, results)
    d = max(across)
    strains = [kappa * (-math.sin(theta) * x + math.cos(theta) * y - d + depth) for x, y in places]
    figure = lambda value: float(f"{float(value):.10g}")
    return {
        "shape": shape, "outline_mm": corners, "anchors_mm": places, "area_mm2": area, "modular": n,
        "press_n": figure(results._n_i), "moment_y_nmm": figure(results._m_x_i), "moment_x_nmm": figure(results._m_y_i),
        "tension_n": [figure(max(-e, 0) * steel * area) for e in strains],
        "pressure_mpa": figure(kappa * depth * CONCRETE_MPA),
        "extreme_mm": [figure(v) for v in extreme],
    }


def main():
    warnings.simplefilter("ignore")
    rng = random.Random(SEED)
    cases = [case(rng, shape) for shape in SHAPES for _ in range(PER_SHAPE)]
    path = Path(__file__).parent / "expected" / "plates.json"
    path.parent.mkdir(exist_ok=True)
    path.write_text(json.dumps({"made_by": "plates.py", "cases": cases}, indent=1) + "\n", encoding="utf-8")
    print(len(cases), "plates")


if __name__ == "__main__":
    main()
