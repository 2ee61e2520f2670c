//! `gantline documents`: the plan as files for others, each standing alone.

use std::ops::ControlFlow;

use gantline_exchange::disk::plan_file::open;
use gantline_exchange::documents::{DocumentKind, Wanted, make, write};
use gantline_exchange::drawing_set::PaperSize;
use gantline_plan::assess::{Memo, assess};

use super::args::{DocumentChoice, DocumentsArgs, PaperChoice};
use super::ending::{Ending, NoAnswer};
use super::tally::tally_line;
use super::told::{tell, tell_beside};

/// Writes the documents of a plan.
pub fn documents(args: &DocumentsArgs) -> Result<Ending, NoAnswer> {
    let plan = open(&args.plan)?.plan;
    let folder = &args.to;
    std::fs::create_dir_all(folder).map_err(|cause| NoAnswer::Folder { folder: folder.clone(), cause })?;
    let assessment = assess(&plan, &mut Memo::new());
    let units = args.units.system();
    let wanted = Wanted {
        kinds: kinds(&args.only),
        units,
        drawing_unit: args.dxf_in.unit(),
        size: args.paper.map_or(PaperSize::usual(units), PaperChoice::size),
        date: args.date.clone(),
    };
    let documents = make(&plan, &assessment, &wanted, gantline_print::pdf, &mut |_| ControlFlow::Continue(()))?;
    for path in write(folder, &documents)? {
        tell(&format!("{}\n", path.display()))?;
    }
    tell_beside(&tally_line(assessment.tally()))?;
    Ok(Ending::Clear)
}

/// Everything, unless something is chosen.
fn kinds(only: &[DocumentChoice]) -> Vec<DocumentKind> {
    if only.is_empty() { DocumentKind::ALL.to_vec() } else { only.iter().map(|choice| choice.kind()).collect() }
}
