//! All modes under one set of actions, line by line into a sink: the one road for verdicts and records.

use super::super::actions::GroupActions;
use super::super::line::{Line, Sink};
use super::super::record::{Mode, Outcome};
use super::interaction::{BarsIn, Shares, tell_concrete};
use super::prepared::{Met, Prepared};
use super::{shear_modes, steel_modes, tension_modes};

/// Actions with ψ_sus of their sustained share.
pub(super) type Acting<'a> = (&'a GroupActions, f64);

/// Tells every mode.
pub(super) fn evaluate(p: &Prepared<'_>, met: &Met<'_>, acting: Acting<'_>, sink: &mut impl Sink) {
    p.distances.tell(sink);
    steel_modes::tell(p, acting.0, sink);
    let mut shares = Shares { sink, tension: 0.0, shear: 0.0 };
    match p.terms {
        Ok(terms) => {
            tension_modes::tell(p, met, &terms, acting, &mut shares);
            shear_modes::tell(p, met, &terms, acting, &mut shares);
            let bars = match (&p.tension_bars, &p.shear_bars) {
                (Some(_), None) | (None, Some(_)) => BarsIn::OneDirection,
                (Some(_), Some(_)) | (None, None) => BarsIn::NoneOrBoth,
            };
            let (beta_n, beta_v) = (shares.tension, shares.shear);
            if beta_n > 0.0 && beta_v > 0.0 {
                tell_concrete((beta_n, beta_v), bars, shares.sink);
            } else {
                not_applicable(&[Mode::ConcreteInteraction], ONE_ONLY, shares.sink);
            }
        }
        Err(why) => {
            for mode in CONCRETE_MODES {
                shares.sink.take(&Line::only(mode, "EN 1992-4 7.2", Outcome::NotChecked(why)));
            }
        }
    }
}

/// Why there is nothing to combine.
pub(super) const ONE_ONLY: &str = "tension or shear alone";
const CONCRETE_MODES: [Mode; 8] = [
    Mode::ConcreteCone,
    Mode::PullOut,
    Mode::Bond,
    Mode::Splitting,
    Mode::BlowOut,
    Mode::PryOut,
    Mode::ConcreteEdge,
    Mode::ConcreteInteraction,
];

/// Modes that can't occur, and why.
pub(super) fn not_applicable(modes: &[Mode], why: &'static str, sink: &mut impl Sink) {
    for &mode in modes {
        sink.take(&Line::only(mode, "EN 1992-4 7.2", Outcome::NotApplicable(why)));
    }
}
