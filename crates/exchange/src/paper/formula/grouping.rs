//! What groups in a formula: quotients by their bar, sums by brackets where they become factors.

use super::Formula;

/// What a slash does: the factors since the last one go over the next factor, or that factor joins the one under the bar.
pub(super) fn over(done: &mut Vec<Formula>, run: &mut Vec<Formula>, under: Formula) {
    // A product that goes on after a fraction begins with its sign.
    let sign = (!done.is_empty() && run.len() > 1).then(|| run.remove(0));
    if run.is_empty() {
        if let Some(Formula::Fraction(top, first)) = done.pop() {
            // Factors lie side by side, so that a long row of quotients nests no deeper than a short one.
            let mut under_bar = match in_sum_brackets(*first) {
                Formula::Row(parts) => parts,
                other => vec![other],
            };
            under_bar.extend([plain("·"), in_sum_brackets(under)]);
            done.push(Formula::Fraction(top, Box::new(Formula::Row(under_bar))));
        }
        return;
    }
    done.extend(sign);
    let top = match std::mem::take(run) {
        one if one.len() == 1 => row(one.into_iter().map(without_brackets).collect()),
        many => Formula::Row(many),
    };
    done.push(Formula::Fraction(Box::new(top), Box::new(under)));
}

/// A sum gets brackets before it becomes a factor.
fn in_sum_brackets(formula: Formula) -> Formula {
    let Formula::Row(parts) = formula else { return formula };
    let mut open = 0_i32;
    let mut is_sum = false;
    for part in &parts {
        let Formula::Plain(words) = part else { continue };
        match words.as_str() {
            "(" => open += 1,
            ")" => open -= 1,
            sign => is_sum |= open == 0 && (sign.starts_with(' ') || sign.starts_with('−')),
        }
    }
    if !is_sum {
        return Formula::Row(parts);
    }
    let mut all = vec![plain("(")];
    all.extend(parts);
    all.push(plain(")"));
    Formula::Row(all)
}

/// What a bar or a root groups needs no brackets.
pub(super) fn without_brackets(formula: Formula) -> Formula {
    let is = |part: Option<&Formula>, sign: &str| matches!(part, Some(Formula::Plain(words)) if words == sign);
    match formula {
        Formula::Row(mut parts) if parts.len() > 2 && is(parts.first(), "(") && is(parts.last(), ")") => {
            parts.pop();
            parts.remove(0);
            row(parts)
        }
        other => other,
    }
}

/// Parts in a row; one alone is itself.
pub(super) fn row(mut parts: Vec<Formula>) -> Formula {
    if parts.len() == 1 { parts.remove(0) } else { Formula::Row(parts) }
}

/// Letters as they are.
pub(super) fn plain(words: &str) -> Formula {
    Formula::Plain(words.to_owned())
}
