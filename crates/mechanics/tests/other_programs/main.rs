//! Units and space frames held against values that general-purpose programs computed (`tests/reference`).

mod buckling;
mod envelopes;
mod given;
mod space_frames;
mod units;
