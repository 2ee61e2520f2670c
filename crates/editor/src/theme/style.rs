//! egui's style from a palette: calm grounds, hairlines, no shadows but under what floats.

use egui::style::{Selection, WidgetVisuals, Widgets};
use egui::{CornerRadius, Margin, Shadow, Stroke, Style, Theme, Vec2, Visuals};

use super::{Palette, fonts, type_scale};

/// Sets both themes and the fonts of a context. Once is enough.
pub fn install(ctx: &egui::Context) {
    ctx.set_fonts(fonts::definitions());
    for theme in [Theme::Light, Theme::Dark] {
        ctx.set_style_of(theme, style(&Palette::of(theme == Theme::Dark)));
    }
    // Zooming by Ctrl + plus and minus belongs to the system's scale, not to a single window.
    ctx.options_mut(|options| options.zoom_with_keyboard = false);
}

/// The palette of the theme that is shown.
pub fn shown(ctx: &egui::Context) -> Palette {
    Palette::of(ctx.theme() == Theme::Dark)
}

fn widget(ground: egui::Color32, edge: egui::Color32, ink: egui::Color32) -> WidgetVisuals {
    WidgetVisuals {
        bg_fill: ground,
        weak_bg_fill: ground,
        bg_stroke: Stroke::new(1.0, edge),
        corner_radius: CornerRadius::same(3),
        fg_stroke: Stroke::new(1.0, ink),
        expansion: 0.0,
    }
}

fn style(palette: &Palette) -> Style {
    let mut style = Style { text_styles: type_scale::text_styles(), ..Style::default() };
    style.visuals = visuals(palette);
    style.spacing.item_spacing = Vec2::new(8.0, 6.0);
    style.spacing.button_padding = Vec2::new(9.0, 4.0);
    style.spacing.interact_size = Vec2::new(28.0, type_scale::ROW);
    style.spacing.menu_margin = Margin::same(6);
    style.spacing.window_margin = Margin::same(18);
    style.spacing.icon_width = 16.0;
    style.spacing.scroll.floating = true;
    style.interaction.selectable_labels = false;
    style.interaction.tooltip_delay = 0.4;
    style.animation_time = 0.0;
    style
}

fn visuals(palette: &Palette) -> Visuals {
    let mut visuals = if palette.dark { Visuals::dark() } else { Visuals::light() };
    visuals.widgets = Widgets {
        noninteractive: widget(palette.panel, palette.hairline, palette.ink),
        inactive: widget(palette.field, palette.hairline, palette.ink),
        hovered: widget(palette.hover, palette.ink_faint, palette.ink),
        active: widget(palette.accent_ground, palette.accent, palette.ink),
        open: widget(palette.hover, palette.hairline, palette.ink),
    };
    visuals.selection = Selection { bg_fill: palette.accent_ground, stroke: Stroke::new(1.0, palette.accent) };
    visuals.hyperlink_color = palette.accent;
    visuals.faint_bg_color = palette.bar;
    visuals.extreme_bg_color = palette.field;
    visuals.text_edit_bg_color = Some(palette.field);
    visuals.warn_fg_color = palette.caution;
    visuals.error_fg_color = palette.blocking;
    visuals.weak_text_color = Some(palette.ink_soft);
    visuals.window_fill = palette.panel;
    visuals.panel_fill = palette.panel;
    visuals.window_stroke = Stroke::new(1.0, palette.hairline);
    visuals.window_corner_radius = CornerRadius::same(6);
    visuals.menu_corner_radius = CornerRadius::same(4);
    visuals.window_shadow = Shadow { offset: [0, 6], blur: 24, spread: 0, color: palette.shadow };
    visuals.popup_shadow = Shadow { offset: [0, 3], blur: 10, spread: 0, color: palette.shadow };
    visuals.override_text_color = None;
    visuals
}
