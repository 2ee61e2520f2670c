//! Sections: each brace kind's dimensions are read back as text and held against the make-up's data in the assets.

use gantline_drawing::section::{BaseActions, SectionDetail, SectionLoads};
use gantline_drawing::{Drawing, Overlay, Pen, Scale, SectionOptions, Shown, section};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::change::{Change, PlacementPatch, apply};
use gantline_plan::document::PlacementId;
use gantline_plan::quantity::UnitSystem;

use crate::read_back::{dimensions_mm, lines, overlapping_texts, texts};
use crate::sample::{assessed, courtyard_house};

fn drawn(tag: usize) -> Drawing {
    let (sample, assessment) = assessed();
    section(&sample.plan, assessment, sample.placed[tag - 1], &SectionOptions::at(Scale::one_to(25.0))).unwrap()
}

fn sorted(mut values: Vec<i64>) -> Vec<i64> {
    values.sort_unstable();
    values
}

/// Data of the edge in every section of the sample, mm: slab 300, build-up 180, parapet 900 and 720 over the finish.
const EDGE: [i64; 4] = [300, 180, 900, 720];

#[test]
fn a_rear_brace_to_the_mast_reads_back_its_lengths() {
    // Mast 1900, arm 160 deep: 1820 clear, 920 over the coping. Pins 700 behind and 950 below. Setback 850, facade 120
    // outside, so the rope hangs 1150 - 850 - 120 = 180 in front of it.
    let own = [1900, 1820, 920, 750, 1150, 700, 950, 850, 120, 180];
    assert_eq!(dimensions_mm(&drawn(1)), sorted([own.as_slice(), &EDGE].concat()));
}

#[test]
fn an_arm_without_a_brace_reads_back_its_lengths() {
    // Mast 1700, arm 140 deep: 1630 clear, 730 over the coping. No tail. 1000 - 700 - 120 = 180.
    let own = [1700, 1630, 730, 1000, 700, 120, 180];
    assert_eq!(dimensions_mm(&drawn(3)), sorted([own.as_slice(), &EDGE].concat()));
}

#[test]
fn a_rear_brace_to_the_base_reads_back_its_lengths() {
    // Tail 650 with the pin at 600, lug 300 behind the axis; facade at the outline: 1250 - 850 = 400.
    let own = [1700, 1630, 730, 650, 1250, 600, 300, 850, 400];
    assert_eq!(dimensions_mm(&drawn(5)), sorted([own.as_slice(), &EDGE].concat()));
}

#[test]
fn a_rear_foot_reads_back_its_lengths() {
    // Mast 2150, arm 140 deep: 2080 clear, 1180 over the coping. Foot 1350 behind; 1250 - 800 = 450.
    let own = [2150, 2080, 1180, 650, 1250, 1350, 800, 450];
    assert_eq!(dimensions_mm(&drawn(6)), sorted([own.as_slice(), &EDGE].concat()));
}

#[test]
fn a_front_brace_reads_back_its_lengths() {
    // The high parapet of 1250: 1070 over the finish, and 1370 - 1250 = 120 to the arm. Pins 550 in front, 600 below.
    let own = [1450, 1370, 120, 1150, 550, 600, 800, 350, 300, 180, 1250, 1070];
    assert_eq!(dimensions_mm(&drawn(7)), sorted(own.to_vec()));
}

#[test]
fn a_slewed_arm_is_cut_along_itself_and_the_slew_is_said() {
    // cos 35° = 0.819152: the edge lies 1000/0.819152 = 1220.8 along the arm, the facade 146.5 farther, the rope 82.7.
    let drawing = drawn(2);
    let dimensions = dimensions_mm(&drawing);
    for millimeters in [1221, 146, 83, 1450] {
        assert!(dimensions.contains(&millimeters), "{millimeters} in {dimensions:?}");
    }
    assert!(drawing.words().any(|words| words.ends_with("slewed 35.0°")));
}

#[test]
fn the_rope_hangs_from_the_tip() {
    let drawing = drawn(1);
    let ropes = lines(&drawing, Pen::Rope);
    let [rope] = ropes[..] else { panic!("{} ropes", ropes.len()) };
    assert_eq!((rope[0].x, rope[0].y, rope[1].x), (1.15, 1.9, 1.15));
}

#[test]
fn a_conflict_in_the_plane_is_shown_with_its_figure_and_its_limit() {
    let (sample, assessment) = assessed();
    let id = sample.placed[6];
    let worst = assessment.units[&id].tightest()[0].clone();
    assert!(worst.conflict);
    let drawing = drawn(7);
    let figure = format!("{:.3} m of {:.3} m", worst.clear_m, worst.limit_m);
    assert!(drawing.words().any(|words| words == figure), "{figure}");
    let options = SectionOptions { shown: Shown::NONE, ..SectionOptions::at(Scale::one_to(25.0)) };
    let without = section(&sample.plan, assessment, id, &options).unwrap();
    assert!(lines(&without, Pen::Conflict).is_empty() && !lines(&drawing, Pen::Conflict).is_empty());
}

#[test]
fn no_text_of_a_section_stands_on_another() {
    let (sample, assessment) = assessed();
    for &id in &sample.placed {
        let whole = [20.0, 25.0, 40.0].map(|one_to| (one_to, SectionDetail::Whole));
        let main = [40.0, 60.0, 80.0].map(|one_to| (one_to, SectionDetail::Main));
        for (one_to, detail) in whole.into_iter().chain(main) {
            let mut options = SectionOptions { detail, ..SectionOptions::at(Scale::one_to(one_to)) };
            options.loads = SectionLoads {
                rope_n: Some(2350.0),
                base: Some(BaseActions { outward_n: -610.0, up_n: 3120.0, tilting_nm: -3280.0 }),
                words: "anchor load (ultimate)".to_owned(),
            };
            let drawing = section(&sample.plan, assessment, id, &options).unwrap();
            assert_eq!(overlapping_texts(&drawing), [], "{id} at 1:{one_to}, {detail:?}");
        }
    }
}

#[test]
fn loads_are_written_as_given_and_only_where_reactions_are_shown() {
    let (sample, assessment) = assessed();
    let mut options = SectionOptions::at(Scale::one_to(25.0));
    let base = BaseActions { outward_n: 610.0, up_n: -3120.0, tilting_nm: 3280.0 };
    options.loads = SectionLoads { rope_n: Some(2350.0), base: Some(base), words: String::new() };
    let drawing = section(&sample.plan, assessment, sample.placed[0], &options).unwrap();
    for words in ["T 2.35 kN", "0.61 kN", "down 3.12 kN", "M 3.28 kNm"] {
        assert!(drawing.words().any(|found| found == words), "{words}");
    }
    options.shown = Shown::of([Overlay::ClearZones]);
    let without = section(&sample.plan, assessment, sample.placed[0], &options).unwrap();
    assert!(!without.words().any(|found| found.starts_with("down")));
}

#[test]
fn feet_and_inches_are_written_where_asked_for() {
    let (sample, assessment) = assessed();
    let options = SectionOptions { units: UnitSystem::UsCustomary, ..SectionOptions::at(Scale::one_to(25.0)) };
    let drawing = section(&sample.plan, assessment, sample.placed[0], &options).unwrap();
    // 1.900 m = 74.803 in = 6 ft 2 in and 12.85 sixteenths.
    assert!(texts(&drawing).iter().any(|text| text.words.ends_with("6' 2 13/16\"")));
    assert!(texts(&drawing).iter().all(|text| !text.words.ends_with(" m")));
}

#[test]
fn a_unit_that_is_gone_or_lacks_a_part_has_no_section() {
    let (sample, assessment) = assessed();
    let options = SectionOptions::at(Scale::one_to(25.0));
    let mut sample = sample.clone();
    assert_eq!(section(&sample.plan, assessment, PlacementId::from_number(999), &options), None);
    let id = sample.placed[0];
    let family = sample.plan.placements[&id].make_up.family;
    let found = sample.plan.families.get_mut(&family).unwrap();
    std::sync::Arc::make_mut(found).masts.clear();
    let assessment = assess(&sample.plan, &mut Memo::new());
    assert_eq!(section(&sample.plan, &assessment, id, &options), None);
}

#[test]
fn an_arm_slewed_inboard_is_drawn_without_an_edge_in_front() {
    let mut sample = courtyard_house();
    let id = sample.placed[0];
    let patch = PlacementPatch { drawn_slew_rad: Some(std::f64::consts::PI), ..PlacementPatch::default() };
    sample.plan = apply(&sample.plan, &Change::SetPlacements(vec![id], patch)).unwrap().plan;
    let assessment = assess(&sample.plan, &mut Memo::new());
    let drawing = section(&sample.plan, &assessment, id, &SectionOptions::at(Scale::one_to(25.0))).unwrap();
    assert_eq!(overlapping_texts(&drawing), []);
    // The south edge now lies 850 mm behind the mast, and no setback is measured in front of it.
    assert!(!drawing.words().any(|words| words.starts_with("setback")));
}
