//! One component of the base against slew: for each combination its largest and smallest value at every loaded slew.

use std::sync::Arc;

use egui::{Color32, Id, RichText, Ui};
use egui_plot::{HoverPosition, Line, LineStyle, Plot, PlotPoints, Span, VLine};
use gantline_plan::assess::{AgainstSlew, Component, Reactions, Sense, against_slew};
use gantline_plan::document::PlacementId;
use gantline_plan::quantity::Kind;

use crate::sight::Sight;
use crate::theme::{Palette, type_scale};

/// Curves with the reactions they belong to.
type Kept = (Arc<Reactions>, PlacementId, Arc<Vec<AgainstSlew>>);

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId, reactions: &Arc<Reactions>, component: Component) {
    let curves = curves(ui, sight, id, reactions);
    let kind = if component.is_moment() { Kind::Moment } else { Kind::Force };
    let (units, palette) = (sight.look.units, sight.look.palette);
    let unit = kind.unit(units);
    let height = ui.available_height();
    let plot = Plot::new(("against slew", component.symbol()))
        .height(height)
        .width((ui.available_width() - LEGEND).max(200.0))
        .x_axis_label(format!("slew {}", Kind::Angle.unit(units)))
        .y_axis_label(format!("{} {unit}", component.symbol()))
        .x_grid_spacer(egui_plot::uniform_grid_spacer(|_| [90.0, 30.0, 10.0]))
        .y_axis_min_width(52.0)
        .allow_scroll(false)
        .grid_color(palette.hairline)
        .label_formatter(move |at| match at {
            HoverPosition::NearDataPoint { plot_name, position, .. } => {
                let slew = gantline_plan::quantity::angle(position.x.to_radians());
                Some(format!("{plot_name}\nslew {slew}: {:.2} {unit}", position.y))
            }
            HoverPosition::Elsewhere { .. } => None,
        });
    let response = ui
        .horizontal_top(|ui| {
            let response = shown(ui, plot, sight, id, &curves, component);
            ui.vertical(|ui| legend(ui, &curves, palette));
            response
        })
        .inner;
    let spoken = spoken(&curves, component, sight);
    response.widget_info(|| {
        let name = format!("Chart of {} against slew", component.symbol());
        let mut info = egui::WidgetInfo::labeled(egui::Role::Figure, true, name);
        info.current_text_value = Some(spoken.clone());
        info
    });
}

/// Width of the legend beside the plot.
const LEGEND: f32 = 236.0;

fn shown(
    ui: &mut Ui,
    plot: Plot<'_>,
    sight: &Sight<'_>,
    id: PlacementId,
    curves: &[AgainstSlew],
    component: Component,
) -> egui::Response {
    let kind = if component.is_moment() { Kind::Moment } else { Kind::Force };
    let (units, palette) = (sight.look.units, sight.look.palette);
    plot.show(ui, |plot| {
        for turn in sight.assessment.units.get(&id).map(|unit| unit.serving.intervals()).unwrap_or_default() {
            let range = turn.from_rad.to_degrees()..=turn.to_rad.to_degrees();
            let fill = palette.reach.gamma_multiply(0.10);
            plot.span(Span::new("serves a facade", range).fill(fill).border_width(0.0));
        }
        for curve in curves {
            for sense in [Sense::Max, Sense::Min] {
                lines(plot, curve, component, sense, &|value| kind.in_shown_unit(value, units), palette);
            }
        }
        let drawn = sight.plan.placements.get(&id).map_or(0.0, |unit| unit.make_up.drawn_slew_rad);
        let stroke = VLine::new("drawn slew", drawn.to_degrees()).color(palette.ink_soft);
        plot.vline(stroke.style(LineStyle::dotted_dense()).allow_hover(false));
    })
    .response
}

/// Which line is which: color and dashes together.
fn legend(ui: &mut Ui, curves: &[AgainstSlew], palette: &Palette) {
    egui::ScrollArea::vertical().id_salt("legend").auto_shrink(false).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 1.0;
        ui.spacing_mut().interact_size.y = 16.0;
        for curve in curves.iter().filter(|curve| curve.stretches.is_ok()) {
            ui.horizontal(|ui| {
                let (rect, _) = ui.allocate_exact_size(egui::vec2(30.0, 16.0), egui::Sense::hover());
                let (color, style) = looks(curve.combination, palette);
                let ends = [rect.left_center(), rect.right_center()];
                let stroke = egui::Stroke::new(1.8, color);
                match style {
                    LineStyle::Solid => drop(ui.painter().line_segment(ends, stroke)),
                    LineStyle::Dashed { length } => {
                        ui.painter().extend(egui::Shape::dashed_line(&ends, stroke, length, length * 0.6));
                    }
                    LineStyle::Dotted { spacing } => {
                        ui.painter().extend(egui::Shape::dotted_line(&ends, color, spacing, 1.2));
                    }
                }
                let text = format!("{} · {}", curve.name, curve.level.name());
                ui.add(egui::Label::new(RichText::new(text).size(type_scale::SMALL)).truncate());
            });
        }
    });
}

fn lines(
    plot: &mut egui_plot::PlotUi<'_>,
    curve: &AgainstSlew,
    component: Component,
    sense: Sense,
    shown: &dyn Fn(f64) -> f64,
    palette: &Palette,
) {
    let Ok(stretches) = &curve.stretches else { return };
    let (color, style) = looks(curve.combination, palette);
    for (index, stretch) in stretches.iter().enumerate() {
        let points: Vec<[f64; 2]> = stretch
            .iter()
            .filter_map(|at| Some([at.slew_rad.to_degrees(), shown(at.value(component, sense)?)]))
            .collect();
        if points.is_empty() {
            continue;
        }
        let name = format!("{} · {}", curve.name, curve.level.name());
        let line = Line::new(name, PlotPoints::from(points)).color(color).style(style).width(1.6).allow_band(false);
        plot.line(line.id(Id::unique((curve.combination, sense.word(), index))));
    }
}

/// Colors and dashes go round at different lengths, so that twelve combinations are told apart without color alone.
fn looks(combination: usize, palette: &Palette) -> (Color32, LineStyle) {
    let colors = [palette.accent, palette.load, palette.clear, palette.gap];
    let styles = [LineStyle::Solid, LineStyle::Dashed { length: 8.0 }, LineStyle::Dotted { spacing: 5.0 }];
    (colors[combination % colors.len()], styles[combination % styles.len()])
}

/// The extremes of each combination as text, for readers.
fn spoken(curves: &[AgainstSlew], component: Component, sight: &Sight<'_>) -> String {
    let kind = if component.is_moment() { Kind::Moment } else { Kind::Force };
    let number = |value: f64| gantline_plan::quantity::number(kind, value, sight.look.units);
    let of_curve = |curve: &AgainstSlew| {
        let stretches = match &curve.stretches {
            Ok(stretches) => stretches,
            Err(why) => return format!("{}: {why}", curve.name),
        };
        let values = |sense| stretches.iter().flatten().filter_map(move |at| at.value(component, sense));
        let most = values(Sense::Max).reduce(f64::max).map(number);
        let least = values(Sense::Min).reduce(f64::min).map(number);
        match (least, most) {
            (Some(least), Some(most)) => format!("{}: {least} to {most}", curve.name),
            (None, Some(most)) => format!("{}: up to {most}", curve.name),
            _ => format!("{}: no figures", curve.name),
        }
    };
    curves.iter().map(of_curve).collect::<Vec<_>>().join("; ")
}

/// The curves, computed once for each set of reactions: they don't hang on where the unit stands.
fn curves(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId, reactions: &Arc<Reactions>) -> Arc<Vec<AgainstSlew>> {
    let at = Id::unique("curves against slew");
    if let Some((of, unit, curves)) = ui.data(|data| data.get_temp::<Kept>(at))
        && Arc::ptr_eq(&of, reactions)
        && unit == id
    {
        missing(ui, sight, &curves);
        return curves;
    }
    let curves = Arc::new(against_slew(sight.plan, sight.assessment, id));
    ui.data_mut(|data| data.insert_temp::<Kept>(at, (Arc::clone(reactions), id, Arc::clone(&curves))));
    missing(ui, sight, &curves);
    curves
}

/// Combinations without a curve are named: nothing is left away in silence.
fn missing(ui: &mut Ui, sight: &Sight<'_>, curves: &[AgainstSlew]) {
    let gone = curves.iter().filter_map(|curve| curve.stretches.as_ref().err().map(|why| (curve, why)));
    let words: Vec<String> = gone.map(|(curve, why)| format!("{}: {why}", curve.name)).collect();
    if !words.is_empty() {
        let text = format!("Not shown – {}", words.join("; "));
        let text = RichText::new(text).size(type_scale::SMALL).color(sight.look.palette.unchecked);
        ui.add(egui::Label::new(text).truncate());
    }
}
