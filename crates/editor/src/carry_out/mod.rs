//! Carries intents out at the end of a frame: changes of the plan, files, cameras and selections.

pub mod command;
pub mod edit;
pub mod file;
pub mod gesture;
pub mod ghost;
pub mod outgoing;
pub mod outline;
pub mod underlay;
pub mod view;

use crate::app::App;
use crate::canvas::canvas::Told;
use crate::intent::Intent;

/// Carries out all intents of a frame, then tells the tool what the pointer did and carries out what it answers.
pub fn all(app: &mut App, intents: Vec<Intent>, told: Told) {
    for intent in intents {
        one(app, intent);
    }
    for event in told.events {
        if matches!(event, crate::tools::gesture::PointerEvent::Down(..)) {
            app.session.pressed_on = Some(told.sheet);
        }
        gesture::pointer(app, event, told.threshold_pt);
    }
}

/// Carries out one intent.
pub fn one(app: &mut App, intent: Intent) {
    match intent {
        Intent::Change { name, change, then } => edit::change(app, name, &change, then),
        Intent::Begin(name) => edit::begin(app, name),
        Intent::Preview(change) => edit::preview(app, &change),
        Intent::Commit { then } => edit::commit(app, then),
        Intent::Abandon => edit::abandon(app),
        Intent::Refuse(refused) => edit::refuse(app, &refused),
        Intent::Ghost(change) => ghost::show(app, change.map(|change| *change)),
        Intent::TakeInHand(make_up) => ghost::take_in_hand(app, make_up),
        Intent::Key(key) => gesture::key(app, key),
        Intent::Type(key) => gesture::typed(app, key),
        Intent::Say(words) => app.session.said = words,
        Intent::Select(selection) => view::select(app, selection),
        Intent::GoTo(thing, place) => view::go_to(app, thing, place),
        Intent::Look { main, sheet, camera } => {
            let cameras = if main { &mut app.session.cameras } else { &mut app.session.companion_cameras };
            cameras.insert(sheet, camera);
        }
        Intent::Level(roof) => app.session.level = Some(roof),
        Intent::Overlays(set) => view::overlays(app, set),
        Intent::Drawer(drawer) => app.session.drawer = drawer,
        Intent::Page(page) => app.session.page = page,
        Intent::Hover(thing) => app.session.hover = thing,
        Intent::Chart(combination) => app.session.chart_combination = Some(combination),
        Intent::Units(units) => {
            app.preferences.units = units;
            app.session.units = units;
            file::keep_preferences(app);
        }
        Intent::Theme(theme) => {
            app.preferences.theme = theme;
            file::keep_preferences(app);
        }
        Intent::Wheel(wheel) => {
            app.preferences.wheel = wheel;
            file::keep_preferences(app);
        }
        Intent::Run(command) => command::run(app, command),
        Intent::OpenSoundParts(path) => file::leave(app, crate::session::Next::OpenSoundParts(path)),
        Intent::OpenPath(path) => file::leave(app, crate::session::Next::OpenPath(path)),
        Intent::OpenDemonstration(index) => file::leave(app, crate::session::Next::OpenDemonstration(index)),
        Intent::SaveTo(path) => file::save_to(app, path),
        Intent::DocumentsTo(folder) => outgoing::write_documents(app, folder),
        Intent::PictureTo(path) => outgoing::write_picture(app, path),
        Intent::StopWriting => outgoing::stop(app),
        Intent::ReadDrawing(path) => outline::read(app, path),
        Intent::Outline(wish) => outline::wish(app, wish),
        Intent::ReadUnderlay(path) => underlay::read(app, path),
        Intent::Underlay(wish) => underlay::wish(app, wish),
        Intent::Answer(answer) => file::answer(app, answer),
        Intent::Rescue(index) => file::rescue(app, index),
        Intent::DropRescue(index) => file::drop_rescue(app, index),
    }
}
