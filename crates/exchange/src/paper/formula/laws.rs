//! What holds for every formula: nothing of its text is lost, it has the value that was typed, its letters don't meet.

use std::collections::BTreeSet;

use gantline_plan::assess::{Memo, assess};
use gantline_plan::explain::{FigureId, Symbol, explain_in};
use gantline_plan::file::read;
use proptest::prelude::*;

use super::name::spelled;
use super::{Formula, lines, parse, set};
use crate::paper::ink::Hand;
use crate::paper::page::OnPage;

/// A formula as one writes it in TeX: indices and powers in braces.
fn shown(formula: &Formula) -> String {
    match formula {
        Formula::Plain(words) => words.clone(),
        Formula::Row(parts) => parts.iter().map(shown).collect(),
        Formula::Marked { of, below, above } => {
            let mark = |sign: &str, part: &Option<Box<Formula>>| {
                part.as_ref().map_or_else(String::new, |part| format!("{sign}{{{}}}", shown(part)))
            };
            shown(of) + &mark("_", below) + &mark("^", above)
        }
        Formula::Fraction(over, under) => format!("{{{}}}/{{{}}}", shown(over), shown(under)),
        Formula::Root(of) => format!("√{{{}}}", shown(of)),
    }
}

fn check(text: &str, expected: &str) {
    assert_eq!(shown(&parse(text)), expected, "{text}");
}

#[test]
fn formulas_of_records_are_read_as_the_codes_print_them() {
    check("N_Rk,c = k1·sqrt(f_ck)·h_ef^1.5", "N_{Rk,c} = k_{1}·√{f_{ck}}·h_{ef}^{1.5}");
    check(
        "NRd,c = k1*sqrt(fck)*hef^1.5*(Ac,N/A0c,N)*psi_s,N/gamma_Mc",
        "N_{Rd,c} = {k_{1}·√{f_{ck}}·h_{ef}^{1.5}·{A_{c,N}}/{A_{c,N}^{0}}·ψ_{s,N}}/{γ_{Mc}}",
    );
    check("phi*Ncbg = phi*(ANc/ANco)*psi_ec,N*Nb", "φ·N_{cbg} = φ·{A_{Nc}}/{A_{Nco}}·ψ_{ec,N}·N_{b}");
    check("k9*d^alpha*lf^beta*psi_alpha,V", "k_{9}·d^{α}·l_{f}^{β}·ψ_{α,V}");
    check(
        "VRd,s,M = alpha_M*M0Rk,s*(1 - NEd/NRd,s)/la/gamma_Ms",
        "V_{Rd,s,M} = {α_{M}·M_{Rk,s}^{0}·(1 − {N_{Ed}}/{N_{Rd,s}})}/{l_{a}·γ_{Ms}}",
    );
    check(
        "NRd,sp = min(NRk,p; N0Rk,c)*(Ac,N/A0c,N)/gamma_Msp",
        "N_{Rd,sp} = {min(N_{Rk,p}; N_{Rk,c}^{0})·{A_{c,N}}/{A_{c,N}^{0}}}/{γ_{Msp}}",
    );
    check(
        "NRd,s = NRk,s/gamma_Ms, NRk,s of the product, else As*fuk",
        "N_{Rd,s} = {N_{Rk,s}}/{γ_{Ms}}, N_{Rk,s} of the product, else A_{s}·f_{uk}",
    );
    check("0.55*phi*Nba >= Nua,s", "0.55·φ·N_{ba} ≥ N_{ua,s}");
    check("sigma <= phi*0.85*f'c", "σ ≤ φ·0.85·f′_{c}");
    check("beta_N^(2/3) + beta_V^(2/3) <= 1", "β_{N}^{2/3} + β_{V}^{2/3} ≤ 1");
    check(
        "phi*Nag = phi*(ANa/ANao)*psi_ed,Na*Nba, adhesive min(Nag, Ncbg)",
        "φ·N_{ag} = φ·{A_{Na}}/{A_{Nao}}·ψ_{ed,Na}·N_{ba}, adhesive min(N_{ag}, N_{cbg})",
    );
    check(
        "no prying while T*b' <= p*t^2/4*f_y/γ of each anchor's strip",
        "no prying while T·b′ ≤ {p·t^{2}}/{4}·{f_{y}}/{γ} of each anchor's strip",
    );
    check("phi*Vsa = phi*0.6*Ase,V*futa, times 0.8 on grout", "φ·V_{sa} = φ·0.6·A_{se,V}·f_{uta}, times 0.8 on grout");
}

#[test]
fn formulas_of_traces_are_read() {
    check("V = √(Fx² + Fy²)", "V = √{F_{x}^{2} + F_{y}^{2}}");
    check("w = min(b + min(z·tan θ, q), l)", "w = min(b + min(z·tan θ, q), l)");
    check("½·|Σ (x_i·y_(i+1) − x_(i+1)·y_i)| − islands", "½·|Σ (x_{i}·y_{i+1} − x_{i+1}·y_{i})| − islands");
    check("σ = W·(6·m·R/t + n)/t, R = (D − t)/2", "σ = {W·({6·m·R}/{t} + n)}/{t}, R = {D − t}/{2}");
    check("c = z_from − z_high(r)", "c = z_{from} − z_{high}(r)");
    check("v = V/(u·d) + k_y·|M_y|/(W_y·d)", "v = {V}/{u·d} + {k_{y}·|M_{y}|}/{W_{y}·d}");
    check("z₀ = z_roof + H − h_p − z_top", "z_{0} = z_{roof} + H − h_{p} − z_{top}");
    check("1/(1 − 1/α_cr)", "{1}/{1 − {1}/{α_{cr}}}");
}

#[test]
fn figures_keep_their_units() {
    check("N = 20.4·245 mm²·5.274 MPa·321.1 mm/228.1 mm", "N = 20.4·245 mm^{2}·5.274 MPa·321.1 mm/228.1 mm");
    check("M = √((0 kNm)² + (40.15 kNm)²)", "M = √{(0 kNm)^{2} + (40.15 kNm)^{2}}");
    check("g = 9.807 m/s²", "g = 9.807 m/s^{2}");
}

#[test]
fn single_symbols_are_read() {
    for (text, expected) in [
        ("hef", "h_{ef}"),
        ("Abrg", "A_{brg}"),
        ("psi0_g,Np", "ψ_{g,Np}^{0}"),
        ("ca,min", "c_{a,min}"),
        ("ca1", "c_{a1}"),
        ("f'c", "f′_{c}"),
        ("e'V", "e′_{V}"),
        ("tau_Rk", "τ_{Rk}"),
        ("N0Rk,cb", "N_{Rk,cb}^{0}"),
        ("phi", "φ"),
        ("factor", "factor"),
        ("z upper", "z upper"),
        ("MPa", "MPa"),
        ("C20", "C20"),
    ] {
        check(text, expected);
    }
}

#[test]
fn what_is_no_formula_stays_words() {
    for words in [
        "demand over resistance by the clause named, largest over rope, slew and cut",
        "and/or, per day/week, break-out at the sleeve",
        "held by least distances: a plate's edges (see below)",
        "",
    ] {
        check(words, words);
    }
}

/// All letters, figures and signs but those that group, Greek letters by their names, in no order.
fn letters_of(text: &str) -> Vec<char> {
    let mut all: Vec<char> = Vec::new();
    for letter in text.chars() {
        match letter {
            '√' => all.extend("sqrt".chars()),
            '⁰'..='⁹' | '₀'..='₉' | '²' | '³' | '¹' => all.extend(parse_figure(letter)),
            '*' | '∙' | '⋅' => all.push('·'),
            '\'' => all.push('′'),
            '-' => all.push('−'),
            '≤' => all.extend(['<', '=']),
            '≥' => all.extend(['>', '=']),
            '≠' => all.extend(['!', '=']),
            '(' | ')' | '/' | '^' | '_' => {}
            _ if letter.is_whitespace() => {}
            _ => match spelled(letter) {
                Some(name) => all.extend(name.chars()),
                None => all.push(letter),
            },
        }
    }
    all.sort_unstable();
    all
}

fn parse_figure(letter: char) -> Option<char> {
    let raised = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];
    let lowered = ['₀', '₁', '₂', '₃', '₄', '₅', '₆', '₇', '₈', '₉'];
    let figure = |list: [char; 10]| list.iter().position(|known| *known == letter);
    figure(raised).or_else(|| figure(lowered)).map_or(Some(letter), |figure| char::from_digit(figure as u32, 10))
}

fn flat(formula: &Formula) -> String {
    match formula {
        Formula::Plain(words) => words.clone(),
        Formula::Row(parts) => parts.iter().map(flat).collect(),
        Formula::Marked { of, below, above } => {
            [Some(of), below.as_ref(), above.as_ref()].into_iter().flatten().map(|part| flat(part)).collect()
        }
        Formula::Fraction(over, under) => flat(over) + &flat(under),
        Formula::Root(of) => format!("√{}", flat(of)),
    }
}

fn loses_nothing(text: &str) {
    let formula = parse(text);
    // A quotient of quotients gets one dot for its two slashes.
    let without_dots = |text: &str| letters_of(text).into_iter().filter(|letter| *letter != '·').collect::<Vec<_>>();
    assert_eq!(without_dots(&flat(&formula)), without_dots(text), "{text}\n{}", shown(&formula));
}

/// Every formula and symbol that the assessment of a plan and its traces carry.
fn all_of(plan: &[u8]) -> BTreeSet<String> {
    let plan = read(plan).unwrap();
    let assessment = assess(&plan, &mut Memo::new());
    let mut all = BTreeSet::new();
    for unit in assessment.units.values() {
        for record in unit.base.iter().flat_map(|base| &base.uses).filter_map(|used| used.record.as_ref()) {
            all.insert(record.formula.clone());
            all.extend(record.symbols.iter().map(|symbol| symbol.symbol.clone()));
        }
    }
    // Units of the large plan are alike by the dozen: every seventh figure of them is enough to meet each formula often.
    let figures = FigureId::all(&assessment);
    let step = if figures.len() > 5_000 { 7 } else { 1 };
    for figure in figures.into_iter().step_by(step) {
        let Some(trace) = explain_in(&plan, &assessment, &figure) else { continue };
        let of = |symbols: &[Symbol]| symbols.iter().map(|symbol| symbol.symbol.clone()).collect::<Vec<_>>();
        all.insert(trace.formula);
        all.extend(of(&trace.symbols));
        for sum in trace.sums {
            all.extend([sum.symbol, sum.formula]);
            all.extend(sum.terms.iter().flat_map(|term| of(&term.symbols)));
        }
    }
    all
}

#[test]
fn every_formula_of_the_demonstration_plans_keeps_its_letters_and_fits_its_lines() {
    let plans: [&[u8]; 3] = [
        include_bytes!("../../../../../demo-projects/small-roof.json"),
        include_bytes!("../../../../../demo-projects/courtyard-building.json"),
        include_bytes!("../../../../../demo-projects/large-complex.json"),
    ];
    let mut all = BTreeSet::new();
    for plan in plans {
        all.extend(all_of(plan));
    }
    assert!(all.len() > 150, "formulas and symbols are found: {}", all.len());
    for text in &all {
        loses_nothing(text);
        for width in [20.0, 60.0, 150.0] {
            stays_within(text, width);
        }
    }
    if let Ok(file) = std::env::var("GANTLINE_FORMULAS") {
        let lines: Vec<String> = all.iter().map(|text| format!("{text}\t{}\n", shown(&parse(text)))).collect();
        std::fs::write(file, lines.concat()).unwrap();
    }
}

/// Nothing beyond the width, and the letters of the lines are those of the text.
fn stays_within(text: &str, width_mm: f64) {
    let laid = lines(&parse(text), Hand::body(), width_mm);
    let mut words = String::new();
    for line in &laid {
        let wide =
            |letters: &str, size_mm: f64| crate::paper::measure::width_mm(letters, Hand { size_mm, ..Hand::body() });
        assert!(line.width_mm <= width_mm + 1e-6 || width_mm < 4.0, "{text:?} in {width_mm}");
        for thing in &line.things {
            match thing {
                OnPage::Words(set) => {
                    let end = set.at_mm.x + wide(&set.words, set.size_mm);
                    assert!(end <= line.width_mm + 1e-6 && set.at_mm.x >= -1e-6, "{text:?}: {}", set.words);
                    words += &set.words;
                }
                OnPage::Line { points_mm, .. } => {
                    assert!(points_mm.iter().all(|point| (-1e-6..=line.width_mm + 1e-6).contains(&point.x)));
                }
                OnPage::Area { .. } | OnPage::Picture { .. } => {}
            }
        }
    }
    let figures = |text: &str| letters_of(text).into_iter().filter(char::is_ascii_digit).count();
    assert_eq!(figures(&words), figures(text), "{text}");
}

/// Letters of a formula in one line don't stand on each other.
#[test]
fn no_letters_of_a_formula_meet() {
    for text in [
        "NRd,cb = k5*c1*sqrt(Ah)*sqrt(fck)*(Ac,Nb/A0c,Nb)*psi_s,Nb*psi0_g,Nb/gamma_Mc",
        "psi0_g^(2/3) + A0c,N^1.5/(x_i^2/4)/sqrt((a + b^2)/c)",
        "(a/b)^(2 + x_1^2) + (A0c,N)^2",
    ] {
        let laid = set(&parse(text), Hand::body());
        let boxes: Vec<(f64, f64, f64, f64, &str)> = laid
            .things
            .iter()
            .filter_map(|thing| match thing {
                OnPage::Words(words) => {
                    let hand = Hand { size_mm: words.size_mm, ..Hand::body() };
                    let wide = crate::paper::measure::width_mm(&words.words, hand);
                    // Capitals and what hangs under the line; brackets and the like reach a little farther.
                    let (low, high) = (words.at_mm.y - 0.16 * words.size_mm, words.at_mm.y + 0.7 * words.size_mm);
                    Some((words.at_mm.x, words.at_mm.x + wide, low, high, words.words.as_str()))
                }
                _ => None,
            })
            .collect();
        for (index, a) in boxes.iter().enumerate() {
            for b in boxes.iter().skip(index + 1) {
                let meet = a.0 < b.1 - 1e-6 && b.0 < a.1 - 1e-6 && a.2 < b.3 - 1e-6 && b.2 < a.3 - 1e-6;
                assert!(!meet, "{} and {} in {text}: {a:?} {b:?}", a.4, b.4);
            }
        }
    }
}

/// Arithmetic of sums, products, quotients, powers and roots, read by the rules that everyone learns.
struct Sums<'a> {
    letters: std::iter::Peekable<std::str::Chars<'a>>,
}

impl Sums<'_> {
    fn value(text: &str) -> f64 {
        let text: String = text.chars().filter(|letter| *letter != ' ').collect();
        let mut sums = Sums { letters: text.chars().peekable() };
        let value = sums.sum();
        assert_eq!(sums.letters.next(), None, "{text}");
        value
    }

    fn takes(&mut self, letters: &str) -> Option<char> {
        let next = *self.letters.peek()?;
        letters.contains(next).then(|| self.letters.next()).flatten()
    }

    fn sum(&mut self) -> f64 {
        let mut value = self.product();
        while let Some(sign) = self.takes("+−-") {
            let other = self.product();
            value += if sign == '+' { other } else { -other };
        }
        value
    }

    fn product(&mut self) -> f64 {
        let mut value = self.power();
        while let Some(sign) = self.takes("·*/") {
            let other = self.power();
            value = if sign == '/' { value / other } else { value * other };
        }
        value
    }

    fn power(&mut self) -> f64 {
        let base = self.bare();
        if self.takes("^").is_some() { base.powf(self.bare()) } else { base }
    }

    fn bare(&mut self) -> f64 {
        if self.takes("(").is_some() {
            let value = self.sum();
            assert_eq!(self.letters.next(), Some(')'));
            return value;
        }
        if self.takes("√").is_some() {
            return self.bare().sqrt();
        }
        let letter = self.letters.next().unwrap();
        letter.to_digit(10).map_or_else(|| f64::from(u32::from(letter) - 96) * 1.37, f64::from)
    }
}

/// The same formula with brackets wherever a bar, a root or a raised place groups.
fn bracketed(formula: &Formula) -> String {
    match formula {
        Formula::Plain(words) => words.clone(),
        Formula::Row(parts) => parts.iter().map(bracketed).collect(),
        Formula::Marked { of, above, .. } => {
            format!("{}^({})", bracketed(of), above.as_ref().map_or_else(String::new, |above| bracketed(above)))
        }
        Formula::Fraction(over, under) => format!("(({})/({}))", bracketed(over), bracketed(under)),
        Formula::Root(of) => format!("√({})", bracketed(of)),
    }
}

fn arithmetic() -> impl Strategy<Value = String> {
    let leaf = prop_oneof![(1..9_u8).prop_map(|figure| figure.to_string()), "[a-e]".prop_map(|letter| letter)];
    leaf.prop_recursive(5, 40, 3, |inner| {
        prop_oneof![
            (inner.clone(), inner.clone()).prop_map(|(a, b)| format!("{a}*{b}")),
            (inner.clone(), inner.clone()).prop_map(|(a, b)| format!("{a}/{b}")),
            (inner.clone(), inner.clone()).prop_map(|(a, b)| format!("{a} + {b}")),
            (inner.clone(), inner.clone()).prop_map(|(a, b)| format!("{a} - {b}")),
            inner.clone().prop_map(|a| format!("({a})")),
            inner.clone().prop_map(|a| format!("sqrt({a})")),
            (inner, 2..4_u8).prop_map(|(a, power)| format!("({a})^{power}")),
        ]
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    /// Witness: the arithmetic of the text itself, by code that knows nothing of how formulas are set.
    #[test]
    fn a_formula_as_set_has_the_value_of_its_text(text in arithmetic()) {
        let typed = Sums::value(&text.replace("sqrt", "√"));
        let as_set = Sums::value(&bracketed(&parse(&text)));
        let same = (typed - as_set).abs() <= 1e-9 * typed.abs().max(1e-9) || !typed.is_finite() || !as_set.is_finite();
        prop_assert!(same || typed.is_nan(), "{text} is {typed}, {} is {as_set}", shown(&parse(&text)));
    }

    #[test]
    fn no_text_loses_a_letter_or_a_figure(text in "[ a-zA-Z0-9αψ²₁_^,.'*/()|√≤<=+−-]{0,40}") {
        loses_nothing(&text);
        stays_within(&text, 25.0);
    }

    #[test]
    fn no_text_makes_the_reader_panic(text in any::<String>(), width_mm in -5.0..200.0_f64) {
        let _ = lines(&parse(&text), Hand::body(), width_mm);
    }
}

#[test]
fn deep_nests_and_long_words_do_no_harm() {
    for text in [
        "(".repeat(5000),
        "√".repeat(5000),
        "x^(".repeat(5000),
        "a_".repeat(5000),
        "a/".repeat(3000),
        "|".repeat(5000),
        "tan θ·".repeat(2000),
    ] {
        loses_nothing(&text);
        let laid = lines(&parse(&text), Hand::body(), 100.0);
        assert!(laid.iter().all(|line| line.width_mm <= 100.0 + 1e-6));
    }
}
