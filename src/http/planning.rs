//! Places for plans of inquiries, so that they leave cores to those who diagnose.

use std::sync::Arc;
use std::thread::available_parallelism;
use std::time::Duration;

use actix_web::rt::time::timeout;
use tokio::sync::{OwnedSemaphorePermit, Semaphore};

use super::problem::{Problem, ProblemKind};

/// How long a request waits for a place. The longest plan, of sixteen uncertain symptoms, takes some seconds.
const PATIENCE: Duration = Duration::from_secs(10);

/// Seconds after which a request that got no place may ask again.
const RETRY_AFTER_SECONDS: &str = "10";

/// Places for plans, shared by all workers.
#[derive(Debug, Clone)]
pub struct Planning {
    places: Arc<Semaphore>,
    patience: Duration,
}

impl Default for Planning {
    /// Half of the cores, at least one.
    fn default() -> Self {
        let cores = available_parallelism().map_or(1, usize::from);
        Self::new((cores / 2).max(1), PATIENCE)
    }
}

impl Planning {
    /// As many plans at a time as there are `places`; a request waits for one as long as its `patience`.
    #[must_use]
    pub fn new(places: usize, patience: Duration) -> Self {
        Self { places: Arc::new(Semaphore::new(places)), patience }
    }

    /// Takes a place until it is dropped.
    pub(in crate::http) async fn wait_for_place(&self) -> Result<OwnedSemaphorePermit, Problem> {
        let place = timeout(self.patience, Arc::clone(&self.places).acquire_owned()).await;
        let busy = || Problem::new(ProblemKind::Busy).header("retry-after", RETRY_AFTER_SECONDS);
        place.map_err(|_| busy())?.map_err(|_| busy())
    }
}
