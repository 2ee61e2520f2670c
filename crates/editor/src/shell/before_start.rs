//! Looks for a display before the window opens, and says in words what is missing.

/// Why no window opens.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum StartFault {
    /// No display.
    #[error(
        "there is no display: neither WAYLAND_DISPLAY nor DISPLAY is set. Without one, use `gantline check PLAN` or \
         `gantline demonstration`"
    )]
    NoDisplay,
    /// A library that the window needs at run time.
    #[error("the library {library} is missing; on Debian and Ubuntu: apt-get install {package}")]
    NoLibrary {
        /// The library.
        library: &'static str,
        /// The Debian package that has it.
        package: &'static str,
    },
    /// The window could not be made.
    #[error("no window could be opened: {0}. OpenGL 2.1 or newer is needed; without it, use `gantline check PLAN`")]
    NoWindow(String),
}

/// Libraries that are loaded only when a window opens, with the Debian packages that have them.
#[cfg(target_os = "linux")]
const FOR_X11: [(&str, &str); 6] = [
    ("libX11.so.6", "libx11-6"),
    ("libX11-xcb.so.1", "libx11-xcb1"),
    ("libXcursor.so.1", "libxcursor1"),
    ("libXi.so.6", "libxi6"),
    ("libxkbcommon-x11.so.0", "libxkbcommon-x11-0"),
    ("libGL.so.1", "libgl1"),
];
#[cfg(target_os = "linux")]
const FOR_WAYLAND: [(&str, &str); 3] = [
    ("libwayland-client.so.0", "libwayland-client0"),
    ("libxkbcommon.so.0", "libxkbcommon0"),
    ("libEGL.so.1", "libegl1"),
];

/// Looks for display and libraries.
#[cfg(target_os = "linux")]
pub fn look() -> Result<(), StartFault> {
    let set = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    let needed: &[(&str, &str)] = if set("WAYLAND_DISPLAY") || set("WAYLAND_SOCKET") {
        &FOR_WAYLAND
    } else if set("DISPLAY") {
        &FOR_X11
    } else {
        return Err(StartFault::NoDisplay);
    };
    for &(library, package) in needed {
        if !is_there(library) {
            return Err(StartFault::NoLibrary { library, package });
        }
    }
    Ok(())
}

/// Looks for display and libraries.
#[cfg(not(target_os = "linux"))]
pub fn look() -> Result<(), StartFault> {
    Ok(())
}

/// Whether the loader would find a library: in the folders that it searches, or where the system keeps it.
#[cfg(target_os = "linux")]
fn is_there(library: &str) -> bool {
    let named = std::env::var_os("LD_LIBRARY_PATH").unwrap_or_default();
    let mut folders: Vec<std::path::PathBuf> = std::env::split_paths(&named).collect();
    for root in ["/lib", "/usr/lib", "/usr/local/lib", "/lib64", "/usr/lib64"] {
        folders.push(root.into());
        let inside = std::fs::read_dir(root).into_iter().flatten().flatten();
        folders.extend(inside.map(|entry| entry.path()).filter(|path| path.to_string_lossy().ends_with("-linux-gnu")));
    }
    let cached = std::fs::read("/etc/ld.so.cache").unwrap_or_default();
    let in_cache = cached.windows(library.len()).any(|window| window == library.as_bytes());
    in_cache || folders.iter().any(|folder| folder.join(library).exists())
}
