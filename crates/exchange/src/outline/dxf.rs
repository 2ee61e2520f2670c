//! Reads the line work of a DXF file, in text or binary, of any release.
//!
//! Own code, and not a package: a DXF file is a flat list of pairs of which an outline needs eight kinds of entity. The
//! package tried held 360 MB for 200,000 lines and passed over entities with a broken number without a word.

use std::collections::{BTreeMap, HashMap};
use std::sync::atomic::{AtomicBool, Ordering};

use encoding_rs::{Encoding, UTF_8, WINDOWS_1252};
use glam::DVec2;

use super::entity::{self, OpenPolyline, Shape};
use super::fault::{OutlineFault, Place};
use super::layer_list::LayerList;
use super::length_unit::LengthUnit;
use super::limits::{MOST_BLOCKS, MOST_LAYERS, MOST_PAIRS_OF_AN_ENTITY, MOST_PIECES};
use super::line_work::{LineWork, Measure};
use super::pairs::{Pair, Pairs, shown};
use super::unfold::{Block, unfold};

/// Reads a DXF file, until `stop` is set.
pub fn read(bytes: &[u8], stop: &AtomicBool) -> Result<LineWork, OutlineFault> {
    let mut reader = Reader::of(bytes, stop);
    reader.sections()?;
    let Reader { layers, blocks, drawn, mut passed_over, measure, said, .. } = reader;
    let traces = unfold(drawn, &blocks, &mut passed_over)?;
    let (layers, traces) = layers.sorted(traces);
    Ok(LineWork { measure, layers, traces, passed_over, said })
}

/// What is read so far.
struct Reader<'a> {
    stop: &'a AtomicBool,
    pairs: Pairs<'a>,
    waiting: Option<Pair<'a>>,
    encoding: &'static Encoding,
    layers: LayerList,
    blocks: HashMap<Vec<u8>, Block>,
    drawn: Vec<Shape>,
    pieces: usize,
    passed_over: BTreeMap<String, usize>,
    measure: Measure,
    said: Vec<String>,
}

impl<'a> Reader<'a> {
    fn of(bytes: &'a [u8], stop: &'a AtomicBool) -> Self {
        Self {
            stop,
            pairs: Pairs::of(bytes),
            waiting: None,
            encoding: WINDOWS_1252,
            layers: LayerList::default(),
            blocks: HashMap::new(),
            drawn: Vec::new(),
            pieces: 0,
            passed_over: BTreeMap::new(),
            measure: Measure::NotStated,
            said: Vec::new(),
        }
    }

    /// The next pair, which the file must have.
    fn next(&mut self, inside: &'static str) -> Result<Pair<'a>, OutlineFault> {
        if let Some(waiting) = self.waiting.take() {
            return Ok(waiting);
        }
        let place = self.pairs.place();
        self.pairs.next_pair()?.ok_or(OutlineFault::CutOff { place, inside })
    }

    fn sections(&mut self) -> Result<(), OutlineFault> {
        let first = self.pairs.next_pair().ok().flatten();
        if !first.is_some_and(|pair| pair.is(0, "SECTION")) {
            let what = "it does not begin with a section".to_owned();
            return Err(OutlineFault::NotADrawing { what });
        }
        self.waiting = first;
        let mut with_entities = false;
        loop {
            let pair = self.next("before its end mark")?;
            if pair.is(0, "EOF") {
                break;
            }
            if !pair.is(0, "SECTION") {
                let what = format!("a section is expected, not {} \"{}\"", pair.code, shown(pair.text()));
                return Err(OutlineFault::OutOfPlace { place: pair.place, what });
            }
            let name = self.next("before the name of a section")?;
            match name.text() {
                b"HEADER" => self.header()?,
                b"TABLES" => self.tables()?,
                b"BLOCKS" => self.blocks()?,
                b"ENTITIES" => {
                    with_entities = true;
                    let drawn = self.entities("in its entities", b"ENDSEC")?;
                    self.drawn.extend(drawn);
                }
                _ => while !self.next("in a section")?.is(0, "ENDSEC") {},
            }
        }
        if with_entities {
            return Ok(());
        }
        Err(OutlineFault::OutOfPlace { place: self.pairs.place(), what: "the file has no entities".to_owned() })
    }

    fn header(&mut self) -> Result<(), OutlineFault> {
        let mut variable: &[u8] = &[];
        let mut code_page = None;
        let mut is_unicode = false;
        loop {
            let pair = self.next("in its header")?;
            match (pair.code, variable) {
                (0, _) if pair.is(0, "ENDSEC") => break,
                (9, _) => {
                    variable = match pair.value {
                        super::pairs::Value::Text(text) => text,
                        _ => &[],
                    };
                }
                // From release 2007 (AC1021) on texts are UTF-8.
                (1, b"$ACADVER") => is_unicode = pair.text() >= b"AC1021".as_slice(),
                (3, b"$DWGCODEPAGE") => code_page = Encoding::for_label(&label_of(pair.text())),
                (70, b"$INSUNITS") => self.units(pair.whole()?),
                _ => {}
            }
        }
        self.encoding = if is_unicode { UTF_8 } else { code_page.unwrap_or(WINDOWS_1252) };
        Ok(())
    }

    fn units(&mut self, code: i64) {
        match LengthUnit::of_code(code) {
            Some(unit) => self.measure = Measure::Stated(unit),
            None if code == 0 => {}
            None => self.said.push(format!("the file states units of code {code}, which no building is drawn in")),
        }
    }

    /// Text as the file's release writes it, `\U+00E4` turned into letters.
    fn decoded(&self, bytes: &[u8]) -> String {
        let (text, _) = self.encoding.decode_without_bom_handling(bytes);
        let mut parts = text.split("\\U+");
        let mut whole = parts.next().unwrap_or_default().to_owned();
        for part in parts {
            let letter = part.get(..4).and_then(|digits| u32::from_str_radix(digits, 16).ok()).and_then(char::from_u32);
            match (letter, part.get(4..)) {
                (Some(letter), Some(rest)) => {
                    whole.push(letter);
                    whole.push_str(rest);
                }
                _ => whole.extend(["\\U+", part]),
            }
        }
        whole
    }

    /// Layers that are frozen or off.
    fn tables(&mut self) -> Result<(), OutlineFault> {
        const FROZEN: i64 = 1;
        loop {
            let pair = self.next("in its tables")?;
            if pair.is(0, "ENDSEC") {
                return Ok(());
            }
            if !pair.is(0, "LAYER") {
                continue;
            }
            let (mut name, mut hidden) = (String::new(), false);
            for pair in self.own_pairs("in a layer")? {
                match pair.code {
                    2 => name = self.decoded(pair.text()),
                    62 => hidden |= pair.whole()? < 0,
                    70 => hidden |= pair.whole()? & FROZEN != 0,
                    _ => {}
                }
            }
            let place = self.layer(&name, pair.place)?;
            if hidden {
                self.layers.hide(place);
            }
        }
    }

    fn layer(&mut self, name: &str, place: Place) -> Result<usize, OutlineFault> {
        let fault = OutlineFault::TooManyOf { place, what: "layers", most: MOST_LAYERS };
        self.layers.place_of(name).ok_or(fault)
    }

    /// The pairs up to the next one of code 0, which waits.
    fn own_pairs(&mut self, inside: &'static str) -> Result<Vec<Pair<'a>>, OutlineFault> {
        let mut own = Vec::with_capacity(16);
        loop {
            let pair = self.next(inside)?;
            if pair.code == 0 {
                self.waiting = Some(pair);
                return Ok(own);
            }
            if own.len() >= MOST_PAIRS_OF_AN_ENTITY {
                let most = MOST_PAIRS_OF_AN_ENTITY;
                return Err(OutlineFault::TooManyOf { place: pair.place, what: "values of one entity", most });
            }
            own.push(pair);
        }
    }

    fn blocks(&mut self) -> Result<(), OutlineFault> {
        const ELSEWHERE: i64 = 4;
        loop {
            let pair = self.next("in its blocks")?;
            if pair.is(0, "ENDSEC") {
                return Ok(());
            }
            if !pair.is(0, "BLOCK") {
                // ENDBLK has pairs of its own, which mean nothing here.
                continue;
            }
            let (mut name, mut base, mut flags) = (Vec::new(), DVec2::ZERO, 0);
            for pair in self.own_pairs("in a block")? {
                match pair.code {
                    2 => name = pair.text().to_ascii_lowercase(),
                    10 => base.x = pair.number()?,
                    20 => base.y = pair.number()?,
                    70 => flags = pair.whole()?,
                    _ => {}
                }
            }
            if self.blocks.len() >= MOST_BLOCKS {
                return Err(OutlineFault::TooManyOf { place: pair.place, what: "blocks", most: MOST_BLOCKS });
            }
            let shapes = self.entities("in a block", b"ENDBLK")?;
            let shown = self.decoded(&name);
            let block = Block { name: shown, base, shapes, is_elsewhere: flags & ELSEWHERE != 0 };
            self.blocks.insert(name, block);
        }
    }

    /// Entities up to an end mark, which is taken.
    fn entities(&mut self, inside: &'static str, end: &[u8]) -> Result<Vec<Shape>, OutlineFault> {
        let mut shapes = Vec::new();
        let mut open: Option<OpenPolyline> = None;
        loop {
            if self.stop.load(Ordering::Relaxed) {
                return Err(OutlineFault::Stopped);
            }
            let pair = self.next(inside)?;
            let kind = pair.text();
            if pair.code != 0 {
                let what = format!("an entity is expected, not group code {}", pair.code);
                return Err(OutlineFault::OutOfPlace { place: pair.place, what });
            }
            if matches!(kind, b"ENDSEC" | b"ENDBLK" | b"EOF" | b"SECTION") && kind != end {
                let what = format!("\"{}\" is not expected here, {inside}", shown(kind));
                return Err(OutlineFault::OutOfPlace { place: pair.place, what });
            }
            let kind = kind.to_vec();
            if kind == end {
                shapes.extend(open.take().and_then(|open| self.kept(open.ended(), b"POLYLINE")));
                // The end of a block has pairs of its own.
                self.own_pairs_unless_section(end)?;
                return Ok(shapes);
            }
            let own = self.own_pairs(inside)?;
            match (kind.as_slice(), &mut open) {
                (b"VERTEX", Some(open)) => {
                    open.add(&own)?;
                    self.count(1, pair.place)?;
                    continue;
                }
                (b"SEQEND" | b"ATTRIB" | b"VERTEX", None) => continue,
                _ => shapes.extend(open.take().and_then(|open| self.kept(open.ended(), b"POLYLINE"))),
            }
            if kind == b"SEQEND" {
                continue;
            }
            const PAPER: i64 = 1;
            let mut layer = "0".to_owned();
            let mut on_paper = false;
            for pair in &own {
                match pair.code {
                    8 => layer = self.decoded(pair.text()),
                    67 => on_paper = pair.whole()? == PAPER,
                    _ => {}
                }
            }
            if on_paper {
                *self.passed_over.entry("on the paper's own space".to_owned()).or_default() += 1;
                continue;
            }
            let layer = self.layer(&layer, pair.place)?;
            if kind == b"POLYLINE" {
                self.count(1, pair.place)?;
                open = Some(OpenPolyline::begun(&own, layer)?);
                continue;
            }
            let shape = entity::shape(&kind, &own, layer)?;
            if matches!(shape, Shape::PassedOver(_)) {
                self.layers.count_other(layer);
            }
            let weight = match &shape {
                Shape::Trace(trace) => trace.weight(),
                Shape::Insert(_) | Shape::PassedOver(_) => 1,
            };
            self.count(weight, pair.place)?;
            shapes.extend(self.kept(shape, &kind));
        }
    }

    fn own_pairs_unless_section(&mut self, end: &[u8]) -> Result<(), OutlineFault> {
        if end == b"ENDBLK" {
            self.own_pairs("after a block")?;
        }
        Ok(())
    }

    /// Counts what is kept in memory, so that a file can't fill it.
    fn count(&mut self, weight: usize, place: Place) -> Result<(), OutlineFault> {
        self.pieces += weight;
        if self.pieces <= MOST_PIECES {
            return Ok(());
        }
        Err(OutlineFault::TooManyOf { place, what: "lines, curves and inserts", most: MOST_PIECES })
    }

    /// The shape, unless it is passed over: then it is counted in words.
    fn kept(&mut self, shape: Shape, kind: &[u8]) -> Option<Shape> {
        let Shape::PassedOver(why) = shape else { return Some(shape) };
        let what = if why == "of another kind" { shown(kind) } else { format!("{} {why}", shown(kind)) };
        *self.passed_over.entry(what).or_default() += 1;
        None
    }
}

/// The label by which an encoding is known, of a code page as DXF spells it: ANSI_1252 is windows-1252.
fn label_of(code_page: &[u8]) -> Vec<u8> {
    let lower = code_page.to_ascii_lowercase();
    match lower.strip_prefix(b"ansi_") {
        Some(b"932") => b"shift_jis".to_vec(),
        Some(b"936") => b"gbk".to_vec(),
        Some(b"949") => b"euc-kr".to_vec(),
        Some(b"950") => b"big5".to_vec(),
        Some(number) => [b"windows-", number].concat(),
        None => lower,
    }
}
