"""Documents of the demonstration plans, read back by other programs.

Writes expected/documents.json. One plan keeps the grid of a drawing far from its origin: what leaves lies in that grid. The documents lie in the folder that GANTLINE_DOCUMENTS names, one folder a plan, with the
answers of check and reactions beside them. openpyxl reads every sheet: figures have to be numbers, equal to those of the answers,
and no cell may be a formula. ezdxf audits the drawing and must find nothing to repair. ifcopenshell validates the model by its schema
and its rules, and makes every solid. pypdf reads drawing set, load plan and report: sizes of pages, fonts inside, text that is found, and edges
of roofs that measure what they are at the scale that the sheet names. A script that fails says what; what is written to expected is how many bases were found.
"""

import csv
import json
import math
import os
from pathlib import Path

import ezdxf
import ifcopenshell
import ifcopenshell.geom
import ifcopenshell.util.element
import ifcopenshell.validate
import openpyxl
import pypdf

HEAD_ROW = 4
PLANS = ["small-roof", "courtyard-building", "small-roof-in-a-grid"]
COMPONENTS = ["fx_n", "fy_n", "fz_n", "mx_nm", "my_nm", "mz_nm"]


def near(read, said, what):
    """A figure of nine digits, divided by a thousand and multiplied again, keeps twelve of them."""
    assert isinstance(read, (int, float)), f"{what}: {read!r} is no number"
    assert math.isclose(read, said, rel_tol=1e-12, abs_tol=1e-12), f"{what}: {read} read, {said} said"


def rows(sheet):
    heads = [cell.value for cell in sheet[HEAD_ROW]]
    assert len(set(heads)) == len(heads), f"{sheet.title}: heads stand twice"
    for values in sheet.iter_rows(min_row=HEAD_ROW + 1, values_only=True):
        yield dict(zip(heads, values))


def said_sets(reactions):
    """Every extreme of the answer in its order: unit, combination, place, component, sense, value, what acts, slew, pull."""
    without_parts = {"name": None, "inside": None}
    for unit in reactions["units"]:
        if unit["make_up_fault"]:
            yield unit, without_parts, None, None, None, None, [None] * 6, None, None
        for one in unit["combinations"]:
            if one["unavailable"]:
                yield unit, one, None, None, None, None, [None] * 6, None, None
                continue
            for s in one["sets"]:
                value = next(iter(s["value"].values()))
                acts = [s["concurrent"][key] for key in COMPONENTS]
                yield unit, one, "base", s["component"], s["sense"], value, acts, s["slew_rad"], s["pull_direction"]
            if one["brace_axial"]:
                for sense in ["maximum", "minimum"]:
                    b = one["brace_axial"][sense]
                    yield unit, one, "brace", "N", sense, b["axial_n"], [None] * 6, b["slew_rad"], b["pull_direction"]
            for f in one["foot"]:
                acts = [f[key] for key in COMPONENTS[:3]] + [None] * 3
                yield unit, one, "foot", f["component"], f["sense"], f["value_n"], acts, f["slew_rad"], f["pull_direction"]


def check_reactions(book, reactions):
    read = list(rows(book["Reactions"]))
    said = list(said_sets(reactions))
    assert len(read) == len(said), f"{len(read)} rows for {len(said)} sets"
    keys = ["Fx (kN)", "Fy (kN)", "Fz (kN)", "Mx (kNm)", "My (kNm)", "Mz (kNm)"]
    for row, (unit, one, place, component, sense, value, acts, slew, pull) in zip(read, said):
        what = f"{unit['tag']}, {one['name']}, {component}"
        assert (row["Tag"], row["Combination"], row["Where"]) == (unit["tag"], one["name"], place), what
        assert (row["Extreme"], row["Sense"]) == (component, sense), what
        assert row["Loads and factors inside"] == (one["inside"] or None), what
        if value is None:
            assert row["Why there are no figures"], what
            continue
        near(row["Value"] * 1e3, value, what)
        for key, acting in zip(keys, acts):
            if acting is None:
                assert row[key] is None, what
            else:
                near(row[key] * 1e3, acting, f"{what}, {key}")
        near(math.radians(row["Slew (°)"]), slew, what)
        for axis, part in zip("xyz", pull or [None] * 3):
            if part is None:
                assert row[f"Pull, {axis}"] is None, what
            else:
                near(row[f"Pull, {axis}"], part, what)
    return len(read)


def worst_of_level(unit, level, component, sense):
    """The extreme of a component over all combinations of a level that have figures."""
    found = [
        next(iter(s["value"].values()))
        for one in unit["combinations"]
        if one["level"] == level and not one["unavailable"]
        for s in one["sets"]
        if (s["component"], s["sense"]) == (component, sense)
    ]
    return {"maximum": max, "minimum": min}[sense](found) if found else None


def same_share(read, base, what):
    """A share in percent, or that nothing resists, or nothing where nothing was computed."""
    if base["nothing_resists"]:
        assert read == "nothing resists", f"{what}: {read!r}"
    elif base["utilization"] is None:
        assert read is None, f"{what}: {read!r}"
    else:
        near(read, base["utilization"] * 100, what)


def same_if(read, said, scale, what):
    if said is None:
        assert read is None, f"{what}: {read!r}"
    else:
        near(read, said * scale, what)


def check_anchorage_of_base(row, base, tag):
    if base is None:
        assert row["Anchorage"] == "not checked" and row["Largest use (%)"] is None, tag
        return
    same_share(row["Largest use (%)"], base, tag)
    assert row["What governs it"] == base["governs"], tag
    assert (row["Anchorage"] == "holds") == base["holds"], tag
    missing = [f"{one['of']}: {one['look']}: {one['not_checked']}" for one in base["uses"] if one["not_checked"]]
    assert (row["Not checked of it"] or "") == "; ".join(missing), tag
    nearest = base["edges"][0]["distance_m"] if base["edges"] else None
    same_if(row["Nearest edge (m)"], nearest, 1, tag)
    same_if(row["Concrete thickness (m)"], base["thickness_m"], 1, tag)
    assert row["Bond strengths are the code's defaults"] == ("yes" if base["is_bond_default"] else "no"), tag


def check_anchorage(book, check):
    """Every use of the answer is a row, in its order."""
    read = iter(list(rows(book["Anchorage"])))
    count = 0
    for unit in check["units"]:
        base = unit["base"]
        if base is None:
            row = next(read)
            assert (row["Id"], row["State"]) == (unit["id"], "not checked") and row["What is missing, or why it can't occur"]
            continue
        for used in base["uses"]:
            row = next(read)
            what = f"{unit['tag']}, {used['look']}"
            assert (row["Id"], row["Base or foot"], row["What was looked at"]) == (unit["id"], used["of"], used["look"]), what
            same_share(row["Use (%)"], used, what)
            record, state = used["record"] or {}, used["state"] or {}
            same_if(row["Acts (kN)"], record.get("action_n"), 1e-3, what)
            same_if(row["Resists (kN)"], record.get("resistance_n"), 1e-3, what)
            same_if(row["Slew (°)"], state.get("slew_rad"), 180 / math.pi, what)
            assert row["Clause"] == (record.get("clause") or None), what
            assert row["Combination"] == (state.get("combination") or None), what
            assert row["What is missing, or why it can't occur"] == (used["not_checked"] or used["not_applicable"]), what
            if row["Governs"]:
                assert f"{used['of']}: {used['look']}" == base["governs"], what
            count += 1
    assert next(read, None) is None
    return count


def check_bases(book, check, reactions, origin):
    read = list(rows(book["Bases"]))
    assert [row["Id"] for row in read] == [unit["id"] for unit in check["units"]]
    said = {unit["id"]: unit for unit in reactions["units"]}
    for row, unit in zip(read, check["units"]):
        check_anchorage_of_base(row, unit["base"], unit["tag"])
        for head, component, sense in [
            ("Largest M (kNm)", "M", "maximum"),
            ("Largest V (kN)", "V", "maximum"),
            ("Largest Fz, up (kN)", "Fz", "maximum"),
            ("Smallest Fz (kN)", "Fz", "minimum"),
        ]:
            worst = worst_of_level(said[unit["id"]], (row["Its level"] or "").replace(" ", "_"), component, sense)
            same_if(row[head], worst, 1e-3, f"{unit['tag']}, {head}")
        if origin != [0.0, 0.0] and unit["place"]:
            for axis, at, zero in zip("xy", unit["place"]["at_m"], origin):
                assert abs(row[f"{axis} in the drawing's grid (m)"] - (at + zero)) < 1e-3, unit["tag"]
        else:
            assert "x in the drawing's grid (m)" not in row
        if unit["place"]:
            near(row["x (m)"], unit["place"]["at_m"][0], unit["tag"])
            near(row["y (m)"], unit["place"]["at_m"][1], unit["tag"])
            near(row["Level (m)"], unit["place"]["level_m"], unit["tag"])
            near(math.radians(row["Looks toward (°)"]), unit["place"]["outward_rad"], unit["tag"])
    return len(read)


def check_findings(book, check):
    sheet = book["Findings"]
    tally = check["tally"]
    said = f"{tally['checks']} checks: {tally['meets']} met; {tally['fails']} failed"
    assert sheet["A3"].value.startswith(said), sheet["A3"].value
    read = list(rows(sheet))
    assert len(check["findings"]) == tally["fails"] + tally["not_checked"]
    if not check["findings"]:
        (only,) = read
        assert only["State"] == "no finding" and only["Particulars"].startswith(said)
        return 0
    assert len(read) == len(check["findings"])
    scale = {"force_n": 1e-3, "moment_nm": 1e-3, "stress_pa": 1e-6, "angle_rad": 180 / math.pi, "share": 100}
    for row, finding in zip(read, check["findings"]):
        outcome = finding["outcome"]
        state = outcome.get("fails") or "not checked"
        assert (row["State"], row["Rule"]) == (state, finding["code"])
        if finding["nothing_resists"]:
            assert row["Measured"] == "nothing resists"
        elif finding["measured"]:
            ((key, value),) = finding["measured"].items()
            near(row["Measured"], value * scale.get(key, 1), finding["code"])
        else:
            assert row["Measured"] is None
        if finding["limit"]:
            ((key, value),) = finding["limit"]["amount"].items()
            near(row["Limit"], value * scale.get(key, 1), finding["code"])
            assert row["Source of the limit"] == finding["limit"]["source"]
    return len(read)


def check_workbook(folder, check, reactions, origin):
    book = openpyxl.load_workbook(folder / "gantline-schedule.xlsx")
    assert book.sheetnames == ["About", "Bases", "Anchorage", "Reactions", "Parts", "Findings", "Basis"]
    for sheet in book:
        formulas = [cell.coordinate for row in sheet.iter_rows() for cell in row if cell.data_type == "f"]
        assert not formulas, f"{sheet.title}: formulas at {formulas}"
        assert sheet.page_setup.orientation == "landscape" and sheet.page_setup.fitToHeight == 0
        assert sheet.oddFooter.right.text == "Page &P of &N"
        if sheet.title != "About":
            assert sheet.print_title_rows == f"${HEAD_ROW}:${HEAD_ROW}", sheet.print_title_rows
            assert sheet.freeze_panes and sheet.freeze_panes.endswith(str(HEAD_ROW + 1))
    about = {row[0]: row[1] for row in book["About"].iter_rows(min_row=5, values_only=True)}
    assert about["Plan, SHA-256 of its file"] == check["plan"]["content_sha256"]
    assert book["About"]["A2"].value == check["caution"]
    return {
        "bases": check_bases(book, check, reactions, origin),
        "anchorage": check_anchorage(book, check),
        "reactions": check_reactions(book, reactions),
        "parts": len(list(rows(book["Parts"]))),
        "findings": check_findings(book, check),
        "basis": len(list(rows(book["Basis"]))),
    }


def check_tables(folder, check, reactions):
    counts = {}
    for name in ["bases", "anchorage", "reactions", "findings"]:
        with open(folder / f"gantline-{name}.csv", encoding="utf-8", newline="") as file:
            read = list(csv.DictReader(file))
        assert all(row["plan_sha256"] == check["plan"]["content_sha256"] for row in read)
        counts[name] = len(read)
        if name == "reactions":
            for row, (unit, _, place, _, _, value, acts, _, _) in zip(read, said_sets(reactions)):
                assert row["tag"] == unit["tag"] and row["where"] == (place or "")
                if value is not None:
                    near(float(row["value"]), value, unit["tag"])
                for key, acting in zip(COMPONENTS, acts):
                    assert (row[key] == "") == (acting is None)
                    if acting is not None:
                        near(float(row[key]), acting, f"{unit['tag']}, {key}")
    return counts


def check_drawing(folder, check, origin, corners):
    drawing = ezdxf.readfile(folder / "gantline-plan.dxf")
    auditor = drawing.audit()
    found = [str(one.message) for one in [*auditor.errors, *auditor.fixes]]
    assert not found, f"to be repaired: {found[:5]}"
    model = drawing.modelspace()
    units = {unit["id"]: unit for unit in check["units"]}
    counts = {}
    for entity in model:
        counts[entity.dxftype()] = counts.get(entity.dxftype(), 0) + 1
        assert entity.dxf.layer in drawing.layers, entity.dxf.layer
    for insert in model.query("INSERT"):
        values = {attrib.dxf.tag: attrib.dxf.text for attrib in insert.attribs}
        unit = units.pop(values["ID"])
        assert values["TAG"] == unit["tag"]
        x, y = (at + zero for at, zero in zip(unit["place"]["at_m"], origin))
        base = unit["base"] or {"governs": None, "holds": False, "nothing_resists": False, "utilization": None}
        assert values["BASEGOVERNS"] == (base["governs"] or "")
        assert (values["BASESTATE"] == "holds") == base["holds"]
        if base["nothing_resists"]:
            assert values["BASEUSED"] == "nothing resists"
        elif base["utilization"] is not None:
            shown = float(values["BASEUSED"].split(" %")[0])
            assert abs(shown - base["utilization"] * 100) <= 0.5 and (shown > 100) == (base["utilization"] > 1)
        assert math.hypot(insert.dxf.insert.x - x, insert.dxf.insert.y - y) < 1e-6
        assert math.isclose(math.radians(insert.dxf.rotation), unit["place"]["outward_rad"], abs_tol=1e-6)
    assert all(unit["place"] is None for unit in units.values()), "a base is not drawn"
    drawn = [
        (x, y)
        for line in model.query("LWPOLYLINE")
        if line.dxf.layer == "GL-OUTLINE-SLABEDGE"
        for x, y, *_ in line.get_points()
    ]
    for x, y in corners:
        beside = min(math.hypot(x + origin[0] - at_x, y + origin[1] - at_y) for at_x, at_y in drawn)
        assert beside < 1e-3, f"a corner of the outline lies {beside} m beside its place in the grid"
    low, high = drawing.header["$EXTMIN"], drawing.header["$EXTMAX"]
    assert all(low[0] <= x <= high[0] and low[1] <= y <= high[1] for x, y in drawn), "extents do not hold the outline"
    words = " ".join(text.dxf.text for text in model.query("TEXT"))
    assert check["plan"]["content_sha256"] in words and "Not a permit to hang from a rope." in words
    return dict(sorted(counts.items())) | {"blocks": len(list(drawing.blocks)) - 2, "layers": len(list(drawing.layers))}


def check_reactions_of_base(sets, unit):
    """The governing sets are among those of the answer at their level, and none of that level is beyond them."""
    for level in ["service", "ultimate", "multiple_of_rated"]:
        said = [
            (one, s)
            for one in unit["combinations"]
            if one["level"] == level and not one["unavailable"]
            for s in one["sets"]
        ]
        found = sets.get(f"Gantline_Reactions_{level}")
        assert (found is None) == (not said), f"{unit['tag']}, {level}"
        if not said:
            continue
        for component, sense in [("M", "max"), ("V", "max"), ("Fz", "max"), ("Fz", "min"), ("Mz", "max"), ("Mz", "min")]:
            word = {"max": "maximum", "min": "minimum"}[sense]
            alike = [(one, s) for one, s in said if (s["component"], s["sense"]) == (component, word)]
            values = [next(iter(s["value"].values())) for _, s in alike]
            name = f"{component} {sense}"
            near(found[name], max(values) if sense == "max" else min(values), f"{unit['tag']}, {level}, {name}")
            one, s = next(
                (one, s)
                for one, s in alike
                if one["name"] == found[f"{name}: combination"] and next(iter(s["value"].values())) == found[name]
            )
            assert found.get(f"{name}: loads and factors inside", "") == one["inside"]
            for key in COMPONENTS:
                near(found[f"{name}: {key[:2].capitalize()}"], s["concurrent"][key], f"{unit['tag']}, {name}, {key}")


def check_anchorage_in_model(found, base, tag):
    if base is None:
        assert found["State"] == "not checked", tag
        return
    assert (found["State"] == "holds") == base["holds"], tag
    assert found.get("What governs") == base["governs"], tag
    for used in base["uses"]:
        read = found.get(f"Use, {used['of']}: {used['look']}")
        if used["nothing_resists"]:
            assert read == "nothing resists", tag
        elif used["utilization"] is not None:
            # The format's reals are written to the billionth.
            assert abs(read - used["utilization"]) < 1e-9, f"{tag}, {used['look']}: {read}"
        elif used["not_checked"]:
            assert read == f"not checked: {used['not_checked']}", tag
        else:
            assert read is None, tag


def check_model(folder, check, reactions, origin):
    path = folder / "gantline-model.ifc"
    model = ifcopenshell.open(path)
    logger = ifcopenshell.validate.json_logger()
    ifcopenshell.validate.validate(model, logger, express_rules=True)
    assert not logger.statements, f"not valid: {logger.statements[:3]}"
    ids = [one.GlobalId for one in model.by_type("IfcRoot")]
    assert len(ids) == len(set(ids)) and all(len(one) == 22 for one in ids)
    settings = ifcopenshell.geom.settings()
    solids = 0
    for product in model.by_type("IfcProduct"):
        if product.Representation:
            mesh = ifcopenshell.geom.create_shape(settings, product).geometry
            assert len(mesh.faces) > 0, product.Name
            solids += 1
    conversions = model.by_type("IfcMapConversion")
    if origin == [0.0, 0.0]:
        assert not conversions
    else:
        (conversion,) = conversions
        assert [conversion.Eastings, conversion.Northings] == origin
        assert (conversion.XAxisAbscissa, conversion.XAxisOrdinate, conversion.Scale) == (1.0, 0.0, 1.0)
    judged = {unit["id"]: unit["base"] for unit in check["units"]}
    units = {unit["id"]: unit for unit in reactions["units"]}
    for base in model.by_type("IfcDiscreteAccessory"):
        sets = ifcopenshell.util.element.get_psets(base)
        unit = units.pop(sets["Gantline_Base"]["Id in the plan"])
        assert base.Tag == unit["tag"]
        near(sets["Gantline_Base"]["x"], unit["place"]["at_m"][0], unit["tag"])
        check_reactions_of_base(sets, unit)
        check_anchorage_in_model(sets["Gantline_Anchorage"], judged[unit["id"]], unit["tag"])
        missing = [one for one in unit["combinations"] if (one["unavailable"] or {}).get("not_checked")]
        told = sets["Gantline_Base"].get("Combinations that could not be computed", "")
        assert told == "; ".join(f"{one['name']}: {one['unavailable']['not_checked']}" for one in missing), unit["tag"]
    assert all(unit["place"] is None for unit in units.values()), "a base is not in the model"
    (layer,) = model.by_type("IfcPresentationLayerAssignment")
    zones = [one for one in model.by_type("IfcBuildingElementProxy") if one.PredefinedType == "PROVISIONFORSPACE"]
    on_layer = {one.id() for one in layer.AssignedItems}
    assert on_layer == {one.Representation.Representations[0].id() for one in zones}
    about = ifcopenshell.util.element.get_psets(model.by_type("IfcProject")[0])["Gantline_Document"]
    assert about["Caution"] == check["caution"]
    assert about["Plan, SHA-256 of its file"] == check["plan"]["content_sha256"]
    return {"solids": solids, "clear zones": len(zones)}


A1_MM = (841.0, 594.0)
POINTS_A_MM = 72 / 25.4


def squeezed(text):
    return "".join(text.split())


def straight_lines(page):
    """Lengths of all straight parts of all paths, mm; the page is drawn at one scale, turned over."""
    lengths = []
    at = start = None
    for operands, operator in pypdf.generic.ContentStream(page.get_contents(), page.pdf).operations:
        if operator == b"m":
            at = start = [float(one) for one in operands]
        elif operator == b"l" and at:
            to = [float(one) for one in operands]
            lengths.append(math.dist(at, to) / POINTS_A_MM)
            at = to
        elif operator == b"h" and at:
            lengths.append(math.dist(at, start) / POINTS_A_MM)
            at = start
    return lengths


def check_fonts(page):
    for font in page["/Resources"]["/Font"].values():
        font = font.get_object()
        assert "/ToUnicode" in font, f"{font['/BaseFont']}: its text can't be read"
        inner = font["/DescendantFonts"][0].get_object()
        assert "/FontFile2" in inner["/FontDescriptor"] or "/FontFile3" in inner["/FontDescriptor"]
        name = font["/BaseFont"]
        assert name[7:8] == "+" and "IBMPlexSans" in name, f"{name} is no part of the shipped typeface"


def check_sheets(folder, check, name):
    reader = pypdf.PdfReader(folder / f"gantline-{name}.pdf")
    texts = [page.extract_text() for page in reader.pages]
    tags = {unit["tag"] for unit in check["units"] if unit["place"]}
    for number, (page, text) in enumerate(zip(reader.pages, texts), 1):
        size = [float(part) / POINTS_A_MM for part in page.mediabox[2:]]
        assert all(math.isclose(a, b, abs_tol=1e-3) for a, b in zip(size, A1_MM)), f"page {number}: {size}"
        check_fonts(page)
        for words in [check["plan"]["content_sha256"], check["caution"], f"sheet {number} of {len(texts)}"]:
            assert squeezed(words) in squeezed(text), f"page {number}: {words} is not found"
    everything = squeezed(" ".join(texts))
    assert all(squeezed(tag) in everything for tag in tags), f"{name}: a tag is not found"
    return reader, texts


def check_drawing_set(folder, check):
    reader, texts = check_sheets(folder, check, "drawings")
    scale = float(texts[0].split("Prints at 1:")[1].split()[0])
    lengths = straight_lines(reader.pages[0])
    edges = [facade["length_m"] for facade in check["facades"]]
    for edge in edges:
        on_paper = edge * 1000 / scale
        assert any(abs(length - on_paper) < 0.005 for length in lengths), f"{edge} m at 1:{scale:.0f} is not drawn"
    return {"sheets": len(texts), "scale of the roof plan": scale, "edges measured": len(edges)}


def check_load_plan(folder, check, reactions):
    _, texts = check_sheets(folder, check, "loads")
    everything = squeezed(" ".join(texts))
    for unit in reactions["units"]:
        for one in unit["combinations"]:
            assert squeezed(one["inside"]) in everything, f"{unit['tag']}: {one['inside']} is not found"
            for s in one["sets"]:
                if (s["component"], s["sense"]) == ("M", "maximum"):
                    my = f"{s['concurrent']['my_nm'] / 1e3:.2f}"
                    assert my in everything, f"{unit['tag']}: My {my} is not found"
    return {"sheets": len(texts)}


def check_report(folder, check, reactions):
    """The calculation report: A4, every base, every finding, every combination with its factors, what each base uses."""
    reader = pypdf.PdfReader(folder / "gantline-report.pdf")
    for page in reader.pages:
        wide, high = float(page.mediabox.width), float(page.mediabox.height)
        assert abs(wide - 595.28) < 0.1 and abs(high - 841.89) < 0.1, (wide, high)
    texts = [page.extract_text() for page in reader.pages]
    everything = squeezed(" ".join(texts))
    for unit in reactions["units"]:
        assert squeezed(unit["tag"]) in everything, f"{unit['tag']} is not found"
        for one in unit["combinations"]:
            assert squeezed(one["inside"]) in everything, f"{unit['tag']}: {one['inside']} is not found"
    for finding in check["findings"]:
        assert squeezed(finding["code"]) in everything, f"{finding['code']} is not found"
    tally = check["tally"]
    assert squeezed(f"{tally['checks']} checks: {tally['meets']} met") in everything
    return {"pages": len(texts)}


def main():
    made = Path(os.environ["GANTLINE_DOCUMENTS"])
    answer = {"made_by": "documents.py", "plans": {}}
    for name in PLANS:
        folder = made / name
        check = json.loads((folder / "check.json").read_text(encoding="utf-8"))
        reactions = json.loads((folder / "reactions.json").read_text(encoding="utf-8"))
        origin, corners = json.loads((folder / "outlines.json").read_text(encoding="utf-8"))
        read = {
            "workbook": check_workbook(folder, check, reactions, origin),
            "drawing": check_drawing(folder, check, origin, corners),
            "model": check_model(folder, check, reactions, origin),
            "tables": check_tables(folder, check, reactions),
            "drawing set": check_drawing_set(folder, check),
            "load plan": check_load_plan(folder, check, reactions),
            "report": check_report(folder, check, reactions),
        }
        print(name, json.dumps(read))
        answer["plans"][name] = {
            "bases in the workbook": read["workbook"]["bases"],
            "bases in the drawing": read["drawing"]["INSERT"],
            "bases in the tables": read["tables"]["bases"],
        }
    path = Path(__file__).parent / "expected" / "documents.json"
    path.parent.mkdir(exist_ok=True)
    path.write_text(json.dumps(answer, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
