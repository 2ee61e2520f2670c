//! Numbers put in: a formula with the values of its symbols in their places.

/// A symbol with its value as it is printed.
pub type Value<'a> = (&'a str, String);

/// The formula with values in place of symbols; none where no symbol of it is known. A symbol stands alone: "N" is not found in
/// "Ac,N", nor "d" in "demand".
pub fn put_in(formula: &str, values: &[Value<'_>]) -> Option<String> {
    let mut by_length: Vec<&Value<'_>> = values.iter().filter(|(symbol, _)| !symbol.is_empty()).collect();
    by_length.sort_by_key(|(symbol, _)| std::cmp::Reverse(symbol.len()));
    let mut made = String::with_capacity(formula.len() * 2);
    let mut known = false;
    let mut rest = formula;
    let mut before: Vec<char> = Vec::new();
    while let Some(letter) = rest.chars().next() {
        let found = by_length
            .iter()
            .find_map(|(symbol, value)| Some((symbol, value, rest.strip_prefix(*symbol)?)))
            .filter(|(_, _, after)| begins_here(&before) && ends_here(after));
        if let Some((symbol, value, after)) = found {
            made.push_str(&factor(value, after));
            before.extend(symbol.chars());
            rest = after;
            known = true;
        } else {
            made.push(letter);
            before.push(letter);
            rest = &rest[letter.len_utf8()..];
        }
    }
    known.then_some(made)
}

/// A formula without the words after it: up to the first comma outside brackets that a space follows.
pub fn up_to_words(formula: &str) -> &str {
    let mut depth = 0_i32;
    for (at, letter) in formula.char_indices() {
        match letter {
            '(' => depth += 1,
            ')' => depth -= 1,
            ',' if depth == 0 && formula[at..].starts_with(", ") => return &formula[..at],
            _ => {}
        }
    }
    formula
}

/// Whether a letter belongs to a name.
fn is_of_name(letter: char) -> bool {
    letter.is_alphanumeric() && !matches!(letter, '½' | '²' | '³') || matches!(letter, '_' | '\'' | '₀' | '₁' | '₂')
}

fn begins_here(before: &[char]) -> bool {
    match before {
        [] => true,
        [.., name, ','] => !is_of_name(*name),
        [.., last] => !is_of_name(*last),
    }
}

fn ends_here(after: &str) -> bool {
    let mut letters = after.chars();
    match letters.next() {
        None => true,
        Some(',') => !letters.next().is_some_and(is_of_name),
        Some(next) => !is_of_name(next),
    }
}

/// A value as a factor: below zero, or with a unit before a power, it stands in brackets.
fn factor(value: &str, after: &str) -> String {
    let is_powered = after.starts_with(['^', '²', '³']);
    if value.starts_with(['-', '−']) || is_powered && value.contains(' ') {
        format!("({value})")
    } else {
        value.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn values<'a>(given: &[(&'a str, &str)]) -> Vec<Value<'a>> {
        given.iter().map(|&(symbol, value)| (symbol, value.to_owned())).collect()
    }

    /// As written by hand.
    #[test]
    fn symbols_are_found_whole_and_nowhere_else() {
        let cone = values(&[("k1", "7.7"), ("hef", "230 mm"), ("Ac,N", "2 m²"), ("N", "1 kN"), ("psi_M,N", "0.5")]);
        let found = put_in("k1*hef^1.5*(Ac,N/A0c,N)*psi_M,N", &cone).unwrap();
        assert_eq!(found, "7.7*(230 mm)^1.5*(2 m²/A0c,N)*0.5");
        let moment = values(&[("z", "2350 mm"), ("Fx", "-3.5 kN"), ("x", "-12 mm"), ("Fz", "1 kN")]);
        assert_eq!(put_in("(z·Fx − x·Fz)", &moment).unwrap(), "(2350 mm·(-3.5 kN) − (-12 mm)·1 kN)");
        assert_eq!(put_in("√(Mx² + 1)", &values(&[("Mx", "-2 kNm")])).unwrap(), "√((-2 kNm)² + 1)");
        assert_eq!(up_to_words("A*(b, c)/Ac,N, else d"), "A*(b, c)/Ac,N");
        assert_eq!(put_in("demand over resistance", &values(&[("d", "1 mm"), ("N", "1 kN")])), None);
        assert_eq!(put_in("W_x·d", &values(&[("x", "1"), ("W", "2"), ("d", "255 mm")])).unwrap(), "W_x·255 mm");
    }
}
