//! The largest utilization of mast, arm and brace over every rope direction, slew and state that may act.
//!
//! A utilization is a function u of the six inner forces at a cut, and these are linear in the loads. The search
//! climbs: at given forces it takes the gradient w of u, goes to the state in which w·(inner forces) is greatest, in
//! closed form by the envelopes' own support functions, and repeats. As u is convex but for small print in the codes,
//! no step goes down and each climb ends on a peak; many starts, at the extremes of every single force and of their
//! combinations, find the highest. Every utilization grows with the size of each force, so u of the largest forces at a
//! cut, though they don't act at once, is an upper bound; cuts whose bound lies below what is found are left out.
//!
//! Buckling is judged by the largest compression and moments along a part in one and the same state.

mod asked;
mod climb;
mod climbed;
mod cut;
mod cut_hill;
mod part_at_slew;
mod search;
mod second_order;
mod span_hill;

pub use asked::{Mark, MemberAbove, MemberEnvelope, MemberPart, MemberUse};
pub use search::{member_above, member_envelope};
pub use second_order::{SecondOrder, TooSoft};

#[cfg(test)]
mod dense;
