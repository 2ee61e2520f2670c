//! Drawing set and load plan as pages: every base on them, nothing cut off or on top of each other, every sheet says what it is.

use gantline_exchange::documents::{CAUTION, Imprint};
use gantline_exchange::drawing_set::{Given, PaperSize, drawing_set};
use gantline_exchange::load_plan::load_plan;
use gantline_exchange::paper::{OnPage, Page, Paper, Words};
use gantline_plan::assess::{Component, Sense};
use gantline_plan::document::PartId;
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::quantity::{Kind, UnitSystem, digits, length};
use glam::DVec2;

use super::worked::{COURTYARD, LARGE, SMALL, Worked};

fn with_given<T>(worked: &Worked, size: PaperSize, units: UnitSystem, use_it: impl FnOnce(&Given<'_>) -> T) -> T {
    let imprint = Imprint::of(&worked.plan, Some("2026-03-31"));
    let (plan, assessment) = (&worked.plan, &worked.assessment);
    use_it(&Given { plan, assessment, imprint: &imprint, units, size })
}

fn set(worked: &Worked, size: PaperSize, units: UnitSystem) -> Paper {
    with_given(worked, size, units, drawing_set)
}

fn loads(worked: &Worked, size: PaperSize, units: UnitSystem) -> Paper {
    with_given(worked, size, units, load_plan)
}

/// Both papers of both plans on every size of sheet.
fn all_papers() -> Vec<(String, Paper)> {
    let mut all = Vec::new();
    for (name, text) in [("small", SMALL), ("courtyard", COURTYARD)] {
        let worked = Worked::of(text);
        for size in PaperSize::ALL {
            let units = if size == PaperSize::ArchD { UnitSystem::UsCustomary } else { UnitSystem::Si };
            all.push((format!("drawing set of {name} on {}", size.name()), set(&worked, size, units)));
            all.push((format!("load plan of {name} on {}", size.name()), loads(&worked, size, units)));
        }
    }
    all
}

fn words_of(page: &Page) -> Vec<&Words> {
    let words = page.things.iter().filter_map(|thing| match thing {
        OnPage::Words(words) => Some(words),
        _ => None,
    });
    words.collect()
}

/// Words on the page itself and in its pictures.
fn all_words(page: &Page) -> Vec<&str> {
    let words = page.things.iter().flat_map(|thing| match thing {
        OnPage::Words(words) => vec![words.words.as_str()],
        OnPage::Picture { drawing, .. } => drawing.words().collect(),
        OnPage::Line { .. } | OnPage::Area { .. } => Vec::new(),
    });
    words.collect()
}

/// The box of words from the line they stand on to the top of capitals, mm.
fn box_of(words: &Words) -> (DVec2, DVec2) {
    let width = gantline_drawing::letter_width::width_em(&words.words, words.face) * words.size_mm;
    (words.at_mm, words.at_mm + DVec2::new(width, words.size_mm * gantline_drawing::text::CAP_PER_EM))
}

/// The box of a picture, mm.
fn picture_box(drawing_scale: f64, window: Bounds, at_mm: DVec2) -> (DVec2, DVec2) {
    (at_mm, at_mm + window.size_m() / drawing_scale)
}

fn overlap(a: (DVec2, DVec2), b: (DVec2, DVec2)) -> bool {
    a.0.x < b.1.x && b.0.x < a.1.x && a.0.y < b.1.y && b.0.y < a.1.y
}

#[test]
fn nothing_on_a_sheet_is_cut_off_or_stands_on_something_else() {
    for (name, paper) in all_papers() {
        for page in &paper.pages {
            let what = format!("{name}, {:?}", page.bookmark);
            let words: Vec<(&str, (DVec2, DVec2))> =
                words_of(page).into_iter().map(|words| (words.words.as_str(), box_of(words))).collect();
            let pictures: Vec<(DVec2, DVec2)> = page
                .things
                .iter()
                .filter_map(|thing| match thing {
                    OnPage::Picture { drawing, window, at_mm } => {
                        Some(picture_box(drawing.scale.m_per_mm, *window, *at_mm))
                    }
                    _ => None,
                })
                .collect();
            for (index, (text, one)) in words.iter().enumerate() {
                let inside = one.0.x >= 20.0 && one.1.x <= page.size_mm.x - 10.0;
                let inside = inside && one.0.y >= 10.0 && one.1.y <= page.size_mm.y - 10.0;
                assert!(inside, "{what}: {text:?} leaves the frame: {one:?}");
                for (other, second) in &words[index + 1..] {
                    assert!(!overlap(*one, *second), "{what}: {text:?} and {other:?}");
                }
                assert!(!pictures.iter().any(|picture| overlap(*one, *picture)), "{what}: {text:?} on a picture");
            }
            for picture in &pictures {
                let inside = picture.0.x >= 19.9 && picture.1.x <= page.size_mm.x - 9.9;
                assert!(inside && picture.0.y >= 9.9 && picture.1.y <= page.size_mm.y - 9.9, "{what}: {picture:?}");
            }
        }
    }
}

#[test]
fn every_sheet_says_what_it_is_and_what_may_be_done_with_it() {
    for (name, paper) in all_papers() {
        let count = paper.pages.len();
        let mut numbers = std::collections::BTreeSet::new();
        for (index, page) in paper.pages.iter().enumerate() {
            let said = all_words(page).join(" ");
            let number = page.bookmark.as_deref().and_then(|name| name.split(' ').next()).unwrap().to_owned();
            let of_all = format!("sheet {} of {count}", index + 1);
            let squeezed: String = said.split_whitespace().collect();
            let caution: String = CAUTION.split_whitespace().collect();
            for word in [number.as_str(), &of_all, "2026-03-31", "Rev.", "Prints "] {
                assert!(said.contains(word), "{name}, {number}: {word} is missing");
            }
            assert!(squeezed.contains(&caution), "{name}, {number}");
            assert!(numbers.insert(number), "{name}: a number stands twice");
        }
    }
    let worked = Worked::of(SMALL);
    let hash = gantline_plan::file::content_hash(&worked.plan).unwrap();
    for page in set(&worked, PaperSize::A3, UnitSystem::Si).pages {
        let said: String = all_words(&page).concat().split_whitespace().collect();
        assert!(said.contains(&hash), "{:?}", page.bookmark);
    }
}

#[test]
fn every_base_is_on_the_roof_plan_in_the_tables_and_on_the_load_plan() {
    for text in [SMALL, COURTYARD, LARGE] {
        let worked = Worked::of(text);
        let (set, loads) = (set(&worked, PaperSize::A1, UnitSystem::Si), loads(&worked, PaperSize::A1, UnitSystem::Si));
        let said_on = |paper: &Paper, series: char| {
            let pages = paper.pages.iter().filter(|page| page.bookmark.as_deref().unwrap().starts_with(series));
            pages.flat_map(all_words).map(str::to_owned).collect::<Vec<_>>()
        };
        let (roof, table, load) = (said_on(&set, 'R'), said_on(&set, 'T'), said_on(&loads, 'L'));
        for (id, placement) in &worked.plan.placements {
            let tag = &placement.tag.0;
            let Some(frame) = worked.assessment.units[id].frame else { continue };
            for (words, where_) in [(&roof, "roof plan"), (&table, "table"), (&load, "load plan")] {
                assert!(words.contains(tag), "{tag} is not on the {where_}");
            }
            let x = length(frame.at.x, UnitSystem::Si);
            assert!(table.contains(&x) && load.contains(&x), "{tag}: {x}");
        }
    }
}

#[test]
fn a_plan_on_one_sheet_is_shown_whole_at_a_usual_scale() {
    let worked = Worked::of(SMALL);
    let paper = set(&worked, PaperSize::A1, UnitSystem::Si);
    let OnPage::Picture { drawing, window, .. } = &paper.pages[0].things[0] else { panic!("the plan comes first") };
    let bounds = drawing.bounds().unwrap();
    assert!(bounds.min_m.cmpge(window.min_m).all() && bounds.max_m.cmple(window.max_m).all());
    // 15 m by 9 m at 1:25 are 600 mm by 360 mm; a room of 669 mm by 562 mm has no place for them at 1:20.
    assert!((drawing.scale.m_per_mm - 0.025).abs() < 1e-12);
    assert!(all_words(&paper.pages[0]).contains(&"Prints at 1:25 on A1"));
    let customary = set(&worked, PaperSize::ArchD, UnitSystem::UsCustomary);
    assert!(all_words(&customary.pages[0]).contains(&"Prints at 1/2\" = 1'-0\" on ARCH D"));
    assert!((customary.pages[0].size_mm - DVec2::new(36.0, 24.0) * 25.4).length() < 1e-9);
}

#[test]
fn a_plan_too_large_for_a_sheet_goes_over_several_with_their_numbers_at_the_seams() {
    let worked = Worked::of(LARGE);
    let paper = set(&worked, PaperSize::A1, UnitSystem::Si);
    let parts: Vec<&Page> =
        paper.pages.iter().filter(|page| page.bookmark.as_deref().unwrap().starts_with('R')).collect();
    assert!(parts.len() > 1);
    for frame in worked.assessment.units.values().filter_map(|unit| unit.frame) {
        let shown = parts.iter().any(|page| match &page.things[0] {
            OnPage::Picture { window, .. } => Bounds::around(frame.at, 0.0).meets(window),
            _ => false,
        });
        assert!(shown, "a base at {} is on no part", frame.at);
    }
    assert!(all_words(parts[0]).contains(&"continues on R-02"));
}

#[test]
fn the_load_plan_has_the_sets_of_the_assessment_with_level_and_factors() {
    let worked = Worked::of(SMALL);
    let paper = loads(&worked, PaperSize::A1, UnitSystem::Si);
    let said: Vec<&str> = paper.pages.iter().flat_map(all_words).collect();
    let squeezed: String = said.concat().split_whitespace().collect();
    for unit in worked.assessment.units.values() {
        for result in &unit.reactions.as_ref().unwrap().combinations {
            let inside: String = result.inside.split_whitespace().collect();
            assert!(squeezed.contains(&inside), "{}", result.inside);
            assert!(squeezed.contains(&format!("{}level", result.level.name().replace(' ', ""))));
            let Some(set) = result.extreme(Component::M, Sense::Max) else { continue };
            let my = digits(Kind::Moment, set.concurrent[4], UnitSystem::Si);
            assert!(said.contains(&my.as_str()), "{my}");
        }
    }
}

#[test]
fn a_unit_without_parts_is_said_not_to_be_checked() {
    let mut plan = Worked::of(SMALL).plan;
    let first = plan.placements.values_mut().next().unwrap();
    first.make_up.mast = PartId("no-such-mast".to_owned());
    let tag = first.tag.0.clone();
    let worked = Worked::from(plan);
    let (set, loads) = (set(&worked, PaperSize::A1, UnitSystem::Si), loads(&worked, PaperSize::A1, UnitSystem::Si));
    let said = |paper: &Paper| paper.pages.iter().flat_map(all_words).collect::<Vec<_>>().join(" ");
    assert!(said(&loads).contains("not checked: "));
    assert!(said(&set).contains(&format!("Not drawn, as something of them is missing: {tag}.")));
}

#[test]
fn a_plan_with_nothing_on_it_has_a_sheet_that_says_so() {
    let mut plan = Worked::of(SMALL).plan;
    (plan.roofs, plan.obstacles, plan.placements) = Default::default();
    let worked = Worked::from(plan);
    for paper in [set(&worked, PaperSize::A3, UnitSystem::Si), loads(&worked, PaperSize::A3, UnitSystem::Si)] {
        assert_eq!(paper.pages.len(), 1);
        assert!(all_words(&paper.pages[0]).join(" ").contains("There is nothing on the plan to be drawn"));
    }
}
