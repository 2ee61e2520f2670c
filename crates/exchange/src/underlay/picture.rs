//! Images: their size without decoding, and a part of them at a wanted resolution.

use std::io::Cursor;

use gantline_plan::document::AttachmentKind;
use zune_core::bytestream::ZCursor;
use zune_core::colorspace::ColorSpace;
use zune_core::options::DecoderOptions;
use zune_jpeg::JpegDecoder;

use super::fault::UnderlayFault;
use super::limits::{LONGEST_IMAGE_SIDE, MOST_IMAGE_PIXELS};
use super::pixels::{Pixels, Wanted};
use super::shrink::Shrink;

const PNG: &str = AttachmentKind::Png.name();
const JPEG: &str = AttachmentKind::Jpeg.name();

fn broken(kind: &'static str, cause: &dyn std::fmt::Debug) -> UnderlayFault {
    UnderlayFault::Broken { kind, what: format!("{cause:?}") }
}

fn checked(kind: &'static str, width: u32, height: u32) -> Result<(u32, u32), UnderlayFault> {
    if width == 0 || height == 0 {
        return Err(UnderlayFault::Broken {
            kind,
            what: format!("it says that it is {width} × {height} pixels large"),
        });
    }
    let pixels = u64::from(width) * u64::from(height);
    if pixels > MOST_IMAGE_PIXELS || width.max(height) > LONGEST_IMAGE_SIDE {
        let most = MOST_IMAGE_PIXELS / 1_000_000;
        return Err(UnderlayFault::TooManyPixels { kind, width, height, most, longest: LONGEST_IMAGE_SIDE });
    }
    Ok((width, height))
}

fn png_decoder(bytes: &[u8]) -> png::Decoder<Cursor<&[u8]>> {
    // Room for rows and colors of the image itself, which are limited by its size.
    let limits = png::Limits { bytes: 64 * 1024 * 1024 };
    let mut decoder = png::Decoder::new_with_limits(Cursor::new(bytes), limits);
    decoder.set_transformations(png::Transformations::normalize_to_color8());
    decoder.set_ignore_text_chunk(true);
    decoder
}

/// Width and height of a PNG, from its header.
pub fn png_size(bytes: &[u8]) -> Result<(u32, u32), UnderlayFault> {
    let mut decoder = png_decoder(bytes);
    let header = decoder.read_header_info().map_err(|cause| png_fault(&cause))?;
    checked(PNG, header.width, header.height)
}

fn png_fault(cause: &png::DecodingError) -> UnderlayFault {
    match cause {
        png::DecodingError::IoError(cause) if cause.kind() == std::io::ErrorKind::UnexpectedEof => {
            UnderlayFault::CutOff { kind: PNG, missing: "a part of its pixels" }
        }
        cause => UnderlayFault::Broken { kind: PNG, what: cause.to_string() },
    }
}

/// A part of a PNG.
pub fn png_pixels(bytes: &[u8], wanted: &Wanted) -> Result<Option<Pixels>, UnderlayFault> {
    let (width, height) = png_size(bytes)?;
    let Some(mut shrink) = Shrink::begin(width as usize, height as usize, wanted) else { return Ok(None) };
    let mut reader = png_decoder(bytes).read_info().map_err(|cause| png_fault(&cause))?;
    let channels = reader.output_color_type().0.samples();
    if reader.info().interlaced {
        let size = reader.output_buffer_size().ok_or_else(|| broken(PNG, &"too large"))?;
        let mut whole = vec![0; size];
        let frame = reader.next_frame(&mut whole).map_err(|cause| png_fault(&cause))?;
        for (row, line) in whole.chunks_exact(frame.line_size).enumerate() {
            shrink.take(row, |column| color(line, column, channels));
        }
        return shrink.ended().map(Some).ok_or(UnderlayFault::CutOff { kind: PNG, missing: "a part of its rows" });
    }
    let mut row = 0;
    while shrink.awaits(row) {
        let Some(line) = reader.next_row().map_err(|cause| png_fault(&cause))? else { break };
        let line = line.data();
        shrink.take(row, |column| color(line, column, channels));
        row += 1;
    }
    shrink.ended().map(Some).ok_or(UnderlayFault::CutOff { kind: PNG, missing: "a part of its rows" })
}

/// Color and opacity at a column of a row of gray, gray with opacity, colors, or colors with opacity.
fn color(line: &[u8], column: usize, channels: usize) -> [u8; 4] {
    match line.get(column * channels..(column + 1) * channels) {
        Some([gray]) => [*gray, *gray, *gray, 255],
        Some([gray, opacity]) => [*gray, *gray, *gray, *opacity],
        Some([red, green, blue]) => [*red, *green, *blue, 255],
        Some([red, green, blue, opacity]) => [*red, *green, *blue, *opacity],
        _ => [0; 4],
    }
}

fn jpeg_decoder(bytes: &[u8]) -> JpegDecoder<ZCursor<&[u8]>> {
    let longest = LONGEST_IMAGE_SIDE as usize;
    let options = DecoderOptions::default()
        .jpeg_set_out_colorspace(ColorSpace::RGB)
        .set_max_width(usize::from(u16::MAX).max(longest))
        .set_max_height(usize::from(u16::MAX).max(longest));
    JpegDecoder::new_with_options(ZCursor::new(bytes), options)
}

/// Width and height of a JPEG, from its header. Its end mark must be there: what is missing would be gray.
pub fn jpeg_size(bytes: &[u8]) -> Result<(u32, u32), UnderlayFault> {
    const START_OF_SCAN: &[u8] = b"\xff\xda";
    const END_OF_IMAGE: &[u8] = b"\xff\xd9";
    // A picture in small inside the file has marks of its own, but before the last scan.
    let last = |mark: &[u8]| bytes.windows(2).rposition(|two| two == mark);
    if last(END_OF_IMAGE).is_none_or(|end| last(START_OF_SCAN).is_some_and(|scan| scan > end)) {
        return Err(UnderlayFault::CutOff { kind: JPEG, missing: "its end mark" });
    }
    let mut decoder = jpeg_decoder(bytes);
    decoder.decode_headers().map_err(|cause| broken(JPEG, &cause))?;
    let info = decoder.info().ok_or_else(|| broken(JPEG, &"it has no header"))?;
    checked(JPEG, u32::from(info.width), u32::from(info.height))
}

/// A part of a JPEG.
pub fn jpeg_pixels(bytes: &[u8], wanted: &Wanted) -> Result<Option<Pixels>, UnderlayFault> {
    const CHANNELS: usize = 3;
    let (width, height) = jpeg_size(bytes)?;
    let Some(mut shrink) = Shrink::begin(width as usize, height as usize, wanted) else { return Ok(None) };
    let whole = jpeg_decoder(bytes).decode().map_err(|cause| broken(JPEG, &cause))?;
    for (row, line) in whole.chunks_exact(width as usize * CHANNELS).enumerate() {
        shrink.take(row, |column| color(line, column, CHANNELS));
    }
    shrink.ended().map(Some).ok_or(UnderlayFault::CutOff { kind: JPEG, missing: "a part of its rows" })
}
