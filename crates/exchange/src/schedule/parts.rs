//! The table of parts: every mast, arm, brace, base and fixing in use, with its mass and how many the plan asks for.

use std::collections::BTreeMap;

use gantline_plan::assess::Assessment;
use gantline_plan::catalog::{Family, Origin, SectionShape, Tube};
use gantline_plan::document::{FamilyId, PartId, Plan};
use gantline_plan::quantity::Kind::{Length, Mass};

use super::table::{Cell, Column, Table};

/// What kind of part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Class {
    Mast,
    Arm,
    Brace,
    Base,
    BraceFoot,
    Fixing,
}

/// A part in use.
struct Part<'a> {
    family: Option<&'a Family>,
    class: Class,
    id: &'a PartId,
    count: usize,
}

/// What a part's own data say.
struct Facts<'a> {
    name: &'a str,
    length_m: Option<f64>,
    tube: Option<&'a Tube>,
    mass_kg: Option<f64>,
}

/// The table.
pub fn parts(plan: &Plan, assessment: &Assessment) -> Table {
    let mut counts: BTreeMap<(FamilyId, Class, &PartId), usize> = BTreeMap::new();
    for (id, placement) in &plan.placements {
        let make_up = &placement.make_up;
        let mut add = |class, part, count| *counts.entry((make_up.family, class, part)).or_insert(0) += count;
        add(Class::Mast, &make_up.mast, 1);
        add(Class::Arm, &make_up.arm, 1);
        add(Class::Base, &make_up.base, 1);
        if let Some(brace) = &make_up.brace {
            add(Class::Brace, brace, 1);
        }
        // Anchors are counted by what stands, so by units whose parts are known.
        let is_known = assessment.units.get(id).is_some_and(|unit| unit.resolved.is_ok());
        let Some(family) = plan.families.get(&make_up.family).filter(|_| is_known) else { continue };
        if let Some(anchors) = family.bases.get(&make_up.base).and_then(|base| base.anchors.as_ref()) {
            add(Class::Fixing, make_up.fixing.as_ref().unwrap_or(&anchors.fixing), anchors.at_m.len());
        }
        let foot = make_up.brace.as_ref().and_then(|brace| family.braces.get(brace)?.foot.as_ref());
        if let Some(foot) = foot {
            add(Class::BraceFoot, foot, 1);
            if let Some(anchors) = family.bases.get(foot).and_then(|base| base.anchors.as_ref()) {
                add(Class::Fixing, &anchors.fixing, anchors.at_m.len());
            }
        }
    }
    let rows = counts.into_iter().map(|((family, class, id), count)| Part {
        family: plan.families.get(&family).map(AsRef::as_ref),
        class,
        id,
        count,
    });
    let about = "Counted as the plan shows them, a unit in every base. Bases and fixings stay in the roof; masts, arms and \
                 braces are carried, so fewer may serve.";
    Table::of("Parts", about.to_owned(), 3, &columns(), rows)
}

fn columns<'a>() -> Vec<Column<Part<'a>>> {
    let words = Column::of_anything;
    vec![
        words("Family", "family", 18.0, |part| {
            Cell::text(part.family.map_or("not on the plan", |family| &family.name))
        }),
        words("Part", "part", 11.0, |part| Cell::text(part.class.word())),
        words("Name", "name", 26.0, |part| Cell::text(part.facts().map_or("not in the family", |facts| facts.name))),
        words("Id", "id", 16.0, |part| Cell::text(part.id.to_string())),
        words("Origin of the data", "origin", 22.0, |part| match part.family.map(|family| &family.origin) {
            Some(Origin::Invented) => Cell::text("invented for demonstration"),
            Some(Origin::DeclaredBy(who)) => Cell::text(format!("declared by {who}")),
            None => Cell::Empty,
        }),
        words("Stays in the roof", "stays", 9.0, |part| Cell::yes_no(part.class >= Class::Base)),
        words("Material", "material", 20.0, |part| {
            Cell::text_if(part.facts().and_then(|facts| facts.tube).map(|tube| tube.material.clone()))
        }),
        Column::of(Length, "Height or outreach", "length", |part| {
            Cell::amount_if(Length, part.facts().and_then(|facts| facts.length_m))
        }),
        words("Section", "section", 12.0, |part| Cell::text_if(part.section().map(shape))),
        Column::of(Length, "Depth or diameter", "depth", |part| {
            Cell::amount_if(Length, part.section().map(SectionShape::depth_m))
        }),
        Column::of(Length, "Width", "width", |part| Cell::amount_if(Length, part.section().map(SectionShape::width_m))),
        Column::of(Length, "Wall", "wall", |part| Cell::amount_if(Length, part.section().map(wall_m))),
        Column::of(Mass, "Mass of one", "mass", |part| {
            Cell::amount_if(Mass, part.facts().and_then(|facts| facts.mass_kg))
        }),
        words("Count", "count", 8.0, |part| Cell::Count(part.count)),
        Column::of(Mass, "Mass of all", "mass_of_all", |part| {
            let one_kg = part.facts().and_then(|facts| facts.mass_kg);
            Cell::amount_if(Mass, one_kg.map(|one_kg| one_kg * part.count as f64))
        }),
    ]
}

impl Class {
    const fn word(self) -> &'static str {
        match self {
            Self::Mast => "mast",
            Self::Arm => "arm",
            Self::Brace => "brace",
            Self::Base => "base",
            Self::BraceFoot => "brace foot",
            Self::Fixing => "fixing",
        }
    }
}

impl<'a> Part<'a> {
    /// The part's data; none when its family does not have it.
    fn facts(&self) -> Option<Facts<'a>> {
        let family = self.family?;
        Some(match self.class {
            Class::Mast => {
                let mast = family.masts.get(self.id)?;
                let (length_m, mass_kg) = (Some(mast.height_m), Some(mast.mass_kg));
                Facts { name: &mast.name, length_m, tube: Some(&mast.tube), mass_kg }
            }
            Class::Arm => {
                let arm = family.arms.get(self.id)?;
                let (length_m, mass_kg) = (Some(arm.outreach_m), Some(arm.mass_kg));
                Facts { name: &arm.name, length_m, tube: Some(&arm.tube), mass_kg }
            }
            Class::Brace => {
                let brace = family.braces.get(self.id)?;
                Facts { name: &brace.name, length_m: None, tube: Some(&brace.tube), mass_kg: Some(brace.mass_kg) }
            }
            Class::Base | Class::BraceFoot => {
                let base = family.bases.get(self.id)?;
                Facts { name: &base.name, length_m: None, tube: None, mass_kg: Some(base.mass_kg) }
            }
            Class::Fixing => {
                let fixing = family.fixings.get(self.id)?;
                Facts { name: &fixing.name, length_m: None, tube: None, mass_kg: None }
            }
        })
    }

    fn section(&self) -> Option<SectionShape> {
        self.facts()?.tube.map(|tube| tube.section)
    }
}

const fn shape(section: SectionShape) -> &'static str {
    match section {
        SectionShape::RoundTube { .. } => "round tube",
        SectionShape::RectTube { .. } => "box tube",
    }
}

const fn wall_m(section: SectionShape) -> f64 {
    match section {
        SectionShape::RoundTube { wall_m, .. } | SectionShape::RectTube { wall_m, .. } => wall_m,
    }
}
