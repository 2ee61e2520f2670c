"""The load factor at which a unit buckles, by numpy: a mesh of beams with their consistent geometric stiffness.

Writes expected/unit_buckling.json: the factor under one pull, and the least over a cone of directions by brute force.
Everything here is made anew: elements from the cubic shape functions by integration, the pin at the head as two sets of
unknowns that share all but one. The brace is a bar that stays straight; loads keep their direction.
"""

import math
import random

import numpy as np

from units import lower_pin, place_of, places, random_unit, turned, upper_pin, write

SEED = 20260107
# Shorter members make the stiffness matrix lose digits, longer ones are too stiff. No stretch is a multiple of it, so that rounding
# decides nowhere how many members there are.
LONGEST_M = 0.147
# For the least factor over a cone of rope directions, which is asked for a hundred times.
COARSE_M = 0.25
TENSION_N, HALF_ANGLE_RAD = 10000.0, 0.7
# What is buckled, with a pull at the tip in arm axes, N. The weight grows with it.
ASKED = [
    ("none rigid", [0.0, 0.0, -12000.0]),
    ("front pinned", [0.0, 0.0, -12000.0]),
    ("front pinned", [-6000.0, 2500.0, -9000.0]),
    ("rear_to_base pinned", [0.0, 0.0, -12000.0]),
    ("foot_from_head rigid", [0.0, 0.0, -12000.0]),
    ("foot_from_tail rigid", [2000.0, -1500.0, -12000.0]),
]


def describe():
    rng = random.Random(SEED)
    units = []
    for number, (what, pull) in enumerate(ASKED):
        kind, head = what.split()
        unit = {"name": f"buckling {number + 1} {what}"} | random_unit(rng, kind, head)
        unit["stations"], unit["points"], unit["lumps"] = [], unit["points"][:1], []
        around = unit["brace"]["bearing_rad"] if kind.startswith("foot") else 0.0
        unit["case"] = {"slew_rad": round(around + rng.uniform(-0.8, 0.8), 3), "pull_in_arm_axes_n": pull}
        units.append(unit)
    return units


# Hermite's cubics on 0..1 by their coefficients: deflection of the start, slope there, deflection of the end, slope there.
CUBICS = [np.polynomial.Polynomial(c) for c in ([1, 0, -3, 2], [0, 1, -2, 1], [0, 0, 3, -2], [0, 0, -1, 1])]


def integrals(times):
    """The integrals over 0..1 of the products of the cubics' derivatives of an order."""
    derived = [cubic.deriv(times) for cubic in CUBICS]
    return np.array([[(a * b).integ()(1.0) for b in derived] for a in derived])


CURVED, SLOPED = integrals(2), integrals(1)


def bending(matrix, length, factor):
    """A 4 x 4 matrix of the cubics, with slopes counted along the real length."""
    scale = np.array([1.0, length, 1.0, length])
    return factor * matrix * np.outer(scale, scale)


def element(bar, length, pull, axes):
    """Elastic and geometric stiffness in structure axes; `axes` has the local axes as rows."""
    elastic, geometric = np.zeros((12, 12)), np.zeros((12, 12))
    for dof, stiffness in ((0, bar["ea_n"] / length), (3, bar["gj_nm2"] / length)):
        elastic[np.ix_([dof, dof + 6], [dof, dof + 6])] += stiffness * np.array([[1, -1], [-1, 1]])
    # A turn about +z lifts along y as x grows, a turn about +y lowers along z.
    for dofs, ei, sign in (([1, 5, 7, 11], bar["ei_z_nm2"], 1.0), ([2, 4, 8, 10], bar["ei_y_nm2"], -1.0)):
        signs = np.outer([1, sign, 1, sign], [1, sign, 1, sign])
        elastic[np.ix_(dofs, dofs)] += signs * bending(CURVED, length, ei / length**3)
        geometric[np.ix_(dofs, dofs)] += signs * bending(SLOPED, length, pull / length)
    turn = np.kron(np.eye(4), axes)
    return turn.T @ elastic @ turn, turn.T @ geometric @ turn


def divided(start, end, longest_m):
    count = math.ceil((end - start) / longest_m - 1e-9)
    return [start + (end - start) * i / count for i in range(count)]


class Mesh:
    """A unit's members, unknowns, stiffness and loads, in arm axes."""

    def __init__(self, unit, longest_m):
        self.unit, self.slew = unit, unit["case"]["slew_rad"]
        self.unknowns, self.count, self.beams = {}, 0, []
        for part in ("arm", "mast"):
            marks = places(unit)[part]
            fine = [at for ends in zip(marks, marks[1:]) for at in divided(*ends, longest_m)] + [marks[-1]]
            self.beams += [(part, start, end) for start, end in zip(fine, fine[1:])]
            for at in fine:
                self._number(part, at)
        if (unit["brace"] or {}).get("foot_spring_n_per_m") is not None:
            self.unknowns["foot"] = list(range(self.count, self.count + 3))
            self.count += 3

    def _number(self, part, at):
        if part == "mast" and at == self.unit["mast_height_m"]:
            shared = list(self.unknowns[("arm", 0.0)])
            if self.unit["head"] == "pinned":
                # Arm axes at the head: the mast turns on its own about their y.
                shared[4], self.count = self.count, self.count + 1
            self.unknowns[("mast", at)] = shared
        else:
            self.unknowns[(part, at)] = list(range(self.count, self.count + 6))
            self.count += 6

    def assembled(self, pulls, brace_pull):
        """Elastic and geometric stiffness over all unknowns, in arm axes, in which a pin at the head is one unknown more."""
        elastic, geometric = np.zeros((self.count, self.count)), np.zeros((self.count, self.count))
        for (part, start, end), pull in zip(self.beams, pulls):
            axes = np.array([[0, 0, 1], [0, 1, 0], [-1, 0, 0]] if part == "mast" else np.eye(3))
            where = np.ix_(*[self.unknowns[(part, start)] + self.unknowns[(part, end)]] * 2)
            k, g = element(self.unit[part], end - start, pull, axes)
            elastic[where] += k
            geometric[where] += g
        if self.unit["brace"]:
            self._add_brace(elastic, geometric, brace_pull)
        spring = self.unit["base_tilt_spring_nm_per_rad"]
        base = self.unknowns[("mast", 0.0)]
        held = [base[i] for i in ((0, 1, 2, 5) if spring else range(6))]
        for i in (3, 4):
            elastic[base[i], base[i]] += spring or 0.0
        free = np.setdiff1d(np.arange(self.count), held)
        return elastic, geometric, free

    def brace_line(self):
        """Unit vector from the lower to the upper pin, arm axes, length and axial stiffness."""
        upper, lower = place_of(self.unit, *upper_pin(self.unit), self.slew), lower_pin(self.unit, self.slew)
        along = turned(upper - lower, -self.slew)
        length = np.linalg.norm(along)
        return along / length, length, self.unit["brace"]["bar"]["ea_n"] / length

    def _upper(self):
        return self.unknowns[upper_pin(self.unit)][:3]

    def _lower(self):
        """The lower pin's unknowns; none where it can't move."""
        brace = self.unit["brace"]
        if "mast_at_m" in brace:
            return self.unknowns[("mast", brace["mast_at_m"])][:3]
        return self.unknowns.get("foot")

    def _add_brace(self, elastic, geometric, pull):
        axis, length, stiffness = self.brace_line()
        along = stiffness * np.outer(axis, axis)
        across = pull / length * (np.eye(3) - np.outer(axis, axis))
        dofs = self._upper()
        if self._lower() is not None:
            dofs = self._lower() + dofs
            difference = np.hstack([-np.eye(3), np.eye(3)])
            along, across = difference.T @ along @ difference, difference.T @ across @ difference
        spring = self.unit["brace"].get("foot_spring_n_per_m")
        if spring is not None:
            for dof in self._lower():
                elastic[dof, dof] += spring
        elastic[np.ix_(dofs, dofs)] += along
        geometric[np.ix_(dofs, dofs)] += across

    def pulled(self, pull):
        """Loads of a pull at the rope point, arm axes."""
        p, point = np.zeros(self.count), self.unit["points"][0]
        tip = self.unknowns[("arm", point["x_m"])]
        p[tip] += np.concatenate([pull, np.cross([0.0, point["sideways_m"], -point["drop_m"]], pull)])
        return p

    def weight(self):
        """Of the brace's weight the half at the upper pin, and at a pin on the mast."""
        unit, p = self.unit, np.zeros(self.count)
        for part, start, end in self.beams:
            length, q = end - start, unit[part]["weight_n_per_m"]
            for at, lift in ((start, 1.0), (end, -1.0)):
                p[self.unknowns[(part, at)][2]] -= q * length / 2
                if part == "arm":
                    p[self.unknowns[(part, at)][4]] += lift * q * length**2 / 12
        if unit["brace"]:
            half = unit["brace"]["bar"]["weight_n_per_m"] * self.brace_line()[1] / 2
            p[self._upper()[2]] -= half
            if "mast_at_m" in unit["brace"]:
                p[self._lower()[2]] -= half
        return p

    def axial(self, u):
        """Mean axial force of every beam and the force of the brace, tension positive, from displacements."""
        pulls = []
        for part, start, end in self.beams:
            along = 2 if part == "mast" else 0
            stretch = u[self.unknowns[(part, end)][along]] - u[self.unknowns[(part, start)][along]]
            pulls.append(self.unit[part]["ea_n"] * stretch / (end - start))
        if not self.unit["brace"]:
            return np.array(pulls), 0.0
        axis, _, stiffness = self.brace_line()
        gap = u[self._upper()]
        if self._lower() is not None:
            gap = gap - u[self._lower()]
        return np.array(pulls), stiffness * (axis @ gap)


class Buckling:
    """A mesh with its stiffness factored, ready for any pull."""

    def __init__(self, unit, longest_m):
        self.mesh = mesh = Mesh(unit, longest_m)
        elastic, _, free = mesh.assembled([0.0] * len(mesh.beams), 0.0)
        self.kept = np.ix_(free, free)
        # Unknowns in units in which each has a stiffness of 1: displacements and rotations of short members lose no digits so.
        scale = 1.0 / np.sqrt(np.diag(elastic)[free])
        stiff, self.scales = elastic[self.kept] * np.outer(scale, scale), np.outer(scale, scale)
        self.lower = np.linalg.cholesky(stiff)
        self.axial = []
        for loads in [mesh.weight()] + [mesh.pulled(axis) for axis in np.eye(3)]:
            u = np.zeros(mesh.count)
            u[free] = scale * np.linalg.solve(stiff, scale * loads[free])
            self.axial.append(mesh.axial(u))

    def critical_factor(self, pull):
        """The least positive factor on pull and weight at which the stiffness vanishes."""
        shares = [1.0, *pull]
        members, brace = (sum(share * one[i] for share, one in zip(shares, self.axial)) for i in (0, 1))
        _, geometric, _ = self.mesh.assembled(members, brace)
        half = np.linalg.solve(self.lower, -geometric[self.kept] * self.scales)
        softening = np.linalg.solve(self.lower, half.T)
        return 1.0 / np.linalg.eigvalsh((softening + softening.T) / 2).max()

    def least(self, tension, half_angle):
        """The least factor over a cone of directions: a raster, then ever finer ones around the worst."""
        def at(lean, around):
            direction = [math.sin(lean) * math.cos(around), math.sin(lean) * math.sin(around), -math.cos(lean)]
            return self.critical_factor(tension * np.array(direction))

        leans, arounds = np.linspace(0.0, half_angle, 4), np.linspace(-math.pi, math.pi, 25)[1:]
        worst = min((at(p, q), p, q) for p in leans for q in arounds)
        wide_p, wide_q = half_angle / 3, math.pi / 12
        for _ in range(6):
            _, p, q = worst
            leans = np.clip(p + wide_p * np.linspace(-1, 1, 3), 0.0, half_angle)
            worst = min(worst, min((at(a, b), a, b) for a in leans for b in q + wide_q * np.linspace(-1, 1, 5)))
            wide_p, wide_q = wide_p / 2, wide_q / 2.5
        return worst[0]


def euler():
    """The method on what is known: a cantilever under its tip load buckles at pi^2 EI / (2 L)^2."""
    bar = {"ea_n": 1e8, "ei_y_nm2": 2e5, "ei_z_nm2": 3e5, "gj_nm2": 1e5}
    n, length = 32, 2.0
    k, g = np.zeros((6 * n + 6, 6 * n + 6)), np.zeros((6 * n + 6, 6 * n + 6))
    for i in range(n):
        part = element(bar, length / n, -1.0, np.eye(3))
        for whole, one in zip((k, g), part):
            whole[6 * i : 6 * i + 12, 6 * i : 6 * i + 12] += one
    factor = 1.0 / np.linalg.eigvals(np.linalg.solve(k[6:, 6:], -g[6:, 6:])).real.max()
    return factor / (math.pi**2 * 2e5 / (2 * length) ** 2)


def main():
    assert abs(euler() - 1.0) < 1e-7
    units = describe()
    for unit in units:
        case = unit["case"]
        case["alpha_cr"] = float(f"{Buckling(unit, LONGEST_M).critical_factor(case['pull_in_arm_axes_n']):.10g}")
        case["least_alpha_cr"] = float(f"{Buckling(unit, COARSE_M).least(TENSION_N, HALF_ANGLE_RAD):.6g}")
        print(unit["name"], case["alpha_cr"], case["least_alpha_cr"])
    cone = {"tension_n": TENSION_N, "half_angle_rad": HALF_ANGLE_RAD}
    write("unit_buckling.json", {"made_by": "unit_buckling.py", "longest_m": LONGEST_M, "cone": cone, "units": units})


if __name__ == "__main__":
    main()
