//! Whether the basis' limits of lean hold for a unit: only where it stands square to the one facade it serves.

use std::borrow::{Borrow, Cow};

use super::assessment::{Assessment, Served, UnitAssessment};
use crate::basis::LoadBasis;
use crate::geometry::facade::Facade;
use crate::geometry::frame::Frame;

/// A unit turned by less stands square to its facade, rad (0.05°, as for collinear edges).
const SQUARE_RAD: f64 = 0.05 * std::f64::consts::PI / 180.0;

/// Whether a unit stands square to the one facade it serves.
pub fn is_square_to_one_facade<'a>(
    frame: &Frame,
    serves: &[impl Borrow<Served>],
    facades: impl IntoIterator<Item = &'a Facade>,
) -> bool {
    let [only] = serves else { return false };
    let facade = facades.into_iter().find(|facade| facade.key == only.borrow().facade);
    facade.is_some_and(|facade| frame.turn_from(facade.line).abs() < SQUARE_RAD)
}

/// The basis without its limits of lean.
pub fn any_lean(basis: &LoadBasis) -> LoadBasis {
    let mut basis = basis.clone();
    basis.cone.lean = None;
    basis
}

/// The basis as it holds for a unit: what its reactions were found with.
pub fn basis_for<'a>(basis: &'a LoadBasis, unit: &UnitAssessment, assessment: &Assessment) -> Cow<'a, LoadBasis> {
    let facades = || assessment.facades.values().map(|found| &found.facade);
    let keeps = unit.frame.is_some_and(|frame| is_square_to_one_facade(&frame, &unit.serves, facades()));
    if keeps || basis.cone.lean.is_none() { Cow::Borrowed(basis) } else { Cow::Owned(any_lean(basis)) }
}
