"""Random space frames by PyNiteFEA: members in any direction with any roll, released ends, springs, loads along members.

Writes expected/space_frames.json. A frame is given as the program describes it; `up` is the direction of the member's local z,
which is taken from the library's own rule for its roll. Forces and moments are shares of the unit named in the file.
"""

import math
import random

import numpy as np

from units import tube, write

SEED = 20260105
FORCE_UNIT_N = 1e5
DOFS = ("X", "Y", "Z")


def random_members(rng, count):
    """A tree over all nodes and two further members; every third member is released, the further ones at both ends."""
    pairs = [(rng.randrange(i), i) for i in range(1, count)]
    others = [(i, j) for i in range(count) for j in range(i + 1, count) if (i, j) not in pairs]
    extra = rng.sample(others, 2)
    members = []
    for start, end in pairs + extra:
        bar = tube(rng, round(rng.uniform(0.08, 0.2), 3), round(rng.uniform(0.004, 0.01), 4), rng.choice(["round", "rectangular"]))
        members.append({"start": start, "end": end, "roll_deg": round(rng.uniform(-180, 180), 2), **bar})
        members[-1]["release_start"] = members[-1]["release_end"] = [False, False, False]
    for member in rng.sample(members, len(members) // 3) + members[-2:]:
        # Twist goes at one end at most; a member of the tree stays stiff at its end, so that no node swings.
        member["release_start"] = [rng.random() < 0.3, rng.random() < 0.5, rng.random() < 0.5]
        if member in members[-2:]:
            member["release_end"] = [False, rng.random() < 0.7, rng.random() < 0.7]
    return members


def random_frame(rng):
    count = rng.choice([5, 6, 7])
    nodes = [[round(rng.uniform(-3, 3), 2), round(rng.uniform(-3, 3), 2), round(rng.uniform(-3, 3), 2)] for _ in range(count)]
    members = random_members(rng, count)
    supports = [{"node": 0, "hold": ["rigid"] * 6}]
    springs = [float(f"{10 ** rng.uniform(6, 8):.4g}") for _ in range(6)]
    supports.append({"node": count - 1, "hold": [rng.choice(["free", "rigid", k, k]) for k in springs]})
    supports.append({"node": count // 2, "hold": springs[3:] + ["free"] * 3})
    force = lambda size: [round(rng.uniform(-size, size), 1) for _ in range(3)]
    nodal = [{"node": n, "force_n": force(2e4), "moment_nm": force(5e3)} for n in rng.sample(range(1, count), 2)]
    along = [{"member": m, "uniform_n_per_m": force(3e3)} for m in rng.sample(range(len(members)), 2)]
    for m in rng.sample(range(len(members)), 2):
        length = math.dist(nodes[members[m]["start"]], nodes[members[m]["end"]])
        along.append({"member": m, "at_m": round(rng.uniform(0.1, 0.9) * length, 3), "force_n": force(1e4)})
    cuts = [round(rng.uniform(0.1, 0.9), 3) for _ in members]
    return {"nodes_m": nodes, "members": members, "supports": supports, "nodal": nodal, "along": along, "cuts": cuts}


def model_of(frame):
    from Pynite import FEModel3D

    model = FEModel3D()
    model.add_material("frame", 1.0, 1.0, 0.0, 0.0)
    for i, at in enumerate(frame["nodes_m"]):
        model.add_node(f"n{i}", *at)
    for i, m in enumerate(frame["members"]):
        model.add_section(f"s{i}", m["ea_n"], m["ei_y_nm2"], m["ei_z_nm2"], m["gj_nm2"])
        model.add_member(f"m{i}", f"n{m['start']}", f"n{m['end']}", "frame", f"s{i}", m["roll_deg"])
        at_start = {f"R{dof.lower()}i": flag for dof, flag in zip(DOFS, m["release_start"])}
        at_end = {f"R{dof.lower()}j": flag for dof, flag in zip(DOFS, m["release_end"])}
        model.def_releases(f"m{i}", **at_start, **at_end)
    for support in frame["supports"]:
        name = f"n{support['node']}"
        model.def_support(name, *[hold == "rigid" for hold in support["hold"]])
        for dof, hold in zip(("DX", "DY", "DZ", "RX", "RY", "RZ"), support["hold"]):
            if not isinstance(hold, str):
                model.def_support_spring(name, dof, hold)
    load(model, frame)
    return model


def load(model, frame):
    for one in frame["nodal"]:
        for dof, force, moment in zip(DOFS, one["force_n"], one["moment_nm"]):
            model.add_node_load(f"n{one['node']}", "F" + dof, force)
            model.add_node_load(f"n{one['node']}", "M" + dof, moment)
    for one in frame["along"]:
        for i, dof in enumerate(DOFS):
            if "at_m" in one:
                model.add_member_pt_load(f"m{one['member']}", "F" + dof, one["force_n"][i], one["at_m"])
            else:
                q = one["uniform_n_per_m"][i]
                model.add_member_dist_load(f"m{one['member']}", "F" + dof, q, q)


def inside(member, at):
    """N, V_y, V_z, T, M_y, M_z that the part beyond the cut puts on the part before it.

    The library's diagrams have the opposite sign in all but M_y, as its end forces at x = 0 show.
    """
    n, v_y, v_z = member.axial(at, "Combo 1"), member.shear("Fy", at, "Combo 1"), member.shear("Fz", at, "Combo 1")
    t, m_y, m_z = member.torque(at, "Combo 1"), member.moment("My", at, "Combo 1"), member.moment("Mz", at, "Combo 1")
    return np.array([-n, -v_y, -v_z, -t, m_y, -m_z])


def answer(frame):
    model = model_of(frame)
    model.analyze_linear()
    shares = lambda values: [round(float(v) / FORCE_UNIT_N, 12) for v in values]
    moved, held, ends, cuts = [], [], [], []
    for i in range(len(frame["nodes_m"])):
        node = model.nodes[f"n{i}"]
        moved.append([round(float(getattr(node, kind + dof)["Combo 1"]), 12) for kind in "DR" for dof in DOFS])
    for support in frame["supports"]:
        node = model.nodes[f"n{support['node']}"]
        held.append(shares(getattr(node, "Rxn" + kind + dof)["Combo 1"] for kind in "FM" for dof in DOFS))
    for i, cut in enumerate(frame["cuts"]):
        member = model.members[f"m{i}"]
        (one,) = member.sub_members.values()
        ends.append(shares(one.f("Combo 1")[:, 0]))
        cuts.append(shares(inside(member, cut * member.L())))
    return {"moved_m_rad": moved, "reactions": held, "end_forces": ends, "inner": cuts}


def is_stout(frame):
    """Released at random, some frames are mechanisms or nearly so; their answers would say little."""
    try:
        model = model_of(frame)
        model.analyze_linear()
    except Exception as cause:
        if "singular" in str(cause):
            return False
        raise
    return all(abs(getattr(node, "D" + dof)["Combo 1"]) < 0.2 for node in model.nodes.values() for dof in DOFS)


def describe():
    """All frames, without their answers."""
    rng = random.Random(SEED)
    frames = []
    while len(frames) < 10:
        frame = {"name": f"frame {len(frames) + 1}"} | random_frame(rng)
        if is_stout(frame):
            model = model_of(frame)
            for i, member in enumerate(frame["members"]):
                member["up"] = [float(v) for v in model.members[f"m{i}"].T()[2, :3]]
            frames.append(frame)
    return frames


def main():
    frames = describe()
    for frame in frames:
        frame["expected"] = answer(frame)
    write("space_frames.json", {"made_by": "space_frames.py", "force_unit_n": FORCE_UNIT_N, "frames": frames})
    print(len(frames), "frames,", sum(len(f["members"]) for f in frames), "members")


if __name__ == "__main__":
    main()
