//! How solids look: a color, and how much of what lies behind shows through.

use super::step::{NONE, Ref, Step, label, list, real};

/// A look.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
    /// Structure that is there.
    Structure,
    /// Obstacles.
    Obstacle,
    /// What stays in the roof.
    Base,
    /// What is carried.
    Portable,
    /// Space that an arm needs.
    ZoneOfArm,
    /// Space that a brace needs.
    ZoneOfBrace,
}

/// The styles of all looks.
#[derive(Debug)]
pub struct Looks([(Look, Ref); 6]);

impl Looks {
    /// Writes the styles.
    pub fn write(step: &mut Step) -> Self {
        use Look::{Base, Obstacle, Portable, Structure, ZoneOfArm, ZoneOfBrace};
        Self([Structure, Obstacle, Base, Portable, ZoneOfArm, ZoneOfBrace].map(|look| (look, style(step, look))))
    }

    /// Gives a solid its look.
    pub fn put_on(&self, step: &mut Step, solid: Ref, look: Look) {
        if let Some((_, style)) = self.0.iter().find(|(one, _)| *one == look) {
            step.add("IFCSTYLEDITEM", &format!("{solid},({style}),{NONE}"));
        }
    }
}

fn style(step: &mut Step, look: Look) -> Ref {
    let (name, [red, green, blue], transparency) = match look {
        Look::Structure => ("structure", [0.78, 0.78, 0.76], 0.0),
        Look::Obstacle => ("obstacle", [0.62, 0.60, 0.56], 0.0),
        Look::Base => ("base", [0.25, 0.28, 0.32], 0.0),
        Look::Portable => ("portable unit", [0.72, 0.74, 0.78], 0.0),
        Look::ZoneOfArm => ("clear zone of the arm", [0.0, 0.47, 0.35], 0.75),
        Look::ZoneOfBrace => ("clear zone of the brace", [0.59, 0.27, 0.47], 0.75),
    };
    let color = step.add("IFCCOLOURRGB", &format!("{NONE},{},{},{}", real(red), real(green), real(blue)));
    let rendering = step.add(
        "IFCSURFACESTYLERENDERING",
        &format!("{color},{},{NONE},{NONE},{NONE},{NONE},{NONE},{NONE},.NOTDEFINED.", real(transparency)),
    );
    step.add("IFCSURFACESTYLE", &format!("{},.BOTH.,{}", label(name), list([rendering])))
}
