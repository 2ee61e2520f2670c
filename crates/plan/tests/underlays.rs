//! Underlays: changes with undo, refusals, the plan file, and that no byte of an attachment is copied.

use std::sync::Arc;
use std::time::Instant;

use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::change::{Change, History, Refused, UnderlayPatch};
use gantline_plan::document::attachment::LARGEST_ATTACHMENT_BYTES;
use gantline_plan::document::{Attachment, AttachmentKind, ContentHash, Plan, RoofId, ThingId, Underlay, UnderlayId};
use gantline_plan::file::{ReadError, content_hash, read, read_sound_parts, schema, write};
use glam::DVec2;

fn scan(bytes: &[u8]) -> Attachment {
    Attachment::new(AttachmentKind::Png, bytes.to_vec()).unwrap()
}

fn lying(attachment: &Attachment) -> Underlay {
    Underlay {
        name: "Fourth floor".into(),
        attachment: attachment.hash(),
        page: 1,
        roof: None,
        origin_m: DVec2::new(-2.0, 1.0),
        m_per_unit: 0.01,
        turn_rad: 0.0,
        opacity: 0.5,
        locked: false,
        shown: true,
    }
}

fn empty() -> History {
    History::new(Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode()))
}

fn add(history: &mut History, attachment: &Attachment) -> UnderlayId {
    let change = Change::AddUnderlay { underlay: lying(attachment), attachment: attachment.clone() };
    match history.change("lay an underlay", &change).unwrap().made[..] {
        [ThingId::Underlay(id)] => id,
        ref other => panic!("{other:?}"),
    }
}

fn with_one() -> (History, UnderlayId) {
    let mut history = empty();
    let id = add(&mut history, &scan(b"a scan"));
    (history, id)
}

fn set(history: &mut History, id: UnderlayId, patch: UnderlayPatch) -> Result<(), Refused> {
    history.change("underlay", &Change::SetUnderlay(id, patch)).map(|_| ())
}

#[test]
fn two_points_and_a_length_set_the_scale_and_the_first_point_stays() {
    let (mut history, id) = with_one();
    let before = history.plan().underlays[&id].clone();
    let (from, to) = (DVec2::new(4.0, 3.0), DVec2::new(7.0, 7.0));
    // By hand: 5 m as it lies, 12.5 m in truth, so 0.01 m becomes 0.025 m.
    let scale = Change::ScaleUnderlay { underlay: id, from, to, length_m: 12.5 };
    history.change("scale", &scale).unwrap();
    let after = &history.plan().underlays[&id];
    assert!((after.m_per_unit - 0.025).abs() < 1e-15);
    let moved = |at: DVec2| after.in_plan(before.in_source(at));
    assert!(moved(from).distance(from) < 1e-9);
    assert!((moved(to).distance(moved(from)) - 12.5).abs() < 1e-9);
    assert!(history.undo());
    assert_eq!(history.plan().underlays[&id], before);
}

#[test]
fn two_points_and_a_direction_set_the_turn() {
    let (mut history, id) = with_one();
    let before = history.plan().underlays[&id].clone();
    let (from, to) = (DVec2::new(4.0, 3.0), DVec2::new(7.0, 7.0));
    let turn = Change::TurnUnderlay { underlay: id, from, to, direction_rad: 0.0 };
    history.change("turn", &turn).unwrap();
    let after = &history.plan().underlays[&id];
    let moved = |at: DVec2| after.in_plan(before.in_source(at));
    assert!(moved(from).distance(from) < 1e-9);
    assert!(moved(to).distance(DVec2::new(9.0, 3.0)) < 1e-9, "{}", moved(to));
    assert!((after.turn_rad + (4.0_f64 / 3.0).atan()).abs() < 1e-12);
}

#[test]
fn a_locked_underlay_stays_where_it_is_and_can_still_be_dimmed() {
    let (mut history, id) = with_one();
    set(&mut history, id, UnderlayPatch { locked: Some(true), ..UnderlayPatch::default() }).unwrap();
    let before = Arc::clone(history.plan());
    let (from, to) = (DVec2::ZERO, DVec2::X);
    let refused = Refused::Locked(ThingId::Underlay(id));
    for change in [
        Change::MoveUnderlay { underlay: id, by: DVec2::X },
        Change::ScaleUnderlay { underlay: id, from, to, length_m: 2.0 },
        Change::TurnUnderlay { underlay: id, from, to, direction_rad: 1.0 },
        Change::SetUnderlay(id, UnderlayPatch { page: Some(2), ..UnderlayPatch::default() }),
        Change::RemoveUnderlay(id),
    ] {
        assert_eq!(history.change("locked", &change), Err(refused.clone()), "{change:?}");
        assert_eq!(*history.plan(), before);
    }
    let dim = UnderlayPatch { opacity: Some(0.2), shown: Some(false), ..UnderlayPatch::default() };
    set(&mut history, id, dim).unwrap();
    assert_eq!(history.plan().underlays[&id].opacity, 0.2);
}

#[test]
fn what_can_not_be_meant_of_an_underlay_is_refused_and_changes_nothing() {
    let (mut history, id) = with_one();
    let before = Arc::clone(history.plan());
    let at = DVec2::new(2.0, 2.0);
    let nowhere = DVec2::new(f64::NAN, 0.0);
    let roof = Some(Some(RoofId::from_number(99)));
    for (change, field) in [
        (
            Change::ScaleUnderlay { underlay: id, from: at, to: at, length_m: 2.0 },
            "lie on each other at (2.000, 2.000)",
        ),
        (Change::TurnUnderlay { underlay: id, from: at, to: at, direction_rad: 0.0 }, "lie on each other"),
        (Change::ScaleUnderlay { underlay: id, from: at, to: DVec2::ZERO, length_m: 0.0 }, "length_m"),
        (Change::ScaleUnderlay { underlay: id, from: at, to: DVec2::ZERO, length_m: f64::NAN }, "length_m"),
        (Change::ScaleUnderlay { underlay: id, from: nowhere, to: at, length_m: 1.0 }, "x_m"),
        (Change::ScaleUnderlay { underlay: id, from: at, to: at + 2e-6, length_m: 1.0e5 }, "m_per_unit"),
        (Change::MoveUnderlay { underlay: id, by: DVec2::splat(1.0e9) }, "x_m"),
        (Change::SetUnderlay(id, UnderlayPatch { opacity: Some(1.01), ..UnderlayPatch::default() }), "opacity"),
        (Change::SetUnderlay(id, UnderlayPatch { page: Some(0), ..UnderlayPatch::default() }), "page"),
        (Change::SetUnderlay(id, UnderlayPatch { roof, ..UnderlayPatch::default() }), "roof-99"),
        (Change::RemoveUnderlay(UnderlayId::from_number(77)), "underlay-77"),
    ] {
        let refused = history.change("wrong", &change).unwrap_err().to_string();
        assert!(refused.contains(field), "{refused} names no {field}");
        assert_eq!(*history.plan(), before);
    }
}

#[test]
fn an_attachment_goes_with_its_last_underlay_and_comes_back_with_undo() {
    let mut history = empty();
    let attachment = scan(b"two pages of the same");
    let (one, other) = (add(&mut history, &attachment), add(&mut history, &attachment));
    assert_eq!(history.plan().attachments.len(), 1, "the same bytes are there once");
    history.change("remove", &Change::RemoveUnderlay(one)).unwrap();
    assert_eq!(history.plan().attachments.len(), 1);
    history.change("remove", &Change::RemoveUnderlay(other)).unwrap();
    assert!(history.plan().attachments.is_empty());
    assert!(history.undo());
    assert_eq!(history.plan().attachments[&attachment.hash()], attachment);
}

#[test]
fn a_roof_that_goes_leaves_its_underlay_under_every_level() {
    let (mut history, id) = with_one();
    let outline = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)].map(DVec2::from).to_vec();
    let done = history.change("roof", &Change::AddRoof { name: String::new(), level_m: 24.0, outline }).unwrap();
    let ThingId::Roof(roof) = done.made[0] else { panic!("a roof was made") };
    set(&mut history, id, UnderlayPatch { roof: Some(Some(roof)), ..UnderlayPatch::default() }).unwrap();
    history.change("remove", &Change::RemoveRoof(roof)).unwrap();
    assert_eq!(history.plan().underlays[&id].roof, None);
    assert_eq!(read(write(history.plan()).unwrap().as_bytes()).unwrap(), **history.plan());
}

#[test]
fn underlays_are_kept_in_the_file_with_their_bytes_last() {
    let (history, id) = with_one();
    let text = write(history.plan()).unwrap();
    let again = read(text.as_bytes()).unwrap();
    assert_eq!(again, **history.plan());
    assert_eq!(again.attachments[&again.underlays[&id].attachment].bytes()[..], b"a scan"[..]);
    assert_eq!(write(&again).unwrap(), text);
    assert!(text.find("\"attachments\"") > text.find("\"families\""));
    for part in ["underlays", "attachments"] {
        assert!(schema()["properties"].get(part).is_some(), "{part} is in the schema");
        assert!(!write(empty().plan()).unwrap().contains(part), "a plan without any is written as plans always were");
    }
    let mut moved = history.clone();
    moved.change("move", &Change::MoveUnderlay { underlay: id, by: DVec2::X }).unwrap();
    assert_ne!(content_hash(moved.plan()).unwrap(), content_hash(history.plan()).unwrap());
}

#[test]
fn an_attachment_that_nothing_shows_is_dropped_on_saving() {
    let (history, id) = with_one();
    let mut value: serde_json::Value = serde_json::from_str(&write(history.plan()).unwrap()).unwrap();
    value["underlays"].as_object_mut().unwrap().remove(&id.to_string());
    let leftover = read(value.to_string().as_bytes()).unwrap();
    assert_eq!(leftover.attachments.len(), 1);
    assert!(!write(&leftover).unwrap().contains("attachments"));
}

#[test]
fn an_underlay_or_attachment_that_does_not_hang_together_is_named() {
    let (history, id) = with_one();
    let text = write(history.plan()).unwrap();
    let hash = ContentHash::of(b"a scan").to_string();
    let broken = |part: &str, change: &dyn Fn(&mut serde_json::Value)| {
        let mut value: serde_json::Value = serde_json::from_str(&text).unwrap();
        change(&mut value[part]);
        match read(value.to_string().as_bytes()) {
            Err(ReadError::Part { path, what }) => {
                (path, what, read_sound_parts(value.to_string().as_bytes()).unwrap())
            }
            other => panic!("{other:?}"),
        }
    };
    let underlay = id.to_string();
    let (path, ..) =
        broken("underlays", &|all| all[&underlay]["attachment"] = ContentHash::of(b"b").to_string().into());
    assert_eq!(path, format!("underlays › {underlay} › attachment"));
    let (path, what, _) = broken("underlays", &|all| all[&underlay]["opacity"] = 3.into());
    assert_eq!((path.as_str(), what.contains("opacity")), (format!("underlays › {underlay}").as_str(), true));
    let (path, what, sound) = broken("attachments", &|all| all[&hash]["base64"] = vec!["YSBtYXA="].into());
    assert_eq!((path, what.contains("is not what was attached")), (format!("attachments › {hash}"), true));
    assert!(sound.plan.underlays.is_empty() && sound.plan.attachments.is_empty() && sound.left_out.len() == 2);
    let (path, ..) = broken("attachments", &|all| all[&hash]["base64"] = vec!["?"].into());
    assert_eq!(path, format!("attachments › {hash}"));
}

#[test]
fn more_than_a_plan_takes_in_is_refused() {
    let mut history = empty();
    for number in 0..4_u8 {
        add(&mut history, &scan(&vec![number; LARGEST_ATTACHMENT_BYTES]));
    }
    let one_more = scan(b"one byte too many");
    let change = Change::AddUnderlay { underlay: lying(&one_more), attachment: one_more };
    assert!(matches!(history.change("too much", &change), Err(Refused::TooMuchAttached { .. })));
    assert_eq!(history.plan().underlays.len(), 4);
    let text = write(history.plan()).unwrap();
    assert_eq!(read(text.as_bytes()).unwrap(), **history.plan(), "as much as a plan takes in reads back");
}

/// Hashing 20 MB takes at least 10 ms and copying them 1 ms on any machine of today: a thousand steps of a drag that did
/// either would take a second at least.
#[test]
fn no_step_of_a_drag_copies_or_hashes_an_attachment() {
    let mut history = empty();
    let attachment = scan(&vec![42; 20 * 1024 * 1024]);
    let id = add(&mut history, &attachment);
    let shared = || Arc::strong_count(attachment.bytes());
    history.begin("move an underlay");
    let started = Instant::now();
    for step in 1..=1000 {
        let by = DVec2::new(f64::from(step) * 0.01, 0.0);
        history.preview(&Change::MoveUnderlay { underlay: id, by }).unwrap();
    }
    let taken_s = started.elapsed().as_secs_f64();
    history.commit();
    let now = history.plan().attachments[&attachment.hash()].bytes();
    assert!(Arc::ptr_eq(now, attachment.bytes()), "the same bytes, not a copy");
    assert!(shared() >= 3, "the history shares them too");
    assert!(taken_s < 0.5, "a thousand steps took {taken_s} s");
    assert!((history.plan().underlays[&id].origin_m.x - 8.0).abs() < 1e-12);
}
