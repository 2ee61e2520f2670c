//! The whole file: header, project, and everything storey by storey.

use std::collections::BTreeMap;

use gantline_plan::assess::Assessment;
use gantline_plan::document::{Plan, RoofId};

use super::bases::{Shared, base};
use super::guid::Identities;
use super::look::Looks;
use super::project::{Project, project};
use super::properties::{set, words};
use super::roofs::roof;
use super::shapes::Scene;
use super::step::{NONE, Ref, Step, label, list, text};
use super::units::unit;
use super::zones::zones;
use crate::documents::Imprint;
use crate::documents::imprint::CAUTION;

/// The program by its name and version.
const PROGRAM: &str = concat!("Gantline ", env!("CARGO_PKG_VERSION"));
/// The layer of clear zones.
const ZONES_LAYER: &str = "Gantline clear zones";

/// What is written into.
pub struct Writing<'a> {
    /// The lines.
    pub step: &'a mut Step,
    /// Identities.
    pub ids: &'a Identities,
    /// How things look.
    pub looks: &'a Looks,
    /// The context of bodies.
    pub body: Ref,
    /// Representations that go on the layer of clear zones.
    pub of_zones: Vec<Ref>,
}

impl Writing<'_> {
    /// For solids.
    pub fn scene(&mut self) -> Scene<'_> {
        Scene { step: self.step, body: self.body, looks: self.looks }
    }
}

/// The plan as IFC4 text. The same plan gives the same text; a thing keeps its identity while job, address and its id stay.
pub fn ifc(plan: &Plan, assessment: &Assessment, imprint: &Imprint) -> String {
    let ids = Identities::of(&imprint.plan.job, &imprint.address);
    let mut step = Step::default();
    let project = project(&mut step, &ids, plan, imprint);
    let looks = Looks::write(&mut step);
    let mut writing = Writing { step: &mut step, ids: &ids, looks: &looks, body: project.body, of_zones: Vec::new() };
    let elements = elements(&mut writing, plan, assessment, &project);
    contain(&mut writing, &project, &elements);
    if !writing.of_zones.is_empty() {
        let assigned = list(writing.of_zones.iter().copied());
        let values = format!("{},{NONE},{assigned},{NONE}", label(ZONES_LAYER));
        writing.step.add("IFCPRESENTATIONLAYERASSIGNMENT", &values);
    }
    let said: Vec<_> = [("Caution", CAUTION.to_owned())]
        .into_iter()
        .chain(imprint.rows())
        .filter_map(|(name, said)| words(name, said))
        .collect();
    set(&mut step, &ids, "document", "Gantline_Document", &said, &[project.whole, project.building]);
    format!("{}DATA;\n{}ENDSEC;\nEND-ISO-10303-21;\n", header(imprint), step.done())
}

/// Elements by the roof in whose storey they are.
fn elements(
    writing: &mut Writing<'_>,
    plan: &Plan,
    assessment: &Assessment,
    project: &Project,
) -> BTreeMap<RoofId, Vec<Ref>> {
    let mut all: BTreeMap<RoofId, Vec<Ref>> = BTreeMap::new();
    for (&id, found) in &plan.roofs {
        if let Some(&storey) = project.storeys.get(&id) {
            all.entry(id).or_default().extend(roof(writing, plan, id, found, storey));
        }
    }
    let mut shared = Shared::default();
    for (&id, placement) in &plan.placements {
        let Some(assessed) = assessment.units.get(&id) else { continue };
        let Some(frame) = assessed.frame else { continue };
        let Some(&storey) = project.storeys.get(&frame.roof) else { continue };
        let named = (id, placement);
        let into = all.entry(frame.roof).or_default();
        into.push(base(writing, &mut shared, plan, named, (assessed, frame), storey));
        if let Ok(resolved) = &assessed.resolved {
            into.push(unit(writing, named, resolved, &frame, storey));
        }
        into.extend(zones(writing, named, assessed, frame.level_m, storey));
    }
    shared.write(writing);
    all
}

/// Says which storey contains what: once for each storey.
fn contain(writing: &mut Writing<'_>, project: &Project, elements: &BTreeMap<RoofId, Vec<Ref>>) {
    let mut of_storey: BTreeMap<Ref, Vec<Ref>> = BTreeMap::new();
    for (id, found) in elements {
        if let Some(storey) = project.storeys.get(id) {
            of_storey.entry(storey.storey).or_default().extend(found);
        }
    }
    for (index, (storey, found)) in of_storey.into_iter().enumerate() {
        let id = writing.ids.of_thing(&format!("content of storey {index}"));
        let values = format!("{id},{NONE},{NONE},{NONE},{},{storey}", list(found));
        writing.step.add("IFCRELCONTAINEDINSPATIALSTRUCTURE", &values);
    }
}

fn header(imprint: &Imprint) -> String {
    let date = imprint
        .iso_date()
        .map_or_else(String::new, |(year, month, day)| format!("{year:04}-{month:02}-{day:02}T00:00:00"));
    let plan = &imprint.plan;
    let described = [
        "ViewDefinition [notYetAssigned]".to_owned(),
        CAUTION.to_owned(),
        format!("{}; plan SHA-256 {}", imprint.line(), plan.content_sha256),
    ];
    format!(
        "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(({}),'2;1');\nFILE_NAME('gantline-model.ifc',{},({}),(''),{program},{program},'');\n\
         FILE_SCHEMA(('IFC4'));\nENDSEC;\n",
        described.map(|words| text(&words)).join(","),
        text(&date),
        text(&imprint.author),
        program = text(PROGRAM)
    )
}
