//! What is shipped for demonstration: invented families and, on the start page, plans made with them.

use gantline_plan::catalog::Family;

/// A demonstration plan.
#[derive(Debug, Clone, Copy)]
pub struct Demonstration {
    /// Its name on the start page.
    pub name: &'static str,
    /// What it shows.
    pub about: &'static str,
    /// Its file.
    pub text: &'static str,
}

/// The demonstration plans.
pub const PLANS: &[Demonstration] = &[
    Demonstration {
        name: "Small roof",
        about: "A rectangular roof with a few units, nothing in the way.",
        text: include_str!("../../../demo-projects/small-roof.json"),
    },
    Demonstration {
        name: "Courtyard building",
        about: "An L with a courtyard, high and low parapets, a plant room, and at least one of every finding.",
        text: include_str!("../../../demo-projects/courtyard-building.json"),
    },
    Demonstration {
        name: "Large complex",
        about: "Three hundred units of many make-ups on twelve facades and two levels.",
        text: include_str!("../../../demo-projects/large-complex.json"),
    },
];

const FAMILIES: [&str; 2] =
    [include_str!("../../../assets/families/heron.json"), include_str!("../../../assets/families/tern.json")];

/// The invented families.
pub fn families() -> Result<Vec<Family>, String> {
    let read =
        |text: &&str| serde_json::from_str(text).map_err(|fault| format!("A shipped family can't be read: {fault}"));
    FAMILIES.iter().map(read).collect()
}
