//! Parts in use: masts, arms, braces, bases with their sections, and the materials.

use std::collections::BTreeSet;

use gantline_plan::catalog::{Family, Material, MaterialKind, SectionShape, Tube};
use gantline_plan::document::{FamilyId, PartId};
use gantline_plan::quantity::{self, UnitSystem};

use super::blocks::{counted, named, row, section, table, told, words};
use super::figures::length;
use super::given::Given;
use crate::paper::{Block, Row};

/// Order of the parts in the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Class {
    Mast,
    Arm,
    Brace,
    Base,
    Foot,
}

/// The sections.
pub fn blocks(given: &Given<'_>) -> Vec<Block> {
    let mut blocks = vec![section("Parts")];
    let used = used(given);
    let rows = used
        .iter()
        .filter_map(|(family, class, part)| of_part(given.plan.families.get(family)?, *class, part, given.units));
    let columns = vec![
        told("Part", 0.6),
        told("Name", 1.3),
        told("Length", 1.2),
        told("Section", 1.6),
        told("Material", 1.0),
        counted("Mass", 0.7),
    ];
    blocks.extend(table(columns, rows.collect()));
    let mut materials: Vec<&Material> = Vec::new();
    for (family, _, _) in &used {
        let Some(family) = given.plan.families.get(family) else { continue };
        materials
            .extend(family.materials.values().filter(|material| !materials.contains(material)).collect::<Vec<_>>());
    }
    blocks.push(section("Materials"));
    let columns = vec![
        told("Material", 1.2),
        told("Kind", 1.8),
        counted("Yield", 0.8),
        counted("Ultimate", 0.8),
        counted("E", 0.8),
        counted("G", 0.8),
    ];
    blocks.extend(table(columns, materials.into_iter().map(|material| of_material(material, given.units)).collect()));
    blocks
}

/// Parts that some unit of the plan has.
fn used<'a>(given: &Given<'a>) -> BTreeSet<(FamilyId, Class, &'a PartId)> {
    let mut used = BTreeSet::new();
    for placement in given.plan.placements.values() {
        let made = &placement.make_up;
        let mut add = |class, part| used.insert((made.family, class, part));
        add(Class::Mast, &made.mast);
        add(Class::Arm, &made.arm);
        add(Class::Base, &made.base);
        if let Some(brace) = &made.brace {
            add(Class::Brace, brace);
            let family = given.plan.families.get(&made.family);
            let foot = family.and_then(|family| family.braces.get(brace)).and_then(|brace| brace.foot.as_ref());
            if let Some(foot) = foot {
                add(Class::Foot, foot);
            }
        }
    }
    used
}

fn of_part(family: &Family, class: Class, part: &PartId, units: UnitSystem) -> Option<Row> {
    let mass = |mass_kg: f64| words(&quantity::mass(mass_kg, units));
    let of_tube = |class: &str, name: &str, long: String, tube: &Tube, mass_kg: f64| {
        row(vec![
            words(class),
            words(&named(name)),
            words(&long),
            words(&shape(tube.section, units)),
            words(&named(family.materials.get(&tube.material).map_or(&tube.material, |material| &material.name))),
            mass(mass_kg),
        ])
    };
    Some(match class {
        Class::Mast => {
            let mast = family.masts.get(part)?;
            of_tube("mast", &mast.name, format!("height {}", length(mast.height_m, units)), &mast.tube, mast.mass_kg)
        }
        Class::Arm => {
            let arm = family.arms.get(part)?;
            let long = format!("outreach {}, tail {}", length(arm.outreach_m, units), length(arm.tail_m, units));
            of_tube("arm", &arm.name, long, &arm.tube, arm.mass_kg)
        }
        Class::Brace => {
            let brace = family.braces.get(part)?;
            of_tube("brace", &brace.name, "between its pins".to_owned(), &brace.tube, brace.mass_kg)
        }
        Class::Base | Class::Foot => {
            let base = family.bases.get(part)?;
            let material = base.plate_material.as_ref().map_or("not stated", String::as_str);
            row(vec![
                words(if class == Class::Base { "base" } else { "brace foot" }),
                words(&named(&base.name)),
                words(&format!("socket {} high", length(base.socket_top_m, units))),
                words(&format!("{}, plate {} thick", base.kind.words(), length(base.plate_thickness_m, units))),
                words(family.materials.get(material).map_or(material, |material| &material.name)),
                mass(base.mass_kg),
            ])
        }
    })
}

/// A section in words.
pub fn shape(section: SectionShape, units: UnitSystem) -> String {
    let length = |value_m| length(value_m, units);
    match section {
        SectionShape::RoundTube { diameter_m, wall_m } => {
            format!("round tube {} × {}", length(diameter_m), length(wall_m))
        }
        SectionShape::RectTube { depth_m, width_m, wall_m, .. } => {
            format!("box tube {} × {} × {}", length(depth_m), length(width_m), length(wall_m))
        }
    }
}

fn of_material(material: &Material, units: UnitSystem) -> Row {
    let kind = match material.kind {
        MaterialKind::Steel { cold_formed } => {
            format!("steel, tubes {}", if cold_formed { "cold-formed" } else { "hot-finished" })
        }
        MaterialKind::Aluminum { heat_treated, weld_softening } => {
            let class = if heat_treated { "A" } else { "B" };
            let soft = weld_softening.map_or_else(|| "not known".to_owned(), quantity::share);
            format!("aluminum, buckling class {class}, strength beside welds {soft}")
        }
    };
    let stress = |value_pa: f64| words(&quantity::traced(value_pa, "Pa", units));
    row(vec![
        words(&named(&material.name)),
        words(&kind),
        stress(material.yield_pa),
        stress(material.ultimate_pa),
        stress(material.elastic_pa),
        stress(material.shear_pa),
    ])
}
