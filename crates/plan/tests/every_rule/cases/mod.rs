//! The table, by what the rules are about.

pub mod base_holds;
mod bases;
mod combinations;
mod declared;
mod facade;
mod members;
mod of_plan;
mod parts;
mod people;
mod place;
mod retention;
mod zones;

use crate::case::Case;

/// All cases.
pub fn all() -> Vec<Case> {
    let mut all = parts::cases();
    all.extend(place::cases());
    all.extend(bases::cases());
    all.extend(base_holds::cases());
    all.extend(zones::cases());
    all.extend(people::cases());
    all.extend(facade::cases());
    all.extend(of_plan::cases());
    all.extend(combinations::cases());
    all.extend(members::cases());
    all.extend(declared::cases());
    all.extend(retention::cases());
    all
}
