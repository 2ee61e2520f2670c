//! The pictures in the README are those that the program draws.

use std::fs;
use std::path::Path;
use std::process::Command;

/// Fonts are drawn alike only by one processor's arithmetic: to the byte where the pictures are made, else by size.
fn is_strict() -> bool {
    std::env::var_os("GANTLINE_PICTURES").is_some_and(|word| word == "strict")
}

/// Width and height of a PNG, which stand at bytes 16 to 23 (PNG specification, IHDR).
fn size(png: &[u8]) -> (u32, u32) {
    let number = |at: usize| u32::from_be_bytes(png[at..at + 4].try_into().unwrap());
    (number(16), number(20))
}

#[test]
fn the_pictures_in_the_readme_are_those_that_the_demonstration_draws() {
    let folder = tempfile::tempdir().unwrap();
    let drawn = Command::new(env!("CARGO_BIN_EXE_gantline"))
        .args(["demonstration", "--to"])
        .arg(folder.path())
        .output()
        .unwrap();
    assert!(drawn.status.success(), "{}", String::from_utf8_lossy(&drawn.stderr));
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let readme = fs::read_to_string(root.join("README.md")).unwrap();
    for name in ["plan.png", "section.png"] {
        assert!(readme.contains(&format!("(assets/pictures/{name})")), "the README shows {name}");
        let kept = fs::read(root.join("assets/pictures").join(name)).unwrap();
        let now = fs::read(folder.path().join(name)).unwrap();
        assert_eq!(size(&kept), size(&now), "{name}: take it anew from `gantline demonstration`");
        assert!(!is_strict() || kept == now, "{name} is drawn otherwise now: take it anew");
    }
}
