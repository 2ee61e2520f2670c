//! Objects without a picture: dictionaries, the layouts of model and paper.

use super::fixed;
use super::pairs::{Handle, Pairs};

/// Writes the objects.
pub fn objects(pairs: &mut Pairs) {
    pairs.section("OBJECTS");
    dictionary(
        pairs,
        fixed::ROOT_DICTIONARY,
        Handle(0),
        &[
            ("ACAD_GROUP", fixed::GROUPS),
            ("ACAD_LAYOUT", fixed::LAYOUTS),
            ("ACAD_MLINESTYLE", fixed::MULTILINE_STYLES),
            ("ACAD_PLOTSTYLENAME", fixed::PLOT_STYLES),
            ("ACAD_WIPEOUT_VARS", fixed::COVER_VARIABLES),
        ],
    );
    dictionary(pairs, fixed::GROUPS, fixed::ROOT_DICTIONARY, &[]);
    let layouts = [("Layout1", fixed::PAPER_LAYOUT), ("Model", fixed::MODEL_LAYOUT)];
    dictionary(pairs, fixed::LAYOUTS, fixed::ROOT_DICTIONARY, &layouts);
    dictionary(pairs, fixed::MULTILINE_STYLES, fixed::ROOT_DICTIONARY, &[("Standard", fixed::MULTILINE_STYLE)]);
    plot_styles(pairs);
    multiline_style(pairs);
    layout(pairs, fixed::MODEL_LAYOUT, "Model", 0, fixed::MODEL_RECORD);
    layout(pairs, fixed::PAPER_LAYOUT, "Layout1", 1, fixed::PAPER_RECORD);
    // Paper that covers shows no frame.
    begin(pairs, "WIPEOUTVARIABLES", fixed::COVER_VARIABLES, fixed::ROOT_DICTIONARY);
    pairs.word(100, "AcDbWipeoutVariables");
    pairs.whole(70, 0);
    pairs.end_section();
}

fn begin(pairs: &mut Pairs, kind: &str, handle: Handle, owner: Handle) {
    pairs.word(0, kind);
    pairs.handle(5, handle);
    pairs.handle(330, owner);
}

fn dictionary(pairs: &mut Pairs, handle: Handle, owner: Handle, entries: &[(&str, Handle)]) {
    begin(pairs, "DICTIONARY", handle, owner);
    pairs.word(100, "AcDbDictionary");
    pairs.whole(281, 1);
    for &(name, entry) in entries {
        pairs.word(3, name);
        pairs.handle(350, entry);
    }
}

fn plot_styles(pairs: &mut Pairs) {
    begin(pairs, "ACDBDICTIONARYWDFLT", fixed::PLOT_STYLES, fixed::ROOT_DICTIONARY);
    pairs.word(100, "AcDbDictionary");
    pairs.whole(281, 1);
    pairs.word(3, "Normal");
    pairs.handle(350, fixed::PLOT_STYLE);
    pairs.word(100, "AcDbDictionaryWithDefault");
    pairs.handle(340, fixed::PLOT_STYLE);
    begin(pairs, "ACDBPLACEHOLDER", fixed::PLOT_STYLE, fixed::PLOT_STYLES);
}

/// The one that every file has: two lines, one unit apart.
fn multiline_style(pairs: &mut Pairs) {
    begin(pairs, "MLINESTYLE", fixed::MULTILINE_STYLE, fixed::MULTILINE_STYLES);
    pairs.word(100, "AcDbMlineStyle");
    pairs.word(2, "STANDARD");
    pairs.whole(70, 0);
    pairs.word(3, "");
    pairs.whole(62, 256);
    pairs.number(51, 90.0);
    pairs.number(52, 90.0);
    pairs.whole(71, 2);
    for offset in [0.5, -0.5] {
        pairs.number(49, offset);
        pairs.whole(62, 256);
        pairs.word(6, "BYLAYER");
    }
}

fn layout(pairs: &mut Pairs, handle: Handle, name: &str, order: i64, record: Handle) {
    begin(pairs, "LAYOUT", handle, fixed::LAYOUTS);
    pairs.word(100, "AcDbPlotSettings");
    for (code, word) in [(1, ""), (2, "none_device"), (4, "A3"), (6, "")] {
        pairs.word(code, word);
    }
    for (code, value) in [(40, 7.5), (41, 20.0), (42, 7.5), (43, 20.0), (44, 420.0), (45, 297.0)] {
        pairs.number(code, value);
    }
    for code in [46, 47, 48, 49, 140, 141] {
        pairs.number(code, 0.0);
    }
    pairs.number(142, 1.0);
    pairs.number(143, 1.0);
    // The model's layout says so in its flags.
    for (code, value) in [(70, if order == 0 { 1024 } else { 0 }), (72, 1), (73, 0), (74, 5)] {
        pairs.whole(code, value);
    }
    pairs.word(7, "");
    pairs.whole(75, 16);
    pairs.number(147, 1.0);
    pairs.number(148, 0.0);
    pairs.number(149, 0.0);
    pairs.word(100, "AcDbLayout");
    pairs.word(1, name);
    pairs.whole(70, 1);
    pairs.whole(71, order);
    pairs.flat_point(10, glam::DVec2::ZERO);
    pairs.flat_point(11, glam::DVec2::new(420.0, 297.0));
    pairs.point(12, glam::DVec2::ZERO);
    // Nothing is on it: the least corner lies beyond the greatest.
    pairs.point(14, glam::DVec2::splat(1e20));
    pairs.point(15, glam::DVec2::splat(-1e20));
    pairs.number(146, 0.0);
    pairs.point(13, glam::DVec2::ZERO);
    pairs.point(16, glam::DVec2::X);
    pairs.point(17, glam::DVec2::Y);
    pairs.whole(76, 0);
    pairs.handle(330, record);
}
