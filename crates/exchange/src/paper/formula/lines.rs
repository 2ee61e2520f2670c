//! A formula in lines: one that is too long goes on before a sign of equality or sum, else before a dot, else between words;
//! a fraction or a root that is wider than a line is written in a row.

use glam::DVec2;

use super::{Formula, Laid, set};
use crate::paper::ink::Hand;
use crate::paper::measure::{clean, cut_at};
use crate::paper::page::OnPage;

/// Lines after the first stand in by so much, ems.
const INDENT_EM: f64 = 1.2;
/// A better place for a break is taken from this share of the line on.
const FULL_ENOUGH: f64 = 0.4;

/// A formula in lines no wider than asked, mm. At least one, perhaps empty.
pub fn lines(formula: &Formula, hand: Hand, width_mm: f64) -> Vec<Laid> {
    let whole = set(&cleaned(formula), hand);
    if whole.width_mm <= width_mm {
        return vec![whole];
    }
    // Half of a narrow cell is too much to stand in.
    let indent_mm = if width_mm > 20.0 * hand.size_mm { INDENT_EM * hand.size_mm } else { 0.0 };
    let room_mm = width_mm - indent_mm;
    let mut atoms = Vec::new();
    split(&cleaned(formula), hand, room_mm, &mut atoms);
    let mut lines = filled(atoms, width_mm, room_mm);
    for line in lines.iter_mut().skip(1) {
        line.things = std::mem::take(&mut line.things).into_iter().map(|thing| moved(thing, indent_mm)).collect();
        line.width_mm += indent_mm;
    }
    lines
}

fn moved(thing: OnPage, right_mm: f64) -> OnPage {
    thing.moved(DVec2::new(right_mm, 0.0))
}

/// Without signs that can't stand in a line.
fn cleaned(formula: &Formula) -> Formula {
    let inside = |part: &Formula| Box::new(cleaned(part));
    match formula {
        Formula::Plain(words) => Formula::Plain(clean(words).replace('\n', " ")),
        Formula::Row(parts) => Formula::Row(parts.iter().map(cleaned).collect()),
        Formula::Marked { of, below, above } => {
            Formula::Marked { of: inside(of), below: below.as_deref().map(inside), above: above.as_deref().map(inside) }
        }
        Formula::Fraction(over, under) => Formula::Fraction(inside(over), inside(under)),
        Formula::Root(of) => Formula::Root(inside(of)),
    }
}

/// How well a line may end before something.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Break {
    /// Only where nothing else is left.
    Forced,
    /// Between words.
    Word,
    /// Before a dot.
    Factor,
    /// Before a sign of equality, a sum or a difference.
    Sign,
}

/// What is never broken, no wider than a line.
struct Atom {
    laid: Laid,
    is_space: bool,
    before: Break,
}

fn split(formula: &Formula, hand: Hand, room_mm: f64, atoms: &mut Vec<Atom>) {
    match formula {
        Formula::Plain(words) => split_words(words, hand, room_mm, atoms),
        Formula::Row(parts) if !is_bracketed(parts) || set(formula, hand).width_mm > room_mm => {
            for part in parts {
                split(part, hand, room_mm, atoms);
            }
        }
        _ => {
            let laid = set(formula, hand);
            if laid.width_mm <= room_mm {
                atoms.push(Atom { laid, is_space: false, before: Break::Forced });
            } else {
                for part in in_a_row(formula) {
                    split(&part, hand, room_mm, atoms);
                }
            }
        }
    }
}

fn is_bracketed(parts: &[Formula]) -> bool {
    matches!(parts.first(), Some(Formula::Plain(words)) if words == "(" || words == "[" || words == "|")
}

/// Words with their blanks; a sign keeps to what follows it, and cut is what is wider than a line.
fn split_words(words: &str, hand: Hand, room_mm: f64, atoms: &mut Vec<Atom>) {
    let mut after_space = false;
    for (index, part) in words.split(' ').enumerate() {
        if index > 0 {
            atoms.push(Atom { laid: Laid::words(" ", hand), is_space: true, before: Break::Forced });
            after_space = true;
        }
        let before = match part {
            "=" | "≤" | "≥" | "<" | ">" | "≈" | "≠" | "+" | "−" | "±" => Break::Sign,
            "·" | "×" => Break::Factor,
            _ if after_space => Break::Word,
            _ => Break::Forced,
        };
        let mut rest = part;
        let mut before = before;
        while !rest.is_empty() {
            let (head, tail) = rest.split_at(cut_at(rest, hand.face, room_mm / hand.size_mm));
            atoms.push(Atom { laid: Laid::words(head, hand), is_space: false, before });
            before = Break::Forced;
            rest = tail;
        }
    }
}

/// The same without anything over or under anything else.
fn in_a_row(formula: &Formula) -> Vec<Formula> {
    let plain = |words: &str| Formula::Plain(words.to_owned());
    let held = |part: &Formula| match part {
        Formula::Row(_) | Formula::Fraction(..) => vec![plain("("), part.clone(), plain(")")],
        other => vec![other.clone()],
    };
    let mut row = Vec::new();
    match formula {
        Formula::Fraction(over, under) => {
            row.extend(held(over));
            row.push(plain("/"));
            row.extend(held(under));
        }
        Formula::Root(of) => row.extend([plain("√("), (**of).clone(), plain(")")]),
        Formula::Marked { of, below, above } => {
            row.push((**of).clone());
            for (sign, part) in [("_", below), ("^", above)] {
                if let Some(part) = part {
                    row.push(plain(sign));
                    row.extend(held(part));
                }
            }
        }
        other => row.push(other.clone()),
    }
    row
}

fn filled(atoms: Vec<Atom>, first_mm: f64, room_mm: f64) -> Vec<Laid> {
    let mut lines = Vec::new();
    let mut rest = atoms.into_iter().collect::<std::collections::VecDeque<_>>();
    while !rest.is_empty() {
        let width_mm = if lines.is_empty() { first_mm } else { room_mm };
        let taken = fitting(&rest, width_mm);
        let mut line = Laid::blank(0.0);
        let mut atoms = rest.drain(..taken).collect::<Vec<_>>();
        while atoms.last().is_some_and(|atom| atom.is_space) {
            atoms.pop();
        }
        for atom in atoms {
            line.append(atom.laid);
        }
        lines.push(line);
        while rest.front().is_some_and(|atom| atom.is_space) {
            rest.pop_front();
        }
    }
    if lines.is_empty() {
        lines.push(Laid::blank(0.0));
    }
    lines
}

/// How many atoms go into a line: up to the best place for a break among those that fill it well, else to the last.
fn fitting(atoms: &std::collections::VecDeque<Atom>, width_mm: f64) -> usize {
    let mut used_mm = 0.0;
    let mut best = ((Break::Forced, false), 0);
    for (index, atom) in atoms.iter().enumerate() {
        if index > 0 && !atom.is_space {
            let is_full_enough = used_mm > FULL_ENOUGH * width_mm;
            let worth = match atom.before {
                Break::Forced => (Break::Forced, false),
                // Far left every place is as good as one between words.
                _ if !is_full_enough => (Break::Word, false),
                kind => (kind, true),
            };
            if worth >= best.0 {
                best = (worth, index);
            }
        }
        used_mm += atom.laid.width_mm;
        if used_mm > width_mm + 1e-9 && !atom.is_space {
            return best.1.max(1);
        }
    }
    atoms.len()
}
