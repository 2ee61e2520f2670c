"""Reach and gaps by shapely: each lobe as an intersection of half-planes' polygons, all of them united.

Writes expected/reach.json. The program sweeps over the depth; here a lobe is the common part of what the angle of the rope,
the swing, the plumb limit, the device and the facade's own borders allow, and gaps are what the union leaves of the face.
A gap is connected, so what it shades of the edge is the width of its box.
"""

import json
import math
import random
from pathlib import Path

from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union

SEED = 20260102
FAR = 1000.0


def lobe(rule, support, part_from, part_to, foot_from, foot_to):
    """Place along the facade is x, depth is y."""
    b, slope = rule["arms_reach_m"], math.tan(rule["angle_rad"])
    apex = max(-support, part_from)
    spread = lambda depth: b + max(depth + support, 0.0) * slope
    rope = Polygon(
        [
            (foot_from - spread(apex), apex),
            (foot_to + spread(apex), apex),
            (foot_to + spread(part_to), part_to),
            (foot_from - spread(part_to), part_to),
        ]
    )
    limits = [box(-FAR, max(part_from, rule["least_depth_m"] - support), FAR, max(part_to, part_from))]
    for limit in ("swing_m", "plumb_limit_m"):
        if rule[limit] is not None:
            beside = rule[limit] + (b if limit == "swing_m" else 0.0)
            limits.append(box(foot_from - beside, -FAR, foot_to + beside, FAR))
    shape = rope
    for limit in limits:
        shape = shape.intersection(limit)
    return shape


def unit_region(unit, face):
    lobes = []
    parts = unit["parts"]
    for index, part in enumerate(parts):
        end = parts[index + 1]["from_depth_m"] if index + 1 < len(parts) else face["height_m"]
        for foot_from, foot_to in part["feet_m"]:
            top = unit["rule"]["least_depth_m"] - unit["support_above_top_m"]
            if min(end, face["height_m"]) > max(top, part["from_depth_m"]):
                lobes.append(
                    lobe(unit["rule"], unit["support_above_top_m"], part["from_depth_m"], min(end, face["height_m"]), foot_from, foot_to)
                )
    return unary_union(lobes) if lobes else Polygon()


def pieces(shape, kind):
    if shape.is_empty:
        return []
    if hasattr(shape, "geoms"):
        return [p for one in shape.geoms for p in pieces(one, kind)]
    return [shape] if shape.geom_type == kind else []


def joined(spans):
    spans = sorted(spans)
    out = []
    for a, b in spans:
        if out and a <= out[-1][1] + 1e-9:
            out[-1][1] = max(out[-1][1], b)
        else:
            out.append([a, b])
    return out


def answer(case):
    face = case["face"]
    whole = box(0.0, 0.0, face["length_m"], face["height_m"])
    regions = [unit_region(u, face).intersection(whole) for u in case["units"]]
    covered = unary_union(regions)
    gaps = [g for g in pieces(whole.difference(covered), "Polygon") if g.area >= 1e-6]
    shaded = joined([g.bounds[0], g.bounds[2]] for g in gaps)
    depths = []
    for depth in case["depths_m"]:
        line = LineString([(0.0, depth), (face["length_m"], depth)])
        at = [[p.bounds[0], p.bounds[2]] for p in pieces(covered.intersection(line), "LineString")]
        depths.append(joined(at))
    return {
        "unit_areas_m2": [r.area for r in regions],
        "covered_area_m2": covered.area,
        "gaps": sorted(
            ({"area_m2": g.area, "box_m": list(g.bounds)} for g in gaps), key=lambda g: (g["box_m"][0], g["box_m"][1])
        ),
        "gap_length_m": sum(b - a for a, b in shaded),
        "open_somewhere_m": shaded,
        "covered_at_depths_m": depths,
    }


def random_rule(rng):
    return {
        "arms_reach_m": round(rng.uniform(0.3, 1.0), 3),
        "angle_rad": round(rng.uniform(0.02, 0.6), 4),
        "swing_m": rng.choice([None, round(rng.uniform(0.5, 3.0), 3)]),
        "plumb_limit_m": rng.choice([None, None, round(rng.uniform(0.4, 2.5), 3)]),
        "least_depth_m": round(rng.uniform(0.0, 2.5), 3),
    }


def random_feet(rng, length):
    feet = []
    for _ in range(rng.choice([1, 1, 1, 2, 0])):
        start = rng.uniform(-0.5, length + 0.3)
        feet.append([round(start, 3), round(start + rng.choice([0.0, rng.uniform(0.1, 2.5)]), 3)])
    feet.sort()
    return feet if len(feet) < 2 or feet[1][0] > feet[0][1] + 0.01 else feet[:1]


def random_case(rng):
    face = {"length_m": round(rng.uniform(4.0, 40.0), 3), "height_m": round(rng.uniform(3.0, 60.0), 3)}
    shared = random_rule(rng)
    units = []
    for _ in range(rng.randint(1, 10)):
        parts = [{"from_depth_m": 0.0, "feet_m": random_feet(rng, face["length_m"])}]
        if rng.random() < 0.3:
            step = round(rng.uniform(0.1, 0.9) * face["height_m"], 3)
            parts.append({"from_depth_m": step, "feet_m": random_feet(rng, face["length_m"])})
        rule = shared if rng.random() < 0.6 else random_rule(rng)
        units.append({"rule": rule, "support_above_top_m": round(rng.uniform(-2.0, 3.5), 3), "parts": parts})
    depths = [round(rng.uniform(0.0, 1.0) * face["height_m"], 4) for _ in range(4)]
    return {"face": face, "units": units, "depths_m": depths}


def significant(value):
    if isinstance(value, dict):
        return {k: significant(v) for k, v in value.items()}
    if isinstance(value, list):
        return [significant(v) for v in value]
    return float(f"{value:.9g}") if isinstance(value, float) else value


def near_a_level(case):
    """Whether a depth asked for lies where the covered stretch jumps."""
    levels = [p["from_depth_m"] for u in case["units"] for p in u["parts"]]
    levels += [u["rule"]["least_depth_m"] - u["support_above_top_m"] for u in case["units"]]
    return any(abs(d - level) < 1e-3 for d in case["depths_m"] for level in levels)


def main():
    rng = random.Random(SEED)
    cases = []
    while len(cases) < 48:
        case = random_case(rng)
        if near_a_level(case):
            continue
        case["name"] = f"arrangement {len(cases) + 1}"
        case["expected"] = significant(answer(case))
        # Gaps that hang together by less than the grid of one program are two in the other.
        if any(g["area_m2"] < 1e-4 for g in case["expected"]["gaps"]):
            continue
        cases.append(case)
    path = Path(__file__).parent / "expected" / "reach.json"
    path.parent.mkdir(exist_ok=True)
    path.write_text(json.dumps({"made_by": "reach.py", "cases": cases}, indent=1) + "\n", encoding="utf-8")
    print(len(cases), "arrangements,", sum(len(c["expected"]["gaps"]) for c in cases), "gaps")


if __name__ == "__main__":
    main()
