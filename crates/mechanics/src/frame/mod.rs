//! A linear space frame by direct stiffness: Euler–Bernoulli members, pin-ended bars, springs.
//!
//! Idealization: no shear flexibility, small displacements, linear elastic. Degrees of freedom of a
//! node are three displacements (m) and three rotations (rad) in global axes. Element matrices are
//! those of any textbook of matrix analysis (J. S. Przemieniecki, Theory of Matrix Structural
//! Analysis, 1968, ch. 5; A. Kassimali, Matrix Analysis of Structures, ch. 8).

mod assemble;
mod bar;
mod factored;
mod fault;
mod geometric;
mod load;
mod member;
mod model;
mod solution;
mod support;

pub use bar::Bar;
pub use factored::FactoredFrame;
pub use fault::{Dof, FrameFault, Quantity};
pub use geometric::{Buckling, Softening};
pub use load::{LoadCase, MemberLoad};
pub use member::{Member, Releases};
pub use model::{BarId, Frame, MemberId, NodeId};
pub use solution::Solution;
pub use support::{Hold, Support};
