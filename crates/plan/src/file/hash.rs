//! Content hash of a plan, to tell on a document which plan it was made from.

use sha2::{Digest, Sha256};

use super::write;
use crate::document::Plan;

/// SHA-256 of the plan file's bytes, as 64 hexadecimal digits.
pub fn content_hash(plan: &Plan) -> Result<String, serde_json::Error> {
    let digest = Sha256::digest(write(plan)?.as_bytes());
    let mut text = String::with_capacity(64);
    for byte in digest {
        for digit in [byte >> 4, byte & 0x0f] {
            text.push(char::from_digit(u32::from(digit), 16).unwrap_or('0'));
        }
    }
    Ok(text)
}
