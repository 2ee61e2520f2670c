//! Concrete modes of the fasteners in shear under one set of actions.

use super::super::edge_shear::TowardEdge;
use super::super::line::{Line, Of, Sink};
use super::super::record::{Mode, NotChecked, Outcome};
use super::bond::{Bond, BondGroup};
use super::cluster::Sizes;
use super::cone::Cone;
use super::evaluate::{Acting, not_applicable};
use super::material::ConcreteTerms;
use super::prepared::{Met, Prepared};
use super::pry_out::{Basis, PryOut, Pull, alone, pull};

/// Tells pry-out and every edge, or the bars in place of one edge.
pub(super) fn tell(p: &Prepared<'_>, met: &Met<'_>, terms: &ConcreteTerms, acting: Acting<'_>, sink: &mut impl Sink) {
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

fn pry_out(p: &Prepared<'_>, met: &Met<'_>, terms: &ConcreteTerms, acting: Acting<'_>, sink: &mut impl Sink) {
    let bond = match (p.bond, acting.0.sustained_share) {
        (Some(Ok(_)), None) => Some(Err(NotChecked::MissingData { field: "sustained_share" })),
        (bond, _) => bond,
    };
    let pry = match p.pry_out {
        Ok(pry) => pry,
        Err(why) => return sink.take(&Line::only(Mode::PryOut, "EN 1992-4 7.2.2.4", Outcome::NotChecked(why))),
    };
    pry_out_of_cones(p, met, (terms, &pry), acting, sink);
    match bond {
        Some(Ok(bond)) => pry_out_of_bond(p, met, (terms, &pry, &bond), acting, sink),
        Some(Err(why)) => sink.take(&Line::only(Mode::PryOut, "EN 1992-4 7.2.2.4", Outcome::NotChecked(why))),
        None => {}
    }
}

fn pry_out_of_cones(
    p: &Prepared<'_>,
    met: &Met<'_>,
    (terms, pry): (&ConcreteTerms, &PryOut),
    (actions, _): Acting<'_>,
    sink: &mut impl Sink,
) {
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
}

fn pry_out_of_bond(
    p: &Prepared<'_>,
    met: &Met<'_>,
    (terms, pry, bond): (&ConcreteTerms, &PryOut, &Bond),
    (actions, psi_sus): Acting<'_>,
    sink: &mut impl Sink,
) {
    let sizes = bond.sizes(psi_sus);
    for cluster in &met.shear_bond.clusters {
        match pull(p.group, actions, &cluster.members) {
            Pull::Together { shear_n, eccentricity_m } => {
                let group = BondGroup::new(bond, terms, cluster, psi_sus, eccentricity_m);
                pry.tell(Of::Anchors(&cluster.members), Basis::Bond, (shear_n, group.resistance_n), sink);
            }
            Pull::Opposed => {
                for cell in met.shear_bond.cells.iter().filter(|cell| cluster.members.contains(&cell.anchor)) {
                    let one = BondGroup::new(bond, terms, &alone(cell, &sizes), psi_sus, [0.0; 2]);
                    let action = actions.shear_of_n(cell.anchor);
                    pry.tell(Of::Anchor(cell.anchor), Basis::Bond, (action, one.resistance_n), sink);
                }
            }
        }
    }
}
