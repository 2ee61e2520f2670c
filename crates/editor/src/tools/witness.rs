//! Small plans that tests of tools share: a rectangle of 30 by 20 m at 20 m, with a family, with and without units.

use std::collections::BTreeMap;
use std::sync::Arc;

use gantline_exchange::underlay::Lines;
use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::catalog::{Family, MakeUp};
use gantline_plan::change::{Change, apply};
use gantline_plan::document::{
    Attachment, AttachmentKind, ContentHash, EdgeId, FamilyId, Plan, Standing, Station, Underlay,
};
use glam::DVec2;

/// No drawing under the plan.
pub static NO_LINES: BTreeMap<ContentHash, Arc<Lines>> = BTreeMap::new();

/// A rectangle of 30 by 20 m from the origin, and the demonstration family Heron.
pub fn rectangle_plan() -> Plan {
    let basis = presets().unwrap().remove(0).basis;
    let family: Family = serde_json::from_str(include_str!("../../../../assets/families/heron.json")).unwrap();
    let outline = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)].map(|(x, y)| DVec2::new(x, y));
    let changes = Change::All(vec![
        Change::AddFamily(Box::new(family)),
        Change::AddRoof { name: String::new(), level_m: 20.0, outline: outline.to_vec() },
    ]);
    apply(&Plan::empty(basis, DesignCode::eurocode()), &changes).unwrap().plan
}

/// The edge from the origin along x; outside is south of it.
pub fn south_edge(plan: &Plan) -> EdgeId {
    plan.edges().find(|place| place.ring.ends(place.index).0 == DVec2::ZERO).unwrap().edge().id
}

/// The first make-up of the family.
pub fn make_up(plan: &Plan) -> MakeUp {
    let (&id, family): (&FamilyId, &Arc<Family>) = plan.families.iter().next().unwrap();
    family.make_ups(id).remove(0)
}

/// The rectangle with units on its south edge at these distances from the origin, 1.2 m behind it.
pub fn with_units(along_m: &[f64]) -> Plan {
    let plan = rectangle_plan();
    let edge = south_edge(&plan);
    let place = |&along_m: &f64| Change::Place {
        make_up: make_up(&plan),
        stands: Standing::OnEdge { edge, station: Station::nearest(along_m, 30.0), setback_m: 1.2, turn_rad: 0.0 },
        tag: None,
    };
    apply(&plan, &Change::All(along_m.iter().map(place).collect())).unwrap().plan
}

/// An underlay of nothing in particular.
pub fn underlay() -> Underlay {
    Underlay {
        name: "Fourth floor".to_owned(),
        attachment: ContentHash::of(b""),
        page: 1,
        roof: None,
        origin_m: DVec2::ZERO,
        m_per_unit: 0.02,
        turn_rad: 0.0,
        opacity: 0.5,
        locked: false,
        shown: true,
    }
}

/// The rectangle with an underlay.
pub fn with_underlay() -> Plan {
    let attachment = Attachment::new(AttachmentKind::Png, b"a scan".to_vec()).unwrap();
    apply(&rectangle_plan(), &Change::AddUnderlay { underlay: underlay(), attachment }).unwrap().plan
}
