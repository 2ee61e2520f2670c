//! The shell: the window around the application. Only here is the windowing library known.

pub mod before_start;
pub mod desktop_picker;
pub mod first_frame;
pub mod window;

pub use before_start::StartFault;
pub use window::run;
