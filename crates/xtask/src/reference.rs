//! `reference`: computes with other programs what the tests compare with, and holds it against what is committed.
//!
//! Each `tests/reference/NAME.py` writes `expected/NAME.json` beside itself. The scripts are run in a copy of the folder,
//! in a virtual environment with the pinned requirements, so that nothing committed is touched.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::bench::files;
use crate::libraries;
use crate::numbers::difference;
use crate::packages;
use crate::steps::{Done, cargo, root, run, target_folder};

/// Other processors and other versions of the C library differ in the last digits.
const RELATIVE: f64 = 1e-9;

/// Computes and compares.
pub fn reference() -> Done {
    let committed = root()?.join("tests/reference");
    let work = target_folder()?.join("reference");
    let python = environment(&work)?;
    see_to_system_libraries();
    let documents = documents(&work)?;
    let without = install_requirements(&python, &committed.join("requirements.txt"))?;
    let mut report = Report::default();
    for script in files(&committed)?.into_iter().filter(|file| file.extension().is_some_and(|end| end == "py")) {
        report.add(&script, run_and_compare(&python, &script, &work, &documents)?);
    }
    report.finish(&without)
}

/// A virtual environment's Python; made at the first run.
fn environment(work: &Path) -> Done<PathBuf> {
    let folder = work.join("environment");
    let python = folder.join(if cfg!(windows) { "Scripts/python.exe" } else { "bin/python" });
    if python.exists() {
        return Ok(python);
    }
    fs::create_dir_all(work).map_err(|cause| format!("can't make {}: {cause}", work.display()))?;
    let system = if cfg!(windows) { "python" } else { "python3" };
    let make = || run(Command::new(system).args(["-m", "venv"]).arg(&folder));
    if make().is_err() {
        packages::install(&["python3", "python3-venv"], "The reference values are computed by Python")?;
        make()?;
    }
    Ok(python)
}

/// Documents that are read back: their folder, the plan, and what else the program is given.
const PLANS: [(&str, &str, &[&str]); 3] = [
    ("small-roof", "small-roof", &[]),
    ("courtyard-building", "courtyard-building", &[]),
    ("small-roof-in-a-grid", "small-roof", &["grid", "412340.125", "5654320.5"]),
];

/// The folder with the documents of demonstration plans, made anew, a folder each.
fn documents(work: &Path) -> Done<PathBuf> {
    let folder = work.join("documents");
    for (name, plan, more) in PLANS {
        let plan = root()?.join("demo-projects").join(plan).with_extension("json");
        let mut made = cargo()?;
        made.args(["run", "--quiet", "--locked", "--package", "gantline-print", "--example", "documents", "--"]);
        run(made.arg(plan).arg(folder.join(name)).args(more))?;
    }
    Ok(folder)
}

/// OpenSees comes without two libraries of the system; where they can't be had, its scripts are left out by name.
fn see_to_system_libraries() {
    let are_there = ["libblas.so.3", "liblapack.so.3"].into_iter().all(libraries::is_there);
    if cfg!(target_os = "linux")
        && !are_there
        && let Err(what) = packages::install(&["libblas3", "liblapack3"], "OpenSees needs two system libraries")
    {
        println!("{what}");
    }
}

/// Installs requirement by requirement, as ready-made packages only; returns those that don't exist for this system.
fn install_requirements(python: &Path, list: &Path) -> Done<Vec<String>> {
    let text = fs::read_to_string(list).map_err(|cause| format!("can't read {}: {cause}", list.display()))?;
    let wanted = text.lines().map(|line| line.split('#').next().unwrap_or_default().trim());
    let mut without = Vec::new();
    for requirement in wanted.filter(|line| !line.is_empty()) {
        let install = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--only-binary", ":all:"];
        if let Err(what) = run(Command::new(python).args(install).arg(requirement)) {
            println!("left out: {what}");
            without.push(requirement.to_owned());
        }
    }
    Ok(without)
}

/// How a script's values stand to the committed ones.
enum Outcome {
    Agrees,
    Differs(String),
    LeftOut(String),
}

fn run_and_compare(python: &Path, script: &Path, work: &Path, documents: &Path) -> Done<Outcome> {
    let stem = script.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let committed = script.with_file_name("expected").join(format!("{stem}.json"));
    let room = copy_of_folder(script, work)?;
    let copy = room.join(script.file_name().unwrap_or_default());
    println!("$ python {stem}.py");
    let answer = Command::new(python)
        .arg(&copy)
        .current_dir(&room)
        .env("GANTLINE_DOCUMENTS", documents)
        .output()
        .map_err(|cause| cause.to_string())?;
    if !answer.status.success() {
        let said = String::from_utf8_lossy(&answer.stderr).into_owned();
        let last = said.lines().last().unwrap_or_default().to_owned();
        return match last.strip_prefix("ModuleNotFoundError: ") {
            Some(missing) => Ok(Outcome::LeftOut(missing.to_owned())),
            None => Err(format!("{stem}.py failed:\n{said}")),
        };
    }
    let read =
        |file: &Path| fs::read_to_string(file).map_err(|cause| format!("can't read {}: {cause}", file.display()));
    let (old, new) = (read(&committed)?, read(&room.join("expected").join(format!("{stem}.json")))?);
    Ok(match difference(&old, &new, RELATIVE) {
        None => Outcome::Agrees,
        Some(d) => Outcome::Differs(format!("line {}: committed {}, computed {}", d.line, d.first, d.second)),
    })
}

/// A copy of the scripts and of the inputs beside them, with an empty `expected`.
fn copy_of_folder(script: &Path, work: &Path) -> Done<PathBuf> {
    let room = work.join("run");
    let fault = |cause: std::io::Error| format!("can't copy the scripts to {}: {cause}", room.display());
    fs::create_dir_all(room.join("expected")).map_err(fault)?;
    for file in files(script.parent().unwrap_or(script))?.into_iter().filter(|file| file.is_file()) {
        fs::copy(&file, room.join(file.file_name().unwrap_or_default())).map_err(fault)?;
    }
    Ok(room)
}

#[derive(Default)]
struct Report {
    agree: Vec<String>,
    differ: Vec<String>,
    left_out: Vec<String>,
}

impl Report {
    fn add(&mut self, script: &Path, outcome: Outcome) {
        let name = script.file_name().unwrap_or_default().to_string_lossy().into_owned();
        match outcome {
            Outcome::Agrees => self.agree.push(name),
            Outcome::Differs(what) => self.differ.push(format!("{name}: {what}")),
            Outcome::LeftOut(what) => self.left_out.push(format!("{name}: {what}")),
        }
    }

    fn finish(self, without: &[String]) -> Done {
        println!("\nThe same values to {RELATIVE:e}: {}", self.agree.join(", "));
        for requirement in without {
            println!("No ready-made package here: {requirement}");
        }
        for what in &self.left_out {
            println!("LEFT OUT, not compared: {what}");
        }
        for what in &self.differ {
            println!("DIFFERS: {what}");
        }
        match (self.differ.is_empty(), self.agree.is_empty()) {
            (false, _) => Err(format!("{} of the reference values differ", self.differ.len())),
            (true, true) => Err("nothing could be compared".to_owned()),
            (true, false) => Ok(()),
        }
    }
}
