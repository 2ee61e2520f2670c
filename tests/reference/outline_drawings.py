"""Drawings by ezdxf, and the areas of their outlines by shapely.

Writes drawings/*.dxf, drawings/*.geojson and expected/outline_drawings.json. Each drawing is read back by ezdxf, its blocks
are unfolded and its curves made chords there, and shapely's polygonize puts the lines together: another road than the
program's from the first byte to the last. Splines are scipy's, and the corners of degrees are those
of PROJ's topocentric conversion.

Chords leave curves by 1e-6 of a meter; every figure below is in meters.
"""

import json
import math
import random
from pathlib import Path

import ezdxf
import numpy as np
from ezdxf.math import Vec3
from pyproj import Transformer
from scipy.interpolate import BSpline
from shapely.geometry import LineString, Polygon
from shapely.ops import polygonize, unary_union

ezdxf.options.write_fixed_meta_data_for_testing = True
SEED = 20260102
METERS = {"mm": 0.001, "cm": 0.01, "m": 1.0, "in": 0.0254, "ft": 0.3048}
CODES = {"mm": 4, "cm": 5, "m": 6, "in": 1, "ft": 2}
FOLDER = Path(__file__).parent / "drawings"


def drawing(version, unit=None):
    doc = ezdxf.new(version)
    if version != "R12":
        doc.header["$INSUNITS"] = CODES.get(unit, 0)
    return doc, doc.modelspace()


def on(layer, **more):
    return {"layer": layer, **more}


def lines_of_release_12():
    """Lines in no order, with a rounded corner, millimeters that the file does not state."""
    doc, space = drawing("R12")
    r = 3000.0
    ends = [((0, 0), (24000, 0)), ((24000, 12000 - r), (24000, 0)), ((0, 12000), (24000 - r, 12000)), ((0, 12000), (0, 0))]
    for start, end in [ends[2], ends[0], ends[3], ends[1]]:
        space.add_line(start, end, dxfattribs=on("ROOF"))
    space.add_arc((24000 - r, 12000 - r), r, 0, 90, dxfattribs=on("ROOF"))
    space.add_circle((6000, 6000), 1500, dxfattribs=on("PLANT"))
    space.add_text("not an outline", dxfattribs=on("NOTES"))
    return doc, "mm"


def polyline_of_release_12():
    """The old polyline, its corners as entities of their own, with bulges; a second one in space."""
    doc, space = drawing("R12")
    corners = [(0, 0, 0.0), (18, 0, 0.4), (18, 9, 0.0), (9, 9, -0.25), (4, 9, 0.0), (0, 9, 0.0)]
    space.add_polyline2d(corners, format="xyb", close=True, dxfattribs=on("SLAB"))
    space.add_polyline3d([(30, 0, 4), (40, 0, 4), (40, 8, 5), (30, 8, 5)], close=True, dxfattribs=on("SLAB"))
    return doc, "m"


def light_polylines():
    """Closed polylines with bulges and holes, centimeters, a name with letters of a code page."""
    doc, space = drawing("R2000", "cm")
    outline = [(0, 0, 0), (3200, 0, 0.2), (3200, 1800, 0), (1400, 1800, -0.5), (900, 1800, 0), (0, 1800, 0)]
    space.add_lwpolyline(outline, format="xyb", close=True, dxfattribs=on("Dach Süd"))
    space.add_lwpolyline([(600, 500), (1400, 500), (1400, 1100), (600, 1100)], close=True, dxfattribs=on("Dach Süd"))
    space.add_lwpolyline([(2000, 500, 1), (2600, 500, 1)], format="xyb", close=True, dxfattribs=on("Dach Süd"))
    # Not marked closed, but back at its start.
    space.add_lwpolyline([(4000, 0), (4600, 0), (4600, 700), (4000, 0)], dxfattribs=on("Annex"))
    return doc, "cm"


def nested_blocks():
    """Blocks in blocks: turned, mirrored, squashed, in rows; what lies on layer 0 takes the layer of the insert."""
    doc, space = drawing("R2010", "mm")
    plant = doc.blocks.new("PLANT", base_point=(100, 100))
    plant.add_lwpolyline([(100, 100), (2100, 100, 0.3), (2100, 1300), (100, 1300)], format="xyb", close=True)
    plant.add_circle((1100, 700), 300, dxfattribs=on("FANS"))
    row = doc.blocks.new("ROW")
    row.add_blockref("PLANT", (0, 0), dxfattribs={"column_count": 3, "column_spacing": 4000, "row_count": 2, "row_spacing": 3000})
    row.add_blockref("PLANT", (14000, 0), dxfattribs={"xscale": -1.0, "yscale": 1.0, "rotation": 30})
    house = doc.blocks.new("HOUSE")
    house.add_lwpolyline([(0, 0), (40000, 0), (40000, 25000), (0, 25000)], close=True, dxfattribs=on("ROOF"))
    house.add_blockref("ROW", (3000, 3000), dxfattribs=on("0"))
    house.add_blockref("ROW", (3000, 14000), dxfattribs=on("0", xscale=1.5, yscale=0.5, rotation=10))
    space.add_blockref("HOUSE", (5000, 7000), dxfattribs=on("PLANT-LAYER", rotation=20))
    space.add_blockref("HOUSE", (120000, 7000), dxfattribs=on("SECOND", xscale=-1.0, yscale=0.8))
    return doc, "mm"


def curves_in_inches():
    """Splines, rational and not, closed and not; ellipses whole and in part."""
    doc, space = drawing("R2018", "in")
    space.add_spline(dxfattribs=on("屋根", degree=3))
    spline = space[-1]
    spline.set_open_uniform([(0, 0, 0), (300, -80, 0), (600, 80, 0), (900, 0, 0)], degree=3)
    for a, b in [((900, 0), (900, 500)), ((900, 500), (0, 500)), ((0, 500), (0, 0))]:
        space.add_line(a, b, dxfattribs=on("屋根"))
    round_ = space.add_spline(dxfattribs=on("round"))
    round_.set_closed([(1500, 0, 0), (1900, 100, 0), (2000, 500, 0), (1600, 700, 0), (1300, 400, 0)], degree=3)
    rational = space.add_rational_spline([(2500, 0, 0), (3000, 0, 0), (3000, 500, 0)], [1, math.sqrt(0.5), 1], degree=2, dxfattribs=on("wedge"))
    rational.closed = False
    space.add_line((3000, 500), (2500, 500), dxfattribs=on("wedge"))
    space.add_line((2500, 500), (2500, 0), dxfattribs=on("wedge"))
    space.add_ellipse((200, 1200), (150, 50), 0.4, dxfattribs=on("oval"))
    space.add_ellipse((800, 1200), (200, 0), 0.5, 0, math.pi, dxfattribs=on("oval"))
    space.add_line((600, 1200), (1000, 1200), dxfattribs=on("oval"))
    return doc, "in"


def far_from_the_origin():
    """A site in a national grid: 412 km east, 5654 km north, with gaps of 3 mm."""
    doc, space = drawing("R2018", "m")
    x, y = 412345.678, 5654321.098
    corners = [(0, 0), (36, 4), (33, 21), (17, 19), (16, 27), (-3, 24)]
    for a, b in zip(corners, corners[1:] + corners[:1]):
        space.add_line((x + a[0], y + a[1]), (x + b[0] - 0.002, y + b[1] + 0.002), dxfattribs=on("A-ROOF"))
    return doc, "m"


def seen_from_below():
    """Entities whose own axes look down: their x runs the other way; and one that leans."""
    doc, space = drawing("R2010", "ft")
    down = {"extrusion": (0, 0, -1)}
    space.add_lwpolyline([(-60, 0, 0.3), (0, 0, 0), (0, 40, 0), (-60, 40, 0)], format="xyb", close=True, dxfattribs=on("DOWN", **down))
    space.add_arc((-100, 20), 10, 20, 200, dxfattribs=on("DOWN", **down))
    a, b = (100 - 10 * math.cos(math.radians(t)) for t in (20, 200))
    c, d = (20 + 10 * math.sin(math.radians(t)) for t in (20, 200))
    space.add_line((a, c), (b, d), dxfattribs=on("DOWN"))
    block = doc.blocks.new("B")
    block.add_lwpolyline([(0, 0), (8, 0, 0.5), (8, 5), (0, 5)], format="xyb", close=True, dxfattribs=on("IN-BLOCK"))
    space.add_blockref("B", (-150, 10, 3), dxfattribs=on("0", rotation=25, **down))
    space.add_circle((180, 20, 0), 6, dxfattribs=on("LEANS", extrusion=(0.3, -0.2, 0.9)))
    return doc, "ft"


def random_blocks():
    """Thirty stars with random bulges in blocks nested up to four deep, each placed at random."""
    rng = random.Random(SEED)
    doc, space = drawing("R2013", "mm")
    for number in range(30):
        name = f"STAR{number}"
        block = doc.blocks.new(name, base_point=(rng.uniform(-500, 500), rng.uniform(-500, 500)))
        count = rng.choice([5, 7, 9, 12])
        corners = []
        for index in range(count):
            angle, radius = 2 * math.pi * (index + rng.uniform(-0.2, 0.2)) / count, rng.uniform(3000, 5000)
            corners.append((radius * math.cos(angle), radius * math.sin(angle), rng.choice([0, 0, rng.uniform(-0.15, 0.15)])))
        block.add_lwpolyline(corners, format="xyb", close=True, dxfattribs=on("0"))
        for depth in range(rng.randrange(4)):
            outer = f"{name}-{depth}"
            place = {"rotation": rng.uniform(0, 360), "xscale": rng.choice([1, -1, 1.2]), "yscale": rng.choice([1, 0.7])}
            doc.blocks.new(outer).add_blockref(name, (rng.uniform(-900, 900), rng.uniform(-900, 900)), dxfattribs=on("0", **place))
            name = outer
        space.add_blockref(name, (20000 * (number % 6), 20000 * (number // 6)), dxfattribs=on(f"L{number % 5}"))
    return doc, "mm"


def unfolded(entities, layer_of_insert=None):
    """Entities with their layers, blocks unfolded; what lies on layer 0 in a block lies on the layer of its insert."""
    for entity in entities:
        layer = entity.dxf.layer
        if layer == "0" and layer_of_insert is not None:
            layer = layer_of_insert
        if entity.dxftype() == "INSERT":
            for one in entity.multi_insert() if entity.mcount > 1 else [entity]:
                yield from unfolded(one.virtual_entities(), layer)
        elif entity.dxftype() in ("LWPOLYLINE", "POLYLINE"):
            yield from unfolded(entity.virtual_entities(), layer)
        else:
            yield layer, entity


def points_of(entity, sagitta):
    """Chords of a line or curve; splines by scipy, all others by ezdxf."""
    kind = entity.dxftype()
    if kind == "LINE":
        return [entity.dxf.start, entity.dxf.end]
    if kind in ("ARC", "CIRCLE", "ELLIPSE"):
        return list(entity.flattening(sagitta))
    if kind == "SPLINE":
        weights = list(entity.weights) or [1.0] * len(entity.control_points)
        poles = [(x * w, y * w, w) for (x, y, _), w in zip(entity.control_points, weights)]
        knots, degree = list(entity.knots), entity.dxf.degree
        curve = BSpline(knots, poles, degree)
        homogeneous = curve(np.linspace(knots[degree], knots[len(poles)], 20001))
        return [Vec3(x / w, y / w) for x, y, w in homogeneous]
    return []


def areas_of(path, unit):
    """Areas of all rings on each layer, largest first."""
    doc = ezdxf.readfile(path)
    scale = METERS[unit]
    by_layer = {}
    for layer, entity in unfolded(doc.modelspace()):
        points = [(p.x * scale, p.y * scale) for p in points_of(entity, 1e-6 / scale)]
        if points:
            by_layer.setdefault(layer, []).append(points)
    found = {}
    for layer, lines in sorted(by_layer.items()):
        rings = polygonize(unary_union([LineString(line) for line in closed_gaps(lines)]))
        found[layer] = sorted((significant(Polygon(ring.exterior).area) for ring in rings), reverse=True)
    return found


def closed_gaps(lines, widest=0.005):
    """Ends nearer than 5 mm in the middle between them, as the program says it does."""
    ends = [(i, j, line[j]) for i, line in enumerate(lines) for j in (0, -1)]
    for i, j, at in ends:
        for k, m, other in ends:
            apart = math.dist(at, other)
            if (k, m) > (i, j) and (k, m) != (i, -1 - j) and 0 < apart < widest:
                middle = ((at[0] + other[0]) / 2, (at[1] + other[1]) / 2)
                lines[i][j], lines[k][m] = middle, middle
    return lines


def degrees():
    """A footprint in degrees, and where PROJ has its corners on the plane at the middle of its box."""
    ring = [[8.5401, 47.3769], [8.5413, 47.37705], [8.54125, 47.3778], [8.5406, 47.3777], [8.54055, 47.3781], [8.5399, 47.37795]]
    hole = [[8.5404, 47.3773], [8.5409, 47.3774], [8.54085, 47.3776], [8.5404, 47.3775]]
    feature = {
        "type": "Feature",
        "properties": {"layer": "footprint", "note": "invented"},
        "geometry": {"type": "Polygon", "coordinates": [ring + ring[:1], hole + hole[:1]]},
    }
    (FOLDER / "degrees.geojson").write_text(json.dumps({"type": "FeatureCollection", "features": [feature]}, indent=1) + "\n")
    lon = (min(c[0] for c in ring) + max(c[0] for c in ring)) / 2
    lat = (min(c[1] for c in ring) + max(c[1] for c in ring)) / 2
    to_plane = Transformer.from_pipeline(
        f"+proj=pipeline +step +proj=unitconvert +xy_in=deg +xy_out=rad +step +proj=cart +ellps=WGS84 "
        f"+step +proj=topocentric +ellps=WGS84 +lon_0={lon!r} +lat_0={lat!r} +h_0=0"
    )
    corners = [[round(v, 7) + 0.0 for v in to_plane.transform(x, y, 0.0)[:2]] for x, y in ring]
    inner = [to_plane.transform(x, y, 0.0)[:2] for x, y in hole]
    return {"corners_m": corners, "areas_m2": [significant(Polygon(corners).area), significant(Polygon(inner).area)]}


def significant(value):
    return float(f"{value:.9g}")


def main():
    FOLDER.mkdir(exist_ok=True)
    cases = []
    makers = [
        lines_of_release_12, polyline_of_release_12, light_polylines, nested_blocks, curves_in_inches, far_from_the_origin,
        seen_from_below, random_blocks,
    ]
    for make in makers:
        doc, unit = make()
        for form in ["asc", "bin"] if make in (light_polylines, polyline_of_release_12) else ["asc"]:
            name = make.__name__ + ("_binary" if form == "bin" else "") + ".dxf"
            doc.saveas(FOLDER / name, fmt=form)
            stated = doc.dxfversion != "AC1009"
            cases.append({"file": name, "unit": unit, "stated": stated, "areas_m2": areas_of(FOLDER / name, unit)})
    answer = {"made_by": "outline_drawings.py", "drawings": cases, "degrees": degrees()}
    path = Path(__file__).parent / "expected" / "outline_drawings.json"
    path.parent.mkdir(exist_ok=True)
    path.write_text(json.dumps(answer, indent=1) + "\n", encoding="utf-8")
    count = sum(len(areas) for case in cases for areas in case["areas_m2"].values())
    print(len(cases), "drawings with", count, "closed outlines")


if __name__ == "__main__":
    main()
