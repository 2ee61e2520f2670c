//! Pictures of underlays: which are needed for what is looked at, and those that are there. They follow plan and camera.

use std::collections::BTreeMap;
use std::sync::Arc;

use egui::{Context, TextureHandle, TextureOptions};
use gantline_exchange::underlay::{Extent, Lines, Wanted};
use gantline_plan::document::{AttachmentKind, ContentHash, Plan, RoofId, Underlay, UnderlayId};
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use crate::document::underlay_worker::{Ground, PageOf, Picture, Shown, UnderlayDone, UnderlayJob};

/// Pictures of underlays by page.
#[derive(Default)]
pub struct Underlays {
    pages: BTreeMap<PageOf, PageShown>,
    ground: Ground,
}

impl std::fmt::Debug for Underlays {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_set().entries(self.pages.keys()).finish()
    }
}

/// What there is of a page.
#[derive(Default)]
pub struct PageShown {
    /// How many pages its file has, once that is known.
    pub pages: u32,
    /// Where it lies in its own coordinates, once that is known.
    pub extent: Option<Extent>,
    /// The whole page, coarsely.
    pub coarse: Option<Textured>,
    /// The part that is looked at, finely.
    pub fine: Option<Textured>,
    /// Why it can't be shown.
    pub fault: Option<String>,
    lines: Option<Arc<Lines>>,
    is_image: bool,
    asked_coarse: bool,
    /// What is being made.
    asked_fine: Option<Wanted>,
    /// What was made last: what came of it is the best that there is.
    made: Option<Wanted>,
}

/// A picture on the screen's side.
pub struct Textured {
    /// The part that it shows.
    pub part: Extent,
    /// Pixels for one unit of the page.
    pub px_per_unit: f64,
    /// The picture.
    pub texture: TextureHandle,
}

/// What is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Looked {
    /// The part of the plan that is seen.
    pub seen: Bounds,
    /// Meters that a pixel of the screen stands for.
    pub m_per_px: f64,
    /// The ground of the sheet.
    pub ground: Ground,
    /// The longest side that a picture may have on this screen, pixels.
    pub longest_px: f64,
}

/// How much more than what is seen is made at once, as a share of it on each side.
const AROUND: f64 = 0.25;

/// A picture serves as long as it has at least this share of the pixels that the screen could show.
const FINE_ENOUGH: f64 = 0.75;

impl Underlays {
    /// What there is of an underlay's page.
    pub fn page(&self, underlay: &Underlay) -> Option<&PageShown> {
        self.pages.get(&(underlay.attachment, underlay.page))
    }

    /// Where an underlay lies in the plan: its corners, from its lower left counter-clockwise; none until that is known.
    pub fn corners(&self, underlay: &Underlay) -> Option<[DVec2; 4]> {
        let Extent { min, max } = self.page(underlay)?.extent?;
        let corners = [min, DVec2::new(max.x, min.y), max, DVec2::new(min.x, max.y)];
        Some(corners.map(|corner| underlay.in_plan(corner)))
    }

    /// The topmost underlay at a place that can be taken there: locked ones lie as if they were part of the sheet.
    pub fn at(&self, plan: &Plan, level: Option<RoofId>, at: DVec2) -> Option<UnderlayId> {
        let holds = |underlay: &Underlay| {
            let corners = self.corners(underlay);
            corners.is_some_and(|corners| gantline_plan::geometry::rings::ring_contains(&corners, at))
        };
        let mut open = plan.underlays.iter().rev().filter(|(_, one)| !one.locked && one.is_seen(level));
        open.find(|(_, one)| holds(one)).map(|(&id, _)| id)
    }

    /// Lines of drawings, for tools to snap to.
    pub fn lines(&self) -> BTreeMap<ContentHash, Arc<Lines>> {
        self.pages.iter().filter_map(|((hash, _), page)| Some((*hash, Arc::clone(page.lines.as_ref()?)))).collect()
    }

    /// Whether a picture is being made of a page that has none yet, or a finer one.
    pub fn is_at_work(&self) -> bool {
        self.pages.values().any(|page| page.asked_coarse || page.asked_fine.is_some())
    }

    /// What must be made for what is looked at; asked for once. Pages that no underlay shows are forgotten.
    pub fn needed(&mut self, plan: &Plan, level: Option<RoofId>, looked: Option<&Looked>) -> Vec<UnderlayJob> {
        if let Some(ground) = looked.map(|looked| looked.ground).filter(|ground| *ground != self.ground) {
            self.ground = ground;
            self.pages.clear();
        }
        let ground = self.ground;
        let used = |of: &PageOf| plan.underlays.values().any(|one| (one.attachment, one.page) == *of);
        self.pages.retain(|of, _| used(of));
        let mut jobs = Vec::new();
        for underlay in plan.underlays.values().filter(|one| one.is_seen(level)) {
            let Some(attachment) = plan.attachments.get(&underlay.attachment) else { continue };
            let page = self.pages.entry((underlay.attachment, underlay.page)).or_default();
            let job =
                |wanted| UnderlayJob::Show { attachment: attachment.clone(), page: underlay.page, wanted, ground };
            page.is_image = matches!(attachment.kind(), AttachmentKind::Png | AttachmentKind::Jpeg);
            if page.fault.is_some() {
                continue;
            }
            if page.extent.is_none() {
                if !page.asked_coarse {
                    page.asked_coarse = true;
                    jobs.push(job(None));
                }
                continue;
            }
            if let Some(wanted) = looked.and_then(|looked| page.finer(underlay, looked))
                && page.asked_fine.is_none()
                && page.made != Some(wanted)
            {
                page.asked_fine = Some(wanted);
                jobs.push(job(Some(wanted)));
            }
        }
        jobs
    }

    /// Takes a picture in.
    pub fn take(&mut self, ctx: &Context, done: UnderlayDone) {
        let UnderlayDone::Shown { of, is_coarse, ground, outcome } = done else { return };
        if ground != self.ground {
            return;
        }
        let Some(page) = self.pages.get_mut(&of) else { return };
        if is_coarse {
            page.asked_coarse = false;
        } else {
            page.made = page.asked_fine.take();
        }
        match outcome {
            Ok(Shown { pages, extent, lines, picture }) => {
                page.pages = pages;
                page.extent = Some(extent);
                page.lines = lines;
                let textured = picture.map(|picture| textured(ctx, &of, is_coarse, picture));
                if is_coarse {
                    page.coarse = textured;
                } else {
                    page.fine = textured;
                }
            }
            Err(why) => page.fault = Some(why),
        }
    }
}

fn textured(ctx: &Context, of: &PageOf, is_coarse: bool, picture: Picture) -> Textured {
    let kind = if is_coarse { "whole" } else { "part" };
    let name = format!("underlay {} page {} {kind}", of.0, of.1);
    let texture = ctx.load_texture(name, picture.image, TextureOptions::LINEAR);
    Textured { part: picture.part, px_per_unit: picture.px_per_unit, texture }
}

impl PageShown {
    /// The finer picture that is needed for what is looked at; none when those that are there serve.
    fn finer(&self, underlay: &Underlay, looked: &Looked) -> Option<Wanted> {
        let extent = self.extent?;
        let part = seen_of(underlay, &looked.seen, 0.0).common(&extent)?;
        let px_per_unit = underlay.m_per_unit / looked.m_per_px;
        let around = looked.seen.size_m().max_element() * AROUND;
        let wider = seen_of(underlay, &looked.seen, around).common(&extent)?;
        let wanted = Wanted { part: wider, px_per_unit }.within_limits();
        // Images come with up to twice as many pixels as wanted, in whole squares.
        let longest_px = if self.is_image { looked.longest_px / 2.0 } else { looked.longest_px };
        let by_screen = longest_px / (wider.size().max_element() * wanted.px_per_unit);
        let wanted = Wanted { px_per_unit: wanted.px_per_unit * by_screen.min(1.0), ..wanted };
        let serves = |picture: &Textured| {
            // An image has no more pixels than it has.
            let is_finest = self.is_image && picture.px_per_unit >= 1.0;
            let is_fine = picture.px_per_unit >= wanted.px_per_unit * FINE_ENOUGH || is_finest;
            is_fine && picture.part.holds(&part)
        };
        let is_served = [&self.coarse, &self.fine].into_iter().flatten().any(serves);
        (!is_served).then_some(wanted)
    }
}

/// The part of an underlay's page that lies in a box of the plan, grown by this: the box around the turned one.
fn seen_of(underlay: &Underlay, seen: &Bounds, by_m: f64) -> Extent {
    let seen = seen.grown(by_m);
    let corners =
        [seen.min_m, DVec2::new(seen.max_m.x, seen.min_m.y), seen.max_m, DVec2::new(seen.min_m.x, seen.max_m.y)];
    let corners = corners.map(|corner| underlay.in_source(corner));
    let least = corners.iter().copied().fold(corners[0], DVec2::min);
    let most = corners.iter().copied().fold(corners[0], DVec2::max);
    Extent { min: least, max: most }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use egui::ColorImage;

    use super::*;
    use crate::tools::witness;

    const PAGE: Extent = Extent { min: DVec2::ZERO, max: DVec2::new(1000.0, 800.0) };

    /// The picture that the thread would make.
    fn made(job: UnderlayJob) -> UnderlayDone {
        let UnderlayJob::Show { attachment, page, wanted, ground } = job else { panic!("a picture is asked for") };
        let wanted_or_coarse = wanted.unwrap_or(Wanted { part: PAGE, px_per_unit: 0.5 });
        let image = Arc::new(ColorImage::filled([2, 2], egui::Color32::WHITE));
        let picture = Picture { part: wanted_or_coarse.part, px_per_unit: wanted_or_coarse.px_per_unit, image };
        let shown = Shown { pages: 1, extent: PAGE, lines: None, picture: Some(picture) };
        UnderlayDone::Shown { of: (attachment.hash(), page), is_coarse: wanted.is_none(), ground, outcome: Ok(shown) }
    }

    fn looked(x: f64, y: f64, half_m: f64) -> Looked {
        let middle = DVec2::new(x, y);
        let seen = Bounds { min_m: middle - DVec2::splat(half_m), max_m: middle + DVec2::splat(half_m) };
        Looked { seen, m_per_px: half_m / 400.0, ground: Ground::Light, longest_px: 4096.0 }
    }

    fn parts(jobs: &[UnderlayJob]) -> Vec<Option<Wanted>> {
        let part = |job: &UnderlayJob| match job {
            UnderlayJob::Show { wanted, .. } => *wanted,
            UnderlayJob::Read { .. } => panic!("a picture is asked for"),
        };
        jobs.iter().map(part).collect()
    }

    #[test]
    fn a_picture_is_asked_for_once_and_again_only_when_it_no_longer_serves() {
        // 1000 by 800 units of 0.02 m: 20 by 16 m. A coarse picture has a pixel for 0.04 m.
        let (ctx, plan) = (Context::default(), witness::with_underlay());
        let mut shown = Underlays::default();
        let far = looked(10.0, 8.0, 20.0);
        assert_eq!(parts(&shown.needed(&plan, None, Some(&far))), [None], "the whole page first");
        assert_eq!(parts(&shown.needed(&plan, None, Some(&far))), [], "and not twice");
        let attachment = plan.attachments.values().next().unwrap().clone();
        shown.take(&ctx, made(UnderlayJob::Show { attachment, page: 1, wanted: None, ground: Ground::Light }));
        let mut step = |looked: &Looked| {
            let jobs = shown.needed(&plan, None, Some(looked));
            let parts = parts(&jobs);
            for job in jobs {
                shown.take(&ctx, made(job));
            }
            parts
        };
        assert_eq!(step(&far), [], "from afar the coarse one serves");
        let near = looked(6.0, 6.0, 2.0);
        let [Some(wanted)] = step(&near)[..] else { panic!("a finer one is needed") };
        assert!(wanted.part.holds(&Extent { min: DVec2::splat(200.0), max: DVec2::splat(400.0) }));
        assert!((wanted.px_per_unit - 0.02 / near.m_per_px).abs() < 1e-9);
        assert_eq!(step(&near), []);
        assert_eq!(step(&looked(6.4, 6.0, 2.0)), [], "a little aside it still serves");
        assert_eq!(step(&looked(12.0, 6.0, 2.0)).len(), 1);
        assert_eq!(step(&looked(200.0, 6.0, 2.0)), [], "beside the page nothing is needed");
    }

    #[test]
    fn another_ground_asks_for_other_pictures_and_takes_none_made_for_the_first() {
        let (ctx, plan) = (Context::default(), witness::with_underlay());
        let mut shown = Underlays::default();
        let light = looked(10.0, 8.0, 20.0);
        let late = shown.needed(&plan, None, Some(&light));
        let dark = Looked { ground: Ground::Dark, ..light };
        let jobs = shown.needed(&plan, None, Some(&dark));
        assert_eq!(parts(&jobs), [None]);
        late.into_iter().chain(jobs).for_each(|job| shown.take(&ctx, made(job)));
        assert!(!shown.is_at_work());
        assert!(shown.needed(&plan, None, Some(&dark)).is_empty());
    }

    #[test]
    fn what_is_hidden_or_on_another_level_is_not_pictured_and_what_is_gone_is_forgotten() {
        let plan = witness::with_underlay();
        let (mut shown, far) = (Underlays::default(), looked(10.0, 8.0, 20.0));
        let mut hidden = plan.clone();
        hidden.underlays.values_mut().for_each(|one| one.shown = false);
        assert!(shown.needed(&hidden, None, Some(&far)).is_empty());
        assert_eq!(shown.needed(&plan, None, Some(&far)).len(), 1);
        assert!(shown.is_at_work());
        shown.needed(&witness::rectangle_plan(), None, Some(&far));
        assert!(!shown.is_at_work());
    }
}
