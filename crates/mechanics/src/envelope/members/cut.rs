//! Inner forces at a cut as an observed answer, and the cuts of a part that are looked at.

use super::asked::Mark;
use crate::envelope::observed::Observed;
use crate::member::At;
use crate::unit::{Column, Influence, Part, Side, Station, UnitModel};

/// Cuts between the places where something happens, per stretch. There inner forces curve under weight and wind alone:
/// a moment between two cuts `s` apart exceeds the larger of theirs by at most w·s²/8, w the load per meter.
const BETWEEN: usize = 1;

/// Inner forces N, V_y, V_z, T, M_y, M_z at a cut.
pub(super) struct Cut(pub Station);

impl Observed<6> for Cut {
    fn of(&self, at: &Influence<'_>, load: &Column) -> [f64; 6] {
        at.section(self.0, load).six()
    }
}

/// The cuts of a part with what weakens them: those of the model, and both sides of every mark's ends.
pub(super) fn cuts(model: &UnitModel, part: Part, marks: &[Mark]) -> Vec<(Station, At)> {
    let mut stations: Vec<Station> = model.stations(BETWEEN).into_iter().filter(|s| s.part == part).collect();
    if part != Part::Brace {
        let (least, most) =
            stations.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), s| (a.min(s.at_m), b.max(s.at_m)));
        for at_m in marks.iter().flat_map(|m| [m.from_m, m.to_m]) {
            if at_m > least && at_m < most {
                stations.extend([Side::Before, Side::After].map(|side| Station { part, at_m, side }));
            }
        }
    }
    stations.into_iter().map(|station| (station, weakness(station, marks))).collect()
}

/// What weakens a cut. A weld and a hole at one place act together; the brace's axial force is the same all along it.
fn weakness(station: Station, marks: &[Mark]) -> At {
    let here = |m: &&Mark| station.part == Part::Brace || (m.from_m..=m.to_m).contains(&station.at_m);
    let (welded, drilled) =
        marks.iter().filter(here).fold((false, false), |(w, d), m| (w || m.at.is_welded(), d || m.at.is_drilled()));
    match (welded, drilled) {
        (false, false) => At::Plain,
        (true, false) => At::Weld,
        (false, true) => At::PinHole,
        (true, true) => At::WeldedPinHole,
    }
}
