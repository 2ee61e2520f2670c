//! A formula from its plain text: `phi*Nsa = phi*Ase,N*futa`, `u = √(Ux² + Uy²)`, `w = b + min(z·tan θ, q)`.
//!
//! Records and traces carry formulas as text that can be typed. Names of Greek letters become letters, what follows a line
//! or a first letter stands below, what follows `^` above, quotients stand one over the other, roots get their sign. What is
//! no formula stays upright words. No letter and no figure is ever lost, whatever the text is: signs of grouping go where a
//! bar or a root groups, `*` becomes a dot, `<=` one sign.

use super::Formula;
use super::grouping::{over, plain, row, without_brackets};
use super::name::{Place, is_unit, may_have_comma, script, small, symbol};

/// How deep groups may nest; deeper ones stand as they are typed.
const DEEPEST: usize = 24;
const FUNCTIONS: [&str; 10] = ["min", "max", "det", "sin", "cos", "tan", "cot", "ln", "log", "exp"];

/// A formula from its text.
pub fn parse(text: &str) -> Formula {
    let mut reader =
        Reader { letters: text.chars().collect(), at: 0, closers: Vec::new(), depth: 0, calls: 0, scripts: 0 };
    row(reader.sequence())
}

struct Reader {
    letters: Vec<char>,
    at: usize,
    /// What ends the groups that are open.
    closers: Vec<char>,
    depth: usize,
    /// Open groups of functions: names in them are symbols.
    calls: usize,
    /// Open groups below or above: no fraction stands there one over the other, and signs stand close.
    scripts: usize,
}

/// One factor, and whether it is a word and no part of a formula.
struct Factor {
    formula: Formula,
    is_word: bool,
}

impl Reader {
    /// Parts in a row up to what closes an open group.
    fn sequence(&mut self) -> Vec<Formula> {
        let mut parts: Vec<Formula> = Vec::new();
        loop {
            let spaced = self.skip_spaces();
            let Some(letter) = self.peek(0) else { break };
            if self.closers.contains(&letter) {
                break;
            }
            if let Some(sign) = self.relation() {
                self.push_sign(&mut parts, sign);
            } else if matches!(letter, '+' | '−' | '±' | '-') && !self.joins_words() {
                self.at += 1;
                let sign = if letter == '-' { '−' } else { letter };
                self.push_sign(&mut parts, &sign.to_string());
            } else {
                if spaced && !parts.is_empty() && !ends_with_space(parts.last()) {
                    parts.push(plain(" "));
                }
                if let Some(term) = self.term() {
                    parts.extend(term);
                } else {
                    self.at += 1;
                    parts.push(Formula::Plain(letter.to_string()));
                }
            }
        }
        parts
    }

    /// A sign between two things has blanks around it, one before a thing has none.
    fn push_sign(&self, parts: &mut Vec<Formula>, sign: &str) {
        let follows_sign = match parts.last() {
            None => true,
            Some(Formula::Plain(words)) => words.ends_with([' ', ',', ';', ':']),
            Some(_) => false,
        };
        if self.scripts > 0 {
            parts.push(plain(sign));
            return;
        }
        let before = if parts.is_empty() || ends_with_space(parts.last()) { "" } else { " " };
        let behind = if follows_sign && matches!(sign, "+" | "−" | "±") { "" } else { " " };
        parts.push(Formula::Plain(format!("{before}{sign}{behind}")));
    }

    fn relation(&mut self) -> Option<&'static str> {
        let (sign, length) = match (self.peek(0)?, self.peek(1)) {
            ('<', Some('=')) => ("≤", 2),
            ('>', Some('=')) => ("≥", 2),
            ('!', Some('=')) => ("≠", 2),
            ('=', _) => ("=", 1),
            ('<', _) => ("<", 1),
            ('>', _) => (">", 1),
            ('≤', _) => ("≤", 1),
            ('≥', _) => ("≥", 1),
            ('≈', _) => ("≈", 1),
            ('≠', _) => ("≠", 1),
            _ => return None,
        };
        self.at += length;
        Some(sign)
    }

    /// Whether the line ahead joins two words: break-out.
    fn joins_words(&self) -> bool {
        let word = |letter: Option<char>| letter.is_some_and(char::is_lowercase);
        let before = |back: usize| self.at.checked_sub(back).and_then(|at| self.letters.get(at)).copied();
        self.peek(0) == Some('-') && word(before(1)) && word(before(2)) && word(self.peek(1)) && word(self.peek(2))
    }

    /// Factors with signs between them; what stands before a slash goes over it, the next factor under it.
    fn term(&mut self) -> Option<Vec<Formula>> {
        let first = self.factor()?;
        let mut done: Vec<Formula> = Vec::new();
        // Where a word is among the factors, slashes stay as they are: and/or, per day/week.
        let mut is_inline = first.is_word || self.scripts > 0;
        let mut run = vec![first.formula];
        loop {
            let before = self.at;
            self.skip_spaces();
            let Some(sign @ ('*' | '·' | '∙' | '⋅' | '×' | '/')) = self.peek(0) else {
                self.at = before;
                break;
            };
            self.at += 1;
            self.skip_spaces();
            let Some(factor) = self.factor() else {
                self.at = before;
                break;
            };
            is_inline |= factor.is_word;
            if sign == '/' && !is_inline {
                over(&mut done, &mut run, without_brackets(factor.formula));
                continue;
            }
            run.push(plain(match sign {
                '/' => "/",
                '×' => "×",
                _ => "·",
            }));
            run.push(factor.formula);
        }
        done.append(&mut run);
        Some(done)
    }

    /// Something with what stands below and above it.
    fn factor(&mut self) -> Option<Factor> {
        if self.depth >= DEEPEST {
            return None;
        }
        self.depth += 1;
        let found = self.bare_factor().map(|factor| self.with_marks(factor));
        self.depth -= 1;
        found
    }

    fn bare_factor(&mut self) -> Option<Factor> {
        let letter = self.peek(0)?;
        let formula = match letter {
            '0'..='9' => Formula::Plain(self.number()),
            '(' => self.group(')'),
            '[' => self.group(']'),
            '|' if !self.closers.contains(&'|') => self.group('|'),
            '√' => {
                self.at += 1;
                let of = self.factor();
                of.map_or_else(|| plain("√"), |of| Formula::Root(Box::new(without_brackets(of.formula))))
            }
            'Σ' | '∑' | '∏' | '∫' | '∂' | '∞' | '½' | '¼' | '¾' | '⅓' | '⅔' => {
                self.at += 1;
                Formula::Plain(letter.to_string())
            }
            _ if letter.is_alphabetic() => return Some(self.named()),
            _ => return None,
        };
        Some(Factor { formula, is_word: false })
    }

    fn number(&mut self) -> String {
        let is_figure = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
        let begin = self.at;
        while is_figure(self.peek(0)) || self.peek(0) == Some('.') && is_figure(self.peek(1)) {
            self.at += 1;
        }
        self.text(begin)
    }

    /// What stands between brackets, with them.
    fn group(&mut self, closer: char) -> Formula {
        let opener = self.letters.get(self.at).map(char::to_string).unwrap_or_default();
        let is_of_function =
            self.at.checked_sub(1).and_then(|at| self.letters.get(at)).is_some_and(|at| is_of_name(*at));
        self.at += 1;
        self.closers.push(closer);
        let mut parts = vec![Formula::Plain(opener)];
        parts.extend(self.sequence());
        self.closers.pop();
        if self.peek(0) == Some(closer) {
            self.at += 1;
            parts.push(Formula::Plain(closer.to_string()));
        }
        match <[Formula; 3]>::try_from(parts) {
            // A fraction groups by its bar.
            Ok([_, fraction @ Formula::Fraction(..), _]) if closer == ')' && !is_of_function && !self.is_marked() => {
                fraction
            }
            Ok(three) => Formula::Row(three.to_vec()),
            Err(parts) => Formula::Row(parts),
        }
    }

    /// Whether something stands above or below what was just read.
    fn is_marked(&self) -> bool {
        self.peek(0).is_some_and(|letter| matches!(letter, '^' | '_') || small(letter).is_some())
    }

    /// A symbol, a function of something, or a word.
    fn named(&mut self) -> Factor {
        let begin = self.at;
        let name = self.name();
        if name == "sqrt" && self.peek(0) == Some('(') {
            let of = without_brackets(self.group(')'));
            return Factor { formula: Formula::Root(Box::new(of)), is_word: false };
        }
        if FUNCTIONS.contains(&name.as_str()) {
            return self.function(name);
        }
        let is_alone = begin == 0 && self.at == self.letters.len();
        let is_sign = |letter: Option<char>| letter.is_some_and(|letter| "*·×^²³".contains(letter));
        let before = begin.checked_sub(1).and_then(|at| self.letters.get(at)).copied();
        let place = Place {
            touches_sign: is_sign(before) || is_sign(self.peek(0)),
            is_in_formula: is_alone || self.calls > 0 || self.is_beside_sign(begin),
            has_below: self.peek(0) == Some('_'),
        };
        // A figure with its unit is no product: 2 m/s² is not set as a quotient of its own.
        let is_behind_figure = before == Some(' ')
            && begin.checked_sub(2).and_then(|at| self.letters.get(at)).is_some_and(char::is_ascii_digit);
        if is_behind_figure && !place.has_below && is_unit(&name) {
            return Factor { formula: Formula::Plain(name), is_word: true };
        }
        match symbol(&name, place) {
            Some(formula) => Factor { formula, is_word: false },
            None => Factor { formula: Formula::Plain(name), is_word: !place.has_below },
        }
    }

    fn function(&mut self, name: String) -> Factor {
        let before = self.at;
        self.calls += 1;
        let spaced = self.skip_spaces();
        let is_called = self.peek(0) == Some('(') && !spaced;
        let takes_symbol = spaced && self.peek(0).is_some_and(|letter| letter.is_alphabetic() && !letter.is_ascii());
        let of = if is_called || takes_symbol { self.factor() } else { None };
        self.calls -= 1;
        let Some(of) = of else {
            self.at = before;
            return Factor { formula: Formula::Plain(name), is_word: true };
        };
        let name = if spaced { name + " " } else { name };
        Factor { formula: Formula::Row(vec![Formula::Plain(name), of.formula]), is_word: false }
    }

    /// Letters and figures; a comma where it stands in what is below, an apostrophe inside or behind a single letter.
    fn name(&mut self) -> String {
        let begin = self.at;
        while let Some(letter) = self.peek(0) {
            let next_is_letter = self.peek(1).is_some_and(char::is_alphabetic);
            let goes_on = match letter {
                'Σ' | '∑' if self.at > begin => false,
                '\'' => next_is_letter || self.at == begin + 1,
                ',' => next_is_letter && may_have_comma(&self.text(begin)),
                _ => is_of_name(letter),
            };
            if !goes_on {
                break;
            }
            self.at += 1;
            if letter == ',' {
                while self.peek(0).is_some_and(is_of_name)
                    || self.peek(0) == Some(',') && self.peek(1).is_some_and(is_of_name)
                {
                    self.at += 1;
                }
                break;
            }
        }
        self.text(begin)
    }

    /// Whether a sign of a formula stands beside the name that begins there and was just read.
    fn is_beside_sign(&self, begin: usize) -> bool {
        let is_sign = |letter: &char| "*·×/^=<>≤≥+−".contains(*letter);
        let behind = self.letters.get(self.at..).unwrap_or_default();
        let before = self.letters.get(..begin).unwrap_or_default();
        behind.iter().find(|letter| **letter != ' ').is_some_and(is_sign)
            || before.iter().rev().find(|letter| **letter != ' ').is_some_and(is_sign)
    }

    /// Takes what stands below and above; each once.
    fn with_marks(&mut self, factor: Factor) -> Factor {
        let Factor { formula, is_word } = factor;
        let (of, mut below, mut above) = match formula {
            Formula::Marked { of, below, above } => (of, below, above),
            other => (Box::new(other), None, None),
        };
        loop {
            let mark = self.peek(0);
            let is_power = mark == Some('^') || mark.and_then(small).is_some_and(|(_, is_above)| is_above);
            let place = if is_power { &mut above } else { &mut below };
            if place.is_some() {
                break;
            }
            let Some(found) = self.mark() else { break };
            *place = Some(Box::new(found));
        }
        if below.is_none() && above.is_none() {
            return Factor { formula: *of, is_word };
        }
        Factor { formula: Formula::Marked { of, below, above }, is_word }
    }

    fn mark(&mut self) -> Option<Formula> {
        let sign = self.peek(0)?;
        if small(sign).is_some() {
            return Some(Formula::Plain(self.smalls()));
        }
        if !matches!(sign, '_' | '^') {
            return None;
        }
        let before = self.at;
        self.at += 1;
        self.scripts += 1;
        let found = self.after_mark(sign);
        self.scripts -= 1;
        if found.is_none() {
            self.at = before;
        }
        found
    }

    fn after_mark(&mut self, sign: char) -> Option<Formula> {
        if self.peek(0) == Some('(') {
            if self.depth >= DEEPEST {
                return None;
            }
            return Some(without_brackets(self.group(')')));
        }
        let begin = self.at;
        if sign == '^' {
            if matches!(self.peek(0), Some('-' | '−' | '+')) && self.peek(1).is_some_and(is_of_name) {
                self.at += 1;
            }
            if self.peek(0).is_some_and(|letter| letter.is_ascii_digit()) {
                self.number();
                return Some(Formula::Plain(self.text(begin).replace('-', "−")));
            }
        }
        let goes_on = |reader: &Self| match reader.peek(0) {
            Some(',') => sign == '_' && reader.peek(1).is_some_and(is_of_name),
            Some('\'') => reader.at > begin,
            Some(letter) => is_of_name(letter),
            None => false,
        };
        while goes_on(self) {
            self.at += 1;
        }
        (self.at > begin).then(|| script(&self.text(begin).replace('-', "−")))
    }

    /// Raised or lowered figures as plain ones.
    fn smalls(&mut self) -> String {
        let is_above = self.peek(0).and_then(small).map(|(_, is_above)| is_above);
        let mut words = String::new();
        while let Some((plain, above)) = self.peek(0).and_then(small) {
            if Some(above) != is_above {
                break;
            }
            words.push(plain);
            self.at += 1;
        }
        words
    }

    fn skip_spaces(&mut self) -> bool {
        let begin = self.at;
        while self.peek(0).is_some_and(char::is_whitespace) {
            self.at += 1;
        }
        self.at > begin
    }

    fn peek(&self, ahead: usize) -> Option<char> {
        self.letters.get(self.at + ahead).copied()
    }

    fn text(&self, begin: usize) -> String {
        self.letters.get(begin..self.at).unwrap_or_default().iter().collect()
    }
}

fn ends_with_space(part: Option<&Formula>) -> bool {
    matches!(part, Some(Formula::Plain(words)) if words.ends_with(' '))
}

fn is_of_name(letter: char) -> bool {
    letter.is_alphabetic() || letter.is_ascii_digit()
}
