//! Drawings that the tests read, and what is asked of them.

use std::fs;
use std::path::{Path, PathBuf};

use gantline_exchange::outline::{Asked, LengthUnit, LineWork, OutlineFault, Outlines, read};

/// The folder of the reference scripts.
pub fn reference() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference")
}

/// The bytes of a stored drawing.
pub fn drawing(name: &str) -> Vec<u8> {
    fs::read(reference().join("drawings").join(name)).unwrap()
}

/// A text drawing in meters with these entities.
pub fn with_entities(entities: &str) -> String {
    format!(
        "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n6\n0\nENDSEC\n\
         0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n"
    )
}

/// A closed light polyline on a layer.
pub fn ring(layer: &str, corners: &[(f64, f64)]) -> String {
    let corners = corners.iter().map(|(x, y)| format!("10\n{x}\n20\n{y}\n")).collect::<Vec<_>>().concat();
    format!("0\nLWPOLYLINE\n8\n{layer}\n70\n1\n{corners}")
}

/// The same with blocks before the entities.
pub fn with_blocks(blocks: &str, entities: &str) -> String {
    let section = format!("0\nSECTION\n2\nBLOCKS\n{blocks}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n");
    with_entities(entities).replacen("0\nSECTION\n2\nENTITIES\n", &section, 1)
}

/// What all layers of a drawing hold, in a unit, within half a millimeter.
pub fn all(work: &LineWork, unit: Option<LengthUnit>) -> Result<Outlines, OutlineFault> {
    let layers = (0..work.layers.len()).collect();
    work.outlines(&Asked { layers, unit, tolerance_m: 0.005, chord_m: 0.005, place: None })
}

/// Reads a text drawing and gives the outlines of all its layers.
pub fn outlines(text: &str) -> Outlines {
    all(&read(text.as_bytes()).unwrap(), None).unwrap()
}
