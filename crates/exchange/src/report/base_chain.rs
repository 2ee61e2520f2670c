//! From the load to the verdict: for the look that governs, how what acts comes about, how anchors and pressure hold it, what
//! pulls the anchor that is pulled hardest. What the anchors resist stands in the record.

use gantline_plan::assess::Component;
use gantline_plan::assess::anchorage::{BaseUse, Fixed};
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
    let steps = [
        ("What acts on the plate, from the loads on the unit.", acts(given, id, row, used.of)),
        ("What anchors and pressure hold against it: the same figures come out.", held(given, id, row)),
        ("The anchor that is pulled hardest.", pulled(given, id, row, used)),
    ];
    let made = steps.into_iter().filter(|(_, told)| !told.is_empty());
    for (index, (words, told)) in made.enumerate() {
        blocks.push(paragraph(&format!("{}. {words}", index + 1)));
        blocks.extend(told);
    }
    blocks.push(paragraph("What resists it, and the use, stand below in the record of this look."));
    blocks
}

/// The six components, each added up from what acts on the unit; where the plate lies otherwise than the base, where they are
/// told.
fn acts(given: &Given<'_>, id: PlacementId, row: usize, of: Fixed) -> Vec<Block> {
    let order = [Component::Fz, Component::Mx, Component::My, Component::Fx, Component::Fy, Component::Mz];
    let figures = order.map(|component| FigureId::PlateAction { unit: id, row, component });
    let traces: Vec<Trace> = figures.iter().filter_map(|figure| given.explain(figure)).collect();
    let Some(first) = traces.first() else {
        return vec![paragraph(match of {
            Fixed::Foot => {
                "It is the force in the strut with what hangs on the foot, at the height of its eye or pin: the reactions at the foot \
                 tell how it comes about."
            }
            Fixed::Base => {
                "It is what comes to the base, in the axes and about the middle of the plate: the reactions at the base tell how that \
                 comes about."
            }
        })];
    };
    let sums = traces.iter().flat_map(|trace| traced::sums(trace, given.units));
    traced::symbols(&first.symbols, given.units).into_iter().chain(sums).collect()
}

/// Fz, Mx and My once more, from what anchors and pressure do.
fn held(given: &Given<'_>, id: PlacementId, row: usize) -> Vec<Block> {
    let figures = [Component::Fz, Component::Mx, Component::My].map(|component| FigureId::PlateBalance {
        unit: id,
        row,
        component,
    });
    let traces = figures.iter().filter_map(|figure| given.explain(figure));
    traces.flat_map(|trace| traced::sums(&trace, given.units)).collect()
}

fn pulled(given: &Given<'_>, id: PlacementId, row: usize, used: &BaseUse) -> Vec<Block> {
    let tensions = used.state.as_ref().map_or(&[][..], |state| &state.tension_n);
    let hardest = tensions.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1)).map(|(anchor, _)| anchor);
    let trace = hardest.and_then(|anchor| given.explain(&FigureId::AnchorTension { unit: id, row, anchor }));
    trace.iter().flat_map(|trace| traced::whole(trace, given.units)).collect()
}
