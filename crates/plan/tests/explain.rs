//! Every shown figure can be traced, and each trace comes to the figure that is shown.

use std::sync::Arc;

use gantline_plan::assess::anchorage::PlateState;
use gantline_plan::assess::{Amount, Assessment, Code, Component, Memo, Sense, UnitAssessment, assess};
use gantline_plan::basis::{CaseLoad, DesignCode, LeanLimits, NeighborRule, Sourced, Tension, presets};
use gantline_plan::catalog::{BraceAction, Family, MakeUp};
use gantline_plan::change::{Change, EdgePatch, History};
use gantline_plan::document::{
    EdgeEnd, EdgeId, FacadeStep, Obstacle, PlacementId, Plan, RoofId, Standing, Station, ThingId,
};
use gantline_plan::explain::{FigureId, MeasuredFrom, Trace, explain, explain_in};
use gantline_plan::quantity::Kind;
use glam::DVec2;

fn heron() -> Family {
    serde_json::from_str(include_str!("../../../assets/families/heron.json")).unwrap()
}

/// Rear foot, tie to the base, no brace; one strut that only pulls.
fn tern() -> Family {
    let mut family: Family = serde_json::from_str(include_str!("../../../assets/families/tern.json")).unwrap();
    if let Some(strut) = family.braces.values_mut().next() {
        strut.action = BraceAction::PullOnly;
    }
    family
}

fn rectangle(x0: f64, y0: f64, x1: f64, y1: f64) -> Vec<DVec2> {
    [(x0, y0), (x1, y0), (x1, y1), (x0, y1)].map(|(x, y)| DVec2::new(x, y)).to_vec()
}

/// A roof with a higher one beside it, plant, a beam, a stepped facade, and one unit of every make-up on its south edge, some
/// so near to each other that they pass their neighbors.
fn busy(preset: usize) -> Plan {
    let mut basis = presets().unwrap().remove(preset).basis;
    basis.rules.neighbors = NeighborRule::Any;
    if preset == 0 {
        let lean = |value: f64| Sourced::default_from(value, "this test");
        basis.cone.lean = Some(LeanLimits { inward_rad: lean(0.05), outward_rad: lean(0.15) });
    }
    let code = if preset == 0 { DesignCode::eurocode() } else { DesignCode::aisc() };
    let mut history = History::new(Plan::empty(basis, code));
    let mut change = |change: Change| history.change("build", &change).unwrap().made;
    change(Change::AddFamily(Box::new(heron())));
    change(Change::AddFamily(Box::new(tern())));
    let ThingId::Roof(roof) =
        change(Change::AddRoof { name: "Main".into(), level_m: 24.0, outline: rectangle(0.0, 0.0, 40.0, 18.0) })[0]
    else {
        panic!("a roof was made")
    };
    change(Change::AddRoof { name: "High".into(), level_m: 25.6, outline: rectangle(40.0, 0.0, 50.0, 18.0) });
    for (x, from_m, to_m) in [(9.0, 0.0, 1.0), (13.0, 2.2, 2.6)] {
        let outline = rectangle(x, 1.1, x + 1.5, 2.4);
        change(Change::AddObstacle(Obstacle { name: format!("Box {x}"), roof, outline, from_m, to_m }));
    }
    let edges: Vec<EdgeId> = history.plan().edges().map(|place| place.edge().id).collect();
    let profile =
        vec![FacadeStep { from_depth_m: 0.0, offset_m: 0.05 }, FacadeStep { from_depth_m: 9.0, offset_m: 0.25 }];
    let patch = EdgePatch { profile: Some(profile), ..EdgePatch::default() };
    history.change("facade", &Change::SetEdges(vec![edges[0]], patch)).unwrap();
    place_all(&mut history, edges[0], roof, if preset == 0 { 4 } else { 8 });
    Plan::clone(history.plan())
}

fn place_all(history: &mut History, edge: EdgeId, roof: RoofId, every: usize) {
    let families: Vec<_> = history.plan().families.iter().map(|(&id, family)| (id, Arc::clone(family))).collect();
    let make_ups: Vec<MakeUp> = families.iter().flat_map(|(id, family)| family.make_ups(*id)).step_by(every).collect();
    for (index, make_up) in make_ups.iter().enumerate() {
        let distance_m = 1.0 + 2.2 * index as f64;
        let station = Station { from: if index % 3 == 0 { EdgeEnd::End } else { EdgeEnd::Start }, distance_m };
        let turn_rad = if index % 4 == 3 { 0.2 } else { 0.0 };
        let stands = Standing::OnEdge { edge, station, setback_m: 0.6, turn_rad };
        history.change("place", &Change::Place { make_up: make_up.clone(), stands, tag: None }).unwrap();
    }
    let stands = Standing::Free { roof, at: DVec2::new(39.2, 9.0), outward_rad: 0.0, serves: vec![] };
    history.change("place", &Change::Place { make_up: make_ups[0].clone(), stands, tag: None }).unwrap();
}

/// The figure as the assessment shows it.
fn shown(plan: &Plan, assessment: &Assessment, figure: &FigureId) -> Option<f64> {
    let of = |id: &PlacementId| -> Option<&UnitAssessment> { assessment.units.get(id).map(AsRef::as_ref) };
    let of_facade = |key| assessment.facades.get(key).map(AsRef::as_ref);
    Some(match figure {
        FigureId::Reaction { unit, combination, component, sense } => {
            of(unit)?.reactions.as_ref()?.combinations[*combination].extreme(*component, *sense)?.value
        }
        FigureId::BraceForce { unit, combination, sense } => {
            let forces = of(unit)?.reactions.as_ref()?.combinations[*combination].brace_axial?;
            forces[usize::from(*sense == Sense::Min)].value
        }
        FigureId::FootReaction { unit, combination, component, sense } => {
            let foot = &of(unit)?.reactions.as_ref()?.combinations[*combination].foot;
            foot.iter().find(|found| found.component == *component && found.sense == *sense)?.value
        }
        FigureId::MemberUse { unit, row } => of(unit)?.reactions.as_ref()?.members[*row].utilization?,
        FigureId::JointUplift { unit, row } => of(unit)?.reactions.as_ref()?.joints[*row].uplift_n,
        FigureId::PlateAction { unit, row, component } | FigureId::PlateBalance { unit, row, component } => {
            state(of(unit)?, *row)?.action[Component::ALL.iter().position(|one| one == component)?]
        }
        FigureId::AnchorTension { unit, row, anchor } => *state(of(unit)?, *row)?.tension_n.get(*anchor)?,
        FigureId::SocketUse { unit, row } => of(unit)?.reactions.as_ref()?.socket[*row].utilization?,
        FigureId::Twist(unit) => of(unit)?.reactions.as_ref()?.twist_nm?,
        FigureId::TipDeflection(unit) => of(unit)?.reactions.as_ref()?.tip_deflection_m?,
        FigureId::CriticalFactor(unit) => of(unit)?.reactions.as_ref()?.alpha_cr?,
        FigureId::UseAtRating(unit) => of(unit)?.reactions.as_ref()?.at_rating.as_ref()?.utilization,
        FigureId::Clearance { unit, row } => of(unit)?.clearances[*row].clear_m,
        FigureId::StandOff { unit, facade } => served(of(unit)?, *facade)?.stand_off_m,
        FigureId::TopBelowTip { unit, facade } => served(of(unit)?, *facade)?.top_below_tip_m,
        FigureId::UnitCovers { unit, facade } => served(of(unit)?, *facade)?.area_m2,
        FigureId::HalfWidth { unit, facade, depth_m } => {
            let rules = &plan.basis.rules.reach;
            let z_m = served(of(unit)?, *facade)?.top_below_tip_m + depth_m;
            gantline_plan::assess::serving::sideways(rules).half_width_m(z_m)?
        }
        FigureId::Drop(unit) => measured(of(unit)?, Code::DropLength)?,
        FigureId::SettingOut { unit, from } => {
            let out = of(unit)?.setting_out?;
            match from {
                MeasuredFrom::Start => out.from_start_m,
                MeasuredFrom::End => out.to_end_m,
                MeasuredFrom::UnitBefore => out.before?.1,
                MeasuredFrom::UnitAfter => out.after?.1,
            }
        }
        FigureId::Guard(unit) => measured(of(unit)?, Code::GuardNearEdge)?,
        FigureId::FacadeHeight(key) => of_facade(key)?.facade.height_m(),
        FigureId::FacadeArea(key) => of_facade(key)?.area_m2,
        FigureId::FacadeCovered(key) => of_facade(key)?.covered_m2,
        FigureId::FacadeOpen(key) => of_facade(key)?.gaps.iter().map(|gap| gap.area_m2).sum(),
        FigureId::ConeNeeded => {
            let made = assessment.plan_checks.iter().find(|check| check.code == Code::LoadConeHoldsReach)?;
            made.limit.as_ref()?.amount.value
        }
    })
}

fn state(unit: &UnitAssessment, row: usize) -> Option<&PlateState> {
    unit.base.as_ref()?.uses.get(row)?.state.as_deref()
}

fn served(unit: &UnitAssessment, facade: EdgeId) -> Option<&gantline_plan::assess::Served> {
    unit.serves.iter().find(|served| served.facade == facade)
}

fn measured(unit: &UnitAssessment, code: Code) -> Option<f64> {
    unit.checks.iter().find(|check| check.code == code)?.measured.map(|amount| amount.value)
}

/// What a difference is measured against: figures near zero are differences of larger ones, and lengths, forces and moments
/// below a unit of theirs are not told apart.
fn size(trace: &Trace) -> f64 {
    let parts = trace.sums.iter().flat_map(|sum| &sum.terms).map(|term| term.amount.value.abs());
    parts.fold(trace.result.value.abs(), f64::max).max(if trace.result.kind == Kind::Share { 0.0 } else { 1.0 })
}

#[test]
fn every_figure_of_a_busy_plan_has_a_trace_that_comes_to_it() {
    let mut counted = std::collections::BTreeMap::<&str, usize>::new();
    let mut wrong = Vec::new();
    for preset in [0, 1] {
        let plan = busy(preset);
        let assessment = assess(&plan, &mut Memo::new());
        for figure in FigureId::all(&assessment) {
            let name = kind_of(&figure);
            match (shown(&plan, &assessment, &figure), explain_in(&plan, &assessment, &figure)) {
                (Some(figure_shown), Some(trace)) => {
                    *counted.entry(name).or_default() += 1;
                    let apart = (trace.result.value - figure_shown).abs();
                    // Sums of some ten terms and searches that end within rounding of the same extreme.
                    if apart > 1e-9 * size(&trace) {
                        wrong.push(format!("{figure:?}: {figure_shown} shown, {} traced", trace.result.value));
                    }
                    wrong.extend(unreadable(&figure, &trace));
                }
                (None, None) => {}
                (figure_shown, trace) => {
                    wrong.push(format!("{figure:?}: shown {figure_shown:?}, traced {}", trace.is_some()));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{} wrong\n{}", wrong.len(), wrong[..wrong.len().min(30)].join("\n"));
    for name in NAMES {
        assert!(counted.contains_key(name), "no {name} was looked at: {counted:?}");
    }
}

/// A trace is of use when it says what, how, from which source, and what its symbols are.
fn unreadable(figure: &FigureId, trace: &Trace) -> Option<String> {
    let told = !trace.title.is_empty() && !trace.formula.is_empty() && !trace.source.is_empty();
    let symbols = trace.symbols.iter().all(|symbol| !symbol.symbol.is_empty() && !symbol.says.is_empty());
    let sums = trace.sums.iter().all(|sum| {
        let parts: f64 = sum.terms.iter().map(|term| term.amount.value).sum();
        (parts - sum.amount.value).abs() <= 1e-12 * parts.abs().max(1.0)
    });
    (!(told && symbols && sums)).then(|| format!("{figure:?}: {trace:?}"))
}

const NAMES: [&str; 25] = [
    "PlateAction",
    "PlateBalance",
    "AnchorTension",
    "Reaction",
    "BraceForce",
    "FootReaction",
    "MemberUse",
    "JointUplift",
    "Twist",
    "TipDeflection",
    "CriticalFactor",
    "UseAtRating",
    "Clearance",
    "StandOff",
    "TopBelowTip",
    "HalfWidth",
    "Drop",
    "UnitCovers",
    "SettingOut",
    "Guard",
    "FacadeHeight",
    "FacadeArea",
    "FacadeCovered",
    "FacadeOpen",
    "ConeNeeded",
];

fn kind_of(figure: &FigureId) -> &'static str {
    let told = format!("{figure:?}");
    NAMES.into_iter().find(|name| told.split([' ', '(']).next() == Some(*name)).unwrap_or("unnamed")
}

/// A rope of 10 kN that hangs straight down 1.15 m out: the base is turned by T·a and the weights of arm and brace.
#[test]
fn a_reaction_can_be_followed_with_a_pocket_calculator() {
    let plan = busy(0);
    let assessment = assess(&plan, &mut Memo::new());
    let (&unit, found) =
        assessment.units.iter().find(|(_, unit)| unit.resolved.as_ref().is_ok_and(|u| u.brace.is_some())).unwrap();
    let figure = FigureId::Reaction { unit, combination: 0, component: Component::Fz, sense: Sense::Min };
    let trace = explain(&plan, &figure).unwrap();
    let parts = found.resolved.as_ref().unwrap();
    // Straight down is among the directions: Fz = −(15 kN + 1.35·9.80665·m), by hand.
    let by_hand = -(15e3 + 1.35 * 9.80665 * parts.portable_mass_kg());
    assert!((trace.result.value - by_hand).abs() < 1e-9 * by_hand.abs());
    assert_eq!(trace.formula, "Fz = Σ Fz");
    let says: Vec<&str> = trace.sums[0].terms.iter().map(|term| term.says.as_str()).collect();
    assert_eq!(says[..3], ["pull of the rope", "weight of the mast", "weight of the arm"]);
    let anchor = trace.symbols.iter().find(|symbol| symbol.symbol == "T_u").unwrap();
    assert_eq!(anchor.amount, Amount { kind: Kind::Force, value: 15e3 });
    assert_eq!(anchor.entered.as_deref(), Some("basis › cases › Anchor load, one person › anchor load"));
}

/// Pulls so light that the wall holds them: W = 4·V/h + 6·M/h², from the symbols themselves.
#[test]
fn a_mast_in_its_socket_is_traced_to_the_push_on_its_wall() {
    let mut history = History::new(busy(0));
    let mut basis = history.plan().basis.clone();
    basis.combinations.truncate(1);
    for case in basis.cases.values_mut() {
        if let CaseLoad::Rope { tension: Tension::Ultimate { anchor_load_n }, .. } = &mut case.load {
            anchor_load_n.value = 300.0;
        }
    }
    history.change("basis", &Change::SetBasis(Box::new(basis))).unwrap();
    let assessment = assess(history.plan(), &mut Memo::new());
    let figures = FigureId::all(&assessment).into_iter().filter(|f| matches!(f, FigureId::SocketUse { .. }));
    let traces: Vec<(f64, Trace)> = figures
        .filter_map(|figure| {
            let figure_shown = shown(history.plan(), &assessment, &figure)?;
            Some((figure_shown, explain_in(history.plan(), &assessment, &figure)?))
        })
        .collect();
    assert!(!traces.is_empty());
    for (figure_shown, trace) in traces {
        let of = |name: &str| trace.symbols.iter().find(|symbol| symbol.symbol == name).unwrap().amount.value;
        let push = 4.0 * of("V") / of("h") + 6.0 * of("M") / of("h").powi(2);
        assert!((of("W") - push).abs() < 1e-9 * push);
        assert_eq!(trace.result, Amount::share(figure_shown));
    }
}

#[test]
fn what_a_plan_does_not_have_has_no_trace() {
    let plan = busy(0);
    assert_eq!(explain(&plan, &FigureId::Drop(PlacementId::from_number(9999))), None);
    assert_eq!(explain(&plan, &FigureId::FacadeArea(EdgeId::from_number(9999))), None);
}
