//! The application: routes, shared state and the layers around them.

use actix_web::body::MessageBody;
use actix_web::dev::{ServiceFactory, ServiceRequest, ServiceResponse};
use actix_web::middleware::{Compress, from_fn};
use actix_web::{App, Error, web};

use super::authoring::Authoring;
use super::body::BodyLimits;
use super::planning::Planning;
use super::request_log::log_request;
use super::routes;
use super::unread_body::hold_request_body;
use crate::live_rules::LiveRules;

/// What all workers share.
#[derive(Debug, Clone)]
pub struct AppState {
    /// The rules that answers are made with.
    pub rules: web::Data<LiveRules>,
    /// What authors of rules may do.
    pub authoring: web::Data<Authoring>,
    /// Places for plans of inquiries.
    pub planning: web::Data<Planning>,
    /// What a request body may take.
    pub body_limits: BodyLimits,
}

/// The application that `whybake serve` and the tests start.
pub fn create_app(
    state: &AppState,
) -> App<
    impl ServiceFactory<
        ServiceRequest,
        Config = (),
        Response = ServiceResponse<impl MessageBody + use<>>,
        Error = Error,
        InitError = (),
    > + use<>,
> {
    App::new()
        .app_data(state.rules.clone())
        .app_data(state.authoring.clone())
        .app_data(state.planning.clone())
        .app_data(state.body_limits)
        .configure(routes::configure)
        .wrap(Compress::default())
        .wrap(from_fn(hold_request_body))
        .wrap(from_fn(log_request))
}
