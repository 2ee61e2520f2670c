//! Widths of the letters of the shipped typeface, so that places are right without any font at hand.
//!
//! Advance widths in thousandths of the em, read from the files in `assets/fonts`; every figure is equally wide. Pairs are
//! not kerned here, so that a text takes at most this width.

mod beyond_ascii;

/// A cut of the typeface.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Face {
    /// Regular.
    Regular,
    /// Semibold.
    SemiBold,
    /// Regular, narrow.
    Condensed,
}

/// Width of words in ems.
///
/// Letters that the typeface does not have count as wide ones, so that a box is too wide rather than too narrow.
pub fn width_em(words: &str, face: Face) -> f64 {
    words.chars().map(|letter| f64::from(letter_width(letter, face).unwrap_or(UNKNOWN))).sum::<f64>() / 1000.0
}

/// Whether all three cuts of the typeface have a letter.
pub fn has_letter(letter: char) -> bool {
    letter_width(letter, Face::Regular).is_some()
}

/// Width of a letter that the typeface does not have: of its own sign for such letters (895), rounded up.
const UNKNOWN: u16 = 900;

fn letter_width(letter: char, face: Face) -> Option<u16> {
    let (table, beyond) = match face {
        Face::Regular => (&REGULAR, &beyond_ascii::REGULAR),
        Face::SemiBold => (&SEMI_BOLD, &beyond_ascii::SEMI_BOLD),
        Face::Condensed => (&CONDENSED, &beyond_ascii::CONDENSED),
    };
    let plain = usize::try_from(u32::from(letter)).ok().and_then(|code| code.checked_sub(32));
    let found = plain.and_then(|index| table.get(index));
    let found = found.or_else(|| beyond_ascii::LETTERS.binary_search(&letter).ok().and_then(|index| beyond.get(index)));
    found.copied()
}

const REGULAR: [u16; 95] = [
    236, 284, 419, 713, 598, 927, 694, 242, 335, 335, 450, 600, 272, 399, 272, 383, 600, 600, 600, 600, 600, 600, 600,
    600, 600, 600, 292, 292, 600, 600, 600, 477, 891, 641, 653, 621, 671, 583, 559, 695, 707, 400, 510, 634, 501, 812,
    707, 708, 606, 708, 640, 581, 572, 678, 609, 891, 613, 593, 580, 317, 383, 317, 600, 565, 600, 534, 580, 503, 580,
    549, 324, 528, 568, 250, 250, 527, 272, 873, 568, 560, 580, 580, 367, 487, 351, 568, 492, 768, 507, 499, 464, 343,
    314, 343, 600,
];

const SEMI_BOLD: [u16; 95] = [
    236, 309, 471, 656, 600, 960, 713, 260, 337, 337, 556, 600, 298, 402, 298, 437, 600, 600, 600, 600, 600, 600, 600,
    600, 600, 600, 318, 318, 600, 600, 600, 493, 899, 672, 663, 642, 689, 600, 577, 712, 719, 423, 545, 678, 521, 816,
    719, 712, 641, 712, 664, 611, 580, 690, 638, 949, 655, 632, 599, 329, 437, 329, 600, 559, 600, 559, 600, 513, 600,
    558, 350, 545, 588, 276, 276, 562, 294, 888, 588, 563, 600, 600, 393, 499, 374, 588, 524, 819, 544, 524, 502, 363,
    376, 363, 600,
];

const CONDENSED: [u16; 95] = [
    212, 258, 382, 637, 538, 837, 626, 220, 302, 302, 414, 540, 248, 360, 248, 349, 540, 540, 540, 540, 540, 540, 540,
    540, 540, 540, 258, 258, 540, 540, 540, 431, 803, 579, 589, 561, 607, 526, 505, 627, 637, 362, 462, 574, 453, 730,
    637, 638, 548, 638, 578, 525, 516, 611, 549, 808, 555, 534, 524, 286, 349, 286, 540, 508, 540, 483, 524, 454, 524,
    495, 294, 477, 513, 228, 228, 477, 247, 787, 513, 504, 524, 524, 332, 439, 318, 513, 445, 698, 459, 451, 421, 310,
    288, 310, 540,
];

#[cfg(test)]
mod tests {
    use skrifa::instance::{LocationRef, Size};
    use skrifa::{FontRef, MetadataProvider as _};

    use super::*;

    /// Witness: the tables of the font files themselves, read by another program's code.
    #[test]
    fn every_letter_is_as_wide_as_the_font_files_say() {
        let files: [(Face, &[u8]); 3] = [
            (Face::Regular, include_bytes!("../../../assets/fonts/IBMPlexSans-Regular.ttf")),
            (Face::SemiBold, include_bytes!("../../../assets/fonts/IBMPlexSans-SemiBold.ttf")),
            (Face::Condensed, include_bytes!("../../../assets/fonts/IBMPlexSansCondensed-Regular.ttf")),
        ];
        for (face, bytes) in files {
            let font = FontRef::new(bytes).unwrap();
            let widths = font.glyph_metrics(Size::new(1000.0), LocationRef::default());
            let letters = (' '..='~').chain(beyond_ascii::LETTERS);
            for letter in letters {
                let of_file = font.charmap().map(letter).and_then(|glyph| widths.advance_width(glyph)).unwrap();
                let of_table = letter_width(letter, face).unwrap();
                assert_eq!(f64::from(of_table), f64::from(of_file), "{letter:?} of {face:?}");
            }
        }
    }

    #[test]
    fn letters_stand_in_order_and_signs_of_formulas_are_among_them() {
        assert!(beyond_ascii::LETTERS.is_sorted());
        assert!("αβγδηθλμνπρστφψωΔΣΦ√∑∫≤≥≈≠−·×²³½′→–…•".chars().all(has_letter));
        assert!(!has_letter('\u{5d0}'), "no Hebrew");
        assert_eq!(width_em("\u{5d0}", Face::Regular), 0.9);
    }
}
