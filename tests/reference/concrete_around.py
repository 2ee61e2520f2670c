"""Concrete round anchors by shapely: areas, thickness, edges and corners of random slabs.

Writes expected/concrete_around.json. Each case has a slab (with holes and corners that go in), zones of another thickness, a
plate turned by some angle and anchors of its own and of others. Areas are intersections of polygons; cells of nearest anchors
are cut out of a large square by half-planes; corners are found by long lines cut with the slab's border. Lengths of stretches
are those of united line strings.
"""

import json
import math
import random
from pathlib import Path

from shapely import affinity
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import unary_union

SEED = 20260302
CASES = 130
FAR = 1e3


def slab(rng):
    kind = rng.choice(["rectangle", "l", "u", "star", "disc"])
    a, b = rng.uniform(3, 8), rng.uniform(3, 8)
    if kind == "rectangle":
        ring = [(0, 0), (a, 0), (a, b), (0, b)]
    elif kind == "l":
        c, d = a * rng.uniform(0.3, 0.7), b * rng.uniform(0.3, 0.7)
        ring = [(0, 0), (a, 0), (a, d), (c, d), (c, b), (0, b)]
    elif kind == "u":
        c, d, e = a * rng.uniform(0.2, 0.4), a * rng.uniform(0.6, 0.8), b * rng.uniform(0.2, 0.6)
        ring = [(0, 0), (a, 0), (a, b), (d, b), (d, e), (c, e), (c, b), (0, b)]
    elif kind == "disc":
        # Chords that bend by less than 5°, by more where there are few.
        count = rng.randint(60, 100)
        a = b = 8
        ring = [(4 + 3.5 * math.cos(2 * math.pi * i / count), 4 + 3.5 * math.sin(2 * math.pi * i / count)) for i in range(count)]
    else:
        count = rng.randint(5, 9)
        ring = []
        for i in range(count):
            angle = 2 * math.pi * (i + rng.uniform(-0.25, 0.25)) / count
            radius = rng.uniform(1.5, 4.0)
            ring.append((4 + radius * math.cos(angle), 4 + radius * math.sin(angle)))
    outline = Polygon(ring)
    assert outline.is_valid and outline.exterior.is_ccw
    holes = []
    for _ in range(rng.choice([0, 0, 1, 2])):
        x, y = rng.uniform(0.5, a - 0.5), rng.uniform(0.5, b - 0.5)
        hole = affinity.rotate(box(x - 0.2, y - 0.15, x + 0.2, y + 0.15), rng.uniform(0, 90))
        taken = unary_union([Polygon(h) for h in holes]) if holes else Polygon()
        if outline.buffer(-0.1).contains(hole) and hole.distance(taken) > 0.05 if holes else outline.buffer(-0.1).contains(hole):
            holes.append(list(hole.exterior.coords)[:-1])
    return ring, holes


def oriented(ring, counterclockwise):
    return ring if Polygon(ring).exterior.is_ccw == counterclockwise else ring[::-1]


def in_plate(points, origin, turn):
    c, s = math.cos(turn), math.sin(turn)
    return [((x - origin[0]) * c + (y - origin[1]) * s, -(x - origin[0]) * s + (y - origin[1]) * c) for x, y in points]


def in_plane(points, origin, turn):
    c, s = math.cos(turn), math.sin(turn)
    return [(origin[0] + x * c - y * s, origin[1] + x * s + y * c) for x, y in points]


def nearer(own, other):
    """All points nearer to own than to other, within a far square."""
    dx, dy = other[0] - own[0], other[1] - own[1]
    length = math.hypot(dx, dy)
    ux, uy = dx / length, dy / length
    mx, my = (own[0] + other[0]) / 2, (own[1] + other[1]) / 2
    a = (mx - uy * FAR, my + ux * FAR)
    b = (mx + uy * FAR, my - ux * FAR)
    return Polygon([a, (a[0] - ux * FAR, a[1] - uy * FAR), (b[0] - ux * FAR, b[1] - uy * FAR), b])


def shared_area(concrete, own, foreign, half):
    squares = unary_union([box(x - half, y - half, x + half, y + half) for x, y in own])
    near = [f for f in foreign if any(max(abs(f[0] - a[0]), abs(f[1] - a[1])) < 2 * half for a in own)]
    area = squares.intersection(concrete)
    if near:
        cells = []
        for i, a in enumerate(own):
            cell = box(-FAR / 2, -FAR / 2, FAR / 2, FAR / 2)
            for other in near + [b for j, b in enumerate(own) if j != i]:
                cell = cell.intersection(nearer(a, other))
            cells.append(cell)
        area = area.intersection(unary_union(cells))
    return area.area


def rounded(value):
    """Twelve significant digits."""
    if isinstance(value, float):
        return float(f"{value:.12g}")
    if isinstance(value, (list, tuple)):
        return [rounded(v) for v in value]
    if isinstance(value, dict):
        return {key: rounded(v) for key, v in value.items()}
    return value


def thickness(zones, elsewhere, piece):
    found, covered = [], 0.0
    for zone, t in zones:
        overlap = zone.intersection(piece).area
        if overlap > 1e-9 * piece.area:
            found.append(t)
            covered += overlap
    if covered < (1 - 1e-9) * piece.area:
        found.append(elsewhere)
    return min(found)


def first_border(concrete, start, direction):
    ray = LineString([start, (start[0] + FAR * direction[0], start[1] + FAR * direction[1])])
    hits = ray.intersection(concrete.boundary)
    return None if hits.is_empty else Point(start).distance(hits)


def corner(ring, i):
    """Out, gentle (out by less than 5°) or in."""
    (ax, ay), (bx, by), (cx, cy) = ring[i - 1], ring[i], ring[(i + 1) % len(ring)]
    bend = math.degrees(math.atan2(cy - by, cx - bx) - math.atan2(by - ay, bx - ax))
    bend = (bend + 180) % 360 - 180
    return "in" if bend <= 0 else "gentle" if bend < 5 else "out"


def edges(concrete, rings, anchors, foreign, zones, elsewhere, reach):
    found = []
    for ring in rings:
        for i, a in enumerate(ring):
            j = (i + 1) % len(ring)
            b = ring[j]
            length = math.dist(a, b)
            t = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
            n = (t[1], -t[0])
            before_is, after_is = corner(ring, i), corner(ring, j)
            sights = []
            for p in anchors:
                c1 = (a[0] - p[0]) * n[0] + (a[1] - p[1]) * n[1]
                foot = (p[0] - a[0]) * t[0] + (p[1] - a[1]) * t[1]
                before, after = foot, length - foot
                hidden = c1 <= 0
                hidden = hidden or before < -(1.5 * c1 if before_is == "in" else 0)
                hidden = hidden or after < -(1.5 * c1 if after_is == "in" else 0)
                if hidden:
                    sights.append(None)
                    continue
                to_before = first_border(concrete, p, (-t[0], -t[1]))
                to_after = first_border(concrete, p, t)
                if before_is == "out":
                    to_before = min(to_before, before)
                if after_is == "out":
                    to_after = min(to_after, after)
                sights.append((c1, to_before, to_after, foot))
            seen = [s for s in sights if s]
            if not seen or min(s[0] for s in seen) > reach:
                continue
            low = min(s[3] - 1.5 * s[0] for s in seen)
            high = max(s[3] + 1.5 * s[0] for s in seen)
            deep = max(s[0] for s in seen)
            at = lambda foot, depth: (a[0] + t[0] * foot - n[0] * depth, a[1] + t[1] * foot - n[1] * depth)
            h = thickness(zones, elsewhere, Polygon([at(low, 0), at(high, 0), at(high, deep), at(low, deep)]))
            c1 = min(s[0] for s in seen)
            front = [k for k, s in enumerate(sights) if s and s[0] < c1 + 1e-3]
            half = 1.5 * c1
            stretches = []
            for k in front:
                _, before, after, foot = sights[k]
                low, high = foot - min(half, before), foot + min(half, after)
                for f in foreign:
                    depth = (a[0] - f[0]) * n[0] + (a[1] - f[1]) * n[1]
                    other = (f[0] - a[0]) * t[0] + (f[1] - a[1]) * t[1]
                    if 0 <= depth <= 2 * half and abs(other - foot) < 2 * half:
                        if other > foot:
                            high = min(high, (foot + other) / 2)
                        else:
                            low = max(low, (foot + other) / 2)
                if high > low:
                    stretches.append(LineString([(low, 0), (high, 0)]))
            run = unary_union(stretches).length if stretches else 0.0
            found.append(
                {
                    "outward": n,
                    "distance_m": [s[0] if s else None for s in sights],
                    "corner_before_m": [s[1] if s else None for s in sights],
                    "corner_after_m": [s[2] if s else None for s in sights],
                    "thickness_m": h,
                    "front": front,
                    "half_width_m": half,
                    "shear_area_m2": run * min(half, h),
                }
            )
    return found


def with_joints(rng, ring):
    """The same ring with a needless corner on some sides."""
    found = []
    for i, a in enumerate(ring):
        found.append(a)
        if rng.random() < 0.3:
            b = ring[(i + 1) % len(ring)]
            found.append(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2))
    return found


PATTERNS = [
    [(0, 0)],
    [(-0.1, 0), (0.1, 0)],
    [(-0.12, -0.12), (0.12, -0.12), (0.12, 0.12), (-0.12, 0.12)],
    [(-0.15, -0.1), (0, -0.1), (0.15, -0.1), (0.15, 0.1), (0, 0.1), (-0.15, 0.1)],
]


def case(rng, number):
    ring, holes = slab(rng)
    whole = Polygon(ring, holes)
    while True:
        x0, y0, x1, y1 = whole.bounds
        origin, turn = (rng.uniform(x0, x1), rng.uniform(y0, y1)), rng.uniform(-math.pi, math.pi)
        anchors = rng.choice(PATTERNS)
        places = [Point(p) for p in in_plane(anchors, origin, turn)]
        near = min(whole.boundary.distance(p) for p in places)
        if all(whole.contains(p) for p in places) and 0.03 < near < 0.45:
            break
    foreign = []
    for _ in range(rng.choice([0, 0, 1, 2])):
        f = (origin[0] + rng.uniform(-0.9, 0.9), origin[1] + rng.uniform(-0.9, 0.9))
        if whole.contains(Point(f)) and min(math.dist(f, (p.x, p.y)) for p in places) > 0.1:
            foreign.append(f)
    zones = []
    if rng.random() < 0.5:
        x, y = origin[0] + rng.uniform(-0.5, 0.5), origin[1] + rng.uniform(-0.5, 0.5)
        size = rng.uniform(0.3, 2.0)
        zones.append(([(x, y), (x + size, y), (x + size, y + size), (x, y + size)], rng.choice([0.12, 0.4])))
    influence, reach, elsewhere = rng.uniform(0.1, 0.35), 1.5, 0.22
    local = lambda points: in_plate(points, origin, turn)
    rings = [local(oriented(ring, True))] + [local(oriented(hole, False)) for hole in holes]
    concrete = Polygon(rings[0], rings[1:])
    zones_here = [(Polygon(local(z)), t) for z, t in zones]
    others = local(foreign)
    sets = [list(range(len(anchors))), sorted(rng.sample(range(len(anchors)), rng.randint(1, len(anchors))))]
    halves = [rng.uniform(0.08, 0.5) for _ in sets]
    low_x, high_x = min(a[0] for a in anchors) - influence, max(a[0] for a in anchors) + influence
    low_y, high_y = min(a[1] for a in anchors) - influence, max(a[1] for a in anchors) + influence
    return {
        "name": f"{number}",
        "outline_m": with_joints(rng, ring),
        "holes_m": holes,
        "zones": [{"area_m": z, "thickness_m": t} for z, t in zones],
        "elsewhere_m": elsewhere,
        "foreign_m": foreign,
        "origin_m": origin,
        "turn_rad": turn,
        "anchors_m": anchors,
        "influence_m": influence,
        "reach_m": reach,
        "thickness_m": thickness(zones_here, elsewhere, box(low_x, low_y, high_x, high_y)),
        "areas": [
            {"set": s, "half_side_m": h, "area_m2": shared_area(concrete, [anchors[i] for i in s], others, h)}
            for s, h in zip(sets, halves)
        ],
        "edges": edges(concrete, rings, anchors, others, zones_here, elsewhere, reach),
    }


def main():
    rng = random.Random(SEED)
    cases = [case(rng, number) for number in range(CASES)]
    path = Path(__file__).parent / "expected" / "concrete_around.json"
    path.parent.mkdir(exist_ok=True)
    lines = ",\n".join(json.dumps(rounded(one)) for one in cases)
    path.write_text(f'{{"made_by": "concrete_around.py", "cases": [\n{lines}\n]}}\n', encoding="utf-8")
    seen = sum(len(one["edges"]) for one in cases)
    shared = sum(bool(one["foreign_m"]) for one in cases)
    print(len(cases), "settings,", seen, "edges,", shared, "with anchors of others")


if __name__ == "__main__":
    main()
