//! One base of the small demonstration plan followed from its load to its verdict with nothing but what is printed.

use gantline_exchange::paper::{Block, Table};

use super::printed::{Span, all};
use super::reading::{Reported, SMALL, cells, said, tables, tables_with, text, under};

/// The sum of the parts, each computed from its own numbers: what is printed beside it must come out.
fn added(table: &Table, of_part: impl Fn(&[Span]) -> Span) -> Span {
    let (last, parts) = table.rows.split_last().unwrap();
    let mut sum = Span::ZERO;
    for row in parts {
        let cells = cells(row);
        let by_hand = of_part(&all(&cells[1]));
        let printed = Span::of(&cells[2]);
        assert!(by_hand.low <= printed.high && printed.low <= by_hand.high, "{cells:?}: {by_hand:?}");
        sum = sum + printed;
    }
    let total = Span::of(&cells(last)[2]);
    assert!(sum.low <= total.high && total.low <= sum.high, "{table:?}: {sum:?}");
    total
}

fn headed<'a>(blocks: &'a [Block], head: &str) -> &'a Table {
    let begins = |table: &&&Table| table.columns.iter().any(|column| column.head.starts_with(head));
    tables(blocks).iter().find(begins).unwrap_or_else(|| panic!("no table headed {head}"))
}

/// The whole way: pull of the rope and weights → moment on the plate → what anchors and pressure hold → tension of the hardest
/// pulled anchor → tension of the group → resistance of the concrete cone → use. Formulas are those of the report; digits only
/// those that it prints.
#[test]
fn one_base_can_be_followed_from_load_to_verdict_with_a_pocket_calculator() {
    let report = Reported::of(SMALL);
    let base = report.under("Base 1:");
    let chain = under(base, "From load to use: concrete cone").expect("the cone governs");

    // The load: T·cos θ down, and m·g·γ_G of mast, arm and brace.
    let symbols = tables_with(chain, "Entered at")[0];
    let of = |name: &str| Span::of(&said(symbols, name));
    let theta = of("θ");
    let down = of("T") * Span { low: theta.high.to_radians().cos(), high: theta.low.to_radians().cos() };
    let weights: Span = ["m_mast", "m_arm", "m_brace"].into_iter().map(|mass| of(mass) * of("g") * of("γ_G")).sum();
    assert!(of("T").agrees(of("T_u")), "the load has its factors inside");

    // What acts on the plate: forces and levers of each part as printed.
    let fz = added(headed(chain, "Fz in numbers"), |numbers| numbers[0]);
    assert!((-(down + weights)).agrees(fz), "{down:?} {weights:?} {fz:?}");
    let mx = added(headed(chain, "(y·Fz − z·Fy) in numbers"), |n| n[0] * n[1] - n[2] * n[3]);
    let my = added(headed(chain, "(z·Fx − x·Fz) in numbers"), |n| n[0] * n[1] - n[2] * n[3]);

    // The state that governs has just these actions.
    let overview = tables_with(base, "State")[0];
    let row = overview.rows.iter().map(cells).find(|cells| cells[0] == "concrete cone").unwrap();
    let number = row[5].as_str();
    let states = under(base, "States").unwrap();
    let acts = cells(tables_with(states, "Fx")[0].rows.iter().find(|row| cells(row)[0] == number).unwrap());
    let of_state: Vec<Span> = acts[1..].iter().map(|words| Span::of(words)).collect();
    assert!(mx.agrees(of_state[3]) && my.agrees(of_state[4]), "{mx:?} {my:?} {acts:?}");
    assert!(fz.agrees(of_state[2]));

    // Anchors and pressure hold it: Fz = Σ N − C, Mx = Σ y·N − y_C·C, My = −Σ x·N + x_C·C.
    let head = format!("State {number}");
    let tensions = tables_with(states, &head)[0];
    let column = tensions.columns.iter().position(|column| column.head == head).unwrap();
    let anchors: Vec<Vec<String>> = tensions.rows.iter().map(cells).collect();
    let pulled: Vec<[Span; 3]> =
        anchors.iter().map(|cells| [Span::of(&cells[1]), Span::of(&cells[2]), Span::of(&cells[column])]).collect();
    let (push, x, y) = (of_state[6], of_state[7], of_state[8]);
    let tension: Span = pulled.iter().map(|anchor| anchor[2]).sum();
    assert!((tension - push).agrees(fz), "{tension:?} {push:?} {fz:?}");
    assert!((pulled.iter().map(|anchor| anchor[1] * anchor[2]).sum::<Span>() - y * push).agrees(mx));
    assert!((x * push - pulled.iter().map(|anchor| anchor[0] * anchor[2]).sum()).agrees(my));

    // The anchor pulled hardest: N = n·A_s·p·d/e.
    let symbols = tables_with(chain, "Entered at")[1];
    let of = |name: &str| Span::of(&said(symbols, name));
    let hardest = of("n") * of("A_s") * of("p") * of("d") / of("e");
    let most = pulled.iter().map(|anchor| anchor[2]).max_by(|a, b| a.middle().total_cmp(&b.middle())).unwrap();
    assert!(hardest.agrees(most), "{hardest:?} {most:?}");

    // The group's tension is the action; the cone resists k1·√fck·hef^1.5·(Ac,N/A0c,N)·ψ…/γ_Mc.
    let record = under(base, "concrete cone, state").unwrap();
    let verdict = record.iter().find_map(|block| match block {
        Block::Paragraph { words, .. } if words.starts_with("Acts") => Some(all(words)),
        _ => None,
    });
    let [action, resistance, used] = verdict.unwrap()[..] else { panic!("action, resistance, use are printed") };
    assert!(tension.agrees(action), "{tension:?} {action:?}");
    let symbols = tables(record)[0];
    let of = |name: &str| Span::of(&said(symbols, name));
    let basic = of("k1") * of("fck").power(0.5) * of("hef").power(1.5);
    assert!(basic.agrees(of("N0Rk,c")), "{basic:?}");
    let factors = ["psi_s,N", "psi_re,N", "psi_ec,N", "psi_M,N"].map(of).into_iter().reduce(|a, b| a * b).unwrap();
    let by_hand = basic * of("Ac,N") / of("A0c,N") * factors / of("gamma_Mc");
    assert!(by_hand.agrees(resistance), "{by_hand:?} {resistance:?}");
    assert!((action / resistance).agrees(used), "{action:?} {resistance:?} {used:?}");

    // And the line with numbers put in has all of these.
    let formulas = record.iter().filter_map(|block| match block {
        Block::Formula { formula, .. } => Some(text(formula)),
        _ => None,
    });
    let put: Vec<String> = formulas.collect();
    assert!(put[1].contains("7.7") && put[1].contains("30 MPa") && put[1].contains("230 mm"), "{put:?}");
}

/// A figure that is off by more than its last digit is seen.
#[test]
fn a_figure_that_is_wrong_in_its_last_digit_but_one_does_not_agree() {
    let action = Span::of("102.5 kN") / Span::of("119.8 kN");
    assert!(action.agrees(Span::of("86 %")));
    assert!(!action.agrees(Span::of("84 %")));
    assert!(!(Span::of("7.7") * Span::of("30 MPa").power(0.5)).agrees(Span::of("42.6")));
}
