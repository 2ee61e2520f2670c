//! Pry-out on the side away from the shear, EN 1992-4 7.2.2.4.

use super::super::actions::GroupActions;
use super::super::fastener::{Fastener, FastenerKind};
use super::super::group::Group;
use super::super::line::{Line, Of, Sink, newtons, number};
use super::super::record::{Mode, NotChecked, Symbol};
use super::cell::Cell;
use super::cluster::{Cluster, Sizes};

/// k_8, with the reduction for supplementary reinforcement.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct PryOut {
    k8: f64,
    bars: f64,
    gamma: f64,
}

/// Which resistance the pry-out is a multiple of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Basis {
    /// N_Rk,c.
    Cone,
    /// N_Rk,p of bonded fasteners.
    Bond,
}

impl PryOut {
    /// k_8 of the product. Cast-in fasteners without a product value: 1 below 60 mm of embedment, else 2.
    pub(super) fn new(fastener: &Fastener, with_bars: bool, gamma: f64) -> Result<Self, NotChecked> {
        let k8 = match (fastener.product.en.k8, fastener.kind) {
            (Some(k8), _) => k8,
            (None, FastenerKind::CastIn(_)) => {
                if fastener.embedment_m < 0.06 {
                    1.0
                } else {
                    2.0
                }
            }
            (None, _) => return Err(NotChecked::MissingData { field: "k8" }),
        };
        Ok(Self { k8, bars: if with_bars { 0.75 } else { 1.0 }, gamma })
    }

    /// V_Rk,cp = k_8·N_Rk,c, (7.39a); bonded k_8·min(N_Rk,c; N_Rk,p), (7.39c); times 0.75 with supplementary bars.
    pub(super) fn tell(&self, of: Of<'_>, basis: Basis, (action, tension_rk_n): (f64, f64), sink: &mut impl Sink) {
        let resistance = self.bars * self.k8 * tension_rk_n;
        let (symbol, formula) = match basis {
            Basis::Cone => ("NRk,c", "VRd,cp = k8*NRk,c/gamma_Mc"),
            Basis::Bond => ("NRk,p", "VRd,cp = k8*NRk,p/gamma_Mc"),
        };
        let symbols: [Symbol; 5] = [
            number("k8", self.k8),
            number("factor with supplementary bars", self.bars),
            newtons(symbol, tension_rk_n),
            newtons("VRk,cp", resistance),
            number("gamma_Mc", self.gamma),
        ];
        sink.take(&Line::against(
            Mode::PryOut,
            of,
            ("EN 1992-4 7.2.2.4 (7.39)", formula),
            &symbols,
            (action, resistance / self.gamma),
        ));
    }
}

/// Shear of a cluster as pry-out feels it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Pull {
    /// Together: resultant, N, and its eccentricity along both axes, m.
    Together { shear_n: f64, eccentricity_m: [f64; 2] },
    /// Against each other: one fastener at a time.
    Opposed,
}

/// Whether the shears of a cluster act together.
pub(super) fn pull(group: &Group, actions: &GroupActions, members: &[usize]) -> Pull {
    let opposed = members.iter().enumerate().any(|(k, &i)| {
        members[..k].iter().any(|&j| {
            let (a, b) = (actions.shear_n[i], actions.shear_n[j]);
            a[0] * b[0] + a[1] * b[1] < 0.0
        })
    });
    if opposed {
        return Pull::Opposed;
    }
    let count = members.len() as f64;
    let mean = [0, 1].map(|axis| members.iter().map(|&i| group.anchors_m[i][axis]).sum::<f64>() / count);
    let (mut sum, mut turn) = ([0.0; 2], 0.0);
    for &i in members {
        let (v, place) = (actions.shear_n[i], group.anchors_m[i]);
        sum = [sum[0] + v[0], sum[1] + v[1]];
        turn += (place[0] - mean[0]) * v[1] - (place[1] - mean[1]) * v[0];
    }
    let shear_n = sum[0].hypot(sum[1]);
    let eccentricity_m =
        if shear_n > 0.0 { sum.map(|part| (turn * part).abs() / (shear_n * shear_n)) } else { [0.0; 2] };
    // The offset is square to the shear: its part along x goes with the shear along y.
    Pull::Together { shear_n, eccentricity_m: [eccentricity_m[1], eccentricity_m[0]] }
}

/// A cluster of one cell, for the formulas of clusters; sizes are never shrunk, as the cell's square was not.
pub(super) fn alone(cell: &Cell, sizes: &Sizes) -> Cluster {
    Cluster {
        members: Vec::new(),
        embedment_m: sizes.embedment_m,
        spacing_cr_m: sizes.spacing_cr_m,
        area_m2: cell.area_m2,
        area_one_m2: sizes.spacing_cr_m * sizes.spacing_cr_m,
        edge_m: cell.edge_m,
        mean_spacing_m: 0.0,
        neighbors: 0,
    }
}
