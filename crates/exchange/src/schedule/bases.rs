//! The table of bases: what stands where, what it is made of, how it is fixed and tested, what it brings down.

use gantline_plan::assess::anchorage::{BaseAssessment, BaseState, BaseUse, PlateState};
use gantline_plan::assess::{Assessment, CombinationResult, Component, Outcome, Sense, Severity, UnitAssessment};
use gantline_plan::catalog::ResolvedUnit;
use gantline_plan::document::{Placement, PlacementId, Plan, Standing};
use gantline_plan::quantity::Kind::{Angle, Force, Length, Mass, Moment, Share};
use glam::DVec2;

use super::table::{Cell, Column, Table};
use crate::answers::unit_place::tag_of;
use crate::answers::{Figure, combination};

/// A base with all that is known of it.
struct Base<'a> {
    plan: &'a Plan,
    id: PlacementId,
    placement: &'a Placement,
    unit: &'a UnitAssessment,
}

/// The table.
pub fn bases(plan: &Plan, assessment: &Assessment) -> Table {
    let rows = assessment.units.iter().filter_map(|(&id, unit)| {
        let placement = plan.placements.get(&id)?;
        Some(Base { plan, id, placement, unit })
    });
    let about = "Places are mast axes in the plan's coordinates, levels are tops of structural slabs; directions run \
                 counter-clockwise from the plan's x axis. Governing: the combination with the largest resultant moment. \
                 Largest and smallest figures are the worst of all combinations of its level, each for itself: they need not \
                 act together. All sets are under Reactions.";
    let mut columns = columns();
    if plan.datum.has_grid() {
        let after_y = columns.iter().position(|column| column.key == "y").map_or(0, |y| y + 1);
        columns.splice(after_y..after_y, in_grid());
    }
    Table::of("Bases", about.to_owned(), 1, &columns, rows)
}

/// Where a base stands in the grid of the drawing that the plan's outline came from.
fn in_grid<'a>() -> [Column<Base<'a>>; 2] {
    fn place(base: &Base<'_>, part: fn(DVec2) -> f64) -> Cell {
        let at = base.unit.frame.map(|frame| part(base.plan.datum.in_grid(frame.at)));
        at.map_or(Cell::Empty, |at_m| Cell::figure(Length, Figure::in_grid(at_m)))
    }
    let mut columns = [
        Column::of(Length, "x in the drawing's grid", "grid_x", |base| place(base, |at| at.x)),
        Column::of(Length, "y in the drawing's grid", "grid_y", |base| place(base, |at| at.y)),
    ];
    // Seven digits before the point.
    for column in &mut columns {
        column.width = 13.0;
    }
    columns
}

/// The columns: what is known of a base from elsewhere is added here.
fn columns<'a>() -> Vec<Column<Base<'a>>> {
    let words = Column::of_anything;
    vec![
        words("Tag", "tag", 8.0, |base| Cell::text(base.placement.tag.0.clone())),
        words("Id", "unit", 8.0, |base| Cell::text(base.id.to_string())),
        words("Roof", "roof", 12.0, |base| Cell::text_if(base.roof())),
        words("Edge", "edge", 8.0, |base| match &base.placement.stands {
            Standing::OnEdge { edge, .. } => Cell::text(edge.to_string()),
            Standing::Free { .. } => Cell::text("free"),
        }),
        Column::of(Length, "Along the edge from its start", "from_start", |base| {
            Cell::amount_if(Length, base.unit.setting_out.map(|out| out.from_start_m))
        }),
        Column::of(Length, "To the edge's end", "to_end", |base| {
            Cell::amount_if(Length, base.unit.setting_out.map(|out| out.to_end_m))
        }),
        Column::of(Length, "Setback", "setback", |base| {
            Cell::amount_if(Length, base.unit.setting_out.map(|out| out.setback_m))
        }),
        words("Next base along the edge", "next_base", 8.0, |base| {
            let after = base.unit.setting_out.and_then(|out| out.after);
            Cell::text_if(after.map(|(id, _)| tag_of(base.plan, id)))
        }),
        Column::of(Length, "Distance to it", "to_next_base", |base| {
            Cell::amount_if(Length, base.unit.setting_out.and_then(|out| out.after).map(|(_, distance_m)| distance_m))
        }),
        Column::of(Length, "x", "x", |base| Cell::amount_if(Length, base.unit.frame.map(|frame| frame.at.x))),
        Column::of(Length, "y", "y", |base| Cell::amount_if(Length, base.unit.frame.map(|frame| frame.at.y))),
        Column::of(Length, "Level", "level", |base| {
            Cell::amount_if(Length, base.unit.frame.map(|frame| frame.level_m))
        }),
        Column::of(Angle, "Looks toward", "outward", |base| {
            Cell::amount_if(Angle, base.unit.frame.map(|frame| frame.outward_rad))
        }),
        words("Family", "family", 14.0, |base| Cell::text_if(base.resolved().map(|unit| unit.family.clone()))),
        words("Mast", "mast", 10.0, |base| Cell::text_if(base.resolved().map(|unit| unit.mast.name.clone()))),
        words("Arm", "arm", 14.0, |base| Cell::text_if(base.resolved().map(|unit| unit.arm.name.clone()))),
        words("Brace", "brace", 12.0, |base| {
            let brace = |unit: &ResolvedUnit| unit.brace.as_ref().map_or("none".to_owned(), |brace| brace.name.clone());
            Cell::text_if(base.resolved().map(brace))
        }),
        words("Base", "base", 14.0, |base| Cell::text_if(base.resolved().map(|unit| unit.base.name.clone()))),
        words("Kind of base", "base_kind", 14.0, |base| {
            Cell::text_if(base.resolved().map(|unit| unit.base.kind.words()))
        }),
        words("What is missing", "missing", 14.0, |base| {
            Cell::text_if(base.unit.resolved.as_ref().err().map(ToString::to_string))
        }),
        words("Fixing", "fixing", 16.0, |base| {
            Cell::text_if(base.resolved().and_then(|unit| unit.fixing.as_ref()).map(|fixing| fixing.name.clone()))
        }),
        words("Kind of fixing", "fixing_kind", 12.0, |base| {
            Cell::text_if(base.resolved().map(|unit| unit.fixing_kind().map_or("not known", |kind| kind.words())))
        }),
        words("Anchors", "anchors", 8.0, |base| {
            let anchors = base.resolved().and_then(|unit| unit.base.anchors.as_ref());
            anchors.map_or(Cell::Empty, |anchors| Cell::Count(anchors.at_m.len()))
        }),
        Column::of(Length, "Embedment", "embedment", |base| {
            let anchors = base.resolved().and_then(|unit| unit.base.anchors.as_ref());
            Cell::amount_if(Length, anchors.map(|anchors| anchors.embedment_m))
        }),
        words("Test duty", "test_duty", 26.0, |base| Cell::text_if(base.test_duty())),
        words("Anchorage", "anchorage", 14.0, |base| Cell::text(base.state().words())),
        Column::of(Share, "Largest use", "utilization", |base| {
            Cell::amount_if(Share, base.judged().and_then(BaseAssessment::utilization))
        }),
        words("What governs it", "governs", 20.0, |base| Cell::text_if(base.governs().map(BaseUse::named))),
        words("In which combination", "governs_in", 18.0, |base| {
            Cell::text_if(base.plate_state().map(|state| base.plan.basis.combination_name(state.combination)))
        }),
        Column::of(Angle, "At which slew", "governs_at", |base| {
            Cell::amount_if(Angle, base.plate_state().map(|state| state.slew_rad))
        }),
        words("Not checked of it", "anchorage_not_checked", 24.0, |base| {
            let missing = |base: &BaseAssessment| -> Vec<String> {
                base.not_checked().map(|(used, what)| format!("{}: {what}", used.named())).collect()
            };
            Cell::text_if(base.judged().map(|base| missing(base).join("; ")))
        }),
        Column::of(Length, "Nearest edge", "nearest_edge", |base| {
            let nearest = base.judged().and_then(|base| base.edges.first());
            Cell::amount_if(Length, nearest.map(|edge| edge.distance_m))
        }),
        Column::of(Length, "Concrete thickness", "thickness", |base| {
            Cell::amount_if(Length, base.judged().and_then(|base| base.thickness_m))
        }),
        words("Bond strengths are the code's defaults", "is_bond_default", 9.0, |base| {
            base.judged().map_or(Cell::Empty, |base| Cell::yes_no(base.bond_is_default))
        }),
        Column::of(Mass, "Mass carried to it", "portable_mass", |base| {
            Cell::amount_if(Mass, base.resolved().map(ResolvedUnit::portable_mass_kg))
        }),
        words("Governing combination", "governing_combination", 18.0, |base| {
            Cell::text_if(base.governing().map(|result| result.name.clone()))
        }),
        words("Its level", "governing_level", 9.0, |base| {
            Cell::text_if(base.governing().map(|result| result.level.name()))
        }),
        Column::of(Moment, "Largest M", "m_max", |base| base.extreme(Component::M, Sense::Max)),
        Column::of(Force, "Largest V", "v_max", |base| base.extreme(Component::V, Sense::Max)),
        Column::of(Force, "Largest Fz, up", "fz_max", |base| base.extreme(Component::Fz, Sense::Max)),
        Column::of(Force, "Smallest Fz", "fz_min", |base| base.extreme(Component::Fz, Sense::Min)),
        words("Blocking", "blocking", 8.0, |base| base.count(|outcome| *outcome == Outcome::Fails(Severity::Blocking))),
        words("Cautions", "cautions", 8.0, |base| base.count(|outcome| *outcome == Outcome::Fails(Severity::Caution))),
        words("Not checked", "not_checked", 8.0, |base| {
            base.count(|outcome| matches!(outcome, Outcome::NotChecked(_)))
        }),
    ]
}

impl<'a> Base<'a> {
    fn resolved(&self) -> Option<&'a ResolvedUnit> {
        self.unit.resolved.as_deref().ok()
    }

    fn roof(&self) -> Option<String> {
        let roof = self.unit.frame?.roof;
        Some(self.plan.roofs.get(&roof).map_or_else(|| roof.to_string(), |found| found.name.clone()))
    }

    /// What the basis asks of the fixing's test.
    fn test_duty(&self) -> Option<String> {
        Some(self.plan.basis.test_words(self.resolved()?.fixing_kind()?))
    }

    /// What fixing and concrete bear; none without a place or parts.
    fn judged(&self) -> Option<&'a BaseAssessment> {
        self.unit.base.as_deref()
    }

    fn state(&self) -> BaseState {
        self.judged().map_or(BaseState::NotChecked, BaseAssessment::state)
    }

    /// The use of fixing and concrete that governs.
    fn governs(&self) -> Option<&'a BaseUse> {
        self.judged()?.governing()
    }

    /// The state that brings it.
    fn plate_state(&self) -> Option<&'a PlateState> {
        self.governs()?.state.as_deref()
    }

    fn governing(&self) -> Option<&'a CombinationResult> {
        let result = self.unit.reactions.as_ref()?.governing()?;
        result.unavailable.is_none().then_some(result)
    }

    fn extreme(&self, component: Component, sense: Sense) -> Cell {
        let kind = if component.is_moment() { Moment } else { Force };
        let reactions = self.unit.reactions.as_ref();
        let set = reactions.zip(self.governing()).and_then(|(all, one)| all.worst(one.level, component, sense));
        // The figure of the answers, rounded beside the largest that acts with it.
        set.map_or(Cell::Empty, |set| Cell::figure(kind, combination::set(set).value.figure_and_unit().0))
    }

    fn count(&self, which: impl Fn(&Outcome) -> bool) -> Cell {
        Cell::Count(self.unit.checks.iter().filter(|check| which(&check.outcome)).count())
    }
}
