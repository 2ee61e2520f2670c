//! The site of a base or foot: all of its place that counts for what plate, anchors and slab bear, in the axes of its plate. Bases of
//! one make-up on equal sites are judged once.

use gantline_mechanics::anchorage::Concrete;
use gantline_mechanics::slab::PunchingDesign;

use super::bars::CountedBars;
use super::found::{BaseUse, Fixed, NearEdge};
use super::in_concrete::{self, InConcrete};
use super::place::{self, Place, Stands};
use super::states::AnchorForces;
use super::{plate, slab};
use crate::basis::DesignCode;
use crate::catalog::{Base, BaseKind, PedestalBody};
use crate::geometry::concrete_around::LocalSetting;

/// All that what is found of a base or foot hangs on, beside its make-up, basis and design code.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::assess) struct Site {
    pub(super) of: Fixed,
    /// The concrete; or what is missing.
    place: Result<InPlace, String>,
    /// What punches the slab; none where no slab is punched.
    punching: Option<Result<PunchingDesign, String>>,
}

/// The concrete round anchors.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct InPlace {
    pub local: Result<LocalSetting, String>,
    pub thickness_m: f64,
    pub concrete: Concrete,
    pub bars: CountedBars,
    /// Whether its plane is the plan, so that edges can be shown there.
    pub is_in_plan: bool,
}

/// What is found on a site.
#[derive(Debug, Clone)]
pub(in crate::assess) struct OnSite {
    pub(super) uses: Vec<BaseUse>,
    /// Nearest edges in plate axes.
    pub(super) edges: Vec<NearEdge>,
    pub(super) thickness_m: Option<f64>,
}

impl Site {
    /// The site of a fixing in concrete.
    pub(super) fn of(
        of: Fixed,
        base: &Base,
        forces: &AnchorForces,
        stands: &Stands<'_>,
        place: Result<&Place, &String>,
    ) -> Self {
        let fastener = &forces.group.fastener;
        let in_place = place.map_err(Clone::clone).map(|place| {
            let setting = place.setting(&forces.group.anchors_m, fastener);
            InPlace {
                local: setting.local().map_err(|fault| fault.to_string()),
                thickness_m: place.thickness_m,
                concrete: place.concrete.clone(),
                bars: place.bars,
                is_in_plan: place.is_in_plan,
            }
        });
        let on_wall = matches!(base.kind, BaseKind::WallSocket { .. });
        let punching = match place {
            Ok(place) if place.is_in_plan => Some(punching(base, fastener.embedment_m, stands, place)),
            Err(what) if !on_wall => Some(Err(what.clone())),
            Ok(_) | Err(_) => None,
        };
        Self { of, place: in_place, punching }
    }

    /// Judges anchors, plate and slab.
    pub(in crate::assess) fn judge(&self, base: &Base, forces: &AnchorForces, code: &DesignCode) -> OnSite {
        let in_place = self.place.as_ref();
        let InConcrete { mut uses, edges, thickness_m } = match in_place {
            Ok(in_place) => in_concrete::judge(self.of, forces, in_place, code),
            Err(what) => in_concrete::not_judged(self.of, what),
        };
        uses.extend(forces.bends.clone());
        let concrete = in_place.map(|in_place| &in_place.concrete).map_err(String::as_str);
        uses.push(plate::presses(self.of, base, forces, concrete, code));
        if let Some(design) = &self.punching {
            let over_slab_m = plinth(base).map_or(0.0, |(height_m, _)| height_m);
            uses.extend(slab::punches(self.of, forces, design, over_slab_m, code));
        }
        OnSite { uses, edges, thickness_m }
    }
}

/// What punches the slab under a base, and what bears it; or what is missing.
fn punching(base: &Base, embedment_m: f64, stands: &Stands<'_>, place: &Place) -> Result<PunchingDesign, String> {
    let roof = stands.plan.roofs.get(&stands.frame.roof).ok_or("its roof")?;
    let code = &stands.plan.code;
    match plinth(base) {
        Some((_, outline)) => {
            let loaded = slab::Loaded { outline, embedment_m: f64::INFINITY };
            slab::design(&place::of_slab(stands)?, roof, &loaded, code)
        }
        None => slab::design(place, roof, &slab::Loaded { outline: &base.plate_m, embedment_m }, code),
    }
}

/// Height and outline of a plinth.
fn plinth(base: &Base) -> Option<(f64, &[glam::DVec2])> {
    match &base.kind {
        BaseKind::Pedestal { height_m, body: PedestalBody::Plinth { corners_m } } => Some((*height_m, corners_m)),
        _ => None,
    }
}
