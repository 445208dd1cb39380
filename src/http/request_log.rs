//! One line of log for every request.

use std::time::Instant;

use actix_web::Error;
use actix_web::body::MessageBody;
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::middleware::Next;

/// Logs method, path, status and duration; never a body or a query, which may hold what a plant keeps to itself.
pub(super) async fn log_request<B: MessageBody>(
    request: ServiceRequest,
    next: Next<B>,
) -> Result<ServiceResponse<B>, Error> {
    let started = Instant::now();
    let response = next.call(request).await?;
    let request = response.request();
    tracing::info!(
        method = request.method().as_str(),
        path = request.path(),
        status = response.status().as_u16(),
        duration_us = u64::try_from(started.elapsed().as_micros()).unwrap_or(u64::MAX),
        "request"
    );
    Ok(response)
}
