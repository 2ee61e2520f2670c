//! What an answer to chapter 17 does not say: impact, fatigue, earthquake and more stay outside.

/// What chapter 17, or this program's part of it, does not cover; to be said beside every answer.
pub const OUTSIDE: [&str; 7] = [
    "impact (17.1.4): the loads are equivalent static loads",
    "high-cycle fatigue (17.1.4)",
    "earthquake, design categories C to F (17.10)",
    "anchor reinforcement in place of the concrete (17.5.2.1): its development is the structural engineer's",
    "shear lugs (17.11)",
    "setting of adhesive anchors: age of the concrete, temperature, certified installers, inspection (17.2.2, 26.7, 26.13)",
    "gaps between anchors and plate holes beyond those of the plate's own check",
];
