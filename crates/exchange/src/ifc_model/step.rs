//! Lines of a STEP file: numbered entities, and values as the format writes them (ISO 10303-21).

use std::fmt::Write as _;

use glam::{DVec2, DVec3};

/// An entity by its number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Ref(u32);

impl std::fmt::Display for Ref {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "#{}", self.0)
    }
}

/// The data of a file, as it grows.
#[derive(Debug, Default)]
pub struct Step {
    text: String,
    last: u32,
}

/// A value that is not given.
pub const NONE: &str = "$";

impl Step {
    /// Adds an entity: its name, and its values with commas between them.
    pub fn add(&mut self, name: &str, values: &str) -> Ref {
        self.last += 1;
        let _ = writeln!(self.text, "#{}={name}({values});", self.last);
        Ref(self.last)
    }

    /// All lines.
    pub fn done(self) -> String {
        self.text
    }

    /// A point in the plane.
    pub fn flat_point(&mut self, at: DVec2) -> Ref {
        self.add("IFCCARTESIANPOINT", &format!("({},{})", real(at.x), real(at.y)))
    }

    /// A point.
    pub fn point(&mut self, at: DVec3) -> Ref {
        self.add("IFCCARTESIANPOINT", &triple(at))
    }

    /// A direction.
    pub fn direction(&mut self, along: DVec3) -> Ref {
        self.add("IFCDIRECTION", &triple(along))
    }

    /// Axes at a point: z along `axis`, x along `x`.
    pub fn axes(&mut self, at: DVec3, axis: DVec3, x: DVec3) -> Ref {
        let (at, axis, x) = (self.point(at), self.direction(axis), self.direction(x));
        self.add("IFCAXIS2PLACEMENT3D", &format!("{at},{axis},{x}"))
    }
}

/// A real number: always with a point, to the billionth.
pub fn real(value: f64) -> String {
    let text = format!("{value:.9}");
    let text = text.trim_end_matches('0');
    if text == "-0." { "0.".to_owned() } else { text.to_owned() }
}

fn triple(of: DVec3) -> String {
    format!("({},{},{})", real(of.x), real(of.y), real(of.z))
}

/// Entities in brackets.
pub fn list(of: impl IntoIterator<Item = Ref>) -> String {
    let refs: Vec<String> = of.into_iter().map(|one| one.to_string()).collect();
    format!("({})", refs.join(","))
}

/// Words in quotes; letters beyond ASCII by their number.
pub fn text(words: &str) -> String {
    let mut out = String::with_capacity(words.len() + 2);
    out.push('\'');
    for letter in words.chars() {
        match letter {
            '\'' => out.push_str("''"),
            '\\' => out.push_str("\\\\"),
            letter if letter.is_control() => out.push(' '),
            letter if letter.is_ascii() => out.push(letter),
            letter => {
                out.push_str("\\X4\\");
                let _ = write!(out, "{:08X}", u32::from(letter));
                out.push_str("\\X0\\");
            }
        }
    }
    out.push('\'');
    out
}

/// Words for a label, which holds at most 255 letters.
pub fn label(words: &str) -> String {
    text(&words.chars().take(255).collect::<String>())
}

/// Words, or that there are none.
pub fn label_if(words: &str) -> String {
    if words.is_empty() { NONE.to_owned() } else { label(words) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_are_written_as_the_format_wants_them() {
        assert_eq!(real(2.0), "2.");
        assert_eq!(real(-1e-12), "0.");
        assert_eq!(real(-28680.9896), "-28680.9896");
        assert_eq!(text("O'Hara \\ 5 m²"), "'O''Hara \\\\ 5 m\\X4\\000000B2\\X0\\'");
    }

    #[test]
    fn entities_count_from_one() {
        let mut step = Step::default();
        let point = step.point(DVec3::new(1.0, 2.0, 3.5));
        assert_eq!(list([point]), "(#1)");
        assert_eq!(step.done(), "#1=IFCCARTESIANPOINT((1.,2.,3.5));\n");
    }
}
