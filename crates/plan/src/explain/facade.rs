//! Areas of a facade: whole, covered, open; as sums of trapezoids that do not overlap.

use glam::DVec2;

use super::entered::of_edge;
use super::subject::{Subject, area as square};
use super::trace::{Sum, Symbol, Term, Trace};
use crate::assess::reach::Reach;
use crate::assess::serving::serves;
use crate::assess::surroundings::Surroundings;
use crate::assess::{Amount, Assessment, FacadeAssessment};
use crate::document::{PlacementId, Plan};
use crate::geometry::facade::FacadeKey;
use crate::geometry::rings::{segments, signed_area_m2};
use crate::geometry::strips::{Cover, Face, Strip};
use crate::quantity::Kind;

fn found(assessment: &Assessment, key: FacadeKey) -> Option<&FacadeAssessment> {
    assessment.facades.get(&key).map(AsRef::as_ref)
}

fn levels(plan: &Plan, found: &FacadeAssessment) -> Vec<Symbol> {
    let (facade, key) = (&found.facade, found.facade.key);
    let length = Amount::length;
    let top = of_edge(plan, key, "parapet height");
    let foot = of_edge(plan, key, "facade ends at");
    vec![
        Symbol::entered("z_top", "level of the highest coping along it", length(facade.top_level_m), top),
        Symbol::entered("z_foot", "level of its foot", length(facade.foot_level_m), foot),
    ]
}

/// h = z_top − z_foot, zero when the foot is not below the top.
pub fn height(plan: &Plan, assessment: &Assessment, key: FacadeKey) -> Option<Trace> {
    let found = found(assessment, key)?;
    let value = (found.facade.top_level_m - found.facade.foot_level_m).max(0.0);
    Some(Trace {
        title: format!("Height of the facade below {key}"),
        formula: "h = max(z_top − z_foot, 0)".to_owned(),
        symbols: levels(plan, found),
        sums: Vec::new(),
        result: Amount::length(value),
        source: "levels".to_owned(),
    })
}

/// A = L·h.
pub fn area(plan: &Plan, assessment: &Assessment, key: FacadeKey) -> Option<Trace> {
    let found = found(assessment, key)?;
    let length_m = found.facade.line.length_m;
    let mut symbols = levels(plan, found);
    let corners = of_edge(plan, key, "corners");
    symbols.push(Symbol::entered("L", "length of the facade", Amount::length(length_m), corners));
    let value = length_m * (found.facade.top_level_m - found.facade.foot_level_m).max(0.0);
    Some(Trace {
        title: format!("Area of the facade below {key}"),
        formula: "A = L·(z_top − z_foot)".to_owned(),
        symbols,
        sums: Vec::new(),
        result: square(value),
        source: "area of a rectangle".to_owned(),
    })
}

/// A = Σ ½·(b_top + b_bottom)·h over trapezoids of what one unit reaches.
pub fn unit_covers(subject: &Subject<'_>, key: FacadeKey) -> Option<Trace> {
    let found = found(subject.assessment, key)?;
    let title = format!("Area of the facade below {key} covered by unit {}", subject.tag);
    Some(trapezoids(title, found, &[reach_of(subject, key)?]))
}

/// The same for all units together.
pub fn covered(plan: &Plan, assessment: &Assessment, key: FacadeKey) -> Option<Trace> {
    let found = found(assessment, key)?;
    let of_unit = |id: &PlacementId| reach_of(&Subject::of(plan, assessment, *id)?, key);
    let reaches: Vec<Reach> = found.served_by.iter().filter_map(of_unit).collect();
    Some(trapezoids(format!("Covered area of the facade below {key}"), found, &reaches))
}

fn reach_of(subject: &Subject<'_>, key: FacadeKey) -> Option<Reach> {
    let surroundings = Surroundings::of(subject.plan);
    let rules = &subject.plan.basis.rules;
    let served = serves(subject.unit, &subject.frame, &subject.result.loaded, &surroundings, rules);
    served.into_iter().find(|one| one.served.facade == key).map(|one| one.reach)
}

fn trapezoids(title: String, found: &FacadeAssessment, reaches: &[Reach]) -> Trace {
    let face = Face { length_m: found.facade.line.length_m, height_m: found.facade.height_m() };
    let strips: Vec<Strip> = reaches.iter().flat_map(Reach::strips).collect();
    let terms = Cover::of(&strips, face).covered.iter().map(trapezoid).collect();
    let sum = Sum::of("A", "½·(b_top + b_bottom)·h", Kind::Area, terms);
    Trace {
        title,
        formula: "A = Σ ½·(b_top + b_bottom)·h of trapezoids that do not overlap".to_owned(),
        symbols: Vec::new(),
        result: sum.amount,
        sums: vec![sum],
        source: "area of a trapezoid; the reach is bounded by straight lines".to_owned(),
    }
}

fn trapezoid(strip: &Strip) -> Term {
    let top_m = strip.right_top_m - strip.left_top_m;
    let bottom_m = strip.right_bottom_m - strip.left_bottom_m;
    let height_m = strip.bottom_m - strip.top_m;
    let length = Amount::length;
    Term {
        says: format!("from {:.3} m to {:.3} m below the top", strip.top_m, strip.bottom_m),
        symbols: vec![
            Symbol::computed("b_top", "width at the top", length(top_m)),
            Symbol::computed("b_bottom", "width at the bottom", length(bottom_m)),
            Symbol::computed("h", "height", length(height_m)),
        ],
        amount: square(0.5 * (top_m + bottom_m) * height_m),
    }
}

/// A = Σ of the gaps' areas, each ½·|Σ (x_i·y_(i+1) − x_(i+1)·y_i)| less its islands.
pub fn open(assessment: &Assessment, key: FacadeKey) -> Option<Trace> {
    let found = found(assessment, key)?;
    let terms = found.gaps.iter().enumerate().map(|(index, gap)| {
        let islands: f64 = gap.holes.iter().map(|hole| signed_area_m2(hole).abs()).sum();
        Term {
            says: format!("gap {}, {} corners", index + 1, segments(&gap.outline).len()),
            symbols: corners(&gap.outline),
            amount: square(signed_area_m2(&gap.outline).abs() - islands),
        }
    });
    let sum = Sum::of("A", "½·|Σ (x_i·y_(i+1) − x_(i+1)·y_i)| − islands", Kind::Area, terms.collect());
    Some(Trace {
        title: format!("Area of the facade below {key} that no unit reaches"),
        formula: "A = Σ areas of the gaps".to_owned(),
        symbols: Vec::new(),
        result: sum.amount,
        sums: vec![sum],
        source: "area of a polygon from its corners".to_owned(),
    })
}

fn corners(outline: &[DVec2]) -> Vec<Symbol> {
    let corner = |(index, p): (usize, &DVec2)| {
        let symbol =
            |axis: &str, says, value| Symbol::computed(&format!("{axis}_{}", index + 1), says, Amount::length(value));
        [symbol("x", "along the facade", p.x), symbol("y", "below its top", p.y)]
    };
    outline.iter().enumerate().flat_map(corner).collect()
}
