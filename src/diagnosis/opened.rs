//! A case opened: laid out, and weighed by the rules of its product. Every answer starts from it.

use super::advice::Advising;
use super::circumstances::{LaidOut, lay_out};
use super::diagnostician::Diagnostician;
use super::inquiry::Open;
use super::law::Law;
use super::model::Model;
use super::weighing::{Weighed, observe, weigh};
use crate::case::{Case, Requirements};
use crate::inference::{FindingsFault, Posterior, Workspace, posterior};
use crate::knowledge::{Knowledge, ProductView};

/// A case that was laid out and weighed.
pub(super) struct Opened<'k> {
    pub(super) knowledge: &'k Knowledge,
    pub(super) view: &'k ProductView,
    pub(super) model: &'k Model,
    pub(super) laid_out: LaidOut,
    pub(super) weighed: Weighed,
}

impl Diagnostician {
    pub(super) fn opened(&self, case: &Case) -> Opened<'_> {
        let knowledge = self.knowledge();
        let view = knowledge.view(case.product);
        let mut laid_out = lay_out(case, knowledge, view);
        let mut weighed = weigh(knowledge, view, &mut laid_out.circumstances);
        observe(&mut weighed.findings, view, &laid_out.symptoms);
        Opened { knowledge, view, model: self.model(view), laid_out, weighed }
    }

    /// What to advise in a case that is laid out.
    pub(super) fn advising<'a, 'k>(
        &'k self,
        view: &'k ProductView,
        laid_out: &'a LaidOut,
        requirements: &'a Requirements,
    ) -> Advising<'a, 'k> {
        let knowledge = self.knowledge();
        let law = Law { declared: &knowledge.declared, market: requirements.market };
        Advising { knowledge, view, law, prepared: self.prepared(), case: &laid_out.circumstances, requirements }
    }
}

impl<'k> Opened<'k> {
    /// The odds of the causes.
    pub(super) fn posterior<'w>(&'w self, workspace: &'w mut Workspace) -> Result<Posterior<'w>, FindingsFault> {
        posterior(&self.model.network, &self.weighed.findings, workspace)
    }

    /// What the case leaves to find out.
    pub(super) fn open<'a>(&'a self, posterior: &'a Posterior<'a>) -> Open<'a, 'k> {
        Open::new(self.knowledge, self.view, self.model, posterior, &self.weighed.findings)
    }
}
