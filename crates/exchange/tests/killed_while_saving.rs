//! A process that is killed at any moment while it saves leaves a whole plan file, its version before likewise.

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use gantline_exchange::disk::{plan_file, previous};
use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::document::Plan;

/// Names the plan file to the process that saves.
const PLAN: &str = "GANTLINE_TEST_SAVES_TO";

fn plan(number: usize) -> Plan {
    let mut plan = Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode());
    plan.title.remark = number.to_string().repeat(5_000);
    plan
}

/// The process that is killed: saves without end, each time a plan of another length.
#[test]
#[ignore = "runs without end; started and killed by the test below"]
fn saves_without_end() {
    let path = std::env::var_os(PLAN).expect("the plan file to save to");
    for number in 1.. {
        plan_file::save(Path::new(&path), &plan(number), None).unwrap();
    }
}

#[test]
fn a_process_killed_while_saving_leaves_a_whole_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("roof.json");
    plan_file::save(&path, &plan(0), None).unwrap();
    let first = plan_file::open(&path).unwrap().stamp;
    for round in 0..12_u64 {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["saves_without_end", "--exact", "--ignored"])
            .env(PLAN, &path)
            .stdout(Stdio::null())
            .spawn()
            .unwrap();
        wait_for_a_save(&path);
        std::thread::sleep(Duration::from_micros(700 * round));
        child.kill().unwrap();
        child.wait().unwrap();
        for file in [path.clone(), previous::previous_path(&path)] {
            let plan = plan_file::open(&file).unwrap().plan;
            assert_eq!(plan.title.remark.len() % 5_000, 0, "{}", file.display());
        }
    }
    assert_ne!(plan_file::open(&path).unwrap().stamp, first, "the process did save");
}

/// Waits until the process has saved once more, so that it is killed in the middle of its work and not while it starts.
fn wait_for_a_save(path: &Path) {
    let before = plan_file::open(path).unwrap().stamp;
    let begun = Instant::now();
    while plan_file::open(path).unwrap().stamp == before {
        assert!(begun.elapsed() < Duration::from_secs(30), "the process saves nothing");
        std::thread::sleep(Duration::from_millis(1));
    }
}
