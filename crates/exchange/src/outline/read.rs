//! Reads a file of either kind: which kind it is, is seen from its first bytes.

use std::sync::atomic::AtomicBool;

use super::fault::OutlineFault;
use super::limits::LARGEST_FILE_BYTES;
use super::line_work::LineWork;
use super::pairs::{BINARY_SENTINEL, shown};
use super::{dxf, geo};

/// Reads the line work of a DXF or GeoJSON file.
pub fn read(bytes: &[u8]) -> Result<LineWork, OutlineFault> {
    read_until(bytes, &AtomicBool::new(false))
}

/// The same, given up once `stop` is set: nobody waits for it any more.
pub fn read_until(bytes: &[u8], stop: &AtomicBool) -> Result<LineWork, OutlineFault> {
    if bytes.len() > LARGEST_FILE_BYTES {
        return Err(OutlineFault::TooLarge { has: bytes.len(), most: LARGEST_FILE_BYTES });
    }
    let text = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes).trim_ascii_start();
    match text {
        [] => Err(OutlineFault::Empty),
        [b'{', ..] => geo::read(bytes),
        [b'A', b'C', b'1', b'0', digits @ ..] if digits.len() >= 2 => {
            Err(OutlineFault::Dwg { version: shown(text.get(..6).unwrap_or(text)) })
        }
        _ if bytes.starts_with(BINARY_SENTINEL) || text[0].is_ascii_digit() => dxf::read(bytes, stop),
        _ => {
            let first = text.split(|&byte| byte == b'\n').next().unwrap_or(text);
            Err(OutlineFault::NotADrawing { what: format!("it begins with \"{}\"", shown(first)) })
        }
    }
}
