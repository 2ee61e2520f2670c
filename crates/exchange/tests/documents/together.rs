//! All documents of a plan: the same bytes each time, all written or none, each with its imprint.

use std::fs;
use std::ops::ControlFlow;

use gantline_exchange::documents::{DocumentFault, DocumentKind, Wanted, make, write};
use gantline_exchange::paper::words_alone;
use gantline_plan::quantity::UnitSystem;

use super::worked::{COURTYARD, SMALL, Worked};

#[test]
fn the_same_plan_gives_the_same_bytes() {
    for text in [SMALL, COURTYARD] {
        let wanted = Wanted::all(UnitSystem::Si);
        let (first, second) = (Worked::of(text).documents(&wanted), Worked::of(text).documents(&wanted));
        for (a, b) in first.iter().zip(&second) {
            assert_eq!(a.name, b.name);
            assert!(a.bytes == b.bytes, "{} differs", a.name);
        }
    }
}

/// Witness: the format of the container. After its sign, version, flags and method, each part has the time and the day at
/// which it was put in (ZIP, 4.3.7); with a clock in it, two workbooks made in different seconds would differ.
#[test]
fn no_part_of_the_workbook_has_a_time_of_the_clock() {
    const FIRST_OF_1980: [u8; 4] = [0, 0, 0x21, 0];
    let book = Worked::of(SMALL).document(DocumentKind::Schedule, UnitSystem::Si);
    let begins = |at: &usize| book[*at..].starts_with(b"PK\x03\x04") && book[*at + 4] < 64;
    let parts: Vec<usize> = (0..book.len() - 14).filter(begins).collect();
    assert!(parts.len() > 8, "{parts:?}");
    assert!(parts.iter().all(|at| book[at + 10..at + 14] == FIRST_OF_1980));
}

#[test]
fn whoever_stops_has_written_nothing() {
    let worked = Worked::of(SMALL);
    let mut asked = 0;
    let made = make(&worked.plan, &worked.assessment, &Wanted::all(UnitSystem::Si), words_alone, &mut |progress| {
        assert_eq!(progress.made, asked);
        asked += 1;
        if progress.made + 1 == DocumentKind::ALL.len() { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    });
    assert!(matches!(made, Err(DocumentFault::Stopped)));
    assert_eq!(asked, DocumentKind::ALL.len());
}

#[test]
fn documents_replace_those_of_the_revision_before() {
    let folder = tempfile::tempdir().unwrap();
    let mut worked = Worked::of(SMALL);
    let wanted = Wanted { kinds: vec![DocumentKind::Tables], ..Wanted::all(UnitSystem::Si) };
    write(folder.path(), &worked.documents(&wanted)).unwrap();
    let before = fs::read_to_string(folder.path().join("gantline-bases.csv")).unwrap();
    worked.plan.title.revision = "B".to_owned();
    let written = write(folder.path(), &worked.documents(&wanted)).unwrap();
    assert_eq!(written.len(), 4);
    assert_ne!(fs::read_to_string(folder.path().join("gantline-bases.csv")).unwrap(), before);
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 4, "no temporary file stays");
}

#[test]
fn a_plan_with_nothing_on_it_has_documents_too() {
    let mut plan = Worked::of(SMALL).plan;
    (plan.roofs, plan.obstacles, plan.placements) = Default::default();
    let documents = Worked::from(plan).documents(&Wanted::all(UnitSystem::UsCustomary));
    assert_eq!(documents.len(), DocumentKind::ALL.len() + 3, "tables are four files");
    assert!(documents.iter().all(|document| !document.bytes.is_empty()));
}
