//! Measures how long the program takes to its first frame, told by the program itself when asked for it.

use std::time::Instant;

/// Set to anything but nothing, the program tells how long it took to its first frame, and ends.
pub const VARIABLE: &str = "GANTLINE_FIRST_FRAME";

/// The measurement under way.
pub struct FirstFrame {
    begun: Instant,
    frames: u32,
}

impl FirstFrame {
    /// Begins it, when the environment asks for it.
    pub fn asked_for(begun: Instant) -> Option<Self> {
        let asked = std::env::var_os(VARIABLE).is_some_and(|value| !value.is_empty());
        asked.then_some(Self { begun, frames: 0 })
    }

    /// To be called as each frame begins. The second one begins when the first is on the screen.
    pub fn frame_begins(&mut self, ctx: &egui::Context) {
        match self.frames {
            0 => ctx.request_repaint(),
            1 => {
                eprintln!("first frame after {} ms", self.begun.elapsed().as_millis());
                ctx.send_viewport_cmd(egui::ViewportCommand::Close);
            }
            _ => {}
        }
        self.frames = self.frames.saturating_add(1);
    }
}
