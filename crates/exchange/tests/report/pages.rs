//! The report laid out on pages: their size, what stands at head and foot of each, and that nothing of it is lost on the way.

use std::collections::BTreeSet;

use gantline_exchange::documents::Imprint;
use gantline_exchange::paper::{OnPage, Page, Paper};
use gantline_exchange::report::report_on_paper;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::file::read;
use gantline_plan::quantity::UnitSystem;

use super::reading::{COURTYARD, SMALL};

fn laid_out(text: &str, units: UnitSystem) -> Paper {
    let plan = read(text.as_bytes()).unwrap();
    report_on_paper(&plan, &assess(&plan, &mut Memo::new()), &Imprint::of(&plan, Some("2026-03-31")), units)
}

fn words(page: &Page) -> Vec<&str> {
    let words = page.things.iter().filter_map(|thing| match thing {
        OnPage::Words(words) => Some(words.words.as_str()),
        _ => None,
    });
    words.collect()
}

#[test]
fn every_page_has_its_size_and_says_what_it_is_of() {
    for (units, size) in [(UnitSystem::Si, [210.0, 297.0]), (UnitSystem::UsCustomary, [215.9, 279.4])] {
        let paper = laid_out(SMALL, units);
        assert_eq!(paper.date, Some((2026, 3, 31)));
        assert!(paper.pages.len() > 20, "{} pages", paper.pages.len());
        for page in &paper.pages {
            assert_eq!(page.size_mm.to_array(), size);
            let told = words(page).join(" ");
            assert!(told.contains("Calculation report: Reading room"), "{told}");
            assert!(told.contains("2026-03-31") && told.contains("not a permit to hang from a rope"), "{told}");
        }
    }
}

#[test]
fn every_tag_and_every_finding_is_on_some_page() {
    let plan = read(COURTYARD.as_bytes()).unwrap();
    let assessment = assess(&plan, &mut Memo::new());
    let paper = laid_out(COURTYARD, UnitSystem::Si);
    let told: Vec<String> = paper.pages.iter().flat_map(words).map(str::to_owned).collect();
    let all = told.join(" ");
    let tags: BTreeSet<&str> = plan.placements.values().map(|placement| placement.tag.0.as_str()).collect();
    assert!(tags.iter().all(|tag| all.contains(tag)));
    // Long words are broken over lines: letters alone are looked for.
    let letters = |words: &str| words.chars().filter(|letter| letter.is_alphanumeric()).collect::<String>();
    let squeezed = letters(&all);
    for check in assessment.findings() {
        assert!(squeezed.contains(&letters(check.code.name())), "{check:?}");
    }
}
