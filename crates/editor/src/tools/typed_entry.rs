//! Numbers typed during a gesture: a field at the pointer for each quantity the tool asks for.
//!
//! What is typed is held, the rest follows the pointer. Text that is not understood keeps the field and changes nothing.

use gantline_plan::quantity::{Kind, ParseFault, UnitSystem, parse_angle, parse_length, parse_number};

/// A quantity that a tool asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Asked {
    /// Its name at the pointer.
    pub name: &'static str,
    /// Length, angle or number.
    pub kind: Kind,
}

impl Asked {
    /// A length with this name.
    pub const fn length(name: &'static str) -> Self {
        Self { name, kind: Kind::Length }
    }

    /// An angle with this name.
    pub const fn angle(name: &'static str) -> Self {
        Self { name, kind: Kind::Angle }
    }

    /// A bare number with this name.
    pub const fn number(name: &'static str) -> Self {
        Self { name, kind: Kind::Number }
    }
}

/// The values typed so far, in the order in which they were asked for.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Typed {
    values: [Option<f64>; 2],
}

impl Typed {
    /// Values as if they had been typed.
    pub const fn of(first: Option<f64>, second: Option<f64>) -> Self {
        Self { values: [first, second] }
    }

    /// The first quantity, SI.
    pub const fn first(self) -> Option<f64> {
        self.values[0]
    }

    /// The second quantity, SI.
    pub const fn second(self) -> Option<f64> {
        self.values[1]
    }

    /// Whether nothing is typed.
    pub fn is_empty(self) -> bool {
        self.values.iter().all(Option::is_none)
    }
}

/// The open fields.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TypedEntry {
    fields: Vec<Field>,
    active: usize,
}

/// One field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Field {
    /// What it asks for.
    pub asked: Asked,
    /// What is typed.
    pub text: String,
}

/// Whether a text may open a field: it begins a number.
pub fn opens(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-'))
}

impl TypedEntry {
    /// Opens fields with the first text typed; none when nothing is asked for.
    pub fn open(asked: &[Asked], text: &str) -> Option<Self> {
        if asked.is_empty() {
            return None;
        }
        let fields = asked.iter().map(|&asked| Field { asked, text: String::new() }).collect();
        let mut entry = Self { fields, active: 0 };
        entry.push(text);
        Some(entry)
    }

    /// The fields in order.
    pub fn fields(&self) -> &[Field] {
        &self.fields
    }

    /// Index of the field being typed in.
    pub fn active(&self) -> usize {
        self.active
    }

    /// Types text into the active field.
    pub fn push(&mut self, text: &str) {
        const LONGEST: usize = 40;
        let field = &mut self.fields[self.active];
        let room = LONGEST.saturating_sub(field.text.chars().count());
        field.text.extend(text.chars().filter(|c| !c.is_control()).take(room));
    }

    /// Takes the last character back; false when nothing at all is typed any more.
    pub fn backspace(&mut self) -> bool {
        self.fields[self.active].text.pop();
        self.fields.iter().any(|field| !field.text.is_empty())
    }

    /// Goes to the next field, after the last to the first.
    pub fn next(&mut self) {
        self.active = (self.active + 1) % self.fields.len();
    }

    /// Goes to the field before.
    pub fn previous(&mut self) {
        self.active = (self.active + self.fields.len() - 1) % self.fields.len();
    }

    /// What is typed and understood.
    pub fn typed(&self, units: UnitSystem) -> Typed {
        let value = |index: usize| self.fields.get(index).and_then(|field| read(field, units).ok());
        Typed { values: [value(0), value(1)] }
    }

    /// The first field whose text is not understood, and why.
    pub fn fault(&self, units: UnitSystem) -> Option<(usize, ParseFault)> {
        self.fields
            .iter()
            .enumerate()
            .filter(|(_, field)| !field.text.is_empty())
            .find_map(|(index, field)| read(field, units).err().map(|fault| (index, fault)))
    }
}

fn read(field: &Field, units: UnitSystem) -> Result<f64, ParseFault> {
    match field.asked.kind {
        Kind::Length => parse_length(&field.text, units),
        Kind::Angle => parse_angle(&field.text),
        _ => parse_number(&field.text),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ASKED: [Asked; 2] = [Asked::length("length"), Asked::angle("angle")];

    #[test]
    fn a_sum_is_held_and_the_other_quantity_stays_free() {
        let mut entry = TypedEntry::open(&ASKED, "3").unwrap();
        entry.push(".2+0.45");
        let typed = entry.typed(UnitSystem::Si);
        // The sum is formed in binary: a last digit may differ from the decimal one.
        assert!((typed.first().unwrap() - 3.65).abs() < 1e-15 * 4.0);
        assert_eq!(typed.second(), None);
        entry.next();
        entry.push("90");
        assert_eq!(entry.typed(UnitSystem::Si).second(), Some(std::f64::consts::FRAC_PI_2));
    }

    #[test]
    fn wrong_text_keeps_the_field_and_gives_no_value() {
        let mut entry = TypedEntry::open(&ASKED, "1").unwrap();
        entry.push("x");
        assert!(entry.typed(UnitSystem::Si).is_empty());
        assert_eq!(entry.fault(UnitSystem::Si).map(|(index, _)| index), Some(0));
        assert!(entry.backspace());
        assert_eq!(entry.typed(UnitSystem::Si).first(), Some(1.0));
        assert!(!entry.backspace());
    }

    #[test]
    fn only_the_beginning_of_a_number_opens_a_field() {
        assert!(opens("4") && opens("-") && opens("."));
        assert!(!opens("m") && !opens(" ") && !opens(""));
    }
}
