//! Attachment: the bytes of a file that came from elsewhere, kept whole in the plan and known by their content.
//!
//! Bytes are shared and never copied: a snapshot of a plan, and every step of a drag, holds the same ones. Two attachments
//! are equal when their content hashes are, so that comparing plans reads no bytes either.

use std::fmt;
use std::str::FromStr;
use std::sync::Arc;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// Largest attachment, bytes.
pub const LARGEST_ATTACHMENT_BYTES: usize = 25 * 1024 * 1024;

/// Largest sum of all attachments of a plan, bytes.
pub const LARGEST_ATTACHMENTS_BYTES: usize = 100 * 1024 * 1024;

/// Bytes that one line of the plan file holds; a multiple of three, so that only the last line is padded.
const LINE_BYTES: usize = 768;

/// What kind of file an attachment is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum AttachmentKind {
    /// A PDF document; its unit is the point of 1/72 inch.
    Pdf,
    /// A PNG image; its unit is the pixel.
    Png,
    /// A JPEG image; its unit is the pixel.
    Jpeg,
    /// A DXF drawing; its unit is the unit of the drawing.
    Dxf,
}

impl AttachmentKind {
    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Pdf => "PDF",
            Self::Png => "PNG",
            Self::Jpeg => "JPEG",
            Self::Dxf => "DXF",
        }
    }

    /// How long one of its units is on paper, m: a point of a PDF is 1/72 inch (ISO 32000-1, 8.3.2.3). Pixels and the units of
    /// a drawing lie on no paper.
    pub const fn on_paper_m(self) -> Option<f64> {
        match self {
            Self::Pdf => Some(0.0254 / 72.0),
            Self::Png | Self::Jpeg | Self::Dxf => None,
        }
    }
}

/// SHA-256 of an attachment's bytes, in the file as 64 hexadecimal digits.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(try_from = "String", into = "String")]
#[schemars(with = "String")]
pub struct ContentHash([u8; 32]);

/// Text that is no content hash.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("\"{found}\" is not a content hash of 64 hexadecimal digits")]
pub struct HashFault {
    /// What stood there instead.
    pub found: String,
}

impl ContentHash {
    /// The hash of these bytes.
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }
}

impl fmt::Display for ContentHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for ContentHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for ContentHash {
    type Err = HashFault;

    fn from_str(text: &str) -> Result<Self, HashFault> {
        let fault = || HashFault { found: text.chars().take(80).collect() };
        let lower_hex = |letter: u8| letter.is_ascii_digit() || (b'a'..=b'f').contains(&letter);
        if text.len() != 64 || !text.bytes().all(lower_hex) {
            return Err(fault());
        }
        let mut hash = [0; 32];
        for (place, byte) in hash.iter_mut().enumerate() {
            let digits = text.get(2 * place..2 * place + 2).ok_or_else(fault)?;
            *byte = u8::from_str_radix(digits, 16).map_err(|_| fault())?;
        }
        Ok(Self(hash))
    }
}

impl TryFrom<String> for ContentHash {
    type Error = HashFault;

    fn try_from(text: String) -> Result<Self, HashFault> {
        text.parse()
    }
}

impl From<ContentHash> for String {
    fn from(hash: ContentHash) -> Self {
        hash.to_string()
    }
}

/// Why bytes can't be an attachment.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum AttachmentFault {
    /// Nothing in it.
    #[error("the file is empty")]
    Empty,
    /// More than a plan takes in.
    #[error("the file has {has} bytes; a plan takes in at most {most} of one file")]
    TooLarge {
        /// Bytes in the file.
        has: usize,
        /// Bytes that are taken in.
        most: usize,
    },
    /// Text that does not stand for bytes.
    #[error("line {line} is not base64: {what}")]
    NotBase64 {
        /// Line, from 1.
        line: usize,
        /// What is wrong there.
        what: String,
    },
}

/// The bytes of a file, kept in the plan.
#[derive(Clone, Serialize, Deserialize, JsonSchema)]
#[serde(try_from = "Stored", into = "Stored")]
#[schemars(with = "Stored")]
pub struct Attachment {
    kind: AttachmentKind,
    hash: ContentHash,
    bytes: Arc<[u8]>,
}

impl Attachment {
    /// An attachment of these bytes.
    pub fn new(kind: AttachmentKind, bytes: impl Into<Arc<[u8]>>) -> Result<Self, AttachmentFault> {
        let bytes = bytes.into();
        if bytes.is_empty() {
            return Err(AttachmentFault::Empty);
        }
        if bytes.len() > LARGEST_ATTACHMENT_BYTES {
            return Err(AttachmentFault::TooLarge { has: bytes.len(), most: LARGEST_ATTACHMENT_BYTES });
        }
        Ok(Self { kind, hash: ContentHash::of(&bytes), bytes })
    }

    /// What kind of file it is.
    pub fn kind(&self) -> AttachmentKind {
        self.kind
    }

    /// The hash of its bytes, computed once when it was made.
    pub fn hash(&self) -> ContentHash {
        self.hash
    }

    /// Its bytes; whoever keeps them shares them.
    pub fn bytes(&self) -> &Arc<[u8]> {
        &self.bytes
    }
}

impl PartialEq for Attachment {
    fn eq(&self, other: &Self) -> bool {
        self.kind == other.kind && self.hash == other.hash
    }
}

impl Eq for Attachment {}

impl fmt::Debug for Attachment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} of {} bytes, {}", self.kind.name(), self.bytes.len(), self.hash)
    }
}

/// How an attachment stands in the plan file.
#[derive(Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Attachment")]
struct Stored {
    /// What kind of file it is.
    kind: AttachmentKind,
    /// Its bytes in base64, line by line.
    base64: Vec<String>,
}

impl From<Attachment> for Stored {
    fn from(attachment: Attachment) -> Self {
        let base64 = attachment.bytes.chunks(LINE_BYTES).map(|line| STANDARD.encode(line)).collect();
        Self { kind: attachment.kind, base64 }
    }
}

impl TryFrom<Stored> for Attachment {
    type Error = AttachmentFault;

    fn try_from(stored: Stored) -> Result<Self, AttachmentFault> {
        let letters: usize = stored.base64.iter().map(String::len).sum();
        // Looked at before a byte is decoded: what is too large stays text.
        let about = letters / 4 * 3;
        if about > LARGEST_ATTACHMENT_BYTES + 2 {
            return Err(AttachmentFault::TooLarge { has: about, most: LARGEST_ATTACHMENT_BYTES });
        }
        let mut bytes = Vec::with_capacity(about);
        for (place, line) in stored.base64.iter().enumerate() {
            let not_base64 =
                |cause: base64::DecodeError| AttachmentFault::NotBase64 { line: place + 1, what: cause.to_string() };
            STANDARD.decode_vec(line, &mut bytes).map_err(not_base64)?;
        }
        Self::new(stored.kind, bytes)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_attachment_reads_back_byte_by_byte_and_a_line_that_is_none_is_named() {
        let bytes: Vec<u8> = (0..2000_u32).map(|place| (place * 7 % 251) as u8).collect();
        let attachment = Attachment::new(AttachmentKind::Png, bytes.clone()).unwrap();
        let text = serde_json::to_string(&attachment).unwrap();
        let again: Attachment = serde_json::from_str(&text).unwrap();
        assert_eq!(again.bytes().to_vec(), bytes);
        assert_eq!(again, attachment);
        let mut value: serde_json::Value = serde_json::from_str(&text).unwrap();
        assert_eq!(value["base64"].as_array().unwrap().len(), 3);
        value["base64"][1] = "what is this?".into();
        let fault = serde_json::from_value::<Attachment>(value).unwrap_err().to_string();
        assert!(fault.contains("line 2 is not base64"), "{fault}");
    }

    /// The witness is the test vector "abc" of FIPS 180-2, appendix B.1.
    #[test]
    fn a_content_hash_is_sha_256_in_hexadecimal() {
        let hash = ContentHash::of(b"abc");
        let text = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(hash.to_string(), text);
        assert_eq!(text.parse(), Ok(hash));
        assert!("BA7816".parse::<ContentHash>().is_err());
        assert!("é".repeat(32).parse::<ContentHash>().is_err());
    }

    #[test]
    fn an_attachment_may_be_as_large_as_the_limit_and_not_a_byte_larger() {
        let largest = Attachment::new(AttachmentKind::Pdf, vec![7; LARGEST_ATTACHMENT_BYTES]).unwrap();
        let again = Attachment::try_from(Stored::from(largest.clone())).unwrap();
        assert_eq!(again, largest);
        let fault = Attachment::new(AttachmentKind::Pdf, vec![7; LARGEST_ATTACHMENT_BYTES + 1]).unwrap_err();
        assert!(matches!(fault, AttachmentFault::TooLarge { .. }));
        assert_eq!(Attachment::new(AttachmentKind::Pdf, Vec::new()), Err(AttachmentFault::Empty));
        let line = "A".repeat(LARGEST_ATTACHMENT_BYTES / 3 * 4 + 8);
        let stored = Stored { kind: AttachmentKind::Pdf, base64: vec![line] };
        assert!(matches!(Attachment::try_from(stored), Err(AttachmentFault::TooLarge { .. })));
    }
}
