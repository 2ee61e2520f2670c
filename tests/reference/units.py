"""Mast-and-arm units by PyNiteFEA: every kind of brace, solved in structure axes, where the arm slews and the foot doesn't.

Writes expected/units.json. The program solves mast and arm as a tree in arm axes and adds the brace as one unknown; here the
whole frame, brace and pin included, is described in structure axes and solved at once. The idealization is the same:
Euler-Bernoulli, linear, a brace is a pin-ended bar whose weight goes half to each end, and the half at a lug or a foot goes
straight to the structure. Forces and moments are written as shares of 100 kN and 100 kN*m, so that what a solver's rounding
leaves of a zero stays far below the last digit that is compared.

PyNiteFEA's second axis points up: its (X, Y, Z) are (x, z, -y). Its local z of mast and arm is horizontal and square to the
arm, so its I_z is what resists bending in the arm's plane.
"""

import json
import math
import random
from pathlib import Path

import numpy as np

SEED = 20260103
TUBES = {"steel": (210e9, 81e9, 7850.0), "aluminum": (70e9, 27e9, 2700.0)}
STANDARD_GRAVITY = 9.80665
FORCE_UNIT_N = 1e5
KINDS = (
    ["none"] * 5
    + ["rear_to_mast pinned"] * 5
    + ["rear_to_mast rigid"] * 3
    + ["rear_to_base pinned"] * 3
    + ["rear_to_base rigid"] * 3
    + ["front pinned"] * 5
    + ["front rigid"] * 3
    + ["foot_from_head rigid"] * 7
    + ["foot_from_tail pinned"] * 3
    + ["foot_from_tail rigid"] * 3
)


def tube(rng, outer, wall, shape):
    """Stiffness and weight of a round tube, or of a rectangular one that is taller than wide (Bredt's torsion)."""
    e, g, density = TUBES[rng.choice(sorted(TUBES))]
    if shape == "round":
        inner = outer - 2 * wall
        area, i_y = math.pi / 4 * (outer**2 - inner**2), math.pi / 64 * (outer**4 - inner**4)
        i_z, j = i_y, 2 * i_y
    else:
        h, b = outer, round(outer * rng.uniform(0.5, 0.9), 3)
        area = b * h - (b - 2 * wall) * (h - 2 * wall)
        i_y = (b * h**3 - (b - 2 * wall) * (h - 2 * wall) ** 3) / 12
        i_z = (h * b**3 - (h - 2 * wall) * (b - 2 * wall) ** 3) / 12
        j = 2 * wall * (b - wall) ** 2 * (h - wall) ** 2 / (b + h - 2 * wall)
    values = {"ea_n": e * area, "ei_y_nm2": e * i_y, "ei_z_nm2": e * i_z, "gj_nm2": g * j}
    values["weight_n_per_m"] = area * density * STANDARD_GRAVITY
    return {key: float(f"{value:.6g}") for key, value in values.items()}


def stepped(value):
    """A place on a raster of 50 mm: no two are so near that a stiffness matrix loses digits."""
    return round(round(value / 0.05) * 0.05, 2)


def random_brace(rng, kind, unit):
    bar = tube(rng, round(rng.uniform(0.04, 0.08), 3), round(rng.uniform(0.003, 0.005), 4), "round")
    brace = {"kind": kind, "bar": {key: bar[key] for key in ("ea_n", "weight_n_per_m")}}
    tail, height = unit["tail_m"], unit["mast_height_m"]
    if kind == "rear_to_mast":
        brace |= {"tail_at_m": stepped(rng.uniform(0.7, 1.0) * tail), "mast_at_m": stepped(rng.uniform(0.2, 0.6) * height)}
    if kind == "rear_to_base":
        brace |= {"tail_at_m": stepped(rng.uniform(0.7, 1.0) * tail), "base_at_m": round(rng.uniform(0.2, 0.8), 3)}
    if kind == "front":
        brace |= {"arm_at_m": stepped(rng.uniform(0.3, 0.7) * unit["outreach_m"]), "mast_at_m": stepped(rng.uniform(0.3, 0.7) * height)}
    if kind == "foot_from_tail":
        brace["tail_at_m"] = stepped(rng.uniform(0.7, 1.0) * tail)
    if kind.startswith("foot"):
        brace |= {
            "distance_m": round(rng.uniform(0.9, 2.2), 3),
            "foot_level_m": round(rng.uniform(-0.3, 0.4), 3),
            "bearing_rad": round(rng.uniform(-math.pi, math.pi), 3),
            "foot_spring_n_per_m": rng.choice([None, float(f"{10 ** rng.uniform(6.0, 8.0):.4g}")]),
        }
    return brace


def random_unit(rng, kind, head):
    mast_shape, arm_shape = (rng.choice(["round", "rectangular"]) for _ in range(2))
    unit = {
        "mast": tube(rng, round(rng.uniform(0.10, 0.17), 3), round(rng.uniform(0.005, 0.010), 4), mast_shape),
        "mast_height_m": stepped(rng.uniform(1.2, 3.0)),
        "base_tilt_spring_nm_per_rad": rng.choice([None, None, float(f"{10 ** rng.uniform(5.3, 7.0):.4g}")]),
        "arm": tube(rng, round(rng.uniform(0.09, 0.16), 3), round(rng.uniform(0.004, 0.008), 4), arm_shape),
        "outreach_m": stepped(rng.uniform(0.9, 2.2)),
        "tail_m": stepped(rng.uniform(0.5, 1.2)) if kind.startswith(("rear", "foot")) else rng.choice([0.0, 0.25]),
        "head": head,
    }
    unit["brace"] = None if kind == "none" else random_brace(rng, kind, unit)
    far = unit["outreach_m"]
    unit["points"] = [
        {"x_m": far, "sideways_m": 0.0, "drop_m": round(rng.uniform(0.0, 0.2), 3)},
        {"x_m": stepped(rng.uniform(0.5, 0.9) * far), "sideways_m": round(rng.uniform(-0.2, 0.2), 3), "drop_m": 0.0},
    ]
    unit["lumps"] = [
        {"on": "mast", "at_m": stepped(rng.uniform(0.2, 0.9) * unit["mast_height_m"]), "weight_n": round(rng.uniform(20, 200), 1)},
        {"on": "arm", "at_m": stepped(rng.uniform(0.1, 0.9) * far), "weight_n": round(rng.uniform(20, 300), 1)},
    ]
    return unit


def random_cases(rng, unit):
    """A vertical rope at the tip with the weight; any pull there, without; two ropes with the weight."""
    around = unit["brace"].get("bearing_rad", 0.0) if unit["brace"] else None
    within = 1.0 if around is not None and unit["brace"]["kind"].startswith("foot") else math.pi
    pull = lambda: [round(rng.uniform(-6e3, 6e3), 1), round(rng.uniform(-6e3, 6e3), 1), round(rng.uniform(-15e3, 3e3), 1)]
    none = [0.0, 0.0, 0.0]
    loads = [([[0.0, 0.0, -12000.0], none], 1.0), ([pull(), none], 0.0), ([pull(), pull()], 1.35)]
    return [
        {"slew_rad": round((around or 0.0) + rng.uniform(-within, within), 4), "pulls_n": pulls, "weight_factor": factor}
        for pulls, factor in loads
    ]


def stations(rng, unit):
    """Both sides of every pin, the ends, and one place between on mast and arm."""
    height, far, brace = unit["mast_height_m"], unit["outreach_m"], unit["brace"] or {}
    cuts = [("mast", 0.0, "after"), ("mast", height, "before"), ("mast", stepped(rng.uniform(0.2, 0.8) * height), "after")]
    cuts += [("arm", 0.0, "after"), ("arm", far, "before"), ("arm", stepped(rng.uniform(0.2, 0.8) * far), "after")]
    if unit["tail_m"] > 0.0:
        cuts.append(("arm", 0.0, "before"))
    pins = [("mast", brace.get("mast_at_m")), upper_pin(unit) or ("arm", None)]
    at_pins = [(part, at) for part, at in pins if at is not None and (part, at) != ("mast", height)]
    cuts += [(part, at, side) for part, at in at_pins for side in ("before", "after")]
    return [{"part": part, "at_m": at, "side": side} for part, at, side in cuts if at > -unit["tail_m"] or side == "after"]


def upper_pin(unit):
    """Part and coordinate of the brace's upper pin."""
    brace = unit["brace"]
    if brace is None:
        return None
    if brace["kind"] == "front":
        return ("arm", brace["arm_at_m"])
    return ("mast", unit["mast_height_m"]) if brace["kind"] == "foot_from_head" else ("arm", -brace["tail_at_m"])


def describe():
    """All units with their cases and the cuts that are looked at."""
    rng = random.Random(SEED)
    units = []
    for number, what in enumerate(KINDS):
        kind, _, head = what.partition(" ")
        unit = {"name": f"{number + 1} {what}"} | random_unit(rng, kind, head or "rigid")
        unit["stations"] = stations(rng, unit)
        unit["cases"] = random_cases(rng, unit)
        units.append(unit)
    return units


def places(unit):
    """Where mast and arm have nodes, in rising order."""
    on_mast, on_arm = {0.0, unit["mast_height_m"]}, {0.0 - unit["tail_m"], 0.0, unit["outreach_m"]}
    on_arm |= {point["x_m"] for point in unit["points"]}
    for thing in unit["lumps"] + unit["stations"]:
        (on_mast if thing.get("on", thing.get("part")) == "mast" else on_arm).add(thing["at_m"])
    if unit["brace"]:
        part, at = upper_pin(unit)
        (on_mast if part == "mast" else on_arm).add(at)
        if "mast_at_m" in unit["brace"]:
            on_mast.add(unit["brace"]["mast_at_m"])
    return {"mast": sorted(on_mast), "arm": sorted(on_arm)}


def turned(vector, angle):
    """About the vertical, counter-clockwise seen from above."""
    c, s = math.cos(angle), math.sin(angle)
    return np.array([c * vector[0] - s * vector[1], s * vector[0] + c * vector[1], vector[2]])


def lower_pin(unit, slew):
    """The lower pin in structure axes: a lug turns with the slew, a foot doesn't."""
    brace = unit["brace"]
    if brace["kind"] == "rear_to_base":
        return turned([-brace["base_at_m"], 0.0, 0.0], slew)
    if brace["kind"].startswith("foot"):
        return turned([-brace["distance_m"], 0.0, 0.0], brace["bearing_rad"]) + [0.0, 0.0, brace["foot_level_m"]]
    return np.array([0.0, 0.0, brace["mast_at_m"]])


def place_of(unit, part, at, slew):
    """A place on an axis, in structure axes."""
    return np.array([0.0, 0.0, at]) if part == "mast" else turned([at, 0.0, 0.0], slew) + [0.0, 0.0, unit["mast_height_m"]]


def axes_of(part, slew):
    """Rows: the part's local axes in structure axes. The mast's z points toward the tail."""
    x, y, z = turned([1.0, 0.0, 0.0], slew), turned([0.0, 1.0, 0.0], slew), np.array([0.0, 0.0, 1.0])
    return np.array([z, y, -x]) if part == "mast" else np.array([x, y, z])


# PyNiteFEA's axes from ours.
LIBRARY = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])


class Solved:
    """One unit at one slew as PyNiteFEA's model, loaded and solved."""

    def __init__(self, unit, case):
        from Pynite import FEModel3D

        self.unit, self.slew = unit, case["slew_rad"]
        self.model, self.extra_base = FEModel3D(), np.zeros(6)
        self.model.add_material("unit", 1.0, 1.0, 0.0, 0.0)
        self.at = places(unit)
        self._mast_and_arm()
        self._base()
        self.foot_weight = np.zeros(3)
        if unit["brace"]:
            self._brace(case["weight_factor"])
        self._loads(case)
        self.model.analyze_linear()

    def node(self, part, at):
        return "arm 0.0" if part == "mast" and at == self.unit["mast_height_m"] else f"{part} {at}"

    def _add_node(self, name, at):
        if name not in self.model.nodes:
            self.model.add_node(name, *(float(v) for v in LIBRARY @ at))

    def _mast_and_arm(self):
        for part in ("mast", "arm"):
            bar = self.unit[part]
            self.model.add_section(part, bar["ea_n"], bar["ei_z_nm2"], bar["ei_y_nm2"], bar["gj_nm2"])
            for at in self.at[part]:
                self._add_node(self.node(part, at), place_of(self.unit, part, at, self.slew))
            turn = math.degrees(self.slew) if part == "mast" else 0.0
            for start, end in zip(self.at[part], self.at[part][1:]):
                self.model.add_member(f"{part} {start} {end}", self.node(part, start), self.node(part, end), "unit", part, turn)
        if self.unit["head"] == "pinned":
            start, end = self.at["mast"][-2:]
            self.model.def_releases(f"mast {start} {end}", Rzj=True)

    def _base(self):
        spring = self.unit["base_tilt_spring_nm_per_rad"]
        stiff = spring is None
        self.model.def_support("mast 0.0", True, True, True, stiff, True, stiff)
        if spring is not None:
            for dof in ("RX", "RZ"):
                self.model.def_support_spring("mast 0.0", dof, spring)

    def _brace(self, weight_factor):
        brace, lower = self.unit["brace"], lower_pin(self.unit, self.slew)
        upper = self.node(*upper_pin(self.unit))
        below = f"mast {brace['mast_at_m']}" if "mast_at_m" in brace else "lower pin"
        if below == "lower pin":
            self._add_node(below, lower)
            spring = brace.get("foot_spring_n_per_m")
            stiff = spring is None
            self.model.def_support(below, stiff, stiff, stiff, True, True, True)
            if spring is not None:
                for dof in ("DX", "DY", "DZ"):
                    self.model.def_support_spring(below, dof, spring)
        self.model.add_section("brace", brace["bar"]["ea_n"], 1.0, 1.0, 1.0)
        self.model.add_member("brace", below, upper, "unit", "brace")
        self.model.def_releases("brace", Rxi=True, Ryi=True, Rzi=True, Ryj=True, Rzj=True)
        length = np.linalg.norm(place_of(self.unit, *upper_pin(self.unit), self.slew) - lower)
        half = brace["bar"]["weight_n_per_m"] * length * weight_factor / 2
        self._force(upper, [0.0, 0.0, -half])
        if below != "lower pin":
            self._force(below, [0.0, 0.0, -half])
        elif brace["kind"] == "rear_to_base":
            self.extra_base = wrench([0.0, 0.0, -half], lower)
        else:
            self.foot_weight = np.array([0.0, 0.0, -half])

    def _force(self, node, force, moment=(0.0, 0.0, 0.0)):
        for kind, vector in (("F", force), ("M", moment)):
            for axis, value in zip("XYZ", LIBRARY @ np.array(vector)):
                if value != 0.0:
                    self.model.add_node_load(node, kind + axis, float(value))

    def _loads(self, case):
        factor = case["weight_factor"]
        for point, pull in zip(self.unit["points"], case["pulls_n"]):
            offset = turned([0.0, point["sideways_m"], -point["drop_m"]], self.slew)
            self._force(self.node("arm", point["x_m"]), pull, np.cross(offset, pull))
        for lump in self.unit["lumps"]:
            self._force(self.node(lump["on"], lump["at_m"]), [0.0, 0.0, -lump["weight_n"] * factor])
        for part in ("mast", "arm"):
            weight = -self.unit[part]["weight_n_per_m"] * factor
            for start, end in zip(self.at[part], self.at[part][1:]):
                self.model.add_member_dist_load(f"{part} {start} {end}", "FY", weight, weight)

    def _of_node(self, name, kinds):
        node = self.model.nodes[name]
        return LIBRARY.T @ [getattr(node, kind)["Combo 1"] for kind in kinds]

    def _support(self, name):
        """The action of the frame on what supports it at a node, about that node."""
        return -np.concatenate([self._of_node(name, ("RxnFX", "RxnFY", "RxnFZ")), self._of_node(name, ("RxnMX", "RxnMY", "RxnMZ"))])

    def base(self):
        """Action on the structure at the base, about its reference point; a lug on the base belongs to it."""
        action = self._support("mast 0.0") + self.extra_base
        if self.unit["brace"] and self.unit["brace"]["kind"] == "rear_to_base":
            action += wrench(self._support("lower pin")[:3], lower_pin(self.unit, self.slew))
        return action

    def foot(self):
        return self._support("lower pin")[:3] + self.foot_weight

    def _ends(self, member):
        """Forces of the nodes on a member at its ends, structure axes."""
        (one,) = self.model.members[member].sub_members.values()
        six = lambda o: one.F("Combo 1")[o : o + 3, 0]
        return [np.concatenate([LIBRARY.T @ six(o), LIBRARY.T @ six(o + 3)]) for o in (0, 6)]

    def brace_axial(self):
        (one,) = self.model.members["brace"].sub_members.values()
        return one.f("Combo 1")[6, 0]

    def displacement(self, point):
        """A rope point's own displacement, its offset from the arm's axis included."""
        name = self.node("arm", point["x_m"])
        offset = turned([0.0, point["sideways_m"], -point["drop_m"]], self.slew)
        return self._of_node(name, ("DX", "DY", "DZ")) + np.cross(self._of_node(name, ("RX", "RY", "RZ")), offset)

    def inner(self, station):
        """What the part beyond the cut does to the part before it, in the part's local axes."""
        places_of_part, at = self.at[station["part"]], station["at_m"]
        index = places_of_part.index(at)
        if station["side"] == "before":
            forces = self._ends(f"{station['part']} {places_of_part[index - 1]} {at}")[1]
        else:
            forces = -self._ends(f"{station['part']} {at} {places_of_part[index + 1]}")[0]
        axes = axes_of(station["part"], self.slew)
        return np.concatenate([axes @ forces[:3], axes @ forces[3:]])


def wrench(force, at):
    """Force and moment about the origin."""
    return np.concatenate([force, np.cross(at, force)])


def answer(solved, unit):
    """The figures of one case; forces and moments as shares of FORCE_UNIT_N."""
    brace = unit["brace"]
    has_foot = brace is not None and brace["kind"].startswith("foot")
    shares = lambda values: [round(float(v) / FORCE_UNIT_N, 12) for v in np.atleast_1d(values)]
    return {
        "base": shares(solved.base()),
        "brace_axial": shares(solved.brace_axial())[0] if brace else None,
        "foot": shares(solved.foot()) if has_foot else None,
        "points_moved_m": [[round(float(v), 12) for v in solved.displacement(point)] for point in unit["points"]],
        "inner": [shares(solved.inner(station)) for station in unit["stations"]],
    }


def write(name, content):
    """One line for each entry that is a list of numbers or a small table."""
    path = Path(__file__).parent / "expected" / name
    path.parent.mkdir(exist_ok=True)
    path.write_text(lines(content, 0) + "\n", encoding="utf-8")


def lines(value, depth):
    flat = json.dumps(value)
    if not isinstance(value, (dict, list)) or len(flat) + depth < 120:
        return flat
    inside = ",\n".join(" " * (depth + 1) + text for text in entries(value, depth + 1))
    return ("{\n%s\n%s}" if isinstance(value, dict) else "[\n%s\n%s]") % (inside, " " * depth)


def entries(value, depth):
    if isinstance(value, dict):
        return [f"{json.dumps(key)}: {lines(item, depth)}" for key, item in value.items()]
    return [lines(item, depth) for item in value]


def main():
    units = describe()
    for unit in units:
        for case in unit["cases"]:
            case["expected"] = answer(Solved(unit, case), unit)
    write("units.json", {"made_by": "units.py", "force_unit_n": FORCE_UNIT_N, "units": units})
    print(len(units), "units,", sum(len(u["cases"]) for u in units), "cases")


if __name__ == "__main__":
    main()
