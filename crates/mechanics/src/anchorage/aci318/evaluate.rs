//! All modes under one set of actions, line by line into a sink: the one road for verdicts and records.

use super::super::actions::GroupActions;
use super::super::fastener::FastenerKind;
use super::super::group::Seating;
use super::super::line::{Line, Of, Sink, newtons, number};
use super::super::record::{Mode, NotChecked, Outcome, Symbol};
use super::bond::{self, Bond};
use super::breakout::{self, Breakout};
use super::cluster::Cluster;
use super::interaction::{self, Shares};
use super::material::Material;
use super::prepared::{Met, Prepared};
use super::pull_out::Pulled;
use super::{blow_out, edge, pry_out};

const CHAPTER: &str = "ACI 318-19 17.5.2";
const TENSION: [Mode; 5] = [Mode::ConcreteCone, Mode::PullOut, Mode::Bond, Mode::SustainedBond, Mode::BlowOut];
const SHEAR: [Mode; 2] = [Mode::PryOut, Mode::ConcreteEdge];

/// Tells every mode.
pub(super) fn evaluate(p: &Prepared<'_>, [pulled, sheared]: [&Met; 2], actions: &GroupActions, sink: &mut impl Sink) {
    p.distances.tell(sink);
    let mut shares = Shares { sink, tension: 0.0, shear: 0.0 };
    not_applicable(Mode::Splitting, "ACI 318-19 17.9", SPLITTING, &mut shares);
    for mode in [Mode::TensionBars, Mode::ShearBars] {
        not_applicable(mode, "ACI 318-19 17.5.2.1", BARS, &mut shares);
    }
    tension(p, pulled, actions, &mut shares);
    shear(p, sheared, actions, &mut shares);
    not_applicable(Mode::SteelInteraction, "ACI 318-19 17.8", IN_ONE, &mut shares);
    let (n, v) = (shares.tension, shares.shear);
    if n > 0.0 && v > 0.0 {
        interaction::tell(n, v, shares.sink);
    } else {
        not_applicable(Mode::ConcreteInteraction, "ACI 318-19 17.8", "tension or shear alone", shares.sink);
    }
}

const SPLITTING: &str = "held by least distances and by psi_cp";
const BARS: &str = "anchor reinforcement is not counted; the concrete is checked without it";
const IN_ONE: &str = "steel and concrete are held in one criterion";

fn not_applicable(mode: Mode, clause: &'static str, why: &'static str, sink: &mut impl Sink) {
    sink.take(&Line::only(mode, clause, Outcome::NotApplicable(why)));
}

fn not_checked(modes: &[Mode], why: NotChecked, sink: &mut impl Sink) {
    for mode in modes {
        sink.take(&Line::only(*mode, CHAPTER, Outcome::NotChecked(why)));
    }
}

fn tension(p: &Prepared<'_>, met: &Met, actions: &GroupActions, sink: &mut impl Sink) {
    let Some((worst, most)) = worst_of(actions.tension_n.iter().copied()) else {
        for mode in TENSION.into_iter().chain([Mode::SteelTension]) {
            not_applicable(mode, CHAPTER, "no tension", sink);
        }
        return;
    };
    let rule = ("ACI 318-19 17.6.1 (17.6.1.2)", "phi*Nsa = phi*Ase,N*futa");
    let design = p.steel.tension_design_n();
    sink.take(&Line::against(Mode::SteelTension, Of::Anchor(worst), rule, &p.steel.tension_symbols(), (most, design)));
    let material = match &p.material {
        Ok(material) => material,
        Err(why) => return not_checked(&TENSION, *why, sink),
    };
    breakouts(p, material, &met.breakout, actions, sink);
    pull_out(p, material, (worst, most), sink);
    bonds(p, material, &met.bond, actions, sink);
    sustained(p, material, (worst, most), actions, sink);
    blow_outs(p, material, met, actions, sink);
}

/// Sum of the tensions of a cluster and its eccentricity.
fn pull_on(p: &Prepared<'_>, cluster: &Cluster, actions: &GroupActions) -> (f64, [f64; 2]) {
    let total = cluster.members.iter().map(|&i| actions.tension_n[i]).sum();
    (total, actions.tension_eccentricity_m(&p.group.anchors_m, &cluster.members))
}

fn breakouts(p: &Prepared<'_>, material: &Material, all: &[Cluster], actions: &GroupActions, sink: &mut impl Sink) {
    let phi = match material.phi_tension {
        Ok(phi) => phi,
        Err(why) => return not_checked(&[Mode::ConcreteCone], why, sink),
    };
    for cluster in all {
        let (action, eccentricity) = pull_on(p, cluster, actions);
        let found = Breakout::new(material, &p.group.fastener, cluster, eccentricity);
        let symbols: [Symbol; 14] = with(found.symbols(material, cluster), number("phi", phi));
        let of = Of::Anchors(&cluster.members);
        let line = Line::against(Mode::ConcreteCone, of, breakout::RULE, &symbols, (action, phi * found.strength_n));
        sink.take(&line);
    }
}

fn pull_out(p: &Prepared<'_>, material: &Material, (worst, most): (usize, f64), sink: &mut impl Sink) {
    let (pulled, phi) = match (p.pulled, material.phi_pull_out) {
        (Ok(Pulled::Never(why)), _) => return not_applicable(Mode::PullOut, "ACI 318-19 17.6.3", why, sink),
        (Ok(pulled), Ok(phi)) => (pulled, phi),
        (Err(why), _) | (Ok(_), Err(why)) => return not_checked(&[Mode::PullOut], why, sink),
    };
    let symbols = pulled.symbols(material, phi);
    let (rule, shown, strength) = match pulled {
        Pulled::Head { strength_n, .. } => {
            (("ACI 318-19 17.6.3 (17.6.3.2.2a)", "phi*Npn = phi*psi_c,P*8*Abrg*f'c"), &symbols[..], strength_n)
        }
        Pulled::Product(n) => (("ACI 318-19 17.6.3.2.1", "phi*Npn, product assessment"), &symbols[..2], n),
        Pulled::Never(_) => return,
    };
    sink.take(&Line::against(Mode::PullOut, Of::Anchor(worst), rule, shown, (most, phi * strength)));
}

/// The adhesive and its φ, or what stands in their way; none for fasteners that are not bonded.
fn adhesive(p: &Prepared<'_>, material: &Material) -> Option<Result<(Bond, f64), NotChecked>> {
    p.bond.map(|bond| bond.and_then(|bond| material.phi_tension.map(|phi| (bond, phi))))
}

fn bonds(p: &Prepared<'_>, material: &Material, all: &[Cluster], actions: &GroupActions, sink: &mut impl Sink) {
    let (bond, phi) = match adhesive(p, material) {
        None => return not_applicable(Mode::Bond, "ACI 318-19 17.6.5", "no adhesive", sink),
        Some(Err(why)) => return not_checked(&[Mode::Bond], why, sink),
        Some(Ok(found)) => found,
    };
    for cluster in all {
        let (action, eccentricity) = pull_on(p, cluster, actions);
        let of_fastener = (material, &p.group.fastener);
        let symbols: [Symbol; 12] = with(bond.symbols(of_fastener, cluster, eccentricity), number("phi", phi));
        let strength = bond.strength_n(of_fastener, cluster, eccentricity);
        let of = Of::Anchors(&cluster.members);
        sink.take(&Line::against(Mode::Bond, of, bond::RULE, &symbols, (action, phi * strength)));
    }
}

fn sustained(
    p: &Prepared<'_>,
    material: &Material,
    (worst, most): (usize, f64),
    actions: &GroupActions,
    sink: &mut impl Sink,
) {
    let mode = Mode::SustainedBond;
    let (bond, phi) = match adhesive(p, material) {
        None => return not_applicable(mode, "ACI 318-19 17.5.2.2", "no adhesive", sink),
        Some(Err(why)) => return not_checked(&[mode], why, sink),
        Some(Ok(found)) => found,
    };
    let Some(share) = actions.sustained_share else {
        return not_checked(&[mode], NotChecked::MissingData { field: "sustained_share" }, sink);
    };
    let symbols: [Symbol; 4] = [
        newtons("Nba", bond.one_n),
        number("factor", p.factors.sustained_bond),
        number("phi", phi),
        number("sustained share", share),
    ];
    let design = p.factors.sustained_bond * phi * bond.one_n;
    sink.take(&Line::against(mode, Of::Anchor(worst), bond::SUSTAINED, &symbols, (share * most, design)));
}

fn blow_outs(p: &Prepared<'_>, material: &Material, met: &Met, actions: &GroupActions, sink: &mut impl Sink) {
    let fastener = &p.group.fastener;
    let (FastenerKind::CastIn(_), Some(head_m2)) = (fastener.kind, fastener.head_area_m2()) else {
        return not_applicable(Mode::BlowOut, "ACI 318-19 17.6.4", "no head", sink);
    };
    if met.blow_out.is_empty() {
        return not_applicable(Mode::BlowOut, "ACI 318-19 17.6.4", "no head in tension with hef > 2.5*ca1", sink);
    }
    let phi = match material.phi_tension {
        Ok(phi) => phi,
        Err(why) => return not_checked(&[Mode::BlowOut], why, sink),
    };
    for row in &met.blow_out {
        let action: f64 = row.members.iter().map(|&i| actions.tension_n[i]).sum();
        let symbols: [Symbol; 11] = with(row.symbols(material, head_m2), number("phi", phi));
        let design = phi * row.strength_n(material, head_m2);
        sink.take(&Line::against(Mode::BlowOut, Of::Edge(row.edge), blow_out::RULE, &symbols, (action, design)));
    }
}

fn shear(p: &Prepared<'_>, met: &Met, actions: &GroupActions, sink: &mut impl Sink) {
    let amounts = (0..actions.shear_n.len()).map(|i| actions.shear_of_n(i));
    let Some((worst, most)) = worst_of(amounts) else {
        for mode in SHEAR.into_iter().chain([Mode::SteelShear, Mode::SteelShearLeverArm]) {
            not_applicable(mode, CHAPTER, "no shear", sink);
        }
        return;
    };
    steel_shear(p, (worst, most), sink);
    let material = match &p.material {
        Ok(material) => material,
        Err(why) => return not_checked(&SHEAR, *why, sink),
    };
    pry_outs(p, material, met, actions, sink);
    if p.edges.is_empty() {
        not_applicable(Mode::ConcreteEdge, "ACI 318-19 17.7.2", "no edge within reach", sink);
    }
    for row in &p.edges {
        let toward = row.toward(actions);
        let (action, design) = row.against(&toward);
        let of = Of::Edge(row.edge);
        let line = Line::against(Mode::ConcreteEdge, of, edge::RULE, &[], (action, design));
        sink.take(&Line { symbols: &row.symbols(&toward), outcome: Outcome::Utilization(row.share(&toward)), ..line });
    }
}

fn steel_shear(p: &Prepared<'_>, (worst, most): (usize, f64), sink: &mut impl Sink) {
    let clause = "ACI 318-19 17.7.1";
    if matches!(p.group.fixture.seating, Seating::StoodOff { .. }) {
        not_applicable(Mode::SteelShear, clause, "stood off", sink);
    } else {
        not_applicable(Mode::SteelShearLeverArm, clause, "not stood off without grout", sink);
    }
    match p.steel.shear {
        Err(why @ NotChecked::StructuralEngineer { .. }) => not_checked(&[Mode::SteelShearLeverArm], why, sink),
        Err(why) => not_checked(&[Mode::SteelShear], why, sink),
        Ok(()) => sink.take(&Line::against(
            Mode::SteelShear,
            Of::Anchor(worst),
            ("ACI 318-19 17.7.1 (17.7.1.2b)", "phi*Vsa = phi*0.6*Ase,V*futa, times 0.8 on grout"),
            &p.steel.shear_symbols(),
            (most, p.steel.shear_design_n()),
        )),
    }
}

fn pry_outs(p: &Prepared<'_>, material: &Material, met: &Met, actions: &GroupActions, sink: &mut impl Sink) {
    let fastener = &p.group.fastener;
    let (k_cp, phi) = (pry_out::k_cp(fastener.embedment_m), p.factors.pry_out);
    let mut tell = |cluster: &Cluster, action: f64, (symbol, n): (&'static str, f64)| {
        let symbols: [Symbol; 4] =
            [number("kcp", k_cp), newtons(symbol, n), newtons("Vcpg", k_cp * n), number("phi", phi)];
        let of = Of::Anchors(&cluster.members);
        sink.take(&Line::against(Mode::PryOut, of, pry_out::RULE, &symbols, (action, phi * k_cp * n)));
    };
    for cluster in &met.breakout {
        let (action, offset) = pry_out::shear_on(p.group, actions, &cluster.members);
        tell(cluster, action, ("Ncbg", Breakout::new(material, fastener, cluster, offset).strength_n));
    }
    match p.bond {
        Some(Ok(bond)) => {
            for cluster in &met.bond {
                let (action, offset) = pry_out::shear_on(p.group, actions, &cluster.members);
                tell(cluster, action, ("Nag", bond.strength_n((material, fastener), cluster, offset)));
            }
        }
        Some(Err(why)) => not_checked(&[Mode::PryOut], why, sink),
        None => {}
    }
}

/// The largest value above zero and its place.
fn worst_of(values: impl Iterator<Item = f64>) -> Option<(usize, f64)> {
    values.enumerate().filter(|(_, value)| *value > 0.0).max_by(|a, b| a.1.total_cmp(&b.1))
}

/// A list of symbols with one more.
fn with<const N: usize, const M: usize>(symbols: [Symbol; N], last: Symbol) -> [Symbol; M] {
    std::array::from_fn(|i| symbols.get(i).copied().unwrap_or(last))
}
