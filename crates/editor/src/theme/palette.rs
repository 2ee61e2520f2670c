//! Colors: one palette for light, one for dark. Everything on screen takes its colors from here.
//!
//! The hues of meanings are those of Okabe and Ito (2008), told apart by people with any common color vision; none of
//! them is ever the only carrier of a meaning: hatch, shape or word goes with it.

use egui::Color32;

/// Colors of the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Palette {
    /// Whether it is the dark one.
    pub dark: bool,
    /// The sheet that drawings lie on.
    pub sheet: Color32,
    /// The grid on it.
    pub grid: Color32,
    /// Panels around the sheet.
    pub panel: Color32,
    /// The top bar and the status line.
    pub bar: Color32,
    /// Fields that take text.
    pub field: Color32,
    /// Hairlines between panels.
    pub hairline: Color32,
    /// Text and main lines.
    pub ink: Color32,
    /// Labels and lines of second rank.
    pub ink_soft: Color32,
    /// Hints and lines of third rank.
    pub ink_faint: Color32,
    /// The selection and what can be done.
    pub accent: Color32,
    /// Ground behind what is chosen.
    pub accent_ground: Color32,
    /// Text on the accent.
    pub on_accent: Color32,
    /// Ground under the pointer.
    pub hover: Color32,
    /// Blocking findings and conflicts.
    pub blocking: Color32,
    /// Cautions.
    pub caution: Color32,
    /// What was not checked.
    pub unchecked: Color32,
    /// What meets its rule.
    pub meets: Color32,
    /// Reach.
    pub reach: Color32,
    /// Gaps.
    pub gap: Color32,
    /// Clear zones.
    pub clear: Color32,
    /// Room for people.
    pub standing: Color32,
    /// Loads and reactions.
    pub load: Color32,
    /// Cut material.
    pub cut: Color32,
    /// Ground of roofs.
    pub roof: Color32,
    /// Shadow below what floats.
    pub shadow: Color32,
}

const fn rgb(hex: u32) -> Color32 {
    Color32::from_rgb((hex >> 16) as u8, (hex >> 8) as u8, hex as u8)
}

impl Palette {
    /// Ink on paper.
    pub const LIGHT: Self = Self {
        dark: false,
        sheet: rgb(0xFB_F9_F4),
        grid: rgb(0xEE_EA_E0),
        panel: rgb(0xF4_F1_EA),
        bar: rgb(0xEC_E8_DF),
        field: rgb(0xFF_FE_FB),
        hairline: rgb(0xD8_D2_C5),
        ink: rgb(0x22_26_2B),
        ink_soft: rgb(0x5A_60_66),
        ink_faint: rgb(0x7C_80_82),
        accent: rgb(0x0B_5E_9E),
        accent_ground: rgb(0xDA_E7_F1),
        on_accent: rgb(0xFF_FF_FF),
        hover: rgb(0xE6_E1_D6),
        blocking: rgb(0xB5_3A_00),
        caution: rgb(0x8F_62_00),
        unchecked: rgb(0x8A_3F_74),
        meets: rgb(0x00_72_52),
        reach: rgb(0x00_6F_AE),
        gap: rgb(0xC4_4C_00),
        clear: rgb(0x00_7F_5C),
        standing: rgb(0x9A_6B_00),
        load: rgb(0x9C_3B_80),
        cut: rgb(0x4A_4D_50),
        roof: rgb(0xF3_F0_E7),
        shadow: Color32::from_black_alpha(36),
    };

    /// Chalk on slate.
    pub const DARK: Self = Self {
        dark: true,
        sheet: rgb(0x1B_23_2C),
        grid: rgb(0x24_2E_39),
        panel: rgb(0x22_2B_35),
        bar: rgb(0x28_33_3F),
        field: rgb(0x17_1E_26),
        hairline: rgb(0x3A_47_55),
        ink: rgb(0xE6_EB_EF),
        ink_soft: rgb(0xB2_BD_C7),
        ink_faint: rgb(0x8D_9A_A6),
        accent: rgb(0x7C_C0_F5),
        accent_ground: rgb(0x2A_47_60),
        on_accent: rgb(0x10_18_20),
        hover: rgb(0x33_40_4E),
        blocking: rgb(0xFF_8A_4C),
        caution: rgb(0xF0_B8_3A),
        unchecked: rgb(0xE3_9C_CB),
        meets: rgb(0x3F_CF_A4),
        reach: rgb(0x5A_B8_F0),
        gap: rgb(0xFF_8F_50),
        clear: rgb(0x43_C9_9E),
        standing: rgb(0xE3_B3_4A),
        load: rgb(0xE5_98_CB),
        cut: rgb(0xA9_B4_BE),
        roof: rgb(0x22_2C_36),
        shadow: Color32::from_black_alpha(120),
    };

    /// The palette for dark or light.
    pub const fn of(dark: bool) -> Self {
        if dark { Self::DARK } else { Self::LIGHT }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance and contrast as WCAG 2.1 defines them.
    fn luminance(color: Color32) -> f64 {
        let part = |channel: u8| {
            let c = f64::from(channel) / 255.0;
            if c <= 0.03928 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * part(color.r()) + 0.7152 * part(color.g()) + 0.0722 * part(color.b())
    }

    fn contrast(a: Color32, b: Color32) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    #[test]
    fn every_text_color_can_be_read_on_every_ground() {
        // WCAG 2.1 AA asks for 4.5 for text; 3 for large text, hints and graphics.
        for palette in [Palette::LIGHT, Palette::DARK] {
            for ground in [palette.sheet, palette.panel, palette.bar, palette.field] {
                for text in [palette.ink, palette.ink_soft, palette.accent, palette.blocking, palette.unchecked] {
                    assert!(contrast(text, ground) >= 4.5, "{text:?} on {ground:?}: {:.2}", contrast(text, ground));
                }
                for mark in [palette.ink_faint, palette.caution, palette.meets, palette.reach, palette.gap] {
                    assert!(contrast(mark, ground) >= 3.0, "{mark:?} on {ground:?}: {:.2}", contrast(mark, ground));
                }
            }
            assert!(contrast(palette.on_accent, palette.accent) >= 4.5);
            assert!(contrast(palette.ink, palette.accent_ground) >= 4.5);
        }
    }
}
