//! How the tip hangs before a facade, and how far a technician reaches from there.

use super::entered::{of_basis, of_edge, of_roof};
use super::subject::{Subject, angle};
use super::trace::{Symbol, Trace};
use crate::assess::{Amount, Served};
use crate::geometry::facade::{Facade, FacadeKey};

fn served<'a>(subject: &'a Subject<'_>, key: FacadeKey) -> Option<(&'a Served, &'a Facade)> {
    let served = subject.result.serves.iter().find(|served| served.facade == key)?;
    Some((served, &subject.assessment.facades.get(&key)?.facade))
}

fn made(title: String, formula: &str, symbols: Vec<Symbol>, value_m: f64, source: &str) -> Trace {
    let result = Amount::length(value_m);
    Trace { title, formula: formula.to_owned(), symbols, sums: Vec::new(), result, source: source.to_owned() }
}

/// d = a − s − o where the arm points straight at the facade.
pub fn stand_off(subject: &Subject<'_>, key: FacadeKey) -> Option<Trace> {
    let (_, facade) = served(subject, key)?;
    let arm = &subject.unit.arm;
    let out_m = arm.points.first().map_or(arm.outreach_m, |point| point.out_m);
    let behind_m = facade.line.behind_m(subject.frame.at);
    let offset_m = facade.data.profile.first().map_or(0.0, |step| step.offset_m);
    let length = Amount::length;
    let symbols = vec![
        Symbol::entered("a", "from the mast axis to the rope", length(out_m), subject.of_arm("outreach")),
        Symbol::entered("s", "mast axis behind the outline", length(behind_m), subject.entered("setback")),
        Symbol::entered(
            "o",
            "facade outside the outline at its top",
            length(offset_m),
            of_edge(subject.plan, key, "facade offset"),
        ),
    ];
    let title = format!("Stand-off of unit {}", subject.tag);
    Some(made(
        title,
        "d = a − s − o",
        symbols,
        out_m - behind_m - offset_m,
        "geometry, arm pointing straight at the facade",
    ))
}

/// Level of the working line's point, with its symbols.
fn tip(subject: &Subject<'_>) -> (f64, Vec<Symbol>) {
    let (frame, unit) = (&subject.frame, subject.unit);
    let drop_m = unit.arm.points.first().map_or(0.0, |point| point.drop_m);
    let length = Amount::length;
    let level = of_roof(subject.plan, frame.roof, "level");
    let symbols = vec![
        Symbol::entered("z_roof", "level of the roof's slab", length(frame.level_m), level),
        Symbol::entered("H", "from the base to the arm's axis", length(unit.mast.height_m), subject.of_mast("height")),
        Symbol::entered("h_p", "rope's point below the arm's axis", length(drop_m), subject.of_arm("point")),
    ];
    (frame.level_m + unit.mast.height_m - drop_m, symbols)
}

fn top_symbol(subject: &Subject<'_>, facade: &Facade) -> Symbol {
    let entered = of_edge(subject.plan, facade.key, "parapet height");
    Symbol::entered(
        "z_top",
        "level of the facade's top: the highest coping along it",
        Amount::length(facade.top_level_m),
        entered,
    )
}

/// z₀ = z_roof + H − h_p − z_top.
pub fn top_below_tip(subject: &Subject<'_>, key: FacadeKey) -> Option<Trace> {
    let (_, facade) = served(subject, key)?;
    let (tip_m, mut symbols) = tip(subject);
    symbols.push(top_symbol(subject, facade));
    let title = format!("Top of the facade below the tip of unit {}", subject.tag);
    Some(made(title, "z₀ = z_roof + H − h_p − z_top", symbols, tip_m - facade.top_level_m, "levels"))
}

/// w = min(b + min(z·tan θ, q), l) at z = z₀ + d below the rope's last support; none above the least depth, where nothing is
/// reached.
pub fn half_width(subject: &Subject<'_>, key: FacadeKey, depth_m: f64) -> Option<Trace> {
    let (found, _) = served(subject, key)?;
    let rules = &subject.plan.basis.rules.reach;
    let length = Amount::length;
    let z_m = found.top_below_tip_m + depth_m;
    if z_m < rules.least_depth_m.value {
        return None;
    }
    let aside_m = (z_m.max(0.0) * rules.angle_rad.value.tan()).min(rules.swing_m.value);
    let free_m = rules.arm_m.value + aside_m;
    let mut symbols = vec![
        Symbol::computed("z₀", "top of the facade below the rope's last support", length(found.top_below_tip_m)),
        Symbol::computed("d", "depth below the facade's top", length(depth_m)),
        Symbol::computed("z", "depth of the harness below the rope's last support, z₀ + d", length(z_m)),
        Symbol::entered("b", "reach of an arm", length(rules.arm_m.value), of_basis("reach › arm")),
        Symbol::entered("θ", "angle of work to the side", angle(rules.angle_rad.value), of_basis("reach › angle")),
        Symbol::entered("q", "farthest swing to the side", length(rules.swing_m.value), of_basis("reach › swing")),
    ];
    let mut value_m = free_m;
    let mut formula = "w = b + min(z·tan θ, q)";
    if let Some(limit) = &rules.from_plumb_m {
        let entered = of_basis("reach › limit from the plumb line");
        symbols.push(Symbol::entered("l", "limit from the plumb line", length(limit.value), entered));
        value_m = free_m.min(limit.value);
        formula = "w = min(b + min(z·tan θ, q), l)";
    }
    let title = format!("Reach to each side of the ropes of unit {}", subject.tag);
    Some(made(title, formula, symbols, value_m, "geometry of a taut rope; limits of the basis"))
}

/// The longest of z_roof + H − h_p − z_foot over the facades served.
pub fn drop(subject: &Subject<'_>) -> Option<Trace> {
    let (tip_m, mut symbols) = tip(subject);
    let facades =
        subject.result.serves.iter().filter_map(|found| served(subject, found.facade).map(|(_, facade)| facade));
    let facade = facades.min_by(|a, b| a.foot_level_m.total_cmp(&b.foot_level_m))?;
    let entered = of_edge(subject.plan, facade.key, "facade ends at");
    let says = "level of the facade's foot, the lowest of those served";
    symbols.push(Symbol::entered("z_foot", says, Amount::length(facade.foot_level_m), entered));
    let title = format!("Longest drop of unit {}", subject.tag);
    Some(made(title, "L = z_roof + H − h_p − z_foot", symbols, tip_m - facade.foot_level_m, "levels"))
}
