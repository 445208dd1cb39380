//! The service that the commands are compared with.

use std::time::{Duration, SystemTime};

use actix_web::web::Data;
use whybake::http::{AppState, AuthorAccess, Authoring, BodyLimits, Planning};
use whybake::live_rules::LiveRules;
use whybake::rule_set::RuleSet;
use whybake::rules::RuleFiles;
use whybake::settings::TestsPolicy;

/// A service with the rules that the program carries, for bodies up to a length.
pub(crate) fn embedded(bytes: usize) -> AppState {
    let rules = RuleSet::load(RuleFiles::embedded(), TestsPolicy::Ignored).unwrap();
    AppState {
        rules: Data::new(LiveRules::new(rules, SystemTime::UNIX_EPOCH)),
        authoring: Data::new(Authoring::new(AuthorAccess::Nobody, None)),
        planning: Data::new(Planning::default()),
        body_limits: BodyLimits { bytes, time: Duration::from_secs(5) },
    }
}
