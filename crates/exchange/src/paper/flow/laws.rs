//! What holds for every text on pages: nothing beyond the margins, no words on words, every word once and in order.

use std::sync::Arc;
use std::time::Instant;

use gantline_drawing::{Drawing, Layer, Mark, Pen, Scale};
use glam::DVec2;
use proptest::prelude::*;

use super::{Format, Sheet, lay_out};
use crate::paper::block::{Block, Cell, Column, Look, Row, Table};
use crate::paper::formula::parse;
use crate::paper::ink::Hand;
use crate::paper::measure::width_mm;
use crate::paper::page::{OnPage, Page, Words};

fn sheet() -> Sheet {
    Sheet {
        format: Format::A4,
        head_left: "Invented building, north roof".to_owned(),
        head_right: "revision 3, 2026-05-04".to_owned(),
        foot: "for planning".to_owned(),
    }
}

fn heading(level: u8, words: &str) -> Block {
    Block::Heading { level, words: words.to_owned() }
}

fn paragraph(words: &str, look: Look) -> Block {
    Block::Paragraph { words: words.to_owned(), look }
}

fn table(columns: usize, rows: impl IntoIterator<Item = Vec<String>>) -> Block {
    let column =
        |index: usize| Column { head: format!("head {index}"), share: 1.0 + index as f64, is_figures: index % 2 == 1 };
    let rows = rows
        .into_iter()
        .enumerate()
        .map(|(index, cells)| Row { cells: cells.into_iter().map(Cell::from).collect(), is_strong: index % 7 == 3 });
    Block::Table(Table { columns: (0..columns).map(column).collect(), rows: rows.collect() })
}

fn drawing(width_m: f64, height_m: f64) -> Arc<Drawing> {
    let points = vec![DVec2::ZERO, DVec2::new(width_m, height_m)];
    Arc::new(Drawing::of(Scale::one_to(100.0), vec![Mark::line(Layer::Outline, Pen::Outline, points)]))
}

fn words_of(page: &Page) -> impl Iterator<Item = &Words> {
    page.things.iter().filter_map(|thing| if let OnPage::Words(words) = thing { Some(words) } else { None })
}

/// Words between head and foot, all pages in a row, without blanks.
fn text_of(pages: &[Page], sheet: &Sheet) -> String {
    let (top, low) = (sheet.top_left_mm().y, sheet.top_left_mm().y - sheet.height_mm());
    let inside = pages.iter().flat_map(words_of).filter(|words| words.at_mm.y <= top && words.at_mm.y >= low);
    inside.flat_map(|words| words.words.chars()).filter(|letter| !letter.is_whitespace()).collect()
}

/// Left, right, low and high end of words; brackets and the like reach a little farther.
fn extent(words: &Words) -> [f64; 4] {
    let hand = Hand { face: words.face, size_mm: words.size_mm, ink: words.ink };
    let (x, y) = (words.at_mm.x, words.at_mm.y);
    [x, x + width_mm(&words.words, hand), y - 0.2 * words.size_mm, y + 0.7 * words.size_mm]
}

fn holds(pages: &[Page], sheet: &Sheet) {
    let left = sheet.top_left_mm().x;
    let right = left + sheet.width_mm();
    let (top, low) = (sheet.top_left_mm().y, sheet.top_left_mm().y - sheet.height_mm());
    assert!(!pages.is_empty());
    for (index, page) in pages.iter().enumerate() {
        let mut boxes: Vec<([f64; 4], &str)> =
            words_of(page).map(|words| (extent(words), words.words.as_str())).collect();
        for ([from, to, down, up], words) in &boxes {
            assert!(*from >= left - 1e-6 && *to <= right + 1e-6, "page {index}: {words:?} from {from} to {to}");
            assert!(*down > 0.0 && *up < sheet.format.size_mm().y, "page {index}: {words:?}");
            let is_around = *down > top || *up < low;
            assert!(
                is_around || *down >= low - 1e-6 && *up <= top + 1e-6,
                "page {index}: {words:?} from {down} to {up}"
            );
        }
        boxes.sort_by(|a, b| a.0[2].total_cmp(&b.0[2]));
        for (index, (a, words)) in boxes.iter().enumerate() {
            for (b, others) in boxes.iter().skip(index + 1).take_while(|(b, _)| b[2] < a[3] - 1e-6) {
                assert!(a[1] <= b[0] + 1e-6 || b[1] <= a[0] + 1e-6, "{words:?} on {others:?}");
            }
        }
        for thing in &page.things {
            match thing {
                OnPage::Line { points_mm, .. } => {
                    assert!(points_mm.iter().all(|at| at.x >= left - 1e-6 && at.x <= right + 1e-6 && at.y > 0.0));
                }
                OnPage::Picture { drawing, window, at_mm } => {
                    let end = *at_mm + window.size_m() / drawing.scale.m_per_mm;
                    assert!(
                        at_mm.x >= left - 1e-6 && end.x <= right + 1e-6 && at_mm.y >= low - 1e-6 && end.y <= top + 1e-6
                    );
                }
                OnPage::Words(_) | OnPage::Area { .. } => {}
            }
        }
    }
}

fn without_blanks(words: &str) -> String {
    words.chars().filter(|letter| !letter.is_whitespace()).collect()
}

#[test]
fn every_word_of_a_report_stands_on_its_pages_once_and_in_order() {
    let mut blocks = Vec::new();
    let mut expected = String::new();
    for chapter in 0..12 {
        let title = format!("Chapter {chapter} of the report");
        let body = format!("In chapter {chapter} the rope hangs from the arm and the arm leans on its mast. ")
            .repeat(9 + chapter);
        let item = format!("an item of chapter {chapter}");
        let remark = "Source: invented.";
        blocks.extend([
            heading(1 + u8::from(chapter % 3 != 0), &title),
            paragraph(&body, Look::Plain),
            paragraph(&item, Look::Item),
            paragraph("Nobody hangs from a rope by this paper alone.", Look::Caution),
            Block::Formula { formula: parse("a = b + c"), source: "EN 1990".to_owned() },
            paragraph(remark, Look::Remark),
        ]);
        // The dot of an item is put down after its words.
        let fixed = "•Nobody hangs from a rope by this paper alone.a = b + cEN 1990";
        expected.extend([title.as_str(), &body, &item, fixed, remark]);
    }
    let pages = lay_out(&blocks, &sheet());
    holds(&pages, &sheet());
    assert!(pages.len() > 4);
    assert_eq!(text_of(&pages, &sheet()), without_blanks(&expected));
    assert_eq!(pages, lay_out(&blocks, &sheet()), "the same text, the same pages");
    let count = pages.len();
    for (index, page) in pages.iter().enumerate() {
        let number = format!("page {} of {count}", index + 1);
        assert!(words_of(page).any(|words| words.words == number));
    }
}

#[test]
fn no_heading_is_the_last_on_a_page() {
    for lines in 0..120 {
        let blocks = [
            paragraph(&"line\n".repeat(lines), Look::Plain),
            heading(1, "Chapter heading"),
            heading(2, "Section heading"),
            table(2, (0..3).map(|row| vec![format!("row {row}"), "1.0".to_owned()])),
        ];
        let pages = lay_out(&blocks, &sheet());
        let page_of = |words: &str| pages.iter().position(|page| words_of(page).any(|found| found.words == words));
        assert_eq!(page_of("Chapter heading"), page_of("head 0"), "{lines}");
        assert_eq!(page_of("Section heading"), page_of("row 0"), "{lines}");
    }
}

#[test]
fn the_head_of_a_table_stands_on_each_of_its_pages_and_no_row_is_broken() {
    let rows = (0..300).map(|row| vec![format!("row {row}"), "0.50\n1.50".to_owned(), format!("end {row}")]);
    let pages = lay_out(&[table(3, rows)], &sheet());
    holds(&pages, &sheet());
    assert!(pages.len() > 5);
    for page in &pages {
        assert_eq!(words_of(page).filter(|words| words.words == "head 1").count(), 1);
    }
    for row in 0..300 {
        let has = |page: &&Page, words: &str| words_of(page).any(|found| found.words == words);
        let page = pages.iter().find(|page| has(page, &format!("row {row}"))).unwrap();
        assert!(has(&page, &format!("end {row}")));
    }
}

#[test]
fn no_figure_is_parted_from_its_unit_while_other_columns_have_room() {
    let column = |head: &str, share: f64| Column { head: head.to_owned(), share, is_figures: share < 1.0 };
    let cells = ["-0.009444 kNm", "180.0°", "a long tale of what it is about"];
    let row = Row { cells: cells.map(Cell::from).to_vec(), is_strong: false };
    let columns = vec![column("Mx", 0.05), column("Setback", 0.01), column("What it is", 6.0)];
    let pages = lay_out(&[Block::Table(Table { columns, rows: vec![row] })], &sheet());
    holds(&pages, &sheet());
    for words in cells.into_iter().chain(["Setback"]) {
        assert!(words_of(&pages[0]).any(|found| found.words.replace('\u{a0}', " ") == words), "{words}");
    }
}

#[test]
fn words_that_lead_on_to_a_table_stand_on_its_page() {
    for lines in 30..60 {
        let rows = (0..9).map(|row| vec![format!("row {row}")]);
        let blocks =
            [paragraph(&"line\n".repeat(lines), Look::Plain), paragraph("Leads on:", Look::Plain), table(1, rows)];
        let pages = lay_out(&blocks, &sheet());
        let page_of = |words: &str| pages.iter().position(|page| words_of(page).any(|found| found.words == words));
        assert_eq!(page_of("Leads on:"), page_of("row 0"), "{lines}");
    }
}

#[test]
fn figures_end_on_one_line() {
    let rows = [["1.00 m"], ["12.50 kN"], ["0.333"]].map(|cells| vec![String::new(), cells[0].to_owned()]);
    let pages = lay_out(&[table(2, rows)], &sheet());
    let ends: Vec<f64> = words_of(&pages[0])
        .filter(|words| words.words.contains('.') && words.words.starts_with(|letter: char| letter.is_ascii_digit()))
        .map(|words| extent(words)[1])
        .collect();
    assert_eq!(ends.len(), 3);
    assert!(ends.iter().all(|end| (end - ends[0]).abs() < 1e-9), "{ends:?}");
}

#[test]
fn what_belongs_together_is_on_one_page_unless_no_page_can_hold_it() {
    for lines in 30..70 {
        let blocks = [
            paragraph(&"line\n".repeat(lines), Look::Plain),
            Block::Together(vec![
                paragraph("first", Look::Plain),
                paragraph(&"more\n".repeat(15), Look::Plain),
                paragraph("last", Look::Plain),
            ]),
        ];
        let pages = lay_out(&blocks, &sheet());
        let page_of = |words: &str| pages.iter().position(|page| words_of(page).any(|found| found.words == words));
        assert_eq!(page_of("first"), page_of("last"), "{lines}");
    }
    let blocks = [Block::Together(vec![heading(1, "Long"), paragraph(&"more\n".repeat(200), Look::Plain)])];
    assert_eq!(lay_out(&blocks, &sheet()).len(), 4, "200 lines of 4.3 mm on pages of 251 mm");
}

#[test]
fn a_drawing_keeps_its_scale_and_one_that_is_too_large_is_cut_and_says_so() {
    let blocks = [
        Block::Picture { drawing: drawing(10.0, 5.0), caption: "Section".to_owned() },
        Block::Picture { drawing: drawing(90.0, 60.0), caption: "Plan".to_owned() },
    ];
    let pages = lay_out(&blocks, &sheet());
    holds(&pages, &sheet());
    let text = text_of(&pages, &sheet());
    assert!(text.starts_with("SectionPlanCut:atitsscalethedrawingis901by601mm"), "{text}");
    let pictures = pages.iter().flat_map(|page| &page.things).filter_map(|thing| match thing {
        OnPage::Picture { window, .. } => Some(window.size_m()),
        _ => None,
    });
    let sizes: Vec<DVec2> = pictures.collect();
    assert!((sizes[0] - DVec2::new(10.1, 5.1)).length() < 1e-9, "half a millimeter of rim on each side at 1 to 100");
    assert!((sizes[1].x - sheet().width_mm() * 0.1).abs() < 1e-9);
}

#[test]
fn the_list_of_contents_tells_the_pages_of_the_chapters() {
    let mut blocks = vec![Block::Contents];
    for chapter in ["Basis", "Units", "Bases"] {
        blocks.extend([
            Block::NewPage,
            heading(1, chapter),
            paragraph(&"line\n".repeat(70), Look::Plain),
            heading(2, "Part"),
        ]);
        blocks.push(paragraph("end", Look::Plain));
    }
    let pages = lay_out(&blocks, &sheet());
    holds(&pages, &sheet());
    assert_eq!(pages.len(), 7);
    let first: Vec<&str> = words_of(&pages[0]).map(|words| words.words.as_str()).collect();
    let first = first.join(" ");
    assert!(first.starts_with("Contents Basis Part Units Part Bases Part 2 3 4 5 6 7 "), "{first}");
    assert_eq!(pages[1].bookmark.as_deref(), Some("Basis"));
    assert_eq!(pages[2].bookmark, None);
    assert_eq!(pages[5].bookmark.as_deref(), Some("Bases"));
    let many: Vec<Block> = std::iter::once(Block::Contents)
        .chain((0..150).flat_map(|unit| [heading(if unit % 30 == 0 { 1 } else { 2 }, &format!("Unit {unit}"))]))
        .collect();
    let pages = lay_out(&many, &sheet());
    holds(&pages, &sheet());
    let list: Vec<&str> = words_of(&pages[0]).map(|words| words.words.as_str()).take(6).collect();
    assert_eq!(list, ["Contents", "Unit 0", "Unit 30", "Unit 60", "Unit 90", "Unit 120"], "too many for sections");
}

#[test]
fn hostile_texts_do_no_harm() {
    let long = "x".repeat(5000);
    let none = Table { columns: Vec::new(), rows: vec![Row { cells: vec!["lost".into()], is_strong: false }] };
    let odd = Table {
        columns: [f64::NAN, -1.0, f64::INFINITY, 0.0]
            .map(|share| Column { head: long.clone(), share, is_figures: true })
            .to_vec(),
        rows: vec![Row {
            cells: vec![long.as_str().into(), Cell::Formula(parse(&"a_b^2/c + ".repeat(300)))],
            is_strong: true,
        }],
    };
    let blocks = [
        heading(0, &long),
        heading(255, ""),
        paragraph(&long, Look::Caution),
        paragraph("\u{7}\u{202e}\u{feff} שלום عرض 混凝土 \u{1f3d7}\r\n\t", Look::Item),
        paragraph("", Look::Remark),
        Block::Table(none),
        Block::Table(odd),
        table(0, []),
        table(3, []),
        table(60, (0..3).map(|row| (0..60).map(|column| format!("{row}/{column}")).collect())),
        Block::Formula { formula: parse(&"(a + b)/(c·d) = ".repeat(400)), source: long.clone() },
        Block::Picture { drawing: Arc::new(Drawing::of(Scale::one_to(100.0), Vec::new())), caption: long.clone() },
        Block::Picture { drawing: drawing(f64::NAN, 1.0), caption: String::new() },
        Block::Picture { drawing: drawing(0.0, 0.0), caption: String::new() },
        Block::Together(Vec::new()),
        Block::NewPage,
        Block::NewPage,
    ];
    let pages = lay_out(&blocks, &sheet());
    holds(&pages, &sheet());
    let letters = text_of(&pages, &sheet()).chars().filter(|letter| *letter == 'x').count();
    assert_eq!(letters, 9 * 5000, "three texts, four heads, a cell, a source and a caption, none lost");
    assert_eq!(lay_out(&[], &sheet()).len(), 1);
}

#[test]
fn ten_thousand_rows_fill_their_pages_in_order_and_soon() {
    let rows = (0..10_000).map(|row| vec![format!("r{row}"), "12.345 kN".to_owned(), "-0.100 kN·m".to_owned()]);
    let blocks = [table(3, rows)];
    let begun = Instant::now();
    let pages = lay_out(&blocks, &sheet());
    let taken = begun.elapsed();
    println!("{} pages in {taken:?}", pages.len());
    assert!(pages.len() > 200);
    assert!(taken.as_secs() < 20, "{taken:?}, even in a debug build on a busy machine");
    let rows: Vec<&str> = pages
        .iter()
        .flat_map(words_of)
        .map(|words| words.words.as_str())
        .filter(|words| words.starts_with('r') && words.len() < 6 && !words.contains('e'))
        .collect();
    assert_eq!(rows.len(), 10_000);
    assert!(rows.iter().enumerate().all(|(index, row)| *row == format!("r{index}")));
}

fn any_block() -> impl Strategy<Value = Block> {
    let words = "[a-z ·=0-9/α√()\n-]{0,300}";
    let leaf = prop_oneof![
        (0..5_u8, "[a-z ]{0,90}").prop_map(|(level, words)| Block::Heading { level, words }),
        (words, 0..4_usize).prop_map(|(words, look)| {
            let look = [Look::Plain, Look::Remark, Look::Caution, Look::Item][look];
            Block::Paragraph { words, look }
        }),
        (words, "[a-z ]{0,120}").prop_map(|(words, source)| Block::Formula { formula: parse(&words), source }),
        (0..20_usize, proptest::collection::vec(proptest::collection::vec("[a-z 0-9.]{0,60}", 0..8), 0..30))
            .prop_map(|(columns, rows)| table(columns, rows)),
        (0.1..40.0_f64, 0.1..40.0_f64, "[a-z ]{0,40}")
            .prop_map(|(wide, high, caption)| Block::Picture { drawing: drawing(wide, high), caption }),
        Just(Block::NewPage),
        Just(Block::Contents),
    ];
    leaf.prop_recursive(2, 8, 4, |inner| proptest::collection::vec(inner, 0..4).prop_map(Block::Together))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn any_text_stays_within_its_margins_with_no_words_on_words(
        blocks in proptest::collection::vec(any_block(), 0..25),
        is_letter in any::<bool>(),
    ) {
        let sheet = Sheet { format: if is_letter { Format::Letter } else { Format::A4 }, ..sheet() };
        holds(&lay_out(&blocks, &sheet), &sheet);
    }
}
