//! What units reach of the facade: regions that narrow toward the top, each about its unit.

use gantline_plan::assess::{Assessment, FacadeAssessment};
use gantline_plan::document::ThingId;
use glam::DVec2;

use super::options::ElevationOptions;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::{Fill, Mark, Stress};
use crate::pen::Pen;
use crate::pencil::Pencil;

/// Marks of the reach of all units on one facade; selected ones last and heavier.
pub(super) fn reach_regions(
    assessment: &Assessment,
    found: &FacadeAssessment,
    options: &ElevationOptions,
) -> Vec<Mark> {
    let mut order: Vec<(Stress, ThingId)> =
        found.served_by.iter().map(|&id| ThingId::Placement(id)).map(|thing| (options.stress(thing), thing)).collect();
    order.sort();
    let mut marks = Vec::new();
    for (stress, thing) in order {
        let ThingId::Placement(id) = thing else { continue };
        let Some(unit) = assessment.units.get(&id) else { continue };
        let mut pencil = Pencil::about(options.scale, thing, stress);
        let here = unit.serves.iter().filter(|served| served.facade == found.facade.key);
        for region in here.flat_map(|served| &served.regions) {
            let ring: Vec<DVec2> = region.iter().map(|corner| at_depth(found, *corner)).collect();
            pencil.area(Layer::Reach, Fill::Hatch(Hatch::Reach), Some(Pen::Reach), ring);
        }
        marks.extend(pencil.done());
    }
    marks
}

/// A corner given as place along the facade and depth below its top.
pub(super) fn at_depth(found: &FacadeAssessment, corner: DVec2) -> DVec2 {
    DVec2::new(corner.x, found.facade.top_level_m - corner.y)
}
