//! Figures as they are printed: each stands for all values that round to its digits. What is computed from several spans what
//! rounding leaves open, and agrees with a printed one when the two spans meet.

use std::ops::{Add, Div, Mul, Neg, Sub};

/// All values that a figure may stand for, in N, mm and MPa.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    pub low: f64,
    pub high: f64,
}

impl Span {
    /// The first figure of some words, with its unit.
    pub fn of(words: &str) -> Self {
        *all(words).first().unwrap_or_else(|| panic!("no figure in {words}"))
    }

    fn around(value: f64, half: f64) -> Self {
        Self { low: value - half, high: value + half }
    }

    pub const ZERO: Self = Self { low: 0.0, high: 0.0 };

    fn from_any(values: [f64; 4]) -> Self {
        Self {
            low: values.into_iter().fold(f64::INFINITY, f64::min),
            high: values.into_iter().fold(f64::NEG_INFINITY, f64::max),
        }
    }

    /// Of a positive figure its power.
    pub fn power(self, exponent: f64) -> Self {
        Self { low: self.low.powf(exponent), high: self.high.powf(exponent) }
    }

    pub fn middle(self) -> f64 {
        f64::midpoint(self.low, self.high)
    }

    /// Whether the two agree to their digits, and closely enough that this says something: to a half of a percent.
    pub fn agrees(self, other: Self) -> bool {
        let meets = self.low <= other.high && other.low <= self.high;
        let size = self.middle().abs().max(other.middle().abs());
        meets && (self.high - self.low) <= 0.01 * size.max(1.0)
    }
}

impl Add for Span {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { low: self.low + other.low, high: self.high + other.high }
    }
}

impl Neg for Span {
    type Output = Self;
    fn neg(self) -> Self {
        Self { low: -self.high, high: -self.low }
    }
}

impl Sub for Span {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Mul for Span {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        Self::from_any([self.low * other.low, self.low * other.high, self.high * other.low, self.high * other.high])
    }
}

impl Div for Span {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        Self::from_any([self.low / other.low, self.low / other.high, self.high / other.low, self.high / other.high])
    }
}

impl std::iter::Sum for Span {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, |sum, next| sum + next)
    }
}

/// Every figure of some words, in their order: a number that stands alone, with its unit if it has one.
pub fn all(words: &str) -> Vec<Span> {
    let mut found = Vec::new();
    let mut before = ' ';
    let mut rest = words;
    while let Some(letter) = rest.chars().next() {
        let begins = letter.is_ascii_digit() || letter == '-' && rest[1..].starts_with(|c: char| c.is_ascii_digit());
        if begins && !before.is_alphanumeric() && before != '_' {
            let end = rest[1..].find(|c: char| !c.is_ascii_digit() && c != '.').map_or(rest.len(), |end| end + 1);
            let digits = rest[..end].trim_end_matches('.');
            let after = rest[digits.len()..].trim_start();
            found.push(figure(digits, after));
            before = '0';
            rest = &rest[digits.len()..];
        } else {
            before = letter;
            rest = &rest[letter.len_utf8()..];
        }
    }
    found
}

fn figure(digits: &str, after: &str) -> Span {
    let decimals = digits.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    // Whole numbers of four digits and more may have been rounded to one; zeros at the end of decimals are left out, so that at
    // least four digits stand behind what is shorter. Nothing is less than a ten-thousandth.
    let value: f64 = digits.parse().unwrap();
    let shown = 0.1_f64.powf(decimals as f64);
    let four = if value == 0.0 { 1e-4 } else { 10.0_f64.powi(value.abs().log10().floor() as i32 - 3) };
    let half = shown.min(four) / 2.0;
    let units = [("kNm", 1e6), ("kN", 1e3), ("mm²", 1.0), ("mm", 1.0), ("MPa", 1.0), ("kg", 1.0), ("%", 0.01)];
    let unit = units.into_iter().find(|(unit, _)| after.starts_with(unit)).map_or(1.0, |(_, unit)| unit);
    // Shares are printed in whole percent, angles and masses to a tenth.
    let half =
        if after.starts_with('%') || after.starts_with("kg") || after.starts_with('°') { shown / 2.0 } else { half };
    Span::around(value * unit, half * unit)
}

#[test]
fn figures_are_found_with_their_units_and_stand_for_what_rounds_to_them() {
    let found = all("(2350 mm·(-4.664 kN) − (-12.5 mm)·9.807) of psi_2 = 86 %");
    let middles: Vec<f64> = found.iter().map(|span| span.middle()).collect();
    assert_eq!(middles, [2350.0, -4664.0, -12.5, 9.807, 0.86]);
    assert!((found[1].high - -4663.5).abs() < 1e-9 && (found[4].low - 0.855).abs() < 1e-12);
}
