//! What is told of a drawing: what its layers hold, what was closed, joined, left out.

use std::fmt::Write as _;

use gantline_exchange::outline::{LineWork, Measure, Outlines, Role};
use gantline_plan::quantity::{UnitSystem, area, length, level};
use glam::DVec2;

/// So many things of a kind are told one by one.
const TOLD: usize = 20;

fn at(place: DVec2) -> String {
    format!("({}, {})", length(place.x, UnitSystem::Si), length(place.y, UnitSystem::Si))
}

/// What each layer holds.
pub fn layers_told(work: &LineWork) -> String {
    let mut text = match work.measure {
        Measure::Stated(unit) => format!("units: {}\n", unit.name()),
        Measure::NotStated => "units: not stated; say them with --units\n".to_owned(),
        Measure::Degrees { .. } => "units: degrees, made meters\n".to_owned(),
    };
    for said in &work.said {
        let _ = writeln!(text, "{said}");
    }
    for layer in &work.layers {
        let hidden = if layer.shown { "" } else { ", not shown in the drawing" };
        let _ = writeln!(
            text,
            "layer \"{}\": {} lines and curves, {} of them closed by themselves, {} other things{hidden}",
            layer.name, layer.traces, layer.closed, layer.others
        );
    }
    text
}

/// What was taken, closed, joined and left out.
pub fn taken_told(work: &LineWork, found: &Outlines, roles: &[Role], made_up_level_m: Option<f64>) -> String {
    let mut lines = work.said.clone();
    if let Some(plane) = found.plane {
        lines.push(format!("degrees became meters on the plane that touches WGS 84 at {plane}; the plan keeps it"));
    }
    if found.origin_m != DVec2::ZERO {
        lines.push(format!("the plan's origin is {} in the drawing's grid", at(found.origin_m)));
    }
    if let Some(level_m) = made_up_level_m {
        lines.push(format!("no level was given: roofs are at {}, to be set", level(level_m, UnitSystem::Si)));
    }
    let layer = |place: usize| work.layers.get(place).map_or("", |layer| layer.name.as_str());
    let loops = found.loops.iter().zip(roles).map(|(one, role)| {
        let corners = one.corners.len();
        format!(
            "{}: {}, {corners} corners, layer \"{}\"",
            role.name(),
            area(one.area_m2, UnitSystem::Si),
            layer(one.layer)
        )
    });
    listed(&mut lines, loops);
    let gaps = found.loops.iter().flat_map(|one| &one.gaps);
    listed(
        &mut lines,
        gaps.map(|gap| format!("closed: a gap of {} at {}", length(gap.width_m, UnitSystem::Si), at(gap.at))),
    );
    let joined: usize = found.loops.iter().map(|one| one.corners_joined).sum();
    let counts = [
        (joined, "corners nearer than a millimeter to the next were joined to it"),
        (found.doubled, "lines or outlines lay on equal ones and were counted once"),
        (found.curves, "curves became chords within the tolerance"),
    ];
    lines.extend(counts.iter().filter(|(count, _)| *count > 0).map(|(count, what)| format!("{count} {what}")));
    listed(
        &mut lines,
        found
            .faulty
            .iter()
            .map(|one| format!("refused, layer \"{}\": {}, at {}", layer(one.layer), one.why, at(one.place()))),
    );
    listed(
        &mut lines,
        found.meetings.iter().map(|meeting| format!("left out: an outline that meets another at {}", at(meeting.at))),
    );
    let open = found.open.iter().map(|run| {
        let why = if run.branches { "where three or more lines meet" } else { "at ends that nothing comes near" };
        let [from, to] = run.ends();
        format!("left out: a line that is not closed, from {} to {}, {why}", at(from), at(to))
    });
    listed(&mut lines, open);
    lines.extend(work.passed_over.iter().map(|(what, count)| format!("not looked at: {count} {what}")));
    lines.iter().fold(String::new(), |text, line| text + line + "\n")
}

/// The first of a kind one by one, then how many more there are.
fn listed(lines: &mut Vec<String>, mut all: impl Iterator<Item = String>) {
    let mut told: Vec<String> = all.by_ref().take(TOLD).collect();
    let more = all.count();
    if let Some(last) = told.last_mut().filter(|_| more > 0) {
        *last = format!("{last}; and {more} more like this");
    }
    lines.extend(told);
}
