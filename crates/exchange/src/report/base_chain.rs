//! From the load to the verdict: for the look that governs, how what acts comes about, how anchors and pressure hold it, what
//! pulls the anchor that is pulled hardest. What the anchors resist stands in the record.

use gantline_plan::assess::Component;
use gantline_plan::assess::anchorage::BaseUse;
use gantline_plan::document::PlacementId;
use gantline_plan::explain::{FigureId, Trace};

use super::blocks::{paragraph, part};
use super::given::Given;
use super::traced;
use crate::paper::Block;

/// The part of the section; nothing where nothing governs.
pub fn blocks(given: &Given<'_>, id: PlacementId, uses: &[(usize, &BaseUse)]) -> Vec<Block> {
    let with_state = uses.iter().filter(|(_, used)| used.share().is_some() && used.state.is_some());
    let worst = with_state.reduce(|worst, next| if next.1.share() > worst.1.share() { next } else { worst });
    let Some(&(row, used)) = worst else { return Vec::new() };
    let mut blocks = vec![part(&format!("From load to use: {}", used.look.words()))];
    let acting: Vec<Trace> = [Component::Fz, Component::Mx, Component::My, Component::Fx, Component::Fy, Component::Mz]
        .into_iter()
        .filter_map(|component| given.explain(&FigureId::PlateAction { unit: id, row, component }))
        .collect();
    if let Some(first) = acting.first() {
        blocks.push(paragraph("1. What acts, from the loads on the unit."));
        blocks.extend(traced::symbols(&first.symbols, given.units));
        blocks.extend(acting.iter().flat_map(|trace| traced::sums(trace, given.units)));
    }
    let held: Vec<Trace> = [Component::Fz, Component::Mx, Component::My]
        .into_iter()
        .filter_map(|component| given.explain(&FigureId::PlateBalance { unit: id, row, component }))
        .collect();
    if !held.is_empty() {
        blocks.push(paragraph("2. What anchors and pressure hold against it: the same figures come out."));
        blocks.extend(held.iter().flat_map(|trace| traced::sums(trace, given.units)));
    }
    let tensions = used.state.as_ref().map_or(&[][..], |state| &state.tension_n);
    let hardest = tensions.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1)).map(|(anchor, _)| anchor);
    let pulled = hardest.and_then(|anchor| given.explain(&FigureId::AnchorTension { unit: id, row, anchor }));
    if let Some(trace) = pulled {
        blocks.push(paragraph("3. The anchor that is pulled hardest."));
        blocks.extend(traced::whole(&trace, given.units));
    }
    blocks.push(paragraph("What resists it, and the use, stand below in the record of this look."));
    blocks
}
