"""Clear zones by shapely: sectors and obstacles as polygons of many chords, intersected.

Writes expected/clear_zones.json. Each arrangement has one swept band, one prism and the clearances asked for; the answer is
the smallest height between them, or their distance on the plan, found by another road than the program's: the sector is drawn
as a polygon, intersected with the widened obstacle, and on each connected part of what is left the distances from the pivot
are one interval, over which the height is searched by thirds.

Chords: 4096 in a turn, so a circle of 4 m is wrong by 1.2e-6 m and one of 0.6 m by 1.8e-7 m.
"""

import json
import math
import random
from pathlib import Path

from shapely.geometry import LineString, MultiLineString, Point, Polygon

CHORDS = 4096
SEED = 20260101


def arc(radius, start, end):
    count = max(2, math.ceil(abs(end - start) / (2 * math.pi) * CHORDS))
    angles = [start + (end - start) * i / count for i in range(count + 1)]
    return [(radius * math.cos(a), radius * math.sin(a)) for a in angles]


def sector(sweep, r0, r1):
    """The center line's sector about the origin."""
    if sweep["kind"] == "at":
        directions = [(math.cos(a), math.sin(a)) for a in sweep["angles_rad"]]
        return MultiLineString([LineString([(c * r0, s * r0), (c * r1, s * r1)]) for c, s in directions])
    if sweep["kind"] == "whole":
        outer = arc(r1, 0.0, 2 * math.pi)[:-1]
        holes = [arc(r0, 0.0, 2 * math.pi)[:-1]] if r0 > 0 else []
        return Polygon(outer, holes)
    start, end = sweep["from_rad"], sweep["to_rad"]
    inner = arc(r0, end, start) if r0 > 0 else [(0.0, 0.0)]
    return Polygon(arc(r1, start, end) + inner)


def connected_parts(shape):
    """Polygons, lines and points, one by one, without the empty ones."""
    if shape.is_empty:
        return []
    if hasattr(shape, "geoms"):
        return [part for one in shape.geoms for part in connected_parts(one)]
    return [shape]


def corner_distances(part):
    if part.geom_type == "Polygon":
        return [math.hypot(x, y) for ring in [part.exterior, *part.interiors] for x, y in ring.coords]
    return [math.hypot(x, y) for x, y in part.coords]


def height_between(band, prism, r):
    t = (r - band["r0_m"]) / (band["r1_m"] - band["r0_m"])
    low = band["low_at_r0_m"] + t * (band["low_at_r1_m"] - band["low_at_r0_m"])
    high = band["high_at_r0_m"] + t * (band["high_at_r1_m"] - band["high_at_r0_m"])
    return max(low - prism["to_m"], prism["from_m"] - high)


def least_height(band, prism, r_from, r_to):
    """Search by thirds of a convex function."""
    for _ in range(200):
        a, b = r_from + (r_to - r_from) / 3, r_to - (r_to - r_from) / 3
        if height_between(band, prism, a) <= height_between(band, prism, b):
            r_to = b
        else:
            r_from = a
    return min(height_between(band, prism, r) for r in (r_from, (r_from + r_to) / 2, r_to))


def answer(case):
    """The figures of an arrangement, or None when a rounding could turn them over."""
    band, prism, asked = case["band"], case["prism"], case["required"]
    swept = sector(case["sweep"], band["r0_m"], band["r1_m"])
    near = band["half_width_m"] + asked["around_m"]
    px, py = case["pivot_m"]
    if prism["kind"] == "disc":
        center = Point(prism["center_m"][0] - px, prism["center_m"][1] - py)
        distance = swept.distance(center) - prism["radius_m"]
        widened = center.buffer(prism["radius_m"] + near, quad_segs=CHORDS // 4)
    else:
        rings = [[(x - px, y - py) for x, y in ring] for ring in [prism["outer_m"], *prism["holes_m"]]]
        plan = Polygon(rings[0], rings[1:])
        assert plan.is_valid
        distance = swept.distance(plan)
        widened = plan.buffer(near, quad_segs=CHORDS // 4)
    if abs(distance - near) < 1e-3:
        return None
    if distance > near:
        return {"horizontal_m": distance - band["half_width_m"], "conflict": False}
    least = math.inf
    for part in connected_parts(swept.intersection(widened)):
        nearest = part.distance(Point(0.0, 0.0))
        least = min(least, least_height(band, prism, nearest, max(corner_distances(part))))
    if abs(least - asked["vertical_m"]) < 1e-3:
        return None
    return {"vertical_m": least, "conflict": least < asked["vertical_m"]}


def star(rng, count, center, small, large):
    """A ring around a center with random radii: simple, and mostly not convex."""
    ring = []
    for i in range(count):
        angle, radius = 2 * math.pi * (i + rng.uniform(-0.3, 0.3)) / count, rng.uniform(small, large)
        ring.append([round(center[0] + radius * math.cos(angle), 3), round(center[1] + radius * math.sin(angle), 3)])
    return ring


def random_prism(rng, kind):
    angle, far = rng.uniform(-math.pi, math.pi), rng.uniform(0.0, 5.0)
    center = [round(far * math.cos(angle), 3), round(far * math.sin(angle), 3)]
    low = round(rng.uniform(-0.5, 3.5), 3)
    levels = {"from_m": low, "to_m": round(low + rng.uniform(0.1, 2.0), 3)}
    if kind == "disc":
        return {"kind": "disc", "center_m": center, "radius_m": round(rng.uniform(0.03, 0.8), 3), **levels}
    if kind == "wall":
        along, across = (math.cos(angle), math.sin(angle)), (-math.sin(angle), math.cos(angle))
        corners = [(0.0, -6.0), (rng.uniform(0.1, 0.5), -6.0), (0.3, rng.uniform(1.0, 6.0)), (0.0, 5.0)]
        place = lambda a, c: [round(center[i] + a * along[i] + c * across[i], 3) for i in (0, 1)]
        return {"kind": "polygon", "outer_m": [place(a, c) for a, c in corners], "holes_m": [], **levels}
    if kind == "court":
        # A ring around the pivot, as the roof around a courtyard, seen from a mast that stands in it.
        outer, hole = star(rng, 9, [0.0, 0.0], 6.0, 9.0), star(rng, 7, [0.0, 0.0], 1.0, 4.5)
        return {"kind": "polygon", "outer_m": outer, "holes_m": [hole], **levels}
    count = rng.choice([5, 7, 8, 11])
    outer = star(rng, count, center, 0.3, 3.0)
    return {"kind": "polygon", "outer_m": outer, "holes_m": [], **levels}


def random_sweep(rng, kind):
    if kind == "whole":
        return {"kind": "whole"}
    if kind == "at":
        return {"kind": "at", "angles_rad": [round(rng.uniform(-3.1, 3.1), 3) for _ in range(rng.choice([1, 2, 4]))]}
    start = round(rng.uniform(-3.1, 3.1), 3)
    widest = {"narrow": 1.5, "wide": 3.1, "most": 6.1}[kind]
    return {"kind": "between", "from_rad": start, "to_rad": round(start + rng.uniform(0.3, 1.0) * widest, 3)}


def random_case(rng, sweep, prism):
    r0 = rng.choice([0.0, round(rng.uniform(0.05, 0.8), 3)])
    low0, low1 = round(rng.uniform(0.0, 3.0), 3), round(rng.uniform(0.5, 3.0), 3)
    band = {
        "r0_m": r0,
        "r1_m": round(r0 + rng.uniform(0.5, 3.2), 3),
        "low_at_r0_m": low0,
        "low_at_r1_m": low1,
        "high_at_r0_m": round(low0 + rng.uniform(0.05, 0.4), 3),
        "high_at_r1_m": round(low1 + rng.uniform(0.05, 0.4), 3),
        "half_width_m": round(rng.uniform(0.03, 0.2), 3),
    }
    required = {"vertical_m": round(rng.uniform(0.05, 0.5), 3), "around_m": round(rng.uniform(0.0, 0.4), 3)}
    pivot = [round(rng.uniform(-0.5, 0.5), 3), round(rng.uniform(-0.5, 0.5), 3)]
    return {
        "pivot_m": pivot,
        "sweep": random_sweep(rng, sweep),
        "band": band,
        "prism": random_prism(rng, prism),
        "required": required,
    }


def significant(value):
    return float(f"{value:.9g}") if isinstance(value, float) else value


def main():
    rng = random.Random(SEED)
    cases = []
    for sweep in ["whole", "narrow", "wide", "most", "at"]:
        for prism in ["star", "disc", "wall", "court"]:
            made = 0
            while made < 6:
                case = random_case(rng, sweep, prism)
                figures = answer(case)
                # Arrangements far apart say little: one in six of them is enough.
                if figures is None or (figures.get("horizontal_m", 0.0) > 1.5 and made > 0):
                    continue
                case["name"] = f"{sweep} {prism} {made + 1}"
                case["expected"] = {key: significant(value) for key, value in figures.items()}
                cases.append(case)
                made += 1
    path = Path(__file__).parent / "expected" / "clear_zones.json"
    path.parent.mkdir(exist_ok=True)
    path.write_text(json.dumps({"made_by": "clear_zones.py", "cases": cases}, indent=1) + "\n", encoding="utf-8")
    kinds = [("height", sum("vertical_m" in c["expected"] for c in cases)), ("conflict", sum(c["expected"]["conflict"] for c in cases))]
    print(len(cases), "arrangements,", ", ".join(f"{n} with {what}" for what, n in kinds))


if __name__ == "__main__":
    main()
