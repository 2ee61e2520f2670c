//! All modes under one set of actions, line by line into a sink: the one road for verdicts and records.

use super::super::actions::GroupActions;
use super::super::fastener::FastenerKind;
use super::super::product::PullOut;
use super::super::record::{Mode, NotChecked, Outcome};
use super::bond::BondGroup;
use super::cluster::Sizes;
use super::cone::{Cone, psi_m};
use super::edge::TowardEdge;
use super::interaction::{BarsIn, Shares, steel_share, tell_concrete, tell_steel};
use super::line::{Line, Of, Sink, newtons, number, pascals, square_meters};
use super::material::ConcreteTerms;
use super::prepared::{Met, Prepared};
use super::pry_out::{Basis, Pull, alone, pull};
use super::pull_out::k2;
use super::splitting::held_by_bars;
use super::steel::Steel;

type Acting<'a> = (&'a GroupActions, f64);

/// Tells every mode.
pub(super) fn evaluate(p: &Prepared<'_>, met: &Met<'_>, acting: Acting<'_>, sink: &mut impl Sink) {
    p.distances.tell(sink);
    steel(p, acting.0, sink);
    let mut shares = Shares { sink, tension: 0.0, shear: 0.0 };
    match p.terms {
        Ok(terms) => {
            tension(p, met, &terms, acting, &mut shares);
            shear(p, met, &terms, acting, &mut shares);
            let bars = match (&p.tension_bars, &p.shear_bars) {
                (Some(_), None) | (None, Some(_)) => BarsIn::OneDirection,
                (Some(_), Some(_)) | (None, None) => BarsIn::NoneOrBoth,
            };
            let (beta_n, beta_v) = (shares.tension, shares.shear);
            if beta_n > 0.0 && beta_v > 0.0 {
                tell_concrete((beta_n, beta_v), bars, shares.sink);
            } else {
                not_applicable(&[Mode::ConcreteInteraction], ONE_ONLY, shares.sink);
            }
        }
        Err(why) => {
            for mode in CONCRETE_MODES {
                shares.sink.take(&Line::only(mode, "EN 1992-4 7.2", Outcome::NotChecked(why)));
            }
        }
    }
}

const ONE_ONLY: &str = "tension or shear alone";
const CONCRETE_MODES: [Mode; 8] = [
    Mode::ConcreteCone,
    Mode::PullOut,
    Mode::Bond,
    Mode::Splitting,
    Mode::BlowOut,
    Mode::PryOut,
    Mode::ConcreteEdge,
    Mode::ConcreteInteraction,
];

fn steel(p: &Prepared<'_>, actions: &GroupActions, sink: &mut impl Sink) {
    let steel = match p.steel {
        Ok(steel) => steel,
        Err(why) => {
            for mode in [Mode::SteelTension, Mode::SteelShear, Mode::SteelInteraction] {
                sink.take(&Line::only(mode, "EN 1992-4 7.2", Outcome::NotChecked(why)));
            }
            return;
        }
    };
    let anchors = || 0..actions.tension_n.len();
    let worst = |share: &dyn Fn(usize) -> f64| anchors().max_by(|&a, &b| share(a).total_cmp(&share(b))).unwrap_or(0);
    let pulled = worst(&|i| actions.tension_n[i]);
    let is_pulled = actions.tension_n[pulled] > 0.0;
    if is_pulled {
        steel.tell_tension(pulled, actions.tension_n[pulled], sink);
    } else {
        not_applicable(&[Mode::SteelTension], "no tension", sink);
    }
    let sheared = worst(&|i| actions.shear_of_n(i));
    if actions.shear_of_n(sheared) <= 0.0 {
        not_applicable(&[Mode::SteelShear, Mode::SteelInteraction], "no shear", sink);
        return;
    }
    steel_shear(&steel, actions, (sheared, is_pulled), sink);
}

fn steel_shear(steel: &Steel, actions: &GroupActions, (sheared, is_pulled): (usize, bool), sink: &mut impl Sink) {
    let anchors = || 0..actions.tension_n.len();
    let Some(direct_rd) = steel.direct_rd_n() else {
        // With a lever arm every fastener has its own resistance, by its own tension.
        for i in anchors().filter(|&i| actions.shear_of_n(i) > 0.0 || i == sheared) {
            steel.tell_shear(i, (actions.shear_of_n(i), actions.tension_n[i]), sink);
            if steel.shear.is_err() {
                break;
            }
        }
        let outcome = match steel.shear {
            Err(why) => Outcome::NotChecked(why),
            Ok(_) => Outcome::NotApplicable("the tension is in the lever arm's resistance already (from memory)"),
        };
        sink.take(&Line::only(Mode::SteelInteraction, "EN 1992-4 7.2.3.1", outcome));
        return;
    };
    steel.tell_shear(sheared, (actions.shear_of_n(sheared), actions.tension_n[sheared]), sink);
    if !is_pulled {
        not_applicable(&[Mode::SteelInteraction], ONE_ONLY, sink);
        return;
    }
    let shares = |i: usize| (actions.tension_n[i] / steel.tension_rd_n(), actions.shear_of_n(i) / direct_rd);
    let sum = |i: &usize| {
        let (n, v) = shares(*i);
        steel_share(n, v)
    };
    if let Some(worst) = anchors().max_by(|a, b| sum(a).total_cmp(&sum(b))) {
        let (n, v) = shares(worst);
        tell_steel((worst, n, v), sink);
    }
}

fn tension(p: &Prepared<'_>, met: &Met<'_>, terms: &ConcreteTerms, acting: Acting<'_>, sink: &mut impl Sink) {
    let actions = acting.0;
    if actions.total_tension_n() <= 0.0 {
        let modes = [Mode::ConcreteCone, Mode::PullOut, Mode::Bond, Mode::Splitting, Mode::BlowOut];
        return not_applicable(&modes, "no tension", sink);
    }
    let gamma = match p.gamma_tension {
        Ok(gamma) => gamma,
        Err(why) => {
            for mode in [Mode::ConcreteCone, Mode::PullOut, Mode::Bond, Mode::Splitting, Mode::BlowOut] {
                sink.take(&Line::only(mode, "EN 1992-4 4.4.3", Outcome::NotChecked(why)));
            }
            return;
        }
    };
    cone(p, met, terms, (actions, gamma), sink);
    one_pull_out(p, terms, (actions, gamma), sink);
    bond(p, met, terms, (acting, gamma), sink);
    splitting(p, met, terms, (acting, gamma), sink);
    blow_out(p, met, terms, (actions, gamma), sink);
}

fn cone(p: &Prepared<'_>, met: &Met<'_>, terms: &ConcreteTerms, (actions, gamma): Acting<'_>, sink: &mut impl Sink) {
    match p.tension_bars {
        Some(Ok(bars)) => {
            let (anchor, most) = most_pulled(actions);
            bars.tell(Mode::TensionBars, Of::Anchor(anchor), ("EN 1992-4 7.2.1.9 (7.31), (7.33)", most), sink);
            return not_applicable(&[Mode::ConcreteCone], "supplementary bars take the tension", sink);
        }
        Some(Err(why)) => sink.take(&Line::only(Mode::TensionBars, "EN 1992-4 7.2.1.2", Outcome::NotChecked(why))),
        None => {}
    }
    let compression = if met.tension.cone.len() == 1 { actions.compression } else { None };
    for cluster in &met.tension.cone {
        let action = tension_of(actions, &cluster.members);
        let hold = psi_m(p.group.fastener.embedment_m, cluster.edge_m, action, compression);
        let off = actions.tension_eccentricity_m(&p.group.anchors_m, &cluster.members);
        Cone::new(terms, &p.group.fastener, cluster, off, hold).tell((terms, cluster), action, gamma, sink);
    }
}

fn one_pull_out(p: &Prepared<'_>, terms: &ConcreteTerms, (actions, gamma): Acting<'_>, sink: &mut impl Sink) {
    if p.bond.is_some() {
        return not_applicable(&[Mode::PullOut], "bonded: see bond", sink);
    }
    match p.pull_out {
        Err(why) => sink.take(&Line::only(Mode::PullOut, "EN 1992-4 7.2.1.5", Outcome::NotChecked(why))),
        Ok(PullOut::NotDecisive) => not_applicable(&[Mode::PullOut], "not decisive by the product's assessment", sink),
        Ok(PullOut::Characteristic(resistance)) => {
            let (anchor, most) = most_pulled(actions);
            let head = p.group.fastener.head_area_m2();
            let symbols = [
                newtons("NRk,p", resistance),
                number("gamma_Mp", gamma),
                number("k2", k2(terms)),
                square_meters("Ah", head.unwrap_or(0.0)),
                pascals("fck", terms.fck_pa),
            ];
            let (formula, told) = match head {
                Some(_) => ("NRd,p = k2*Ah*fck/gamma_Mp", &symbols[..]),
                None => ("NRd,p = NRk,p/gamma_Mp, NRk,p of the product", &symbols[..2]),
            };
            sink.take(&Line::against(
                Mode::PullOut,
                Of::Anchor(anchor),
                ("EN 1992-4 7.2.1.5 (7.11)", formula),
                told,
                (most, resistance / gamma),
            ));
        }
    }
}

fn bond(
    p: &Prepared<'_>,
    met: &Met<'_>,
    terms: &ConcreteTerms,
    ((actions, psi_sus), gamma): (Acting<'_>, f64),
    sink: &mut impl Sink,
) {
    let missing_share = NotChecked::MissingData { field: "sustained_share" };
    match (p.bond, actions.sustained_share) {
        (None, _) => not_applicable(&[Mode::Bond], "not bonded", sink),
        (Some(Err(why)), _) => sink.take(&Line::only(Mode::Bond, "EN 1992-4 7.2.1.6", Outcome::NotChecked(why))),
        (Some(Ok(_)), None) => {
            sink.take(&Line::only(Mode::Bond, "EN 1992-4 7.2.1.6", Outcome::NotChecked(missing_share)));
        }
        (Some(Ok(bond)), Some(_)) => {
            for cluster in &met.tension_bond.clusters {
                let off = actions.tension_eccentricity_m(&p.group.anchors_m, &cluster.members);
                let action = tension_of(actions, &cluster.members);
                BondGroup::new(&bond, terms, cluster, psi_sus, off).tell(
                    (&bond, cluster),
                    psi_sus,
                    (action, gamma),
                    sink,
                );
            }
        }
    }
}

fn splitting(
    p: &Prepared<'_>,
    met: &Met<'_>,
    terms: &ConcreteTerms,
    ((actions, psi_sus), gamma): (Acting<'_>, f64),
    sink: &mut impl Sink,
) {
    if held_by_bars(terms, p.concrete.splitting_bars) {
        return not_applicable(&[Mode::Splitting], "reinforcement limits cracks to 0.3 mm, cracked design", sink);
    }
    let data = match p.splitting {
        Ok(data) => data,
        Err(why) => {
            return sink.take(&Line::only(Mode::Splitting, "EN 1992-4 7.2.1.7", Outcome::NotChecked(why)));
        }
    };
    // A sustained share that lowers the bond lowers what the splitting starts from.
    let data = match p.bond {
        Some(Ok(bond)) => data.with_bond(bond.one_n(psi_sus)),
        Some(Err(_)) | None => data,
    };
    for cluster in &met.tension.splitting {
        if data.is_far(cluster) {
            not_applicable(&[Mode::Splitting], "edges far and concrete thick enough", sink);
            continue;
        }
        let off = actions.tension_eccentricity_m(&p.group.anchors_m, &cluster.members);
        data.tell((terms, cluster), off, (tension_of(actions, &cluster.members), gamma), sink);
    }
}

fn blow_out(
    p: &Prepared<'_>,
    met: &Met<'_>,
    terms: &ConcreteTerms,
    (actions, gamma): Acting<'_>,
    sink: &mut impl Sink,
) {
    let fastener = &p.group.fastener;
    if fastener.kind == FastenerKind::Bonded {
        return not_applicable(&[Mode::BlowOut], "bonded fasteners have no head", sink);
    }
    if met.tension.blow_out.is_empty() {
        return not_applicable(&[Mode::BlowOut], "edges at least half the embedment away", sink);
    }
    if fastener.head_area_m2().is_none() {
        let why = NotChecked::MissingData { field: "head" };
        return sink.take(&Line::only(Mode::BlowOut, "EN 1992-4 7.2.1.8", Outcome::NotChecked(why)));
    }
    for row in &met.tension.blow_out {
        // The heads stand in a row along the edge: their whole eccentricity is along it.
        let off = actions.tension_eccentricity_m(&p.group.anchors_m, &row.members);
        row.tell((terms, fastener), off[0].hypot(off[1]), (tension_of(actions, &row.members), gamma), sink);
    }
}

fn shear(p: &Prepared<'_>, met: &Met<'_>, terms: &ConcreteTerms, acting: Acting<'_>, sink: &mut impl Sink) {
    let actions = acting.0;
    if (0..actions.shear_n.len()).all(|i| actions.shear_of_n(i) <= 0.0) {
        return not_applicable(&[Mode::PryOut, Mode::ConcreteEdge], "no shear", sink);
    }
    pry_out(p, met, terms, acting, sink);
    if p.edges.is_empty() {
        return not_applicable(&[Mode::ConcreteEdge], "no edge within reach", sink);
    }
    let mut is_any = false;
    for row in &p.edges {
        let toward = row.toward(actions);
        if toward.square_n <= 0.0 && toward.along_n <= 0.0 {
            continue;
        }
        is_any = true;
        match &p.shear_bars {
            Some((edge, bars)) if *edge == row.edge => edge_bars(p, *bars, (row.edge, &toward), sink),
            Some(_) | None => row.tell(&toward, p.gamma_shear, sink),
        }
    }
    if !is_any {
        not_applicable(&[Mode::ConcreteEdge], "the shear points away from every edge", sink);
    }
}

/// Bars take the shear toward their edge: N_Ed,re = V_Ed·(e_s/z + 1), (6.6).
fn edge_bars(
    p: &Prepared<'_>,
    bars: Result<super::bars::Bars, NotChecked>,
    (edge, toward): (usize, &TowardEdge),
    sink: &mut impl Sink,
) {
    match (bars, p.concrete.shear_bars) {
        (Ok(bars), Some(given)) => {
            let shear = toward.square_n.hypot(toward.along_n);
            let action = shear * (given.offset_m.max(0.0) / given.lever_m + 1.0);
            bars.tell(Mode::ShearBars, Of::Edge(edge), ("EN 1992-4 6.2.2.4 (6.6), 7.2.2.6", action), sink);
        }
        (Err(why), _) => sink.take(&Line::only(Mode::ShearBars, "EN 1992-4 7.2.2.2", Outcome::NotChecked(why))),
        (Ok(_), None) => {}
    }
}

fn pry_out(
    p: &Prepared<'_>,
    met: &Met<'_>,
    terms: &ConcreteTerms,
    (actions, psi_sus): Acting<'_>,
    sink: &mut impl Sink,
) {
    let pry = match p.pry_out {
        Ok(pry) => pry,
        Err(why) => return sink.take(&Line::only(Mode::PryOut, "EN 1992-4 7.2.2.4", Outcome::NotChecked(why))),
    };
    let fastener = &p.group.fastener;
    let sizes = Sizes::cone(fastener.embedment_m);
    for cluster in &met.shear.cone {
        match pull(p.group, actions, &cluster.members) {
            Pull::Together { shear_n, eccentricity_m } => {
                let cone = Cone::new(terms, fastener, cluster, eccentricity_m, 1.0);
                pry.tell(Of::Anchors(&cluster.members), Basis::Cone, (shear_n, cone.resistance_n), sink);
            }
            Pull::Opposed => {
                for cell in met.shear.cells.iter().filter(|cell| cluster.members.contains(&cell.anchor)) {
                    let cone = Cone::new(terms, fastener, &alone(cell, &sizes), [0.0; 2], 1.0);
                    let action = actions.shear_of_n(cell.anchor);
                    pry.tell(Of::Anchor(cell.anchor), Basis::Cone, (action, cone.resistance_n), sink);
                }
            }
        }
    }
    let Some(bond) = p.bond else { return };
    let bond = match (bond, actions.sustained_share) {
        (Ok(bond), Some(_)) => bond,
        (Err(why), _) => return sink.take(&Line::only(Mode::PryOut, "EN 1992-4 7.2.2.4", Outcome::NotChecked(why))),
        (Ok(_), None) => {
            let why = NotChecked::MissingData { field: "sustained_share" };
            return sink.take(&Line::only(Mode::PryOut, "EN 1992-4 7.2.2.4", Outcome::NotChecked(why)));
        }
    };
    let sizes = bond.sizes(psi_sus);
    for cluster in &met.shear_bond.clusters {
        match pull(p.group, actions, &cluster.members) {
            Pull::Together { shear_n, eccentricity_m } => {
                let group = BondGroup::new(&bond, terms, cluster, psi_sus, eccentricity_m);
                pry.tell(Of::Anchors(&cluster.members), Basis::Bond, (shear_n, group.resistance_n), sink);
            }
            Pull::Opposed => {
                for cell in met.shear_bond.cells.iter().filter(|cell| cluster.members.contains(&cell.anchor)) {
                    let one = BondGroup::new(&bond, terms, &alone(cell, &sizes), psi_sus, [0.0; 2]);
                    let action = actions.shear_of_n(cell.anchor);
                    pry.tell(Of::Anchor(cell.anchor), Basis::Bond, (action, one.resistance_n), sink);
                }
            }
        }
    }
}

fn tension_of(actions: &GroupActions, set: &[usize]) -> f64 {
    set.iter().map(|&i| actions.tension_n[i]).sum()
}

fn most_pulled(actions: &GroupActions) -> (usize, f64) {
    actions.tension_n.iter().copied().enumerate().fold((0, 0.0), |most, one| if one.1 > most.1 { one } else { most })
}

fn not_applicable(modes: &[Mode], why: &'static str, sink: &mut impl Sink) {
    for &mode in modes {
        sink.take(&Line::only(mode, "EN 1992-4 7.2", Outcome::NotApplicable(why)));
    }
}
