//! What a window needs at run time on Linux: a display, and libraries that are loaded by name.

use std::path::Path;

/// How windows are shown here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Display {
    /// X11.
    X11,
    /// Wayland.
    Wayland,
    /// Windows or macOS: part of the system.
    System,
}

/// The display of this session; none on a server, in a container, over a plain remote shell.
pub fn display() -> Option<Display> {
    if !cfg!(target_os = "linux") {
        return Some(Display::System);
    }
    let is_set = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    if is_set("WAYLAND_DISPLAY") || is_set("WAYLAND_SOCKET") {
        return Some(Display::Wayland);
    }
    is_set("DISPLAY").then_some(Display::X11)
}

/// Library and the Debian package that brings it.
const FOR_X11: [(&str, &str); 6] = [
    ("libX11.so.6", "libx11-6"),
    ("libX11-xcb.so.1", "libx11-xcb1"),
    ("libXcursor.so.1", "libxcursor1"),
    ("libXi.so.6", "libxi6"),
    ("libxkbcommon-x11.so.0", "libxkbcommon-x11-0"),
    ("libGL.so.1", "libgl1"),
];
const FOR_WAYLAND: [(&str, &str); 5] = [
    ("libwayland-client.so.0", "libwayland-client0"),
    ("libwayland-cursor.so.0", "libwayland-cursor0"),
    ("libwayland-egl.so.1", "libwayland-egl1"),
    ("libxkbcommon.so.0", "libxkbcommon0"),
    ("libEGL.so.1", "libegl1"),
];

/// Packages whose libraries a window on this display needs and this system lacks.
pub fn missing_packages(display: Display) -> Vec<&'static str> {
    let needed: &[(&str, &str)] = match display {
        Display::X11 => &FOR_X11,
        Display::Wayland => &FOR_WAYLAND,
        Display::System => &[],
    };
    needed.iter().filter(|(library, _)| !is_there(library)).map(|&(_, package)| package).collect()
}

/// Whether a library lies in one of the folders where the system looks for it.
pub fn is_there(library: &str) -> bool {
    let machine = std::env::consts::ARCH;
    let beside_machine = format!("{machine}-linux-gnu");
    let folders = ["/lib", "/usr/lib", "/lib64", "/usr/lib64", "/usr/local/lib"];
    let named = std::env::var("LD_LIBRARY_PATH").unwrap_or_default();
    let named = named.split(':').filter(|folder| !folder.is_empty());
    let in_folder =
        |folder: &Path| folder.join(library).exists() || folder.join(&beside_machine).join(library).exists();
    folders.into_iter().chain(named).any(|folder| in_folder(Path::new(folder)))
}
