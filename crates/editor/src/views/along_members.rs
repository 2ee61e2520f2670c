//! Inner forces along mast, arm and brace, at the pull and slew that bring the chosen extreme of the base.

use std::sync::Arc;

use egui::{Color32, Id, RichText, Ui};
use egui_plot::{HLine, Line, LineStyle, Plot, PlotPoints};
use gantline_plan::assess::{
    Component, Cut, DiagramSlew, Diagrams, Member, MemberDiagram, NoDiagrams, Reactions, Sense, diagrams,
};
use gantline_plan::document::PlacementId;
use gantline_plan::quantity::{self, Kind};

use crate::sight::Sight;
use crate::theme::{Palette, type_scale};

type Found = Arc<Result<Diagrams, NoDiagrams>>;
type Kept = (Arc<Reactions>, Asked, Found);

/// What diagrams are asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// The unit.
    pub id: PlacementId,
    /// Index of the combination.
    pub combination: usize,
    /// The component whose extreme is looked at.
    pub component: Component,
    /// At which slew.
    pub slew: DiagramSlew,
}

/// A curve along a member: what it is, and where it is read.
type Read = (&'static str, fn(&Cut) -> f64);

/// A plot along a member: its heading, what is counted, its curves.
const PLOTS: [(&str, Kind, &[Read]); 4] = [
    ("N", Kind::Force, &[("pull positive", |cut| cut.axial_n)]),
    ("V", Kind::Force, &[("in the arm's plane", |cut| cut.shear_z_n), ("across", |cut| cut.shear_y_n)]),
    ("M", Kind::Moment, &[("in the arm's plane", |cut| cut.moment_y_nm), ("across", |cut| cut.moment_z_nm)]),
    ("T", Kind::Moment, &[("twist", |cut| cut.torsion_nm)]),
];

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, reactions: &Arc<Reactions>, asked: Asked) {
    let found = found(ui, sight, reactions, asked);
    let diagrams = match found.as_ref() {
        Ok(diagrams) => diagrams,
        Err(why) => {
            ui.label(RichText::new(why.to_string()).color(sight.look.palette.unchecked));
            return;
        }
    };
    ui.horizontal(|ui| {
        member(ui, diagrams);
        ui.add_space(10.0);
        key(ui, sight.look.palette);
        ui.add_space(10.0);
        let text = RichText::new(said(sight, diagrams, asked.component)).size(type_scale::SMALL);
        ui.add(egui::Label::new(text.color(sight.look.palette.ink_soft)).truncate());
    });
    let chosen = chosen_member(ui);
    let Some(shown) = diagrams.members.iter().find(|diagram| diagram.member == chosen) else { return };
    if shown.member == Member::Brace {
        brace(ui, sight, shown);
        return;
    }
    let size = egui::vec2(ui.available_width(), ui.available_height());
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 6.0;
        let width = (size.x - 18.0) / 4.0;
        for plotted in PLOTS {
            plot(ui, sight, shown, plotted, egui::vec2(width, size.y));
        }
    });
}

fn member_id() -> Id {
    Id::unique("charted member")
}

fn chosen_member(ui: &Ui) -> Member {
    ui.data(|data| data.get_temp(member_id())).unwrap_or(Member::Mast)
}

fn member(ui: &mut Ui, diagrams: &Diagrams) {
    let now = chosen_member(ui);
    for diagram in &diagrams.members {
        let button = egui::Button::selectable(diagram.member == now, diagram.member.word());
        if ui.add(button).clicked() {
            ui.data_mut(|data| data.insert_temp(member_id(), diagram.member));
        }
    }
}

/// What brings these forces, and what is not in them.
fn said(sight: &Sight<'_>, diagrams: &Diagrams, component: Component) -> String {
    let units = sight.look.units;
    let pulls: Vec<String> = diagrams.pulls_n.iter().map(|pull| quantity::force(pull.length(), units)).collect();
    let rope = if pulls.is_empty() { "no rope".to_owned() } else { format!("rope {}", pulls.join(" and ")) };
    let mut said = format!(
        "{} at largest {}: {rope}, slew {}, self-weight × {}",
        diagrams.level.name(),
        component.symbol(),
        quantity::angle(diagrams.slew_rad),
        diagrams.weight_factor
    );
    if diagrams.brace_is_out {
        said.push_str("; the brace carries nothing here");
    }
    for left_out in &diagrams.left_out {
        said.push_str("; without the ");
        said.push_str(left_out);
        said.push_str(" of this combination");
    }
    said
}

fn brace(ui: &mut Ui, sight: &Sight<'_>, diagram: &MemberDiagram) {
    for cut in &diagram.cuts {
        let text = format!("N {} all along the brace (pull positive)", quantity::force(cut.axial_n, sight.look.units));
        ui.label(RichText::new(text).color(sight.look.palette.ink));
    }
}

fn plot(
    ui: &mut Ui,
    sight: &Sight<'_>,
    shown: &MemberDiagram,
    (name, kind, reads): (&'static str, Kind, &'static [Read]),
    size: egui::Vec2,
) {
    let (units, palette) = (sight.look.units, sight.look.palette);
    let unit = kind.unit(units);
    let along = if shown.member == Member::Mast { "height" } else { "from the mast" };
    let length_unit = Kind::Length.column_unit(units);
    let plot = Plot::new(("along", shown.member.word(), name))
        .width(size.x)
        .height(size.y)
        .x_axis_label(format!("{along} {length_unit}"))
        .y_axis_label(format!("{name} {unit}"))
        .y_axis_min_width(46.0)
        .allow_scroll(false)
        .grid_color(palette.hairline)
        .include_y(0.0);
    // Nothing at all is drawn as a line at zero, and not as noise over the whole height.
    let is_nothing = shown.cuts.iter().all(|cut| reads.iter().all(|(_, read)| read(cut).abs() < NOTHING));
    let plot = if is_nothing { plot.include_y(1.0).include_y(-1.0) } else { plot };
    let response = plot
        .show(ui, |plot| {
            plot.hline(HLine::new("", 0.0).color(palette.ink_soft).width(1.0).allow_hover(false));
            for (index, (words, read)) in reads.iter().enumerate() {
                let value = |cut: &Cut| if is_nothing { 0.0 } else { kind.in_shown_unit(read(cut), units) };
                let point = |cut: &Cut| [Kind::Length.in_shown_unit(cut.at_m, units), value(cut)];
                let points: Vec<[f64; 2]> = shown.cuts.iter().map(point).collect();
                let (color, style) = looks(index, palette);
                plot.line(
                    Line::new(*words, PlotPoints::from(points)).color(color).style(style).width(1.8).allow_band(false),
                );
            }
        })
        .response;
    let spoken = spoken(shown, kind, reads, sight);
    response.widget_info(|| {
        let name = format!("Diagram of {name} along the {}", shown.member.word());
        let mut info = egui::WidgetInfo::labeled(egui::Role::Figure, true, name);
        info.current_text_value = Some(spoken.clone());
        info
    });
}

/// What a force in N or a moment in Nm must reach to be more than what is left of rounding.
const NOTHING: f64 = 0.1;

/// Which line is which in the plots that have two.
fn key(ui: &mut Ui, palette: &Palette) {
    let both = PLOTS.iter().map(|(_, _, reads)| *reads).find(|reads| reads.len() > 1).unwrap_or_default();
    for (index, (words, _)) in both.iter().enumerate() {
        let (rect, _) = ui.allocate_exact_size(egui::vec2(26.0, 16.0), egui::Sense::hover());
        let (color, style) = looks(index, palette);
        let ends = [rect.left_center(), rect.right_center()];
        match style {
            LineStyle::Dashed { length } => {
                let stroke = egui::Stroke::new(1.8, color);
                ui.painter().extend(egui::Shape::dashed_line(&ends, stroke, length, length * 0.6));
            }
            _ => drop(ui.painter().line_segment(ends, egui::Stroke::new(1.8, color))),
        }
        ui.label(RichText::new(*words).size(type_scale::SMALL));
    }
}

fn looks(index: usize, palette: &Palette) -> (Color32, LineStyle) {
    if index == 0 { (palette.load, LineStyle::Solid) } else { (palette.accent, LineStyle::Dashed { length: 7.0 }) }
}

/// The range of each curve as text, for readers.
fn spoken(shown: &MemberDiagram, kind: Kind, reads: &[Read], sight: &Sight<'_>) -> String {
    let number = |value: f64| quantity::number(kind, value, sight.look.units);
    let of_read = |(words, read): &Read| {
        let values = || shown.cuts.iter().map(read);
        match (values().reduce(f64::min), values().reduce(f64::max)) {
            (Some(least), Some(most)) => format!("{words}: {} to {}", number(least), number(most)),
            _ => format!("{words}: no figures"),
        }
    };
    reads.iter().map(of_read).collect::<Vec<_>>().join("; ")
}

fn found(ui: &Ui, sight: &Sight<'_>, reactions: &Arc<Reactions>, asked: Asked) -> Found {
    let at = Id::unique("diagrams along members");
    if let Some((of, known, found)) = ui.data(|data| data.get_temp::<Kept>(at))
        && Arc::ptr_eq(&of, reactions)
        && known == asked
    {
        return found;
    }
    let Asked { id, combination, component, slew } = asked;
    let wanted = (component, larger_side(reactions, combination, component));
    let found = Arc::new(diagrams(sight.plan, sight.assessment, id, combination, wanted, slew));
    ui.data_mut(|data| data.insert_temp::<Kept>(at, (Arc::clone(reactions), asked, Arc::clone(&found))));
    found
}

/// Of the largest and the smallest value the one with the larger magnitude.
fn larger_side(reactions: &Reactions, combination: usize, component: Component) -> Sense {
    let value = |sense| {
        let set = reactions.combinations.get(combination).and_then(|result| result.extreme(component, sense));
        set.map_or(0.0, |set| set.value.abs())
    };
    if value(Sense::Min) > value(Sense::Max) { Sense::Min } else { Sense::Max }
}
