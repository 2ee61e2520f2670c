//! Plan views.

use gantline_drawing::{PlanViewOptions, Scale, plan_view};
use gantline_plan::assess::{Memo, assess};

use crate::sample::courtyard_house;

#[test]
fn the_same_plan_gives_the_same_drawing() {
    let sample = courtyard_house();
    let assessment = assess(&sample.plan, &mut Memo::new());
    let options = PlanViewOptions::at(Scale::one_to(100.0));
    let drawing = plan_view(&sample.plan, &assessment, &options);
    assert_eq!(drawing, plan_view(&sample.plan, &assessment, &options));
    assert_eq!(sample.placed.len(), 8);
    for tag in ["B-01", "B-08"] {
        assert!(drawing.words().any(|words| words == tag), "{tag}");
    }
}
