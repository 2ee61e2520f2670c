"""The units of units.py by OpenSeesPy, in arm axes, and units whose brace pins stand off the axes, by its rigid links.

Writes expected/opensees_units.json. Here the arm lies still and ropes and foot are turned the other way, so a mistaken sign
of the slew in either of the two programs shows. A pin at the head is two nodes that share all but one rotation.
"""

import random

import numpy as np

from units import FORCE_UNIT_N, answer, describe, lower_pin, places, random_cases, random_unit, stations, turned
from units import upper_pin, wrench, write

try:
    import openseespy.opensees as ops
except (ImportError, RuntimeError) as cause:
    # The package can be there without the program that belongs to it.
    raise ModuleNotFoundError("openseespy can't be loaded (on Debian it needs libblas3 and liblapack3)") from cause

SEED = 20260104
OFF_AXIS = [
    "rear_to_mast pinned",
    "rear_to_mast rigid",
    "rear_to_base pinned",
    "front pinned",
    "front rigid",
    "foot_from_head rigid",
    "foot_from_tail pinned",
    "foot_from_tail rigid",
]


def describe_off_axis():
    """Units with pins off the axes of arm and mast."""
    rng = random.Random(SEED)
    units = []
    for number, what in enumerate(OFF_AXIS):
        kind, head = what.split()
        unit = {"name": f"off axis {number + 1} {what}"} | random_unit(rng, kind, head)
        offset = lambda: [round(rng.uniform(-0.06, 0.06), 3) for _ in range(3)]
        unit["pins"] = {"upper_m": offset(), "lower_m": [0.0] * 3 if kind.startswith("foot") else offset()}
        unit["stations"] = stations(rng, unit)
        unit["cases"] = random_cases(rng, unit)
        units.append(unit)
    return units


class Solved:
    """One unit at one slew as OpenSees has it."""

    def __init__(self, unit, case):
        self.unit, self.slew, self.at = unit, case["slew_rad"], places(unit)
        self.tags, self.grounds = {}, {}
        self.extra_base, self.foot_weight = np.zeros(6), np.zeros(3)
        ops.wipe()
        ops.model("basic", "-ndm", 3, "-ndf", 6)
        ops.timeSeries("Linear", 1)
        ops.pattern("Plain", 1, 1)
        self._mast_and_arm()
        self._hold("mast", 0.0, unit["base_tilt_spring_nm_per_rad"], (4, 5))
        if unit["brace"]:
            self._brace(case["weight_factor"])
        self._loads(case)
        ops.constraints("Transformation")
        ops.numberer("Plain")
        ops.system("FullGeneral")
        ops.algorithm("Linear")
        ops.integrator("LoadControl", 1.0)
        ops.analysis("Static")
        assert ops.analyze(1) == 0
        ops.reactions()

    def tag(self, part, at):
        """Of a node; the mast's head is the arm's node unless there is a pin between them."""
        if part == "mast" and at == self.unit["mast_height_m"] and self.unit["head"] == "rigid":
            part, at = "arm", 0.0
        return self.tags.setdefault((part, at), len(self.tags) + 1)

    def _axis_point(self, part, at):
        return np.array([0.0, 0.0, at] if part == "mast" else [at, 0.0, self.unit["mast_height_m"]])

    def _mast_and_arm(self):
        self.elements = {}
        for number, (part, in_xz) in enumerate([("mast", [-1.0, 0.0, 0.0]), ("arm", [0.0, 0.0, 1.0])]):
            for at in self.at[part]:
                if self.tag(part, at) not in ops.getNodeTags():
                    ops.node(self.tag(part, at), *map(float, self._axis_point(part, at)))
            ops.geomTransf("Linear", number + 1, *in_xz)
            bar = self.unit[part]
            for start, end in zip(self.at[part], self.at[part][1:]):
                tag = self.elements[(part, start)] = len(self.elements) + 1
                stiffness = bar["ea_n"], 1.0, 1.0, bar["gj_nm2"], bar["ei_y_nm2"], bar["ei_z_nm2"]
                ops.element("elasticBeamColumn", tag, self.tag(part, start), self.tag(part, end), *stiffness, number + 1)
        if self.unit["head"] == "pinned":
            ops.equalDOF(self.tag("mast", self.unit["mast_height_m"]), self.tag("arm", 0.0), 1, 2, 3, 4, 6)

    def _hold(self, part, at, spring, sprung):
        """Holds a node, all about it rigid but for the springs; their other ends are nodes of their own."""
        tag = self.tag(part, at)
        ops.fix(tag, *[0 if spring is not None and dof in sprung else 1 for dof in range(1, 7)])
        self.grounds[(part, at)] = [tag]
        if spring is not None:
            ground = self.tag("ground of " + part, at)
            ops.node(ground, *ops.nodeCoord(tag))
            ops.fix(ground, *[1] * 6)
            ops.uniaxialMaterial("Elastic", ground, spring)
            ops.element("zeroLength", 1000 + ground, ground, tag, "-mat", *[ground] * len(sprung), "-dir", *sprung)
            self.grounds[(part, at)].append(ground)

    def _pin(self, part, at, offset, name):
        """The node of a pin, rigidly linked to its axis."""
        if not any(offset):
            return self.tag(part, at)
        pin = self.tag(name, 0.0)
        ops.node(pin, *map(float, self._axis_point(part, at) + offset))
        ops.rigidLink("beam", self.tag(part, at), pin)
        return pin

    def _brace(self, weight_factor):
        brace, pins = self.unit["brace"], self.unit.get("pins", {"upper_m": [0.0] * 3, "lower_m": [0.0] * 3})
        upper = self._pin(*upper_pin(self.unit), pins["upper_m"], "upper pin")
        on_structure = "mast_at_m" not in brace
        if on_structure:
            lower = self.tag("lower pin", 0.0)
            self.lower_pin = turned(lower_pin(self.unit, self.slew), -self.slew) + pins["lower_m"]
            ops.node(lower, *map(float, self.lower_pin))
            self._hold("lower pin", 0.0, brace.get("foot_spring_n_per_m"), (1, 2, 3))
        else:
            lower = self._pin("mast", brace["mast_at_m"], pins["lower_m"], "lower pin")
        ops.uniaxialMaterial("Elastic", 999, brace["bar"]["ea_n"])
        ops.element("Truss", 999, lower, upper, 1.0, 999)
        length = np.linalg.norm(np.array(ops.nodeCoord(upper)) - ops.nodeCoord(lower))
        half = np.array([0.0, 0.0, -brace["bar"]["weight_n_per_m"] * length * weight_factor / 2])
        self._force(upper, half)
        if not on_structure:
            self._force(lower, half)
        elif brace["kind"] == "rear_to_base":
            self.extra_base = wrench(half, self.lower_pin)
        else:
            self.foot_weight = half

    def _force(self, tag, force, moment=(0.0, 0.0, 0.0)):
        ops.load(tag, *map(float, force), *map(float, moment))

    def _loads(self, case):
        factor = case["weight_factor"]
        for point, pull in zip(self.unit["points"], case["pulls_n"]):
            in_arm_axes = turned(pull, -self.slew)
            offset = [0.0, point["sideways_m"], -point["drop_m"]]
            self._force(self.tag("arm", point["x_m"]), in_arm_axes, np.cross(offset, in_arm_axes))
        for lump in self.unit["lumps"]:
            self._force(self.tag(lump["on"], lump["at_m"]), [0.0, 0.0, -lump["weight_n"] * factor])
        for (part, _), element in self.elements.items():
            weight = -self.unit[part]["weight_n_per_m"] * factor
            across_and_along = (0.0, 0.0, weight) if part == "mast" else (0.0, weight, 0.0)
            ops.eleLoad("-ele", element, "-type", "-beamUniform", *across_and_along)

    def _support(self, part, at):
        return -sum(np.array(ops.nodeReaction(tag)) for tag in self.grounds[(part, at)])

    def _in_structure_axes(self, vectors):
        return np.concatenate([turned(vectors[i : i + 3], self.slew) for i in range(0, len(vectors), 3)])

    def base(self):
        action = self._support("mast", 0.0) + self.extra_base
        if self.unit["brace"] and self.unit["brace"]["kind"] == "rear_to_base":
            action += wrench(self._support("lower pin", 0.0)[:3], self.lower_pin)
        return self._in_structure_axes(action)

    def foot(self):
        return self._in_structure_axes(self._support("lower pin", 0.0)[:3] + self.foot_weight)

    def brace_axial(self):
        return ops.eleResponse(999, "axialForce")[0]

    def displacement(self, point):
        moved = np.array(ops.nodeDisp(self.tag("arm", point["x_m"])))
        offset = [0.0, point["sideways_m"], -point["drop_m"]]
        return self._in_structure_axes(moved[:3] + np.cross(moved[3:], offset))

    def inner(self, station):
        """The library's local axes of mast and arm are the program's: x along, z in the plane of the vector given."""
        places_of_part, at = self.at[station["part"]], station["at_m"]
        index = places_of_part.index(at)
        if station["side"] == "before":
            return np.array(ops.eleResponse(self.elements[(station["part"], places_of_part[index - 1])], "localForce"))[6:]
        return -np.array(ops.eleResponse(self.elements[(station["part"], at)], "localForce"))[:6]


def main():
    off_axis = describe_off_axis()
    for unit in off_axis:
        for case in unit["cases"]:
            case["expected"] = answer(Solved(unit, case), unit)
    answers = [{"name": u["name"], "expected": [answer(Solved(u, case), u) for case in u["cases"]]} for u in describe()]
    content = {"made_by": "opensees_units.py", "force_unit_n": FORCE_UNIT_N, "units": off_axis, "answers": answers}
    write("opensees_units.json", content)
    print(len(off_axis) + len(answers), "units")


if __name__ == "__main__":
    main()
