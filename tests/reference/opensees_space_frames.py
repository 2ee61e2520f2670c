"""The frames of space_frames.py by OpenSeesPy.

Writes expected/opensees_space_frames.json. The library releases bending at either end; a member whose twist is released at its
start carries none, so it gets no torsional stiffness there. Releases and point loads don't go together in the library, so a
member under a point load is two, with a node where the load acts.
"""

import numpy as np

from space_frames import FORCE_UNIT_N, describe
from units import write

try:
    import openseespy.opensees as ops
except (ImportError, RuntimeError) as cause:
    # The package can be there without the program that belongs to it.
    raise ModuleNotFoundError("openseespy can't be loaded (on Debian it needs libblas3 and liblapack3)") from cause

# Numbers of what is added to a frame's own nodes and members start here.
FAR = 1000


def build(frame):
    ops.wipe()
    ops.model("basic", "-ndm", 3, "-ndf", 6)
    ops.timeSeries("Linear", 1)
    ops.pattern("Plain", 1, 1)
    for i, at in enumerate(frame["nodes_m"]):
        ops.node(i + 1, *at)
    cut = {one["member"]: one["at_m"] for one in frame["along"] if "at_m" in one}
    for i, member in enumerate(frame["members"]):
        ops.geomTransf("Linear", i + 1, *member["up"])
        if i in cut:
            start, along, _ = line(frame, member)
            ops.node(FAR + i, *map(float, start + along * cut[i]))
            piece(i, i, member, member["start"] + 1, FAR + i, (True, False))
            piece(FAR + i, i, member, FAR + i, member["end"] + 1, (False, True))
        else:
            piece(i, i, member, member["start"] + 1, member["end"] + 1, (True, True))
    for i, support in enumerate(frame["supports"]):
        hold(i, support)


def line(frame, member):
    """Start, direction and length of a member."""
    start, end = (np.array(frame["nodes_m"][member[key]]) for key in ("start", "end"))
    length = np.linalg.norm(end - start)
    return start, (end - start) / length, length


def piece(number, transformation, m, start, end, has):
    """A member, or its part up to or from a point load; `has` tells which of the member's ends belong to it."""
    twists = not (has[0] and m["release_start"][0])
    stiffness = m["ea_n"], 1.0, 1.0, m["gj_nm2"] if twists else 0.0, m["ei_y_nm2"], m["ei_z_nm2"]
    released = []
    for axis, name in ((1, "-releasey"), (2, "-releasez")):
        code = int(has[0] and m["release_start"][axis]) + 2 * int(has[1] and m["release_end"][axis])
        released += [name, code] if code else []
    ops.element("elasticBeamColumn", number + 1, start, end, *stiffness, transformation + 1, *released)


def hold(index, support):
    """Springs run to a node of their own, which is fixed."""
    node, ground = support["node"] + 1, 100 + index
    ops.node(ground, *ops.nodeCoord(node))
    ops.fix(ground, *[1] * 6)
    ops.fix(node, *[int(how == "rigid") for how in support["hold"]])
    springs = [(dof + 1, how) for dof, how in enumerate(support["hold"]) if not isinstance(how, str)]
    for dof, stiffness in springs:
        ops.uniaxialMaterial("Elastic", 10 * ground + dof, stiffness)
    if springs:
        dofs = [dof for dof, _ in springs]
        ops.element("zeroLength", ground, ground, node, "-mat", *[10 * ground + dof for dof in dofs], "-dir", *dofs)


def load(frame):
    for one in frame["nodal"]:
        ops.load(one["node"] + 1, *one["force_n"], *one["moment_nm"])
    for one in frame["along"]:
        number = one["member"]
        if "at_m" in one:
            ops.load(FAR + number, *one["force_n"], 0.0, 0.0, 0.0)
            continue
        member = frame["members"][number]
        x = line(frame, member)[1]
        y = np.cross(member["up"], x)
        wx, wy, wz = np.array([x, y, np.cross(x, y)]) @ one["uniform_n_per_m"]
        pieces = [tag for tag in (number + 1, FAR + number + 1) if tag in ops.getEleTags()]
        ops.eleLoad("-ele", *pieces, "-type", "-beamUniform", float(wy), float(wz), float(wx))


def end_forces(number):
    last = FAR + number + 1 if FAR + number + 1 in ops.getEleTags() else number + 1
    return [*ops.eleResponse(number + 1, "localForce")[:6], *ops.eleResponse(last, "localForce")[6:]]


def answer(frame):
    build(frame)
    load(frame)
    ops.constraints("Plain")
    ops.numberer("Plain")
    ops.system("FullGeneral")
    ops.algorithm("Linear")
    ops.integrator("LoadControl", 1.0)
    ops.analysis("Static")
    assert ops.analyze(1) == 0
    ops.reactions()
    shares = lambda values: [round(float(v) / FORCE_UNIT_N, 12) for v in values]
    held = [
        shares(np.array(ops.nodeReaction(support["node"] + 1)) + ops.nodeReaction(100 + i))
        for i, support in enumerate(frame["supports"])
    ]
    return {
        "moved_m_rad": [[round(v, 12) for v in ops.nodeDisp(i + 1)] for i in range(len(frame["nodes_m"]))],
        "reactions": held,
        "end_forces": [shares(end_forces(i)) for i in range(len(frame["members"]))],
    }


def main():
    answers = [{"name": f["name"], "expected": answer(f)} for f in describe()]
    write("opensees_space_frames.json", {"made_by": "opensees_space_frames.py", "force_unit_n": FORCE_UNIT_N, "answers": answers})
    print(len(answers), "frames")


if __name__ == "__main__":
    main()
