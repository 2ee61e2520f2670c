//! Draws an invented building as PNG and SVG files: plan views, a section of each brace kind, elevations.
//!
//! `cargo run -p gantline-exchange --example demonstration_drawings -- FOLDER`

use std::error::Error;
use std::path::Path;

use gantline_drawing::section::{BaseActions, SectionLoads};
use gantline_drawing::sheet::{North, sheet};
use gantline_drawing::text::Heading;
use gantline_drawing::{
    BuildingOptions, Drawing, ElevationOptions, OverlaySet, PlanViewOptions, Scale, SectionOptions, building,
    elevation, fit_scale, plan_view, section,
};
use gantline_exchange::png::{png, png_of_svg};
use gantline_exchange::svg::{svg, svg_of};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::document::ThingId;
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

#[allow(dead_code, reason = "the sample is shared with tests that use more of it")]
#[path = "../../drawing/tests/views/sample.rs"]
mod sample;

const PX_PER_MM: f64 = 5.0;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args().nth(1).unwrap_or_else(|| "target/demonstration".to_owned());
    let folder = Path::new(&folder);
    std::fs::create_dir_all(folder)?;
    let sample = sample::courtyard_house();
    let assessment = assess(&sample.plan, &mut Memo::new());
    for set in OverlaySet::ALL {
        let options = PlanViewOptions { shown: set.shown(), ..PlanViewOptions::at(Scale::one_to(150.0)) };
        let name = format!("plan-{}", set.name().to_lowercase().replace(' ', "-"));
        let drawing = plan_view(&sample.plan, &assessment, &options);
        keep(folder, &name, &sheet(drawing, &sample.plan, North::Shown, UnitSystem::Si))?;
    }
    let mut options = PlanViewOptions::at(Scale::one_to(100.0));
    options.selected.insert(ThingId::Placement(sample.placed[1]));
    let close = PlanViewOptions { scale: Scale::one_to(25.0), ..options.clone() };
    let drawing = plan_view(&sample.plan, &assessment, &close);
    let near = Bounds::around(DVec2::new(11.0, 1.0), 3.4);
    std::fs::write(folder.join("plan-close.png"), png_of_svg(&svg_of(&drawing, near), PX_PER_MM)?)?;
    keep(folder, "plan-selected", &plan_view(&sample.plan, &assessment, &options))?;
    for &id in &sample.placed {
        let tag = &sample.plan.placements[&id].tag;
        let mut options = SectionOptions::at(Scale::one_to(25.0));
        options.loads = SectionLoads {
            rope_n: Some(2350.0),
            base: Some(BaseActions { outward_n: 610.0, up_n: -3120.0, tilting_nm: 3280.0 }),
            words: "example figures".to_owned(),
        };
        if let Some(drawing) = section(&sample.plan, &assessment, id, &options) {
            keep(folder, &format!("section-{tag}"), &drawing)?;
        }
    }
    for &key in assessment.facades.keys() {
        if let Some(drawing) = elevation(&sample.plan, &assessment, key, &ElevationOptions::at(Scale::one_to(150.0))) {
            keep(folder, &format!("elevation-{key}"), &sheet(drawing, &sample.plan, North::Left, UnitSystem::Si))?;
        }
    }
    for (index, &id) in sample.placed.iter().enumerate().take(2) {
        let options = |scale| SectionOptions { heading: Heading::LeftOut, ..SectionOptions::at(scale) };
        let small = |scale| section(&sample.plan, &assessment, id, &options(scale));
        if let Some(drawing) = fit_scale(DVec2::new(103.0, 76.0), small).and_then(small) {
            keep(folder, &format!("section-fitted-{index}"), &drawing)?;
        }
    }
    let whole = |scale| building(&sample.plan, &assessment, &BuildingOptions::at(scale));
    if let Some(drawing) = fit_scale(DVec2::new(137.0, 110.0), whole).and_then(whole) {
        keep(folder, "building", &drawing)?;
    }
    Ok(())
}

fn keep(folder: &Path, name: &str, drawing: &Drawing) -> Result<(), Box<dyn Error>> {
    std::fs::write(folder.join(format!("{name}.svg")), svg(drawing))?;
    std::fs::write(folder.join(format!("{name}.png")), png(drawing, PX_PER_MM)?)?;
    Ok(())
}
