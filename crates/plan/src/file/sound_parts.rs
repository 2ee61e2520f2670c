//! What is sound of a file that can't be read whole: all but the roofs, obstacles, families, units,
//! underlays and attachments at fault.

use serde_json::Value;

use super::ReadError;
use super::read::{members_of, plan_of};
use crate::document::Plan;

/// A plan without the parts of its file that could not be read.
#[derive(Debug, Clone, PartialEq)]
pub struct SoundParts {
    /// The plan.
    pub plan: Plan,
    /// What is not in it, in the order in which it was found at fault.
    pub left_out: Vec<LeftOut>,
}

/// A part of a file that was left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeftOut {
    /// Kind and id of the part, such as `placements › unit-17`.
    pub part: String,
    /// What was wrong, and where in it.
    pub fault: ReadError,
}

/// More parts than these are not left out one by one: such a file is no plan with a blemish.
const MOST_LEFT_OUT: usize = 200;

/// Reads what is sound of a plan file. A part that leads to one left out is left out as well. Where the trouble lies in no
/// single part, such as the load basis or the text itself, the fault is that of reading the whole.
pub fn read_sound_parts(bytes: &[u8]) -> Result<SoundParts, ReadError> {
    let mut members = members_of(bytes)?;
    let mut left_out = Vec::new();
    loop {
        let fault = match plan_of(&members) {
            Ok(plan) => return Ok(SoundParts { plan, left_out }),
            Err(fault) => fault,
        };
        match take_out(&mut members, &fault) {
            Some(part) if left_out.len() < MOST_LEFT_OUT => left_out.push(LeftOut { part, fault }),
            _ => return Err(fault),
        }
    }
}

/// Takes the part at fault out of the members; none when the fault lies in no single part.
fn take_out(members: &mut Value, fault: &ReadError) -> Option<String> {
    let ReadError::Part { path, .. } = fault else { return None };
    let mut steps = path.split(" › ");
    let (kind, id) = (steps.next()?, steps.next()?);
    if !["roofs", "obstacles", "families", "placements", "underlays", "attachments"].contains(&kind) {
        return None;
    }
    members.get_mut(kind)?.as_object_mut()?.remove(id)?;
    Some(format!("{kind} › {id}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::file::read;

    const SMALL: &str = include_str!("../../../../demo-projects/small-roof.json");

    fn broken(break_it: impl FnOnce(&mut Value)) -> Vec<u8> {
        let mut value: Value = serde_json::from_str(SMALL).unwrap();
        break_it(&mut value);
        serde_json::to_vec(&value).unwrap()
    }

    #[test]
    fn all_but_the_two_units_at_fault_is_the_plan_without_them() {
        let whole = read(SMALL.as_bytes()).unwrap();
        let ids: Vec<_> = whole.placements.keys().copied().collect();
        let (one, other) = (ids[1], ids[4]);
        let bytes = broken(|value| {
            value["placements"][one.to_string()]["stands"]["on_edge"] = Value::from("near the corner");
            value["placements"][other.to_string()]["make_up"]["family"] = Value::from("family-9999");
        });
        assert!(read(&bytes).is_err());
        let sound = read_sound_parts(&bytes).unwrap();
        let mut parts: Vec<_> = sound.left_out.iter().map(|part| part.part.clone()).collect();
        parts.sort();
        assert_eq!(parts, [format!("placements › {one}"), format!("placements › {other}")]);
        let mut without = whole;
        without.placements.remove(&one);
        without.placements.remove(&other);
        assert_eq!(sound.plan, without);
    }

    #[test]
    fn what_stands_on_a_roof_at_fault_goes_with_it() {
        let bytes = broken(|value| {
            let roofs = value["roofs"].as_object_mut().unwrap();
            roofs.values_mut().for_each(|roof| roof["level_m"] = Value::from("high"));
        });
        let sound = read_sound_parts(&bytes).unwrap();
        assert!(sound.plan.roofs.is_empty() && sound.plan.placements.is_empty() && sound.plan.obstacles.is_empty());
        assert!(!sound.plan.families.is_empty());
    }

    #[test]
    fn a_fault_in_no_single_part_is_told_as_that_of_the_whole() {
        let bytes = broken(|value| value["basis"] = Value::from("heavy"));
        assert_eq!(read_sound_parts(&bytes).unwrap_err(), read(&bytes).unwrap_err());
        assert!(matches!(read_sound_parts(b"{"), Err(ReadError::NotJson { .. })));
    }

    #[test]
    fn of_a_sound_file_nothing_is_left_out() {
        let sound = read_sound_parts(SMALL.as_bytes()).unwrap();
        assert_eq!((sound.plan, sound.left_out.len()), (read(SMALL.as_bytes()).unwrap(), 0));
    }
}
