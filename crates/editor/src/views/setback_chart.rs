//! How near can it stand? The share of resistance that the base uses against its setback, with the setbacks that hold.

use std::sync::Arc;

use egui::{Id, RichText, Ui, vec2};
use egui_plot::{HLine, HoverPosition, Line, LineStyle, Plot, PlotPoints, Span, VLine};
use gantline_plan::assess::anchorage::{UseBySetback, use_by_setback};
use gantline_plan::document::{PlacementId, Plan};
use gantline_plan::quantity::{self, Kind, UnitSystem};

use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::Icon;
use crate::widgets::icon::inline;

type Found = Arc<Result<UseBySetback, String>>;
/// The curve with the plan that it was found for: a plan is never changed in place.
type Kept = (Arc<Plan>, PlacementId, Found);

/// Width of what is said beside the plot.
const SAID: f32 = 250.0;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId) {
    let palette = sight.look.palette;
    let Some((found, is_of_now)) = found(ui, sight, id) else {
        ui.label(RichText::new("Let go of it to see how near it can stand.").color(palette.ink_soft));
        return;
    };
    let by_setback = match found.as_ref() {
        Ok(by_setback) => by_setback,
        Err(why) => {
            let words = format!("No curve: {why}. A unit that stands on an edge and has all its parts has one.");
            ui.label(RichText::new(words).color(palette.unchecked));
            return;
        }
    };
    let said = sentences(by_setback, sight.look.units);
    ui.horizontal_top(|ui| {
        if !is_of_now {
            ui.multiply_opacity(0.45);
        }
        let size = vec2((ui.available_width() - SAID).max(200.0), ui.available_height());
        let response = plot(ui, sight, by_setback, size);
        let spoken = said.join(" ");
        response.widget_info(|| {
            let mut info = egui::WidgetInfo::labeled(egui::Role::Figure, true, "Chart of the base against setback");
            info.current_text_value = Some(spoken.clone());
            info
        });
        ui.vertical(|ui| {
            let scroll = egui::ScrollArea::vertical().id_salt("how near").auto_shrink(false);
            scroll.show(ui, |ui| beside(ui, sight, &said, by_setback, is_of_now));
        });
    });
}

/// The curve of the plan as it is, or while something moves that of before, and which of the two it is.
fn found(ui: &Ui, sight: &Sight<'_>, id: PlacementId) -> Option<(Found, bool)> {
    let at = Id::unique("use by setback");
    let kept = ui.data(|data| data.get_temp::<Kept>(at)).filter(|(_, of, _)| *of == id);
    if let Some((plan, _, found)) = &kept
        && Arc::ptr_eq(plan, sight.plan)
    {
        return Some((Arc::clone(found), true));
    }
    if !sight.at_rest {
        return kept.map(|(_, _, found)| (found, false));
    }
    let found: Found = Arc::new(use_by_setback(sight.plan, sight.assessment, id));
    ui.data_mut(|data| data.insert_temp::<Kept>(at, (Arc::clone(sight.plan), id, Arc::clone(&found))));
    Some((found, true))
}

fn plot(ui: &mut Ui, sight: &Sight<'_>, by_setback: &UseBySetback, size: egui::Vec2) -> egui::Response {
    let (units, palette) = (sight.look.units, sight.look.palette);
    let shown = |setback_m: f64| Kind::Length.in_shown_unit(setback_m, units);
    let percent = |share: f64| Kind::Share.in_shown_unit(share, units);
    let length_unit = Kind::Length.column_unit(units);
    let far = by_setback.points.last().map_or(1.0, |(setback, _)| *setback);
    let finite = by_setback.points.iter().filter_map(|(_, share)| *share).filter(|share| share.is_finite());
    // Right at the edge shares have no bound: what is far over the limit lies above the plot.
    let most = finite.fold(0.0, f64::max).clamp(1.25, 2.0);
    let mut points: Vec<Vec<[f64; 2]>> = vec![Vec::new()];
    for &(setback, share) in &by_setback.points {
        match (share.filter(|share| share.is_finite()), points.last_mut()) {
            (Some(share), Some(stretch)) => stretch.push([shown(setback), percent(share)]),
            _ => points.push(Vec::new()),
        }
    }
    Plot::new("use by setback")
        .width(size.x)
        .height(size.y)
        .x_axis_label(format!("setback {length_unit}"))
        .y_axis_label(format!("used {}", Kind::Share.unit(units)))
        .y_grid_spacer(egui_plot::uniform_grid_spacer(|_| [100.0, 50.0, 25.0]))
        .y_axis_min_width(46.0)
        .allow_scroll(false)
        .allow_drag(false)
        .allow_zoom(false)
        .auto_bounds(false)
        .default_x_bounds(0.0, shown(far))
        .default_y_bounds(0.0, percent(most))
        .grid_color(palette.hairline)
        .label_formatter(move |at| match at {
            HoverPosition::NearDataPoint { position, .. } => {
                let setback = Kind::Length.in_shown_unit(1.0, units);
                let setback = quantity::length(position.x / setback, units);
                let share = quantity::share(position.y / Kind::Share.in_shown_unit(1.0, units));
                Some(format!("setback {setback}: {share}"))
            }
            HoverPosition::Elsewhere { .. } => None,
        })
        .show(ui, |plot| {
            for stretch in by_setback.holds.iter() {
                let range = shown(stretch.from_m)..=shown(stretch.to_m);
                let fill = palette.meets.gamma_multiply(0.14);
                plot.span(Span::new("holds", range).fill(fill).border_color(palette.meets).border_width(1.0));
            }
            plot.hline(HLine::new("limit", percent(1.0)).color(palette.ink).width(1.2).allow_hover(false));
            for (index, stretch) in points.into_iter().filter(|stretch| !stretch.is_empty()).enumerate() {
                let line =
                    Line::new("used", PlotPoints::from(stretch)).color(palette.load).width(1.8).allow_band(false);
                plot.line(line.id(Id::unique(("used", index))));
            }
            let now = VLine::new("stands here", shown(by_setback.now_m)).color(palette.ink_soft);
            plot.vline(now.style(LineStyle::Dashed { length: 6.0 }).width(1.4).allow_hover(false));
        })
        .response
}

/// What the chart says, in words.
fn sentences(by_setback: &UseBySetback, units: UnitSystem) -> Vec<String> {
    let length = |meters: f64| quantity::length(meters, units);
    let far = by_setback.points.last().map_or(0.0, |(setback, _)| *setback);
    let mut said = vec![format!("Stands at {}.", length(by_setback.now_m))];
    if by_setback.holds.is_empty() {
        said.push(format!("Nowhere up to {} does it hold.", length(far)));
        return said;
    }
    for (index, stretch) in by_setback.holds.iter().enumerate() {
        let lead = if index == 0 { "Holds" } else { "Holds again" };
        said.push(if stretch.to_m >= far - 1e-9 {
            format!("{lead} from {}.", length(stretch.from_m))
        } else {
            format!("{lead} from {} to {}.", length(stretch.from_m), length(stretch.to_m))
        });
    }
    said.push(format!("Looked at up to {}.", length(far)));
    said
}

fn beside(ui: &mut Ui, sight: &Sight<'_>, said: &[String], by_setback: &UseBySetback, is_of_now: bool) {
    let palette = sight.look.palette;
    ui.spacing_mut().item_spacing.y = 3.0;
    let small = |words: String| RichText::new(words).size(type_scale::SMALL);
    ui.label(RichText::new("How near can it stand?").family(type_scale::semibold()));
    for sentence in said {
        ui.label(RichText::new(sentence).color(palette.ink));
    }
    if !is_of_now {
        ui.label(small("From before: let go of it to see it anew.".to_owned()).color(palette.ink_soft));
    }
    if !by_setback.not_checked.is_empty() {
        ui.horizontal_top(|ui| {
            inline(ui, Icon::Unchecked, palette.unchecked);
            let words = format!("Not a pass, since not checked: {}", by_setback.not_checked.join("; "));
            ui.add(egui::Label::new(small(words).color(palette.unchecked)).wrap());
        });
    }
    let key = "Line: largest share used; shaded: it holds; dashed: where it stands. All else stays as it is.";
    ui.label(small(key.to_owned()).color(palette.ink_soft));
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_plan::geometry::spans::Spans;

    fn found(holds: &[(f64, f64)]) -> UseBySetback {
        let points = vec![(0.2, Some(1.4)), (1.5, Some(0.6))];
        UseBySetback { now_m: 0.7, points, holds: Spans::of(holds.iter().copied()), not_checked: Vec::new() }
    }

    #[test]
    fn setbacks_that_hold_are_told_from_and_to() {
        let said = |holds: &[(f64, f64)]| sentences(&found(holds), UnitSystem::Si);
        assert_eq!(said(&[(0.412, 1.5)])[1], "Holds from 0.412 m.");
        assert_eq!(
            said(&[(0.3, 0.5), (0.8, 1.5)])[1..3],
            ["Holds from 0.300 m to 0.500 m.", "Holds again from 0.800 m."]
        );
        assert_eq!(said(&[])[1], "Nowhere up to 1.500 m does it hold.");
    }
}
