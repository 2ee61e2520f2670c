"""Two-way shear of slabs round columns by wthisj: inside, at edges and at corners, with force and both moments.

Writes expected/punching.json. wthisj cuts the critical section into short patches and takes the stress at their middles; with
patches of 0.05 in the greatest stress is missed by less than 0.5 %. Its shares of the moments are set to ACI 318's formula for
the sides of the whole section, not of its patches. Corner columns are square and stand square in their corner, so that both
shares are alike, as wthisj takes them after turning to principal axes.
"""

import contextlib
import io
import json
import math
import random
from pathlib import Path

import wthisj

SEED = 20260304
CONDITIONS = ["I"] * 10 + ["N", "S", "E", "W"] * 5 + ["NE", "NW", "SE", "SW"] * 3


def share(along, across):
    return 1 - 1 / (1 + 2 / 3 * math.sqrt(along / across))


def case(rng, condition):
    corner = len(condition) == 2
    width = round(rng.uniform(6, 24), 2)
    depth = width if corner else round(rng.uniform(6, 24), 2)
    d = round(rng.uniform(4, 10), 2)
    # A small overhang, so that the edge always cuts.
    overhang = round(rng.uniform(0, 0.2 * min(width, depth)), 2)
    over_x = overhang if "E" in condition or "W" in condition else 0
    over_y = overhang if "N" in condition or "S" in condition else 0
    lx = width + (d / 2 + over_x if over_x or "E" in condition or "W" in condition else d)
    ly = depth + (d / 2 + over_y if over_y or "N" in condition or "S" in condition else d)
    force, mx, my = (round(rng.uniform(-60, 60), 2) for _ in range(3))
    mx, my = round(8 * mx, 1), round(8 * my, 1)
    with contextlib.redirect_stdout(io.StringIO()):
        section = wthisj.PunchingShearSection(width, depth, d, condition, over_x, over_y, PATCH_SIZE=0.05)
        section.solve(force, mx, my, gamma_vx=share(ly, lx), gamma_vy=share(lx, ly), consider_ecc=True, verbose=False)
    return {
        "condition": condition,
        "width_in": width,
        "depth_in": depth,
        "effective_in": d,
        "overhang_in": overhang,
        "force_kip": force,
        "mx_kip_in": mx,
        "my_kip_in": my,
        "length_in": float(f"{section.L:.10g}"),
        "stress_ksi": float(f"{section.v_max:.10g}"),
    }


def main():
    rng = random.Random(SEED)
    cases = [case(rng, condition) for condition in CONDITIONS]
    path = Path(__file__).parent / "expected" / "punching.json"
    path.parent.mkdir(exist_ok=True)
    path.write_text(json.dumps({"made_by": "punching.py", "cases": cases}, indent=1) + "\n", encoding="utf-8")
    print(len(cases), "sections")


if __name__ == "__main__":
    main()
