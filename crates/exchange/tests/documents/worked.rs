//! Plans with their assessments and documents.

use std::ops::ControlFlow;

use gantline_exchange::documents::{Document, DocumentKind, Wanted, make};
use gantline_exchange::paper::words_alone;
use gantline_plan::assess::{Assessment, Memo, assess};
use gantline_plan::document::Plan;
use gantline_plan::file::read;
use gantline_plan::quantity::UnitSystem;

/// A plan without mistakes, and one that is full of them.
pub const SMALL: &str = include_str!("../../../../demo-projects/small-roof.json");
pub const COURTYARD: &str = include_str!("../../../../demo-projects/courtyard-building.json");
/// A plan of three hundred units.
pub const LARGE: &str = include_str!("../../../../demo-projects/large-complex.json");

/// A plan with its assessment.
pub struct Worked {
    pub plan: Plan,
    pub assessment: Assessment,
}

impl Worked {
    pub fn of(text: &str) -> Self {
        Self::from(read(text.as_bytes()).unwrap())
    }

    pub fn from(plan: Plan) -> Self {
        let assessment = assess(&plan, &mut Memo::new());
        Self { plan, assessment }
    }

    pub fn documents(&self, wanted: &Wanted) -> Vec<Document> {
        make(&self.plan, &self.assessment, wanted, words_alone, &mut |_| ControlFlow::Continue(())).unwrap()
    }

    /// The one file of a kind.
    pub fn document(&self, kind: DocumentKind, units: UnitSystem) -> Vec<u8> {
        let wanted = Wanted { kinds: vec![kind], ..Wanted::all(units) };
        self.documents(&wanted).remove(0).bytes
    }
}
