//! Concrete modes of the fasteners in tension under one set of actions.

use super::super::actions::GroupActions;
use super::super::fastener::FastenerKind;
use super::super::line::{Line, Of, Sink, newtons, number, pascals, square_meters};
use super::super::product::PullOut;
use super::super::record::{Mode, NotChecked, Outcome};
use super::bond::BondGroup;
use super::cone::{Cone, psi_m};
use super::evaluate::{Acting, not_applicable};
use super::material::ConcreteTerms;
use super::prepared::{Met, Prepared};
use super::pull_out::k2;
use super::splitting::held_by_bars;

/// Tells cone, pull-out, bond, splitting and blow-out, or the bars in place of the cone.
pub(super) fn tell(p: &Prepared<'_>, met: &Met<'_>, terms: &ConcreteTerms, acting: Acting<'_>, sink: &mut impl Sink) {
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

fn tension_of(actions: &GroupActions, set: &[usize]) -> f64 {
    set.iter().map(|&i| actions.tension_n[i]).sum()
}

fn most_pulled(actions: &GroupActions) -> (usize, f64) {
    actions.tension_n.iter().copied().enumerate().fold((0, 0.0), |most, one| if one.1 > most.1 { one } else { most })
}
