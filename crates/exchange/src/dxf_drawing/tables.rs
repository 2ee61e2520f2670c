//! What a file begins with: header, and the tables of line types, layers, text styles and blocks.

use gantline_drawing::Pen;
use gantline_plan::geometry::bounds::Bounds;

use super::blocks::Block;
use super::entities::{NARROW, NARROW_TEXT_STYLE, Placing, TEXT_STYLE};
use super::fixed;
use super::layers::{Layers, Look, pen_word};
use super::pairs::{Handle, Pairs};

/// Writes the header. `units` is the number of the unit in the format's list, `measurement` that of the reader's patterns,
/// `bounds` what the model fills, in units.
pub fn header(pairs: &mut Pairs, (units, measurement): (i64, i64), bounds: Bounds, next_free: Handle) {
    pairs.section("HEADER");
    let mut variable = |name: &str, write: &dyn Fn(&mut Pairs)| {
        pairs.word(9, name);
        write(pairs);
    };
    variable("$ACADVER", &|pairs| pairs.word(1, "AC1015"));
    variable("$DWGCODEPAGE", &|pairs| pairs.word(3, "ANSI_1252"));
    variable("$INSBASE", &|pairs| pairs.point(10, glam::DVec2::ZERO));
    variable("$EXTMIN", &|pairs| pairs.point(10, bounds.min_m));
    variable("$EXTMAX", &|pairs| pairs.point(10, bounds.max_m));
    variable("$LIMMIN", &|pairs| pairs.flat_point(10, bounds.min_m));
    variable("$LIMMAX", &|pairs| pairs.flat_point(10, bounds.max_m));
    variable("$INSUNITS", &|pairs| pairs.whole(70, units));
    variable("$MEASUREMENT", &|pairs| pairs.whole(70, measurement));
    // Dashes are true to the drawing's own scale.
    variable("$LTSCALE", &|pairs| pairs.number(40, 1.0));
    variable("$PSLTSCALE", &|pairs| pairs.whole(70, 0));
    variable("$LWDISPLAY", &|pairs| pairs.whole(290, 1));
    variable("$HANDSEED", &|pairs| pairs.handle(5, next_free));
    pairs.end_section();
}

/// Writes the classes of the objects that the format has no built-in name for.
pub fn classes(pairs: &mut Pairs) {
    pairs.section("CLASSES");
    let database = "ObjectDBX Classes";
    let known = [
        ("ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault", database, 0, 0),
        ("ACDBPLACEHOLDER", "AcDbPlaceHolder", database, 0, 0),
        ("LAYOUT", "AcDbLayout", database, 0, 0),
        ("WIPEOUTVARIABLES", "AcDbWipeoutVariables", "WipeOut", 0, 0),
        ("WIPEOUT", "AcDbWipeout", "WipeOut", 127, 1),
    ];
    for (name, class, application, may, is_drawn) in known {
        pairs.word(0, "CLASS");
        pairs.word(1, name);
        pairs.word(2, class);
        pairs.word(3, application);
        pairs.whole(90, may);
        pairs.whole(280, 0);
        pairs.whole(281, is_drawn);
    }
    pairs.end_section();
}

/// Writes the tables.
pub fn tables(pairs: &mut Pairs, placing: &Placing, layers: &Layers, blocks: &[Block<'_>], bounds: Bounds) {
    pairs.section("TABLES");
    viewports(pairs, bounds);
    line_types(pairs, placing, layers);
    layer_table(pairs, layers);
    text_styles(pairs);
    for (name, handle) in [("VIEW", fixed::VIEWS), ("UCS", fixed::COORDINATE_SYSTEMS)] {
        begin_table(pairs, name, handle, 0);
        pairs.word(0, "ENDTAB");
    }
    begin_table(pairs, "APPID", fixed::APPLICATIONS, 1);
    begin_record(pairs, "APPID", fixed::APPLICATIONS, "AcDbRegAppTableRecord", "ACAD");
    pairs.whole(70, 0);
    pairs.word(0, "ENDTAB");
    dimension_styles(pairs);
    block_records(pairs, blocks);
    pairs.end_section();
}

fn begin_table(pairs: &mut Pairs, name: &str, handle: Handle, count: usize) {
    pairs.word(0, "TABLE");
    pairs.word(2, name);
    pairs.handle(5, handle);
    pairs.handle(330, Handle(0));
    pairs.word(100, "AcDbSymbolTable");
    pairs.count(70, count);
}

/// Begins a record with a handle of its own.
fn begin_record(pairs: &mut Pairs, kind: &str, table: Handle, class: &str, name: &str) {
    let handle = pairs.mint();
    begin_record_of(pairs, kind, (5, handle), table, class, name);
}

fn begin_record_of(
    pairs: &mut Pairs,
    kind: &str,
    (code, handle): (u16, Handle),
    table: Handle,
    class: &str,
    name: &str,
) {
    pairs.word(0, kind);
    pairs.handle(code, handle);
    pairs.handle(330, table);
    pairs.word(100, "AcDbSymbolTableRecord");
    pairs.word(100, class);
    pairs.word(2, name);
}

/// One view that shows everything.
fn viewports(pairs: &mut Pairs, bounds: Bounds) {
    /// Width of a screen by its height, and how much of the view the drawing fills.
    const ASPECT: f64 = 1.6;
    const ROOM: f64 = 1.1;
    let (size, middle) = (bounds.size_m(), (bounds.min_m + bounds.max_m) / 2.0);
    begin_table(pairs, "VPORT", fixed::VIEWPORTS, 1);
    begin_record(pairs, "VPORT", fixed::VIEWPORTS, "AcDbViewportTableRecord", "*Active");
    pairs.whole(70, 0);
    pairs.flat_point(10, glam::DVec2::ZERO);
    pairs.flat_point(11, glam::DVec2::ONE);
    pairs.flat_point(12, middle);
    pairs.flat_point(13, glam::DVec2::ZERO);
    pairs.flat_point(14, glam::DVec2::ONE);
    pairs.flat_point(15, glam::DVec2::ONE);
    pairs.flat_point(16, glam::DVec2::ZERO);
    pairs.number(36, 1.0);
    pairs.point(17, glam::DVec2::ZERO);
    pairs.number(40, (size.y.max(size.x / ASPECT) * ROOM).max(1.0));
    pairs.number(41, ASPECT);
    pairs.number(42, 50.0);
    for code in [43, 44, 50, 51] {
        pairs.number(code, 0.0);
    }
    for (code, value) in [(71, 0), (72, 100), (73, 1), (74, 3), (75, 0), (76, 0), (77, 0), (78, 0)] {
        pairs.whole(code, value);
    }
    pairs.word(0, "ENDTAB");
}

fn line_types(pairs: &mut Pairs, placing: &Placing, layers: &Layers) {
    let mut pens: Vec<Pen> = layers.values().filter_map(|look| look.dashes_of).collect();
    pens.sort_unstable();
    pens.dedup();
    begin_table(pairs, "LTYPE", fixed::LINE_TYPES, pens.len() + 3);
    for name in ["ByBlock", "ByLayer", "Continuous"] {
        line_type(pairs, name, &[]);
    }
    for pen in pens {
        // A space is a length below zero.
        let lengths = pen.dash_mm().iter().enumerate().map(|(index, &mm)| {
            let length = placing.scale.m(mm) * placing.per_m;
            if index % 2 == 0 { length } else { -length }
        });
        line_type(pairs, &line_type_name(pen), &lengths.collect::<Vec<_>>());
    }
    pairs.word(0, "ENDTAB");
}

fn line_type(pairs: &mut Pairs, name: &str, lengths: &[f64]) {
    begin_record(pairs, "LTYPE", fixed::LINE_TYPES, "AcDbLinetypeTableRecord", name);
    pairs.whole(70, 0);
    pairs.word(3, "");
    pairs.whole(72, 65);
    pairs.count(73, lengths.len());
    pairs.number(40, lengths.iter().map(|length| length.abs()).sum());
    for &length in lengths {
        pairs.number(49, length);
        pairs.whole(74, 0);
    }
}

fn line_type_name(pen: Pen) -> String {
    format!("GL-{}", pen_word(pen))
}

fn layer_table(pairs: &mut Pairs, layers: &Layers) {
    begin_table(pairs, "LAYER", fixed::LAYERS, layers.len() + 1);
    layer(pairs, "0", Look { color: 7, width: -3, dashes_of: None });
    for (name, look) in layers {
        layer(pairs, name, *look);
    }
    pairs.word(0, "ENDTAB");
}

fn layer(pairs: &mut Pairs, name: &str, look: Look) {
    begin_record(pairs, "LAYER", fixed::LAYERS, "AcDbLayerTableRecord", name);
    pairs.whole(70, 0);
    pairs.whole(62, i64::from(look.color));
    pairs.word(6, &look.dashes_of.map_or_else(|| "Continuous".to_owned(), line_type_name));
    pairs.whole(370, i64::from(look.width));
    pairs.handle(390, fixed::PLOT_STYLE);
}

fn text_styles(pairs: &mut Pairs) {
    let styles = [("Standard", 1.0), (TEXT_STYLE, 1.0), (NARROW_TEXT_STYLE, NARROW)];
    begin_table(pairs, "STYLE", fixed::TEXT_STYLES, styles.len());
    for (name, width) in styles {
        begin_record(pairs, "STYLE", fixed::TEXT_STYLES, "AcDbTextStyleTableRecord", name);
        pairs.whole(70, 0);
        pairs.number(40, 0.0);
        pairs.number(41, width);
        pairs.number(50, 0.0);
        pairs.whole(71, 0);
        pairs.number(42, 1.0);
        pairs.word(3, if name == "Standard" { "txt" } else { "arial.ttf" });
        pairs.word(4, "");
    }
    pairs.word(0, "ENDTAB");
}

fn dimension_styles(pairs: &mut Pairs) {
    begin_table(pairs, "DIMSTYLE", fixed::DIMENSION_STYLES, 1);
    pairs.word(100, "AcDbDimStyleTable");
    let handle = pairs.mint();
    let class = "AcDbDimStyleTableRecord";
    begin_record_of(pairs, "DIMSTYLE", (105, handle), fixed::DIMENSION_STYLES, class, "Standard");
    pairs.whole(70, 0);
    pairs.word(0, "ENDTAB");
}

fn block_records(pairs: &mut Pairs, blocks: &[Block<'_>]) {
    begin_table(pairs, "BLOCK_RECORD", fixed::BLOCK_RECORDS, blocks.len() + 2);
    let mut record = |name: &str, handle, layout| {
        begin_record_of(pairs, "BLOCK_RECORD", (5, handle), fixed::BLOCK_RECORDS, "AcDbBlockTableRecord", name);
        pairs.handle(340, layout);
    };
    record("*Model_Space", fixed::MODEL_RECORD, fixed::MODEL_LAYOUT);
    record("*Paper_Space", fixed::PAPER_RECORD, fixed::PAPER_LAYOUT);
    for block in blocks {
        record(&block.name, block.record, Handle(0));
    }
    pairs.word(0, "ENDTAB");
}
