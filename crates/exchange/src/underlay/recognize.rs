//! What a file is, seen from its first bytes.

use gantline_plan::document::{AttachmentFault, AttachmentKind};

use super::fault::UnderlayFault;

/// A PDF may begin a little later: readers look for its mark in the first kilobyte (ISO 32000-1, annex H, note 13).
const PDF_MARK_WITHIN: usize = 1024;

/// What kind of file these bytes are.
pub fn recognize(bytes: &[u8]) -> Result<AttachmentKind, UnderlayFault> {
    const BINARY_DXF: &[u8] = b"AutoCAD Binary DXF";
    if bytes.is_empty() {
        return Err(AttachmentFault::Empty.into());
    }
    let head = bytes.get(..PDF_MARK_WITHIN).unwrap_or(bytes);
    if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
        return Ok(AttachmentKind::Png);
    }
    if bytes.starts_with(b"\xff\xd8\xff") {
        return Ok(AttachmentKind::Jpeg);
    }
    if head.windows(5).any(|five| five == b"%PDF-") {
        return Ok(AttachmentKind::Pdf);
    }
    let text = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes).trim_ascii_start();
    match text {
        [b'A', b'C', b'1', b'0', digits @ ..] if digits.len() >= 2 => {
            Err(UnderlayFault::Dwg { version: shown(text.get(..6).unwrap_or(text)) })
        }
        _ if bytes.starts_with(BINARY_DXF) || begins_with_a_group_code(text) => Ok(AttachmentKind::Dxf),
        _ => Err(UnderlayFault::OtherKind { begins: shown(text.get(..24).unwrap_or(text)) }),
    }
}

/// A DXF in letters begins with a line of nothing but a number.
fn begins_with_a_group_code(text: &[u8]) -> bool {
    let line = text.split(|&byte| byte == b'\n').next().unwrap_or(text).trim_ascii();
    !line.is_empty() && line.len() <= 4 && line.iter().all(u8::is_ascii_digit)
}

/// Bytes as letters that can be printed.
fn shown(bytes: &[u8]) -> String {
    bytes.iter().map(|&byte| if (b' '..=b'~').contains(&byte) { char::from(byte) } else { '·' }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_bytes_tell_the_kind() {
        let kind = |bytes: &[u8]| recognize(bytes).unwrap();
        assert_eq!(kind(b"\x89PNG\r\n\x1a\n...."), AttachmentKind::Png);
        assert_eq!(kind(b"\xff\xd8\xff\xe0..."), AttachmentKind::Jpeg);
        assert_eq!(kind(b"\n\n%PDF-1.7\n"), AttachmentKind::Pdf);
        assert_eq!(kind(b"  0\r\nSECTION\r\n"), AttachmentKind::Dxf);
        assert_eq!(kind(b"AutoCAD Binary DXF\r\n\x1a\0"), AttachmentKind::Dxf);
    }

    #[test]
    fn other_files_are_refused_with_what_to_do_or_how_they_begin() {
        let why = |bytes: &[u8]| recognize(bytes).unwrap_err().to_string();
        assert!(why(b"AC1032\0\0\0").contains("save it as DXF or PDF"));
        assert!(why(b"GIF89a\x01").contains("begins with \"GIF89a·\""));
        assert!(why(b"{\"type\": 1}").contains("none of PDF, PNG, JPEG and DXF"));
        assert!(why(b"2024-11-25 notes\n").contains("none of"));
        assert_eq!(why(b""), "the file is empty");
    }
}
