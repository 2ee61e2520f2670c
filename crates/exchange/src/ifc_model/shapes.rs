//! Solids: prisms over outlines, round and box tubes along a line, and the representation that holds them.

use gantline_plan::catalog::SectionShape;
use gantline_plan::geometry::polygons::Polygon;
use glam::{DVec2, DVec3};

use super::look::{Look, Looks};
use super::step::{NONE, Ref, Step, list, real};

/// What solids are written into.
pub struct Scene<'a> {
    /// The lines.
    pub step: &'a mut Step,
    /// The context of bodies.
    pub body: Ref,
    /// How things look.
    pub looks: &'a Looks,
}

impl Scene<'_> {
    /// A prism over an outline with holes, from one height to another; none where there is nothing between.
    pub fn prism(&mut self, polygon: &Polygon, from_m: f64, to_m: f64, look: Look) -> Option<Ref> {
        if to_m - from_m <= 0.0 || polygon.outer.len() < 3 {
            return None;
        }
        let outer = self.ring(&polygon.outer);
        let holes: Vec<Ref> = polygon.holes.iter().map(|hole| self.ring(hole)).collect();
        let profile = if holes.is_empty() {
            self.step.add("IFCARBITRARYCLOSEDPROFILEDEF", &format!(".AREA.,{NONE},{outer}"))
        } else {
            self.step.add("IFCARBITRARYPROFILEDEFWITHVOIDS", &format!(".AREA.,{NONE},{outer},{}", list(holes)))
        };
        Some(self.extruded(profile, (DVec3::Z * from_m, DVec3::Z, DVec3::X), to_m - from_m, look))
    }

    /// A cylinder about the z axis, from one height to another.
    pub fn cylinder(&mut self, diameter_m: f64, from_m: f64, to_m: f64, look: Look) -> Option<Ref> {
        if to_m - from_m <= 0.0 || diameter_m <= 0.0 {
            return None;
        }
        let values = format!(".AREA.,{NONE},{NONE},{}", real(diameter_m / 2.0));
        let profile = self.step.add("IFCCIRCLEPROFILEDEF", &values);
        Some(self.extruded(profile, (DVec3::Z * from_m, DVec3::Z, DVec3::X), to_m - from_m, look))
    }

    /// A tube from one point to another; `side` is the direction across the plane of mast and arm.
    pub fn tube(&mut self, section: SectionShape, (from, to): (DVec3, DVec3), side: DVec3, look: Look) -> Option<Ref> {
        let along = to - from;
        let length_m = along.length();
        if length_m <= 0.0 {
            return None;
        }
        let profile = match section {
            SectionShape::RoundTube { diameter_m, wall_m } => {
                let values = format!(".AREA.,{NONE},{NONE},{},{}", real(diameter_m / 2.0), real(wall_m));
                self.step.add("IFCCIRCLEHOLLOWPROFILEDEF", &values)
            }
            SectionShape::RectTube { depth_m, width_m, wall_m, .. } => {
                let sizes = [width_m, depth_m, wall_m].map(real).join(",");
                let values = format!(".AREA.,{NONE},{NONE},{sizes},{NONE},{NONE}");
                self.step.add("IFCRECTANGLEHOLLOWPROFILEDEF", &values)
            }
        };
        Some(self.extruded(profile, (from, along / length_m, side), length_m, look))
    }

    fn extruded(&mut self, profile: Ref, (at, axis, x): (DVec3, DVec3, DVec3), depth_m: f64, look: Look) -> Ref {
        let (axes, up) = (self.step.axes(at, axis, x), self.step.direction(DVec3::Z));
        let solid = self.step.add("IFCEXTRUDEDAREASOLID", &format!("{profile},{axes},{up},{}", real(depth_m)));
        self.looks.put_on(self.step, solid, look);
        solid
    }

    fn ring(&mut self, ring: &[DVec2]) -> Ref {
        let mut points: Vec<Ref> = ring.iter().map(|&at| self.step.flat_point(at)).collect();
        points.extend(points.first().copied());
        self.step.add("IFCPOLYLINE", &list(points))
    }

    /// The shape of an element, and the representation in it; none without solids.
    pub fn shape(&mut self, solids: &[Ref], kind: &str) -> Option<(Ref, Ref)> {
        if solids.is_empty() {
            return None;
        }
        let items = list(solids.iter().copied());
        let body = self.step.add("IFCSHAPEREPRESENTATION", &format!("{},'Body','{kind}',{items}", self.body));
        let shape = self.step.add("IFCPRODUCTDEFINITIONSHAPE", &format!("{NONE},{NONE},({body})"));
        Some((shape, body))
    }

    /// The shape of an element made of prisms and tubes, or that it has none.
    pub fn swept_shape(&mut self, solids: &[Ref]) -> String {
        self.shape(solids, "SweptSolid").map_or_else(|| NONE.to_owned(), |(shape, _)| shape.to_string())
    }

    /// A placement in another: at a point, turned about the vertical.
    pub fn placement(&mut self, within: Ref, at: DVec3, turn_rad: f64) -> Ref {
        let axes = self.step.axes(at, DVec3::Z, DVec2::from_angle(turn_rad).extend(0.0));
        self.step.add("IFCLOCALPLACEMENT", &format!("{within},{axes}"))
    }
}
