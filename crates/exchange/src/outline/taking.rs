//! From closed outlines to changes of a plan: which loop is a roof, a hole, an obstacle, and what is left out.

use std::fmt;

use gantline_plan::change::{Change, Refused, apply};
use gantline_plan::document::{AttachmentKind, Datum, GeoPlace, Obstacle, Plan, RoofId, ThingId};
use gantline_plan::geometry::rings::{ring_contains, signed_area_m2};
use gantline_plan::quantity::{UnitSystem, length};
use glam::DVec2;

use super::outlines::{Loop, Outlines};

/// What a loop is taken for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// A roof at the upper level.
    Roof,
    /// A roof at the lower level.
    LowerRoof,
    /// A hole in the smallest roof around it.
    Hole,
    /// An obstacle on the smallest roof around it.
    Obstacle,
    /// Nothing.
    LeaveOut,
}

impl Role {
    /// All in the order in which they are offered.
    pub const EACH: [Self; 5] = [Self::Roof, Self::LowerRoof, Self::Hole, Self::Obstacle, Self::LeaveOut];

    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Roof => "Roof",
            Self::LowerRoof => "Lower roof",
            Self::Hole => "Hole",
            Self::Obstacle => "Obstacle",
            Self::LeaveOut => "Leave out",
        }
    }
}

/// Levels and heights of what is taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heights {
    /// Top of the structural slab of roofs over level zero.
    pub roof_level_m: f64,
    /// The same of lower roofs.
    pub lower_roof_level_m: f64,
    /// Underside of obstacles over their roof's slab.
    pub obstacle_from_m: f64,
    /// Top of obstacles over their roof's slab.
    pub obstacle_to_m: f64,
}

/// More loops than these are not taken at once: someone has to look at each.
pub const MOST_TAKEN: usize = 500;

/// Why outlines can't be taken into a plan.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum TakeFault {
    /// No loop has a role.
    #[error("no outline is marked as a roof, a hole or an obstacle")]
    Nothing,
    /// More loops than can be looked at.
    #[error("{has} outlines are marked; at most {most} are taken at once")]
    TooMany {
        /// How many.
        has: usize,
        /// Most.
        most: usize,
    },
    /// A hole or an obstacle with no roof around it.
    #[error("the {what} at ({:.3}, {:.3}) m lies on no roof", at.x, at.y)]
    OnNoRoof {
        /// What it is marked as.
        what: &'static str,
        /// Its first corner.
        at: DVec2,
    },
    /// The plan has its own place in the grid, or another grid.
    #[error(
        "the plan's origin is {plan}, and that of the outlines {outlines}: they would not lie where they belong. Put them \
         together anew for this plan, or take them into a new one"
    )]
    OtherOrigin {
        /// The plan's.
        plan: KeptPlace,
        /// That of the outlines.
        outlines: KeptPlace,
    },
    /// The plan refuses it.
    #[error(transparent)]
    Refused(#[from] Refused),
}

impl TakeFault {
    /// The place of the trouble, where there is one.
    pub fn place(&self) -> Option<DVec2> {
        match self {
            Self::OnNoRoof { at, .. } => Some(*at),
            Self::Refused(refused) => refused.place(),
            Self::Nothing | Self::TooMany { .. } | Self::OtherOrigin { .. } => None,
        }
    }
}

/// Where a plan's origin is in the grid of drawings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KeptPlace {
    /// Its coordinates in the grid, m.
    pub origin_m: DVec2,
    /// Where that grid is a plane that touches the earth: the place at which it does.
    pub plane: Option<GeoPlace>,
}

impl fmt::Display for KeptPlace {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [x, y] = self.origin_m.to_array().map(|at| length(at, UnitSystem::Si));
        match self.plane {
            Some(plane) => write!(f, "({x}, {y}) on the plane at {plane}"),
            None => write!(f, "({x}, {y}) in the drawing's grid"),
        }
    }
}

/// The place that outlines must keep to lie where they belong in a plan; none while nothing stands on the plan and no drawing
/// with a grid lies under it.
pub fn place_to_keep(plan: &Plan) -> Option<KeptPlace> {
    let has_grid = plan.attachments_in_use().any(|(_, attachment)| attachment.kind() == AttachmentKind::Dxf);
    let is_blank = !has_grid && plan.roofs.is_empty() && plan.obstacles.is_empty() && plan.placements.is_empty();
    (!is_blank).then_some(KeptPlace { origin_m: plan.datum.grid_origin_m, plane: plan.datum.local_plane })
}

impl Outlines {
    /// Roles by which loop lies in which: the outermost are roofs, those in them holes, those in holes roofs again. Of two
    /// that meet, the smaller is left out.
    pub fn usual_roles(&self) -> Vec<Role> {
        let of_depth = |one: &Loop| if one.depth.is_multiple_of(2) { Role::Roof } else { Role::Hole };
        let mut roles: Vec<Role> = self.loops.iter().map(of_depth).collect();
        for meeting in &self.meetings {
            if let Some(role) = roles.get_mut(meeting.second) {
                *role = Role::LeaveOut;
            }
        }
        roles
    }

    /// The usual roles, but for outlines in others of another layer: those are left out until someone says what they are.
    pub fn cautious_roles(&self) -> Vec<Role> {
        let is_strange = |one: &Loop| {
            let mut outer = one.inside;
            while let Some(around) = outer.and_then(|index| self.loops.get(index)) {
                if around.layer != one.layer {
                    return true;
                }
                outer = around.inside;
            }
            false
        };
        let usual = self.usual_roles().into_iter().zip(&self.loops);
        usual.map(|(role, one)| if is_strange(one) { Role::LeaveOut } else { role }).collect()
    }

    /// The change that takes loops into a plan by their roles, tried on the plan.
    pub fn change(&self, plan: &Plan, roles: &[Role], heights: &Heights) -> Result<Change, TakeFault> {
        let marked: Vec<(&Loop, Role)> =
            self.loops.iter().zip(roles.iter().copied()).filter(|(_, role)| *role != Role::LeaveOut).collect();
        match marked.len() {
            0 => return Err(TakeFault::Nothing),
            has if has > MOST_TAKEN => return Err(TakeFault::TooMany { has, most: MOST_TAKEN }),
            _ => {}
        }
        let mut changes = Vec::new();
        let own = KeptPlace { origin_m: self.origin_m, plane: self.plane };
        match place_to_keep(plan) {
            // A drawing in lengths is taken to be in the plan's own grid, whatever that is.
            Some(kept) if kept.origin_m == own.origin_m && (own.plane.is_none() || own.plane == kept.plane) => {}
            Some(plan) => return Err(TakeFault::OtherOrigin { plan, outlines: own }),
            None => {
                let datum = Datum { grid_origin_m: own.origin_m, local_plane: own.plane, ..plan.datum.clone() };
                changes.push(Change::SetDatum(datum));
            }
        }
        let of = |wanted: &[Role]| -> Vec<(&Loop, Role)> {
            marked.iter().copied().filter(|(_, role)| wanted.contains(role)).collect()
        };
        let roofs = of(&[Role::Roof, Role::LowerRoof]);
        changes.extend(roofs.iter().enumerate().map(|(index, (one, role))| added_roof(one, *role, index, heights)));
        // The same changes of the same plan make the same ids.
        let made = apply(plan, &Change::All(changes.clone()))?;
        let new_roofs = made.made.iter().filter_map(|thing| match thing {
            ThingId::Roof(id) => Some(*id),
            _ => None,
        });
        let mut grounds: Vec<Ground> =
            plan.roofs.iter().map(|(&id, roof)| Ground { id, corners: roof.outer.points() }).collect();
        grounds.extend(roofs.iter().zip(new_roofs).map(|((one, _), id)| Ground { id, corners: one.corners.clone() }));
        for (one, _) in of(&[Role::Hole]) {
            let roof = ground_of(&grounds, one, "hole")?;
            changes.push(Change::AddHole { roof, outline: one.corners.clone() });
        }
        for (index, (one, _)) in of(&[Role::Obstacle]).into_iter().enumerate() {
            changes.push(Change::AddObstacle(Obstacle {
                name: format!("Obstacle {}", plan.obstacles.len() + index + 1),
                roof: ground_of(&grounds, one, "obstacle")?,
                outline: one.corners.clone(),
                from_m: heights.obstacle_from_m,
                to_m: heights.obstacle_to_m,
            }));
        }
        let change = Change::All(changes);
        apply(plan, &change)?;
        Ok(change)
    }
}

/// A roof that things may lie on.
struct Ground {
    id: RoofId,
    corners: Vec<DVec2>,
}

fn added_roof(one: &Loop, role: Role, index: usize, heights: &Heights) -> Change {
    let (name, level_m) = match role {
        Role::LowerRoof => (format!("Lower roof {}", index + 1), heights.lower_roof_level_m),
        _ => (String::new(), heights.roof_level_m),
    };
    Change::AddRoof { name, level_m, outline: one.corners.clone() }
}

/// The smallest roof around a loop's first corner.
fn ground_of(grounds: &[Ground], one: &Loop, what: &'static str) -> Result<RoofId, TakeFault> {
    let at = one.corners.first().copied().unwrap_or_default();
    let around = grounds.iter().filter(|ground| ring_contains(&ground.corners, at));
    let smallest = around.min_by(|a, b| signed_area_m2(&a.corners).total_cmp(&signed_area_m2(&b.corners)));
    smallest.map(|ground| ground.id).ok_or(TakeFault::OnNoRoof { what, at })
}
