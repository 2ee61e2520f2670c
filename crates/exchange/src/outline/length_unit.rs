//! Units of length that drawings are made in.

/// A unit of length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LengthUnit {
    /// Millimeters.
    Millimeter,
    /// Centimeters.
    Centimeter,
    /// Decimeters.
    Decimeter,
    /// Meters.
    Meter,
    /// Kilometers.
    Kilometer,
    /// Inches.
    Inch,
    /// Feet.
    Foot,
    /// Feet of the old survey of the United States.
    UsSurveyFoot,
    /// Yards.
    Yard,
}

impl LengthUnit {
    /// Units that are offered where a file states none.
    pub const OFFERED: [Self; 5] = [Self::Millimeter, Self::Centimeter, Self::Meter, Self::Inch, Self::Foot];

    /// The unit of the header variable `$INSUNITS`; none for "unitless" and for units that no building is drawn in.
    /// Codes: DXF reference, header section; those above 20 are from memory.
    pub const fn of_code(code: i64) -> Option<Self> {
        Some(match code {
            1 => Self::Inch,
            2 => Self::Foot,
            4 => Self::Millimeter,
            5 => Self::Centimeter,
            6 => Self::Meter,
            7 => Self::Kilometer,
            10 => Self::Yard,
            14 => Self::Decimeter,
            21 => Self::UsSurveyFoot,
            _ => return None,
        })
    }

    /// Meters in one of it. Exact by definition; the survey foot is 1200/3937 m (NIST SP 811, B.6).
    pub const fn in_m(self) -> f64 {
        match self {
            Self::Millimeter => 0.001,
            Self::Centimeter => 0.01,
            Self::Decimeter => 0.1,
            Self::Meter => 1.0,
            Self::Kilometer => 1000.0,
            Self::Inch => 0.0254,
            Self::Foot => 0.3048,
            Self::UsSurveyFoot => 1200.0 / 3937.0,
            Self::Yard => 0.9144,
        }
    }

    /// Its name, in the plural.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Millimeter => "millimeters",
            Self::Centimeter => "centimeters",
            Self::Decimeter => "decimeters",
            Self::Meter => "meters",
            Self::Kilometer => "kilometers",
            Self::Inch => "inches",
            Self::Foot => "feet",
            Self::UsSurveyFoot => "US survey feet",
            Self::Yard => "yards",
        }
    }
}
