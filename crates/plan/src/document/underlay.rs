//! Underlay: the architect's drawing or a scan, lying under the plan. Nothing is computed from it.

use std::f64::consts::{PI, TAU};

use glam::DVec2;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{ContentHash, RoofId};

/// A page of an attachment, laid under the plan.
///
/// Its own coordinates run from the lower left corner of the page to the right and upward, in the unit of its kind: points of
/// 1/72 inch in a PDF, pixels in an image, the drawing's unit in a DXF (whose origin is the drawing's own).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Underlay {
    /// Its name.
    pub name: String,
    /// The attachment that it shows.
    pub attachment: ContentHash,
    /// Which page, from 1; images and drawings have one.
    pub page: u32,
    /// The roof on whose level it lies; none: it lies under every level.
    #[serde(default)]
    pub roof: Option<RoofId>,
    /// Where the origin of its own coordinates lies in the plan.
    #[schemars(with = "[f64; 2]")]
    pub origin_m: DVec2,
    /// How long one of its own units is in the plan.
    pub m_per_unit: f64,
    /// How far it is turned, counter-clockwise.
    pub turn_rad: f64,
    /// How much of what lies below it covers: 0 nothing, 1 all.
    pub opacity: f64,
    /// Whether it is kept from being moved, scaled, turned and removed.
    #[serde(default)]
    pub locked: bool,
    /// Whether it is shown.
    #[serde(default = "shown_unless_hidden")]
    pub shown: bool,
}

fn shown_unless_hidden() -> bool {
    true
}

impl Underlay {
    /// Whether it is seen while a roof's level is worked on; none: no level in particular.
    pub fn is_seen(&self, level: Option<RoofId>) -> bool {
        let on_level = self.roof.is_none_or(|roof| level.is_none_or(|level| level == roof));
        self.shown && self.opacity > 0.0 && on_level
    }

    /// A place of its own coordinates in the plan, m.
    pub fn in_plan(&self, at: DVec2) -> DVec2 {
        self.origin_m + DVec2::from_angle(self.turn_rad).rotate(at * self.m_per_unit)
    }

    /// A place of the plan, m, in its own coordinates.
    pub fn in_source(&self, at_m: DVec2) -> DVec2 {
        DVec2::from_angle(-self.turn_rad).rotate(at_m - self.origin_m) / self.m_per_unit
    }

    /// The same, scaled about a place of the plan that stays where it is.
    #[must_use]
    pub fn scaled(&self, about_m: DVec2, factor: f64) -> Self {
        let origin_m = about_m + (self.origin_m - about_m) * factor;
        Self { origin_m, m_per_unit: self.m_per_unit * factor, ..self.clone() }
    }

    /// The same, turned about a place of the plan that stays where it is.
    #[must_use]
    pub fn turned(&self, about_m: DVec2, by_rad: f64) -> Self {
        let origin_m = about_m + DVec2::from_angle(by_rad).rotate(self.origin_m - about_m);
        Self { origin_m, turn_rad: within_half_a_turn(self.turn_rad + by_rad), ..self.clone() }
    }
}

/// The same direction as an angle above −π and up to π.
fn within_half_a_turn(angle_rad: f64) -> f64 {
    let turned = angle_rad.rem_euclid(TAU);
    if turned > PI { turned - TAU } else { turned }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn underlay() -> Underlay {
        Underlay {
            name: "floor plan".into(),
            attachment: ContentHash::of(b"a"),
            page: 1,
            roof: None,
            origin_m: DVec2::new(3.0, -2.0),
            m_per_unit: 0.02,
            turn_rad: 0.4,
            opacity: 0.5,
            locked: false,
            shown: true,
        }
    }

    #[test]
    fn a_place_goes_into_the_plan_and_back() {
        let one = underlay();
        let at = DVec2::new(412.0, 95.5);
        assert!(one.in_source(one.in_plan(at)).distance(at) < 1e-9);
        // By hand: a quarter turn sends 100 units of 0.02 m to the right 2 m upward.
        let quarter = Underlay { turn_rad: PI / 2.0, ..one };
        assert!(quarter.in_plan(DVec2::new(100.0, 0.0)).distance(DVec2::new(3.0, 0.0)) < 1e-12);
    }

    #[test]
    fn it_is_seen_on_its_own_level_and_without_one_on_every() {
        let (own, other) = (RoofId::from_number(1), RoofId::from_number(2));
        let one = Underlay { roof: Some(own), ..underlay() };
        assert_eq!([None, Some(own), Some(other)].map(|level| one.is_seen(level)), [true, true, false]);
        assert!(underlay().is_seen(Some(other)));
        assert!(!Underlay { shown: false, ..underlay() }.is_seen(None));
    }

    #[test]
    fn what_it_is_scaled_or_turned_about_stays_where_it_is() {
        let one = underlay();
        let about_m = DVec2::new(10.0, 4.0);
        let in_source = one.in_source(about_m);
        let other = one.scaled(about_m, 2.5).turned(about_m, 1.2);
        assert!(other.in_plan(in_source).distance(about_m) < 1e-9);
        assert!((other.m_per_unit - 0.05).abs() < 1e-15);
        assert!((other.turn_rad - 1.6).abs() < 1e-12);
        assert!((one.turned(about_m, 3.0).turn_rad - (3.4 - TAU)).abs() < 1e-12);
    }
}
