//! Outlines of a drawing before they are taken: what each is taken for, what stays open, what is refused and where.

use gantline_drawing::mark::{Fill, Mark};
use gantline_drawing::pencil::Pencil;
use gantline_drawing::{Anchor, Drawing, Hatch, Layer, Pen, Scale, Stress, Text, TextStyle};
use gantline_exchange::outline::{Loop, Outlines, Role};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::polygons::{Polygon, triangulate};
use glam::DVec2;

/// What is drawn of an outline with a role: its ground and its line.
fn look(role: Role) -> (Option<Fill>, Pen) {
    match role {
        Role::Roof => (Some(Fill::Hatch(Hatch::Roof)), Pen::SlabEdge),
        Role::LowerRoof => (Some(Fill::Hatch(Hatch::BuildUp)), Pen::Outline),
        Role::Hole => (Some(Fill::Paper), Pen::Hidden),
        Role::Obstacle => (Some(Fill::Hatch(Hatch::Obstacle)), Pen::Outline),
        Role::LeaveOut => (None, Pen::Ghost),
    }
}

/// The drawing; `trouble` is where something can't be taken.
pub fn outline_sheet(
    found: &Outlines,
    roles: &[Role],
    selected: Option<usize>,
    trouble: Option<DVec2>,
    scale: Scale,
) -> Drawing {
    let mut marks = Vec::new();
    let mut pencil = Pencil::new(scale);
    for run in &found.open {
        pencil.line(Layer::Background, Pen::Background, run.corners.clone());
    }
    for (index, (one, role)) in found.loops.iter().zip(roles).enumerate() {
        let (fill, pen) = look(*role);
        let stress = if selected == Some(index) { Stress::Selected } else { Stress::Plain };
        if let Some(fill) = fill {
            // All grounds lie on one layer, the larger below the smaller.
            let polygon = Polygon::simple(one.corners.clone());
            marks.push(Mark::area(Layer::Ground, fill, Some(pen), polygon).stressed(stress));
        } else {
            marks.push(Mark::ring(Layer::Ground, pen, one.corners.clone()).stressed(stress));
        }
        name(&mut pencil, found, index, one, *role);
    }
    for gap in found.loops.iter().flat_map(|one| &one.gaps) {
        let ring = pencil.arc(gap.at, scale.m(1.6), 0.0, std::f64::consts::TAU);
        pencil.line(Layer::Conflict, Pen::Gap, ring);
    }
    for one in &found.faulty {
        pencil.ring(Layer::Conflict, Pen::Conflict, one.corners.clone());
        cross(&mut pencil, one.place());
    }
    for meeting in &found.meetings {
        cross(&mut pencil, meeting.at);
    }
    if let Some(at) = trouble {
        cross(&mut pencil, at);
    }
    marks.extend(pencil.done());
    Drawing::of(scale, marks)
}

/// The number and role of an outline, where there is room for it inside.
fn name(pencil: &mut Pencil, found: &Outlines, index: usize, one: &Loop, role: Role) {
    if role == Role::LeaveOut {
        return;
    }
    let words = format!("{} {}", index + 1, role.name());
    let text = |at| Text::new(words.clone(), at, Anchor::CENTER, TextStyle::Note, Pen::Lettering);
    let Some(bounds) = Bounds::of(one.corners.iter().copied()) else { return };
    if pencil.scale.m(text(DVec2::ZERO).width_mm()) > bounds.size_m().x {
        return;
    }
    let inside = found.loops.iter().filter(|other| other.inside == Some(index));
    let holes = inside.map(|other| other.corners.clone()).collect();
    let free = Polygon { outer: one.corners.clone(), holes };
    if let Some(at) = roomy_place(&free) {
        pencil.text_on_paper(Layer::Tag, text(at));
    }
}

/// Of the middle of all and of the middles of its triangles, the one farthest from every line.
fn roomy_place(polygon: &Polygon) -> Option<DVec2> {
    /// A ragged outline has so many triangles that looking at the largest is enough.
    const MOST_LOOKED_AT: usize = 64;
    let area = |[a, b, c]: &[DVec2; 3]| (*b - *a).perp_dot(*c - *a).abs();
    let mut triangles = triangulate(polygon);
    triangles.sort_by(|a, b| area(b).total_cmp(&area(a)));
    let weight: f64 = triangles.iter().map(area).sum();
    let middle_of = |[a, b, c]: &[DVec2; 3]| (*a + *b + *c) / 3.0;
    let middle = triangles.iter().map(|one| middle_of(one) * area(one)).sum::<DVec2>() / weight;
    let places = triangles.iter().take(MOST_LOOKED_AT).map(middle_of).chain(std::iter::once(middle));
    let with_room = places.filter(|at| polygon.contains(*at)).map(|at| (polygon.distance_to_border_m(at), at));
    with_room.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, at)| at)
}

fn cross(pencil: &mut Pencil, at: DVec2) {
    let arm = pencil.scale.m(2.2);
    for way in [DVec2::ONE, DVec2::new(1.0, -1.0)] {
        pencil.line(Layer::Conflict, Pen::Conflict, [at - way * arm, at + way * arm]);
    }
}
