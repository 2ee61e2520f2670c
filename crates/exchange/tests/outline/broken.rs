//! Files that are broken, cut off or made to harm: each gives a fault that names what and where, and none takes long.

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Instant;

use gantline_exchange::outline::limits::{
    DEEPEST_BLOCK, MOST_BLOCKS, MOST_CORNERS, MOST_LAYERS, MOST_PAIRS_OF_AN_ENTITY, MOST_PIECES,
};
use gantline_exchange::outline::{Asked, OutlineFault, Place, read, read_until};
use proptest::prelude::*;

use super::given::{all, drawing, ring, with_blocks, with_entities};

fn fault(bytes: &[u8]) -> OutlineFault {
    read(bytes).unwrap_err()
}

#[test]
fn files_of_another_kind_are_named() {
    assert_eq!(fault(b""), OutlineFault::Empty);
    assert_eq!(fault(b" \r\n "), OutlineFault::Empty);
    let dwg = fault(b"AC1032\0\0\0\0\0\x05");
    assert_eq!(dwg, OutlineFault::Dwg { version: "AC1032".to_owned() });
    assert!(dwg.to_string().contains("save it as DXF"), "{dwg}");
    assert!(fault(b"%PDF-1.7\n").to_string().contains("begins with \"%PDF-1.7\""));
    assert!(matches!(fault(b"12345 numbers"), OutlineFault::NotADrawing { .. }));
    assert!(matches!(fault(b"0\nEOF\n"), OutlineFault::NotADrawing { .. }));
}

#[test]
fn numbers_that_are_none_are_named_with_their_line() {
    for text in ["nan", "-inf", "1e999", "twelve"] {
        let entities = format!("0\nLINE\n8\nA\n10\n0\n20\n{text}\n11\n4\n21\n0\n");
        let fault = fault(with_entities(&entities).as_bytes());
        assert_eq!(fault, OutlineFault::NoNumber { place: Place::Line(26), code: 20, found: text.to_owned() });
    }
    // The last pair of the last entity too.
    let entities = "0\nLINE\n8\nA\n10\n0\n20\n0\n11\n4\n21\nx\n";
    assert!(matches!(fault(with_entities(entities).as_bytes()), OutlineFault::NoNumber { code: 21, .. }));
}

#[test]
fn a_file_cut_off_anywhere_is_refused() {
    for name in ["lines_of_release_12.dxf", "polyline_of_release_12_binary.dxf", "light_polylines.dxf"] {
        let whole = drawing(name);
        let end = whole.trim_ascii_end().len();
        for length in (0..end - 1).step_by(7).chain(end - 30..end - 3) {
            let cut = read(&whole[..length]);
            assert!(cut.is_err(), "{name} cut to {length} bytes of {end}");
        }
    }
    let text = with_entities(&ring("A", &[(0., 0.), (4., 0.), (4., 3.)]));
    let cut = text.split("0\nENDSEC\n0\nEOF").next().unwrap();
    assert!(
        fault(cut.as_bytes()).to_string().contains("line 37, in its entities: it is cut off"),
        "{}",
        fault(cut.as_bytes())
    );
}

#[test]
fn a_bomb_of_blocks_is_refused_and_quickly() {
    // Ten blocks, each with ten of the one before: ten billion lines.
    let mut blocks =
        "0\nBLOCK\n8\n0\n2\nB0\n10\n0\n20\n0\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n0\nENDBLK\n".to_owned();
    for level in 1..10 {
        let inner = format!("0\nINSERT\n8\n0\n2\nB{}\n10\n0\n20\n0\n", level - 1).repeat(10);
        blocks.extend([format!("0\nBLOCK\n8\n0\n2\nB{level}\n10\n0\n20\n0\n{inner}0\nENDBLK\n")]);
    }
    let began = Instant::now();
    let bomb = with_blocks(&blocks, "0\nINSERT\n8\n0\n2\nB9\n10\n0\n20\n0\n");
    assert_eq!(fault(bomb.as_bytes()), OutlineFault::TooMany { most: MOST_PIECES });
    // An array of a block that holds nothing.
    let empty = "0\nBLOCK\n8\n0\n2\nE\n10\n0\n20\n0\n0\nENDBLK\n";
    let array = "0\nINSERT\n8\n0\n2\nE\n10\n0\n20\n0\n70\n32767\n71\n32767\n44\n1\n45\n1\n";
    assert_eq!(fault(with_blocks(empty, array).as_bytes()), OutlineFault::TooMany { most: MOST_PIECES });
    // Ten blocks, each with ten of the one before, and the first with ten of a block that the file does not hold.
    let mut blocks = String::new();
    for level in 0..10_u32 {
        let of = level.checked_sub(1).map_or_else(|| "GONE".to_owned(), |before| format!("M{before}"));
        let inner = format!("0\nINSERT\n8\n0\n2\n{of}\n10\n0\n20\n0\n").repeat(10);
        blocks.extend([format!("0\nBLOCK\n8\n0\n2\nM{level}\n10\n0\n20\n0\n{inner}0\nENDBLK\n")]);
    }
    let bomb = with_blocks(&blocks, "0\nINSERT\n8\n0\n2\nM9\n10\n0\n20\n0\n");
    assert_eq!(fault(bomb.as_bytes()), OutlineFault::TooMany { most: MOST_PIECES });
    // A block in itself.
    let own = "0\nBLOCK\n8\n0\n2\nS\n10\n0\n20\n0\n0\nINSERT\n8\n0\n2\nS\n10\n1\n20\n0\n0\nENDBLK\n";
    let fault = fault(with_blocks(own, "0\nINSERT\n8\n0\n2\nS\n10\n0\n20\n0\n").as_bytes());
    assert_eq!(fault, OutlineFault::TooDeep { block: "s".to_owned(), most: DEEPEST_BLOCK });
    assert!(began.elapsed().as_secs() < 20, "{:?}", began.elapsed());
}

#[test]
fn hostile_sizes_give_faults_and_not_memory() {
    let giant = with_entities("0\nCIRCLE\n8\nA\n10\n1e300\n20\n0\n40\n1e307\n");
    let work = read(giant.as_bytes()).unwrap();
    assert!(matches!(all(&work, None), Err(OutlineFault::TooFarApart { .. })));
    let mut many = String::new();
    for index in 0..6000 {
        let x = f64::from(index) * 2.0;
        many += &ring("A", &[(x, 0.), (x + 1.0, 0.), (x + 1.0, 1.0)]);
    }
    let work = read(with_entities(&many).as_bytes()).unwrap();
    assert!(matches!(all(&work, None), Err(OutlineFault::TooManyLoops { .. })));
    for tolerance_m in [0.0, -1.0, f64::NAN, 3.0] {
        let asked = Asked { layers: [0].into(), unit: None, tolerance_m, chord_m: tolerance_m, place: None };
        assert!(matches!(work.outlines(&asked), Err(OutlineFault::Tolerance { .. })));
    }
    let long: Vec<(f64, f64)> =
        (0..5000).map(|i| (f64::from(i) * 0.01, f64::from(i % 2))).chain([(25.0, 90.0)]).collect();
    let work = read(with_entities(&ring("A", &long)).as_bytes()).unwrap();
    assert!(all(&work, None).unwrap().faulty[0].why.to_string().contains("5001 corners"));
}

/// Of each of these a single file could hold millions.
#[test]
fn whatever_a_file_has_too_many_of_is_named_with_its_line() {
    let named = |bytes: &[u8], what: &str| match fault(bytes) {
        OutlineFault::TooManyOf { place: Place::Line(line), what: found, .. } => {
            assert!(found == what && line > 1000, "{found} at {line}");
        }
        other => panic!("{other}"),
    };
    let layers: String = (0..=MOST_LAYERS).map(|i| format!("0\nTEXT\n8\nL{i}\n")).collect::<Vec<_>>().concat();
    named(with_entities(&layers).as_bytes(), "layers");
    let blocks: String =
        (0..=MOST_BLOCKS).map(|i| format!("0\nBLOCK\n2\nB{i}\n0\nENDBLK\n")).collect::<Vec<_>>().concat();
    named(with_blocks(&blocks, "").as_bytes(), "blocks");
    let values = format!("0\nOLE2FRAME\n{}", "310\n0\n".repeat(MOST_PAIRS_OF_AN_ENTITY + 1));
    named(with_entities(&values).as_bytes(), "values of one entity");
    // Polylines whose corners follow as entities of their own: each is small, together they are not.
    let one = format!("0\nPOLYLINE\n8\nA\n{}0\nSEQEND\n", "0\nVERTEX\n10\n1\n20\n2\n".repeat(999));
    let many = one.repeat(MOST_PIECES / 1000 + 1);
    named(with_entities(&many).as_bytes(), "lines, curves and inserts");
}

/// Circles so large beside the tolerance that each becomes 20,000 chords.
#[test]
fn curves_that_become_too_many_chords_are_refused_before_they_are_made() {
    let circles = "0\nCIRCLE\n8\nA\n10\n0\n20\n0\n40\n9000\n".repeat(20_000);
    let work = read(with_entities(&circles).as_bytes()).unwrap();
    let asked = Asked { layers: [0].into(), unit: None, tolerance_m: 0.0001, chord_m: 0.0001, place: None };
    let fault = work.outlines(&asked).unwrap_err();
    assert_eq!(fault, OutlineFault::TooManyChords { most: MOST_CORNERS });
}

/// A hundred strips side by side along a diagonal, of four hundred corners each: every side lies in the box of every strip.
#[test]
fn outlines_that_lie_over_each_other_without_end_are_refused_and_quickly() {
    let strip = |index: u32| -> Vec<(f64, f64)> {
        let beside = f64::from(index) * 0.1;
        let at = |step: u32, aside: f64| {
            let along = f64::from(step) * 0.5;
            (along + beside + aside, along - beside - aside)
        };
        (0..200).map(|step| at(step, 0.0)).rev().chain((0..200).map(|step| at(step, 0.03))).collect()
    };
    let strips = |count: u32| -> String { (0..count).map(|index| ring("A", &strip(index))).collect() };
    let few = all(&read(with_entities(&strips(4)).as_bytes()).unwrap(), None).unwrap();
    assert_eq!((few.loops.len(), few.faulty.len(), few.meetings.len()), (4, 0, 0));
    let work = read(with_entities(&strips(100)).as_bytes()).unwrap();
    let began = Instant::now();
    assert_eq!(all(&work, None), Err(OutlineFault::TooMuchToCompare));
    assert!(began.elapsed().as_secs() < 60, "{:?}", began.elapsed());
}

#[test]
fn reading_ends_once_nobody_waits_for_it() {
    let stop = AtomicBool::new(true);
    assert_eq!(read_until(&whole(), &stop), Err(OutlineFault::Stopped));
    stop.store(false, Ordering::Relaxed);
    assert!(read_until(&whole(), &stop).is_ok());
}

#[test]
fn a_heap_of_lines_on_one_place_takes_no_longer_than_any_other() {
    let mut heap = String::new();
    for index in 0..60_000 {
        let end = 0.001 + f64::from(index % 7) * 1e-4;
        heap.extend([format!("0\nLINE\n8\nA\n10\n0\n20\n0\n11\n{end}\n21\n{end}\n")]);
    }
    let began = Instant::now();
    let work = read(with_entities(&heap).as_bytes()).unwrap();
    let found = all(&work, None).unwrap();
    assert!(found.loops.is_empty());
    assert!(began.elapsed().as_secs() < 20, "{:?}", began.elapsed());
}

/// A small drawing with everything in it.
fn whole() -> Vec<u8> {
    drawing("nested_blocks.dxf")
}

fn try_all(bytes: &[u8]) {
    if let Ok(work) = read(bytes) {
        let unit = Some(gantline_exchange::outline::LengthUnit::Millimeter);
        drop(all(&work, unit));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn no_bytes_make_the_reader_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        try_all(&bytes);
        try_all(&[b"AutoCAD Binary DXF\r\n\x1a\0\0\0SECTION\0".to_vec(), bytes.clone()].concat());
        try_all(&[b"0\nSECTION\n".to_vec(), bytes.clone()].concat());
        try_all(&[b"{".to_vec(), bytes].concat());
    }

    #[test]
    fn no_change_of_a_good_file_makes_the_reader_panic(
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..12),
        cut in any::<prop::sample::Index>(),
    ) {
        for name in ["nested_blocks.dxf", "curves_in_inches.dxf", "light_polylines_binary.dxf", "degrees.geojson"] {
            let mut bytes = if name == "nested_blocks.dxf" { whole() } else { drawing(name) };
            for (at, byte) in &changes {
                let at = at.index(bytes.len());
                bytes[at] = *byte;
            }
            try_all(&bytes);
            bytes.truncate(cut.index(bytes.len()));
            try_all(&bytes);
        }
    }

    #[test]
    fn any_few_numbers_in_any_entity_do_no_harm(
        kind in prop::sample::select(vec!["LINE", "ARC", "CIRCLE", "ELLIPSE", "LWPOLYLINE", "SPLINE", "INSERT", "POLYLINE", "VERTEX"]),
        pairs in prop::collection::vec(
            (prop::sample::select(vec![10, 20, 30, 11, 21, 31, 38, 40, 41, 42, 44, 45, 50, 51, 70, 71, 210, 220, 230]),
             prop::sample::select(vec!["0", "1", "-1", "3", "7", "1e-300", "1e300", "-1e308", "123456.789", "32767"])), 0..24),
    ) {
        let body = pairs.iter().map(|(code, value)| format!("{code}\n{value}\n")).collect::<Vec<_>>().concat();
        let entities = format!("0\n{kind}\n8\nA\n2\nB\n{body}");
        let block = format!("0\nBLOCK\n8\n0\n2\nB\n10\n0\n20\n0\n{}0\nENDBLK\n", ring("0", &[(0., 0.), (4., 0.), (4., 3.)]));
        try_all(with_blocks(&block, &entities).as_bytes());
    }
}
