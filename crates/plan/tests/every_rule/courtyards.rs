//! A unit on a low roof in the courtyard of a high one stands beside the high building, not in it.

use gantline_plan::assess::{Code, Memo, Outcome, assess};
use gantline_plan::change::{Change, History};
use gantline_plan::document::{Standing, ThingId};
use glam::DVec2;

use crate::site::{Site, rectangle};

#[test]
fn what_stands_in_a_courtyard_is_free_of_the_building_around_it() {
    let mut built = Site::with_rear_tie().build();
    let high = built.add_roof(40.0, rectangle(100.0, 0.0, 140.0, 40.0));
    built.change(&Change::AddHole { roof: high, outline: rectangle(110.0, 10.0, 130.0, 30.0) });
    let low = built.add_roof(8.0, rectangle(110.0, 10.0, 130.0, 30.0));
    let stands = Standing::Free { roof: low, at: DVec2::new(120.0, 20.0), outward_rad: 0.0, serves: vec![] };
    let made = built.change(&Change::Place { make_up: built.make_up.clone(), stands, tag: None });
    let outcome_of = |history: &History, code: Code| {
        let assessment = assess(history.plan(), &mut Memo::new());
        let found = assessment.checks().find(|check| check.code == code && check.about[0] == made[0]);
        found.map(|check| check.outcome.clone())
    };
    let ThingId::Placement(_) = made[0] else { panic!("a unit was placed") };
    for code in [Code::BaseClearOfObstacles, Code::StandingPlaceFree, Code::ErectionStripInboard] {
        assert_eq!(outcome_of(&built.history, code), Some(Outcome::Meets), "{}", code.name());
    }
}
