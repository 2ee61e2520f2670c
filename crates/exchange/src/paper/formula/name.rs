//! Names in formulas: which of them are symbols, and which letters of a symbol stand below and above its first.

use super::Formula;

/// Names of Greek letters as formulas spell them, with the letter.
const GREEK: [(&str, char); 35] = [
    ("alpha", 'α'),
    ("beta", 'β'),
    ("gamma", 'γ'),
    ("delta", 'δ'),
    ("epsilon", 'ε'),
    ("zeta", 'ζ'),
    ("eta", 'η'),
    ("theta", 'θ'),
    ("iota", 'ι'),
    ("kappa", 'κ'),
    ("lambda", 'λ'),
    ("mu", 'μ'),
    ("nu", 'ν'),
    ("xi", 'ξ'),
    ("omicron", 'ο'),
    ("pi", 'π'),
    ("rho", 'ρ'),
    ("sigma", 'σ'),
    ("tau", 'τ'),
    ("upsilon", 'υ'),
    ("phi", 'φ'),
    ("chi", 'χ'),
    ("psi", 'ψ'),
    ("omega", 'ω'),
    ("Gamma", 'Γ'),
    ("Delta", 'Δ'),
    ("Theta", 'Θ'),
    ("Lambda", 'Λ'),
    ("Xi", 'Ξ'),
    ("Pi", 'Π'),
    ("Sigma", 'Σ'),
    ("Upsilon", 'Υ'),
    ("Phi", 'Φ'),
    ("Psi", 'Ψ'),
    ("Omega", 'Ω'),
];

/// Symbols of small letters that are spelled without a line before what stands below: of the codes for anchors, concrete
/// and steel.
const SMALL: [&str; 28] = [
    "f'c", "hef", "ha", "hmin", "smin", "scr", "cmin", "ccr", "ca", "fck", "fyk", "fuk", "futa", "fya", "fbd", "fcd",
    "fy", "fu", "kc", "kcp", "lf", "la", "le", "lb", "df", "dh", "tfix", "da",
];

/// What looks like a symbol and is none.
const UNITS: [&str; 19] = [
    "mm", "cm", "km", "kg", "kN", "MN", "Nm", "Nmm", "kNm", "Pa", "kPa", "MPa", "GPa", "Hz", "ft", "in", "lbf", "psi",
    "ksi",
];

/// Whether a name right behind a figure is its unit.
pub(super) fn is_unit(name: &str) -> bool {
    UNITS.contains(&name) || matches!(name, "m" | "N" | "s" | "t" | "lb")
}

/// Where a name stands.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    /// Right beside a sign that stands between factors only.
    pub touches_sign: bool,
    /// Beside a sign, with or without a blank between; among what a function is of; or all there is.
    pub is_in_formula: bool,
    /// Whether what stands below follows after a line of its own.
    pub has_below: bool,
}

/// A name as a symbol; none where it is a word.
pub(super) fn symbol(name: &str, place: Place) -> Option<Formula> {
    let letters_end = name.find(|letter: char| !letter.is_alphabetic()).unwrap_or(name.len());
    let (letters, rest) = name.split_at(letters_end);
    if let Some(greek) = greek(letters) {
        return Some(with_index(greek.to_string(), rest, place.has_below));
    }
    let mut each = name.chars();
    let first = each.next()?;
    let mut rest = each.as_str();
    let mut base = first.to_string();
    while let Some(behind) = rest.strip_prefix('\'') {
        base.push('′');
        rest = behind;
    }
    if rest.is_empty() || place.has_below {
        return if rest.is_empty() { Some(Formula::Plain(base)) } else { None };
    }
    is_symbol(name, rest, place).then(|| {
        // A zero before letters is the basic value of a resistance or area and stands above in the codes.
        let basic = rest.strip_prefix('0').filter(|_| first.is_uppercase());
        match basic.filter(|below| below.starts_with(char::is_alphabetic)) {
            Some(below) => marked(base, Some(script(below)), Some(Formula::Plain("0".to_owned()))),
            None => marked(base, Some(script(rest)), None),
        }
    })
}

/// What stands below or above, Greek letters where it names them.
pub(super) fn script(words: &str) -> Formula {
    let parts = words.split(',').map(|part| {
        let letters_end = part.find(|letter: char| !letter.is_alphabetic()).unwrap_or(part.len());
        let (letters, rest) = part.split_at(letters_end);
        greek(letters).map_or_else(|| part.to_owned(), |letter| format!("{letter}{rest}"))
    });
    Formula::Plain(parts.collect::<Vec<_>>().join(","))
}

/// The Greek letter of a name.
pub(super) fn greek(name: &str) -> Option<char> {
    GREEK.iter().find(|(known, _)| *known == name).map(|(_, letter)| *letter)
}

/// The name of a Greek letter.
#[cfg(test)]
pub(super) fn spelled(letter: char) -> Option<&'static str> {
    GREEK.iter().find(|(_, known)| *known == letter).map(|(name, _)| *name)
}

/// Whether a name of one letter and more than figures behind it may have a comma in what stands below: `Ac,N`, `ca,min`.
pub(super) fn may_have_comma(head: &str) -> bool {
    let few = head.chars().count() <= 4;
    few && (head.starts_with(char::is_uppercase) || SMALL.contains(&head) || head.chars().count() == 1)
        || greek(head).is_some()
}

fn is_symbol(name: &str, rest: &str, place: Place) -> bool {
    if UNITS.contains(&name) || rest.contains(|letter: char| letter.is_alphabetic() && !letter.is_ascii()) {
        return false;
    }
    let (head, _) = name.split_once(',').unwrap_or((name, ""));
    let has_comma = head.len() < name.len();
    let letters = rest.chars().filter(|letter| letter.is_alphabetic()).count();
    if name.starts_with(char::is_uppercase) {
        let is_shout = name.chars().all(char::is_uppercase);
        let is_size = rest.chars().all(|letter| letter.is_ascii_digit()) && rest.len() > 1;
        return !is_shout && !is_size && (has_comma || (place.is_in_formula || place.touches_sign) && letters <= 4);
    }
    let figures = rest.trim_start_matches(char::is_alphabetic);
    let is_numbered = !figures.is_empty() && figures.chars().all(|figure| figure.is_ascii_digit()) && letters <= 1;
    let is_primed = name.chars().nth(1) == Some('\'') && place.is_in_formula;
    SMALL.contains(&head) || has_comma || is_numbered || is_primed || place.touches_sign
}

/// A letter with figures behind its name: `alpha1`; a zero before a line stands above, `psi0_g`.
fn with_index(base: String, rest: &str, has_below: bool) -> Formula {
    match (rest, has_below) {
        ("", _) => Formula::Plain(base),
        (_, true) => marked(base, None, Some(script(rest))),
        ("'", false) => Formula::Plain(base + "′"),
        (_, false) => marked(base, Some(script(rest)), None),
    }
}

fn marked(base: String, below: Option<Formula>, above: Option<Formula>) -> Formula {
    Formula::Marked { of: Box::new(Formula::Plain(base)), below: below.map(Box::new), above: above.map(Box::new) }
}

/// The plain figure of a raised or lowered one, and whether it is raised.
pub(super) const fn small(letter: char) -> Option<(char, bool)> {
    Some(match letter {
        '⁰' => ('0', true),
        '¹' => ('1', true),
        '²' => ('2', true),
        '³' => ('3', true),
        '⁴' => ('4', true),
        '⁵' => ('5', true),
        '⁶' => ('6', true),
        '⁷' => ('7', true),
        '⁸' => ('8', true),
        '⁹' => ('9', true),
        '₀' => ('0', false),
        '₁' => ('1', false),
        '₂' => ('2', false),
        '₃' => ('3', false),
        '₄' => ('4', false),
        '₅' => ('5', false),
        '₆' => ('6', false),
        '₇' => ('7', false),
        '₈' => ('8', false),
        '₉' => ('9', false),
        _ => return None,
    })
}
