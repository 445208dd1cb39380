//! The HTTP service.
//!
//! [`routes`] is the flat table of everything that can be asked, one file a resource; [`create_app`] builds the one
//! application that both [`Server`] and the tests start. Whatever goes wrong is answered with a [`problem`] (RFC 9457).
//! The rules stand behind [`LiveRules`](crate::live_rules::LiveRules): a request keeps the rules that it started with.

mod app;
mod authoring;
mod body;
mod entity_tag;
pub mod openapi;
mod page;
mod parameters;
mod planning;
pub mod problem;
mod reply;
mod request_log;
pub mod routes;
mod server;
mod unread_body;

pub use app::{AppState, create_app};
pub use authoring::{AuthorAccess, Authoring};
pub use body::BodyLimits;
pub use planning::Planning;
pub use server::Server;
