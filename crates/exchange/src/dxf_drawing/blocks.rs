//! Bases as blocks: what stands in a base, drawn in the base's axes, once for all bases that look alike; each base is a
//! reference with its own attributes.

use std::collections::BTreeMap;

use gantline_drawing::{Drawing, Layer, Mark};
use gantline_plan::assess::anchorage::{BaseAssessment, BaseState, BaseUse};
use gantline_plan::assess::{Assessment, UnitAssessment};
use gantline_plan::catalog::ResolvedUnit;
use gantline_plan::document::{PlacementId, Plan, Standing, ThingId};
use gantline_plan::quantity::{UnitSystem, length, level};
use glam::DVec2;

use super::entities::{Placing, TEXT_STYLE, Words, begin, mark};
use super::fixed;
use super::layers::{Layers, UNITS};
use super::pairs::{Handle, Pairs};

/// A block with the marks of one of the bases that look alike.
pub struct Block<'a> {
    /// Its name.
    pub name: String,
    /// Its record in the table of blocks.
    pub record: Handle,
    marks: Vec<&'a Mark>,
    placing: Placing,
}

/// A base as a reference to a block.
pub struct Reference {
    block: usize,
    at: DVec2,
    turn_rad: f64,
    values: [String; ATTRIBUTES.len()],
}

/// Attributes: name and prompt, in the order of their values.
const ATTRIBUTES: [(&str, &str); 15] = [
    ("TAG", "Tag"),
    ("ID", "Id in the plan"),
    ("ROOF", "Roof"),
    ("LEVEL", "Level"),
    ("EDGE", "Edge"),
    ("ALONG", "Along the edge"),
    ("SETBACK", "Setback"),
    ("MAKEUP", "Make-up"),
    ("BASE", "Base and fixing"),
    ("BASESTATE", "Anchorage"),
    ("BASEUSED", "Largest use"),
    ("BASEGOVERNS", "What governs it"),
    ("EDGEDIST", "Nearest edge"),
    ("THICKNESS", "Concrete thickness"),
    ("TESTDUTY", "Test duty"),
];

/// Height of an attribute's letters on paper, mm.
const LETTERS_MM: f64 = 2.0;

/// Whether a mark is drawn in a block, and of which unit.
pub fn unit_of(mark: &Mark) -> Option<PlacementId> {
    match mark.about {
        Some(ThingId::Placement(id)) if mark.layer == Layer::Unit => Some(id),
        _ => None,
    }
}

/// Blocks and references of a drawing's units. Units that look alike in their base's axes share a block.
pub fn blocks_of<'a>(
    pairs: &mut Pairs,
    (plan, assessment): (&Plan, &Assessment),
    drawing: &'a Drawing,
    model: &Placing,
    units: UnitSystem,
) -> (Vec<Block<'a>>, Vec<Reference>) {
    let mut marks_of: BTreeMap<PlacementId, Vec<&Mark>> = BTreeMap::new();
    for mark in &drawing.marks {
        if let Some(id) = unit_of(mark) {
            marks_of.entry(id).or_default().push(mark);
        }
    }
    let (mut blocks, mut references) = (Vec::new(), Vec::new());
    let mut alike: BTreeMap<String, usize> = BTreeMap::new();
    for (id, marks) in marks_of {
        let Some((unit, frame)) = assessment.units.get(&id).and_then(|unit| Some((unit, unit.frame?))) else {
            continue;
        };
        let placing = Placing { origin: frame.at, turn_rad: -frame.outward_rad, owner: Handle(0), ..*model };
        let index = *alike.entry(looks(&marks, &placing)).or_insert_with(|| {
            let record = pairs.mint();
            let name = format!("GL-BASE-{:02}", blocks.len() + 1);
            blocks.push(Block { name, record, marks, placing: Placing { owner: record, ..placing } });
            blocks.len() - 1
        });
        let values = values(plan, id, unit, units);
        let at = model.point(frame.at);
        references.push(Reference { block: index, at, turn_rad: frame.outward_rad, values });
    }
    (blocks, references)
}

/// What marks look like, as text: equal for units that differ in place and direction only.
fn looks(marks: &[&Mark], placing: &Placing) -> String {
    let mut scratch = Pairs::new();
    for one in marks {
        mark(&mut scratch, &mut Layers::new(), placing, one);
    }
    scratch.done().0
}

fn values(plan: &Plan, id: PlacementId, unit: &UnitAssessment, units: UnitSystem) -> [String; ATTRIBUTES.len()] {
    let placement = plan.placements.get(&id);
    let roof = unit.frame.and_then(|frame| plan.roofs.get(&frame.roof));
    let edge = placement.map_or_else(String::new, |placement| match &placement.stands {
        Standing::OnEdge { edge, .. } => edge.to_string(),
        Standing::Free { .. } => "free".to_owned(),
    });
    let out = |of: fn(&gantline_plan::assess::SettingOut) -> f64| {
        unit.setting_out.as_ref().map_or_else(String::new, |out| length(of(out), units))
    };
    let judged = unit.base.as_deref();
    let known = |value_m: Option<f64>| value_m.map_or_else(String::new, |value_m| length(value_m, units));
    let kind = unit.resolved.as_deref().ok().and_then(ResolvedUnit::fixing_kind);
    [
        placement.map_or_else(String::new, |placement| placement.tag.0.clone()),
        id.to_string(),
        roof.map_or_else(String::new, |roof| roof.name.clone()),
        unit.frame.map_or_else(String::new, |frame| level(frame.level_m, units)),
        edge,
        out(|out| out.from_start_m),
        out(|out| out.setback_m),
        unit.resolved.as_deref().map_or_else(|fault| format!("not known: {fault}"), make_up),
        unit.resolved.as_deref().map_or_else(|_| String::new(), base),
        judged.map_or(BaseState::NotChecked, BaseAssessment::state).words().to_owned(),
        judged.map_or_else(String::new, BaseAssessment::used_words),
        judged.and_then(BaseAssessment::governing).map_or_else(String::new, BaseUse::named),
        known(judged.and_then(|base| base.edges.first()).map(|edge| edge.distance_m)),
        known(judged.and_then(|base| base.thickness_m)),
        kind.map_or_else(String::new, |kind| plan.basis.test_words(kind)),
    ]
}

fn make_up(unit: &ResolvedUnit) -> String {
    let brace = unit.brace.as_ref().map_or("no brace", |brace| &brace.name);
    format!("{}: {}, {}, {brace}", unit.family, unit.mast.name, unit.arm.name)
}

fn base(unit: &ResolvedUnit) -> String {
    let fixing = unit.fixing.as_ref().map_or("fixing not known", |fixing| &fixing.name);
    format!("{}, {fixing}", unit.base.name)
}

/// Writes the section of blocks.
pub fn section(pairs: &mut Pairs, layers: &mut Layers, model: &Placing, blocks: &[Block<'_>]) {
    pairs.section("BLOCKS");
    for (name, record) in [("*Model_Space", fixed::MODEL_RECORD), ("*Paper_Space", fixed::PAPER_RECORD)] {
        begin_block(pairs, name, record, 0);
        end_block(pairs, record);
    }
    let height = model.scale.m(LETTERS_MM) * model.per_m;
    for block in blocks {
        // The flag says that attributes go with it.
        begin_block(pairs, &block.name, block.record, 2);
        for one in &block.marks {
            mark(pairs, layers, &block.placing, one);
        }
        for (index, (tag, prompt)) in ATTRIBUTES.iter().enumerate() {
            begin(pairs, "ATTDEF", block.record, UNITS);
            let first = DVec2::new(0.0, -height * 1.5 * index as f64);
            Words { text: "", first, height, turn_deg: 0.0, style: TEXT_STYLE }.write(pairs);
            pairs.word(100, "AcDbAttributeDefinition");
            pairs.word(3, prompt);
            pairs.word(2, tag);
            pairs.whole(70, INVISIBLE);
        }
        end_block(pairs, block.record);
    }
    pairs.end_section();
}

/// Attributes say what tags and setting-out show already, for whoever extracts them.
const INVISIBLE: i64 = 1;

fn begin_block(pairs: &mut Pairs, name: &str, record: Handle, flags: i64) {
    begin(pairs, "BLOCK", record, "0");
    pairs.word(100, "AcDbBlockBegin");
    pairs.word(2, name);
    pairs.whole(70, flags);
    pairs.point(10, DVec2::ZERO);
    pairs.word(3, name);
    pairs.word(1, "");
}

fn end_block(pairs: &mut Pairs, record: Handle) {
    begin(pairs, "ENDBLK", record, "0");
    pairs.word(100, "AcDbBlockEnd");
}

/// Writes a base.
pub fn reference(pairs: &mut Pairs, model: &Placing, blocks: &[Block<'_>], reference: &Reference) {
    let Some(block) = blocks.get(reference.block) else { return };
    let insert = begin(pairs, "INSERT", model.owner, UNITS);
    pairs.word(100, "AcDbBlockReference");
    pairs.whole(66, 1);
    pairs.word(2, &block.name);
    pairs.point(10, reference.at);
    pairs.number(50, reference.turn_rad.to_degrees());
    let height = model.scale.m(LETTERS_MM) * model.per_m;
    for (index, ((tag, _), value)) in ATTRIBUTES.iter().zip(&reference.values).enumerate() {
        begin(pairs, "ATTRIB", insert, UNITS);
        let first = reference.at - DVec2::Y * height * 1.5 * index as f64;
        Words { text: value, first, height, turn_deg: 0.0, style: TEXT_STYLE }.write(pairs);
        pairs.word(100, "AcDbAttribute");
        pairs.word(2, tag);
        pairs.whole(70, INVISIBLE);
    }
    begin(pairs, "SEQEND", insert, UNITS);
}
