//! Usual scales: those that people have rulers for.

use gantline_drawing::Scale;
use gantline_plan::quantity::UnitSystem;

/// A usual scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UsualScale {
    /// 100 for 1 to 100.
    pub one_to: f64,
    /// As it is written on a sheet.
    pub words: &'static str,
}

const fn usual(one_to: f64, words: &'static str) -> UsualScale {
    UsualScale { one_to, words }
}

/// The scales of ISO 5455, with 1:25 and 1:250, the largest first.
const METRIC: [UsualScale; 9] = [
    usual(10.0, "1:10"),
    usual(20.0, "1:20"),
    usual(25.0, "1:25"),
    usual(50.0, "1:50"),
    usual(100.0, "1:100"),
    usual(200.0, "1:200"),
    usual(250.0, "1:250"),
    usual(500.0, "1:500"),
    usual(1000.0, "1:1000"),
];

/// Architect's and engineer's scales, the largest first.
const CUSTOMARY: [UsualScale; 10] = [
    usual(12.0, "1\" = 1'-0\""),
    usual(16.0, "3/4\" = 1'-0\""),
    usual(24.0, "1/2\" = 1'-0\""),
    usual(48.0, "1/4\" = 1'-0\""),
    usual(96.0, "1/8\" = 1'-0\""),
    usual(128.0, "3/32\" = 1'-0\""),
    usual(192.0, "1/16\" = 1'-0\""),
    usual(480.0, "1\" = 40'"),
    usual(600.0, "1\" = 50'"),
    usual(1200.0, "1\" = 100'"),
];

impl UsualScale {
    /// The scale.
    pub fn scale(self) -> Scale {
        Scale::one_to(self.one_to)
    }

    /// Those of a system of units from one ratio to another, the largest first.
    pub fn between(units: UnitSystem, largest: f64, smallest: f64) -> impl DoubleEndedIterator<Item = Self> {
        let all: &[Self] = match units {
            UnitSystem::Si => &METRIC,
            UnitSystem::UsCustomary => &CUSTOMARY,
        };
        all.iter().copied().filter(move |one| (largest..=smallest).contains(&one.one_to))
    }

    /// The smallest of a system of units.
    pub fn smallest(units: UnitSystem) -> Self {
        match units {
            UnitSystem::Si => usual(1000.0, "1:1000"),
            UnitSystem::UsCustomary => usual(1200.0, "1\" = 100'"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Witness: 1/8 inch to the foot is 1 to 96, as 12 inches hold 96 eighths.
    #[test]
    fn inches_to_the_foot_are_the_ratio_that_they_say() {
        for one in CUSTOMARY {
            let (inches, feet) = one.words.split_once("\" = ").unwrap();
            let inches = match inches.split_once('/') {
                Some((above, below)) => above.parse::<f64>().unwrap() / below.parse::<f64>().unwrap(),
                None => inches.parse().unwrap(),
            };
            let feet: f64 = feet.split('\'').next().unwrap().parse().unwrap();
            assert!((feet * 12.0 / inches - one.one_to).abs() < 1e-9, "{}", one.words);
        }
        for one in METRIC {
            assert_eq!(one.words, format!("1:{}", one.one_to));
        }
    }

    #[test]
    fn the_smallest_is_the_last_of_its_system() {
        for units in [UnitSystem::Si, UnitSystem::UsCustomary] {
            let last = UsualScale::between(units, 0.0, f64::INFINITY).next_back();
            assert_eq!(last, Some(UsualScale::smallest(units)));
        }
    }
}
