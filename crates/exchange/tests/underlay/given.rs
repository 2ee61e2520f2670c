//! Files made for tests.

use std::fmt::Write as _;

/// A PDF of these pages: media box, rotation in degrees, content.
pub fn pdf(pages: &[(&str, i32, &str)]) -> Vec<u8> {
    pdf_with(pages, "")
}

/// The same with more in its trailer.
pub fn pdf_with(pages: &[(&str, i32, &str)], trailer: &str) -> Vec<u8> {
    let mut objects = vec!["<< /Type /Catalog /Pages 2 0 R >>".to_owned()];
    let kids: Vec<String> = (0..pages.len()).map(|index| format!("{} 0 R", 3 + 2 * index)).collect();
    objects.push(format!("<< /Type /Pages /Count {} /Kids [{}] >>", pages.len(), kids.join(" ")));
    for (index, (media_box, rotation, content)) in pages.iter().enumerate() {
        objects.push(format!(
            "<< /Type /Page /Parent 2 0 R /MediaBox [{media_box}] /Rotate {rotation} /Resources << >> /Contents {} 0 R >>",
            4 + 2 * index
        ));
        objects.push(format!("<< /Length {} >>\nstream\n{content}\nendstream", content.len()));
    }
    let mut file = "%PDF-1.4\n".to_owned();
    let mut places = Vec::new();
    for (index, object) in objects.iter().enumerate() {
        places.push(file.len());
        write!(file, "{} 0 obj\n{object}\nendobj\n", index + 1).unwrap();
    }
    let begin = file.len();
    write!(file, "xref\n0 {}\n0000000000 65535 f \n", objects.len() + 1).unwrap();
    for place in places {
        writeln!(file, "{place:010} 00000 n ").unwrap();
    }
    write!(file, "trailer\n<< /Size {} /Root 1 0 R {trailer} >>\n", objects.len() + 1).unwrap();
    write!(file, "startxref\n{begin}\n%%EOF\n").unwrap();
    file.into_bytes()
}

/// A PNG of colors with opacity, told by column and row from the top.
pub fn png_of(width: u32, height: u32, color: impl Fn(u32, u32) -> [u8; 4]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, width, height);
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Eight);
    let pixels: Vec<u8> =
        (0..height).flat_map(|y| (0..width).flat_map(move |x| [(x, y)])).flat_map(|(x, y)| color(x, y)).collect();
    encoder.write_header().unwrap().write_image_data(&pixels).unwrap();
    bytes
}

/// The header of a PNG that says it is this large, with a sum of its own and nothing behind it.
pub fn png_header(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = png_of(1, 1, |_, _| [0; 4]);
    bytes[16..20].copy_from_slice(&width.to_be_bytes());
    bytes[20..24].copy_from_slice(&height.to_be_bytes());
    let sum = crc(&bytes[12..29]);
    bytes[29..33].copy_from_slice(&sum.to_be_bytes());
    bytes
}

/// The checksum of a PNG's chunks (PNG specification, annex D).
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |sum, &byte| {
        (0..8).fold(sum ^ u32::from(byte), |sum, _| if sum & 1 == 1 { 0xedb8_8320 ^ (sum >> 1) } else { sum >> 1 })
    })
}
