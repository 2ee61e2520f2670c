//! The pairs that a DXF file is made of: a group code and its value, in text or in binary.
//!
//! Values are borrowed from the file's bytes, so that a large drawing is not in memory twice. Layout of both forms: DXF
//! reference, "DXF file formats"; the one-byte codes of binary files before release 13 are from memory.

use super::fault::{OutlineFault, Place};

/// What a binary file begins with.
pub const BINARY_SENTINEL: &[u8] = b"AutoCAD Binary DXF\r\n\x1a\0";

/// A group code and its value.
#[derive(Debug, Clone, Copy)]
pub struct Pair<'a> {
    /// The group code.
    pub code: i32,
    /// The value.
    pub value: Value<'a>,
    /// Where the value stands.
    pub place: Place,
}

/// A value as the file has it.
#[derive(Debug, Clone, Copy)]
pub enum Value<'a> {
    /// Text, also of a number in a text file; blanks around it are gone.
    Text(&'a [u8]),
    /// A number of a binary file.
    Number(f64),
    /// A whole number of a binary file.
    Whole(i64),
}

impl Pair<'_> {
    /// The value as a finite number.
    pub fn number(&self) -> Result<f64, OutlineFault> {
        let number = match self.value {
            Value::Text(text) => std::str::from_utf8(text).ok().and_then(|text| text.parse::<f64>().ok()),
            Value::Number(number) => Some(number),
            Value::Whole(whole) => Some(whole as f64),
        };
        number.filter(|number| number.is_finite()).ok_or_else(|| self.no_number())
    }

    /// The value as a whole number.
    pub fn whole(&self) -> Result<i64, OutlineFault> {
        match self.value {
            Value::Text(text) => {
                std::str::from_utf8(text).ok().and_then(|text| text.parse().ok()).ok_or_else(|| self.no_number())
            }
            Value::Number(_) => Err(self.no_number()),
            Value::Whole(whole) => Ok(whole),
        }
    }

    /// The value as the bytes of a text; empty for a number of a binary file.
    pub fn text(&self) -> &[u8] {
        match self.value {
            Value::Text(text) => text,
            Value::Number(_) | Value::Whole(_) => &[],
        }
    }

    /// Whether the pair is this code with this text.
    pub fn is(&self, code: i32, text: &str) -> bool {
        self.code == code && self.text() == text.as_bytes()
    }

    fn no_number(&self) -> OutlineFault {
        let found = match self.value {
            Value::Text(text) => shown(text),
            Value::Number(number) => number.to_string(),
            Value::Whole(whole) => whole.to_string(),
        };
        OutlineFault::NoNumber { place: self.place, code: self.code, found }
    }
}

/// Bytes for a message: few, and whatever they are.
pub fn shown(bytes: &[u8]) -> String {
    const SHOWN: usize = 40;
    let text = String::from_utf8_lossy(bytes.get(..SHOWN).unwrap_or(bytes));
    text.chars().map(|letter| if letter.is_control() { '·' } else { letter }).collect()
}

/// The pairs of a file in order; comments are passed over.
#[derive(Debug, Clone)]
pub struct Pairs<'a> {
    bytes: &'a [u8],
    at: usize,
    line: usize,
    form: Form,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Form {
    Text,
    OneByteCodes,
    TwoByteCodes,
}

/// How a value of a binary file is stored.
enum Stored {
    Text,
    Number,
    Whole(usize),
    Chunk,
}

impl<'a> Pairs<'a> {
    /// The pairs of a whole file.
    pub fn of(bytes: &'a [u8]) -> Self {
        let Some(rest) = bytes.strip_prefix(BINARY_SENTINEL) else {
            let mark = if bytes.starts_with(b"\xef\xbb\xbf") { 3 } else { 0 };
            return Self { bytes, at: mark, line: 0, form: Form::Text };
        };
        // The first pair is 0/SECTION: after a code of one byte its name follows at once.
        let form = if rest.get(1) == Some(&0) { Form::TwoByteCodes } else { Form::OneByteCodes };
        Self { bytes, at: BINARY_SENTINEL.len(), line: 0, form }
    }

    /// Where the next pair begins.
    pub fn place(&self) -> Place {
        if self.form == Form::Text { Place::Line(self.line + 1) } else { Place::Byte(self.at) }
    }

    /// The next pair; none at the end of the file.
    pub fn next_pair(&mut self) -> Result<Option<Pair<'a>>, OutlineFault> {
        const COMMENT: i32 = 999;
        loop {
            let pair = if self.form == Form::Text { self.text_pair()? } else { self.binary_pair()? };
            match pair {
                Some(pair) if pair.code == COMMENT => {}
                other => return Ok(other),
            }
        }
    }

    fn text_pair(&mut self) -> Result<Option<Pair<'a>>, OutlineFault> {
        let code_place = self.place();
        let Some(code_line) = self.line() else {
            return Ok(None);
        };
        let code = std::str::from_utf8(code_line).ok().and_then(|text| text.parse::<i32>().ok());
        let Some(code) = code else {
            // Blank lines at the very end are no fault.
            if code_line.is_empty() && self.bytes.get(self.at..).is_none_or(|rest| rest.trim_ascii().is_empty()) {
                return Ok(None);
            }
            return Err(OutlineFault::NoCode { place: code_place, found: shown(code_line) });
        };
        let place = self.place();
        let Some(value) = self.line() else {
            return Err(OutlineFault::CutOff { place, inside: "after a group code" });
        };
        Ok(Some(Pair { code, value: Value::Text(value), place }))
    }

    /// The next line without blanks around it.
    fn line(&mut self) -> Option<&'a [u8]> {
        let rest = self.bytes.get(self.at..).filter(|rest| !rest.is_empty())?;
        let length = rest.iter().position(|&byte| byte == b'\n').unwrap_or(rest.len());
        self.at += length + 1;
        self.line += 1;
        rest.get(..length).map(<[u8]>::trim_ascii)
    }

    fn binary_pair(&mut self) -> Result<Option<Pair<'a>>, OutlineFault> {
        if self.at >= self.bytes.len() {
            return Ok(None);
        }
        let code = self.binary_code()?;
        let place = Place::Byte(self.at);
        let value = match stored(code, self.form) {
            Stored::Text => Value::Text(self.text_to_zero()?),
            Stored::Number => Value::Number(f64::from_le_bytes(self.array()?)),
            Stored::Whole(1) => Value::Whole(i64::from(self.array::<1>()?[0])),
            Stored::Whole(2) => Value::Whole(i64::from(i16::from_le_bytes(self.array()?))),
            Stored::Whole(4) => Value::Whole(i64::from(i32::from_le_bytes(self.array()?))),
            Stored::Whole(_) => Value::Whole(i64::from_le_bytes(self.array()?)),
            Stored::Chunk => {
                let length = usize::from(self.array::<1>()?[0]);
                Value::Text(self.take(length)?)
            }
        };
        Ok(Some(Pair { code, value, place }))
    }

    fn binary_code(&mut self) -> Result<i32, OutlineFault> {
        /// Before two-byte codes, this byte said that a code of two bytes follows.
        const LONG: u8 = 255;
        if self.form == Form::TwoByteCodes {
            return Ok(i32::from(u16::from_le_bytes(self.array()?)));
        }
        match self.array::<1>()?[0] {
            LONG => Ok(i32::from(u16::from_le_bytes(self.array()?))),
            short => Ok(i32::from(short)),
        }
    }

    fn take(&mut self, length: usize) -> Result<&'a [u8], OutlineFault> {
        let cut_off = OutlineFault::CutOff { place: Place::Byte(self.at), inside: "in the middle of a value" };
        let taken = self.bytes.get(self.at..self.at.saturating_add(length)).ok_or(cut_off)?;
        self.at += length;
        Ok(taken)
    }

    fn array<const N: usize>(&mut self) -> Result<[u8; N], OutlineFault> {
        let place = Place::Byte(self.at);
        let taken = self.take(N)?;
        taken.try_into().map_err(|_| OutlineFault::CutOff { place, inside: "in the middle of a value" })
    }

    fn text_to_zero(&mut self) -> Result<&'a [u8], OutlineFault> {
        let rest = self.bytes.get(self.at..).unwrap_or_default();
        let cut_off = OutlineFault::CutOff { place: Place::Byte(self.at), inside: "in the middle of a text" };
        let length = rest.iter().position(|&byte| byte == 0).ok_or(cut_off)?;
        self.at += length + 1;
        Ok(rest.get(..length).unwrap_or_default().trim_ascii())
    }
}

/// How the value of a group code is stored: DXF reference, "Group code value types".
fn stored(code: i32, form: Form) -> Stored {
    match code {
        10..=59 | 110..=149 | 210..=239 | 460..=469 | 1010..=1059 => Stored::Number,
        60..=79 | 170..=179 | 270..=289 | 370..=389 | 400..=409 | 1060..=1070 => Stored::Whole(2),
        90..=99 | 420..=429 | 440..=459 | 1071 => Stored::Whole(4),
        160..=169 => Stored::Whole(8),
        290..=299 if form == Form::TwoByteCodes => Stored::Whole(1),
        290..=299 => Stored::Whole(2),
        310..=319 | 1004 => Stored::Chunk,
        _ => Stored::Text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn codes(bytes: &[u8]) -> Result<Vec<i32>, OutlineFault> {
        let mut pairs = Pairs::of(bytes);
        let mut found = Vec::new();
        while let Some(pair) = pairs.next_pair()? {
            found.push(pair.code);
        }
        Ok(found)
    }

    #[test]
    fn comments_marks_and_line_ends_of_either_kind_are_passed_over() {
        assert_eq!(codes(b"\xef\xbb\xbf999\r\nmade by hand\r\n  0\r\nSECTION\r\n 10\n1.5\n\n\n").unwrap(), [0, 10]);
    }

    #[test]
    fn a_line_that_is_no_code_is_named_with_its_number() {
        let fault = codes(b"0\nSECTION\nten\n1.0\n").unwrap_err();
        assert_eq!(fault, OutlineFault::NoCode { place: Place::Line(3), found: "ten".to_owned() });
        assert_eq!(
            codes(b"0\nSECTION\n10").unwrap_err(),
            OutlineFault::CutOff { place: Place::Line(4), inside: "after a group code" }
        );
    }

    #[test]
    fn a_number_that_is_none_is_named_with_code_and_line() {
        for text in ["nan", "inf", "1,5", ""] {
            let bytes = format!("10\n{text}\n");
            let pair = Pairs::of(bytes.as_bytes()).next_pair().unwrap().unwrap();
            let fault = pair.number().unwrap_err();
            assert_eq!(fault, OutlineFault::NoNumber { place: Place::Line(2), code: 10, found: text.to_owned() });
        }
    }

    #[test]
    fn binary_pairs_of_both_ages_are_read() {
        let mut new = BINARY_SENTINEL.to_vec();
        new.extend(b"\0\0SECTION\0");
        new.extend([10, 0]);
        new.extend(1.5_f64.to_le_bytes());
        new.extend([70, 0, 4, 0]);
        let mut old = BINARY_SENTINEL.to_vec();
        old.extend(b"\0SECTION\0\x0a");
        old.extend(1.5_f64.to_le_bytes());
        old.extend([70, 4, 0]);
        for bytes in [new, old] {
            let mut pairs = Pairs::of(&bytes);
            assert!(pairs.next_pair().unwrap().unwrap().is(0, "SECTION"));
            assert_eq!(pairs.next_pair().unwrap().unwrap().number(), Ok(1.5));
            assert_eq!(pairs.next_pair().unwrap().unwrap().whole(), Ok(4));
            assert!(pairs.next_pair().unwrap().is_none());
            assert!(matches!(codes(&bytes[..bytes.len() - 1]), Err(OutlineFault::CutOff { .. })));
        }
    }
}
