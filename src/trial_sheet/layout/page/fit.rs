//! The largest type in which a sheet stands on one page; before type gets too small to read at the bench, what only the desk
//! needs is left out.

use super::estimate::{Estimate, HEIGHT};
use crate::trial_sheet::answer::TrialSheet;
use crate::trial_sheet::layout::blocks::{self, Parts};
use crate::trial_sheet::layout::detail::Detail;

/// Type sizes, points. Below 7.5 pt few read a sheet at arm's length (our choice).
const SIZES: [f64; 4] = [9.0, 8.5, 8.0, 7.5];

/// How much of a page is filled at most, by the estimate: browsers break lines a little differently.
const FULL: f64 = 0.98;

/// How a sheet is put on paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PageFit {
    /// Size of the type, points: 7.5 to 9.
    pub type_size_pt: f64,
    /// What is told.
    pub detail: Detail,
    /// 1, or 2 where what to write down takes a page of its own.
    pub pages: u32,
    /// Estimated share of the height that is filled on the fuller page; above 1 it runs over.
    pub filled: f64,
}

/// A sheet in the type and the detail that its page takes.
pub(super) struct Fitted {
    pub(super) fit: PageFit,
    pub(super) parts: Parts,
}

pub(super) fn fitted(sheet: &TrialSheet<'_>) -> Fitted {
    let one = first_that_fits(|detail| blocks::of(sheet, detail), 1);
    match one {
        Ok(one) => one,
        Err(_) => first_that_fits(|detail| blocks::on_two_pages(sheet, detail), 2).unwrap_or_else(|smallest| smallest),
    }
}

/// The fullest detail in the largest type that fits, or else the smallest of both.
fn first_that_fits(parts: impl Fn(Detail) -> Parts, pages: u32) -> Result<Fitted, Fitted> {
    let mut last = None;
    for detail in Detail::ALL {
        for type_size_pt in SIZES {
            let parts = parts(detail);
            let filled = filled(&parts, type_size_pt);
            let own = Fitted { fit: PageFit { type_size_pt, detail, pages, filled }, parts };
            if filled <= FULL {
                return Ok(own);
            }
            last = Some(own);
        }
    }
    let none = || Fitted {
        fit: PageFit { type_size_pt: 7.5, detail: Detail::Terse, pages, filled: 0.0 },
        parts: Parts::default(),
    };
    Err(last.unwrap_or_else(none))
}

fn filled(parts: &Parts, size: f64) -> f64 {
    let estimate = Estimate::new(size);
    let first = estimate.height(&parts.bench, &parts.notes, &parts.foot);
    first.max(estimate.height(&parts.second, &[], &[])) / HEIGHT
}
