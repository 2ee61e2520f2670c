//! Identities: 22 letters that stay while the job and the id in the plan stay, so that a new revision replaces the old.

use sha2::{Digest, Sha256};

/// The letters in the order of their values (IFC4, IfcGloballyUniqueId).
const LETTERS: &[u8; 64] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$";

/// Makes identities of one job: ids of the plan begin at 1 in every plan, so that the job has to tell them apart.
#[derive(Debug, Clone)]
pub struct Identities {
    job: String,
}

impl Identities {
    /// Identities of a job at an address.
    pub fn of(job: &str, address: &str) -> Self {
        Self { job: format!("{job}\n{address}") }
    }

    /// The identity of a thing, in quotes.
    pub fn of_thing(&self, thing: &str) -> String {
        let digest = Sha256::digest(format!("gantline\n{}\n{thing}", self.job).as_bytes());
        let bits = digest.iter().take(16).fold(0_u128, |bits, &byte| (bits << 8) | u128::from(byte));
        format!("'{}'", in_letters(bits))
    }
}

/// 128 bits as 22 letters of six bits, the first of two.
fn in_letters(bits: u128) -> String {
    let letter = |place: u32| {
        let six = usize::try_from((bits >> (6 * place)) & 0x3f).unwrap_or(0);
        LETTERS.get(six).map_or('0', |&letter| char::from(letter))
    };
    (0..22).rev().map(letter).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Witness: the value of each letter by hand. All bits set are 3 in the first letter and 63 in all others.
    #[test]
    fn bits_become_letters_from_the_highest_on() {
        assert_eq!(in_letters(0), "0".repeat(22));
        assert_eq!(in_letters(u128::MAX), format!("3{}", "$".repeat(21)));
        assert_eq!(in_letters(10 * 64 + 36), format!("{}Aa", "0".repeat(20)));
    }

    #[test]
    fn an_identity_stays_and_another_job_has_another() {
        let here = Identities::of("Hall", "Lane 1");
        assert_eq!(here.of_thing("unit-3"), Identities::of("Hall", "Lane 1").of_thing("unit-3"));
        assert_ne!(here.of_thing("unit-3"), here.of_thing("unit-4"));
        assert_ne!(here.of_thing("unit-3"), Identities::of("Hall", "Lane 2").of_thing("unit-3"));
    }
}
