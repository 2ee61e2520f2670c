//! Files that can't be shown: each is refused with what is wrong, quickly, and nothing panics.

use std::time::Instant;

use gantline_exchange::underlay::{UnderlayFault, Wanted, attach};
use proptest::prelude::*;

use crate::given::{pdf, pdf_with, png_header, png_of};

fn why(bytes: Vec<u8>) -> UnderlayFault {
    attach(bytes).map(|(attachment, _)| attachment).unwrap_err()
}

fn some_png() -> Vec<u8> {
    png_of(64, 48, |x, y| [x as u8, y as u8, (x * y) as u8, 255])
}

fn some_pdf() -> Vec<u8> {
    pdf(&[("0 0 200 100", 0, "1 0 0 rg 20 30 40 40 re f 0 0 m 200 100 l S")])
}

#[test]
fn hostile_sizes_are_refused_before_a_pixel_is_decoded() {
    let started = Instant::now();
    let fault = why(png_header(100_000, 100_000));
    assert!(matches!(fault, UnderlayFault::TooManyPixels { width: 100_000, height: 100_000, .. }), "{fault}");
    assert!(fault.to_string().contains("100000 × 100000 pixels; at most 100 million"));
    assert!(matches!(why(png_header(90_000, 2)), UnderlayFault::TooManyPixels { .. }), "one long side is enough");
    let mut jpeg = include_bytes!("files/fields.jpg").to_vec();
    let frame = jpeg.windows(2).position(|two| two == b"\xff\xc0").unwrap();
    jpeg[frame + 5..frame + 9].copy_from_slice(&[0xff, 0xff, 0xff, 0xff]);
    assert!(matches!(why(jpeg), UnderlayFault::TooManyPixels { width: 65_535, .. }));
    let fault = why(pdf(&[("0 0 9000000 100", 0, "")]));
    assert!(matches!(fault, UnderlayFault::PageSize { page: 1, .. }), "{fault}");
    assert!(started.elapsed().as_secs_f64() < 1.0);
}

#[test]
fn what_is_cut_off_is_said_to_be() {
    let pdf = some_pdf();
    assert!(matches!(why(pdf[..pdf.len() - 30].to_vec()), UnderlayFault::CutOff { kind: "PDF", .. }));
    let jpeg = include_bytes!("files/fields.jpg");
    assert!(matches!(why(jpeg[..jpeg.len() * 2 / 3].to_vec()), UnderlayFault::CutOff { kind: "JPEG", .. }));
    let png = some_png();
    let (_, source) = attach(png[..png.len() * 2 / 3].to_vec()).unwrap();
    let fault = source.pixels(1, &Wanted { part: source.extents()[0], px_per_unit: 1.0 }).unwrap_err();
    assert!(matches!(fault, UnderlayFault::CutOff { kind: "PNG", .. }), "{fault}");
}

/// A password is asked for when neither half of the key fits (ISO 32000-1, 7.6.3): here both are zeros.
#[test]
fn an_encrypted_pdf_is_said_to_be_one() {
    let zeros = "00".repeat(32);
    let encrypt = format!("/Encrypt << /Filter /Standard /V 1 /R 2 /O <{zeros}> /U <{zeros}> /P -4 >> /ID [<01> <01>]");
    assert_eq!(why(pdf_with(&[("0 0 200 100", 0, "")], &encrypt)), UnderlayFault::Encrypted);
}

#[test]
fn a_pdf_that_is_none_and_one_without_a_page_are_named() {
    let fault = why(b"%PDF-1.7 and then nothing of the kind %%EOF".to_vec());
    assert!(fault.to_string().starts_with("the PDF is broken"), "{fault}");
    let fault = why(pdf(&[]));
    assert!(matches!(fault, UnderlayFault::NoPage | UnderlayFault::Broken { .. }), "{fault}");
}

#[test]
fn a_drawing_without_lines_and_a_broken_one_are_named() {
    let empty = b"0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n".to_vec();
    assert_eq!(why(empty), UnderlayFault::NoLine);
    assert!(matches!(why(b"0\nSECTION\n2\nENTITIES\n0\nLINE\n".to_vec()), UnderlayFault::Drawing(_)));
    assert!(matches!(why(b"AC1027...".to_vec()), UnderlayFault::Dwg { .. }));
}

/// Opens and shows whatever these bytes are; what comes of it does not matter.
fn try_all(bytes: Vec<u8>) {
    if let Ok((_, source)) = attach(bytes) {
        drop(source.pixels(1, &Wanted { part: source.extents()[0], px_per_unit: 0.5 }));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn no_change_of_a_good_file_makes_a_reader_panic(which in 0..3_usize, at in 0.0..1.0_f64, byte: u8, cut: bool) {
        let mut bytes = [some_pdf(), some_png(), include_bytes!("files/fields.jpg").to_vec()][which].clone();
        let place = (at * bytes.len() as f64) as usize;
        if cut { bytes.truncate(place) } else { bytes[place] = byte }
        try_all(bytes);
    }
}
