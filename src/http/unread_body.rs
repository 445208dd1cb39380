//! Hangs up on a request body that nobody reads to its end.
//!
//! Once an answer is ready and the handler has dropped a chunked body, the server library reads on to find the end of the
//! body, without a time-out: a client that never ends it would hold the connection for ever. As long as somebody holds the
//! body, the library closes the connection after the answer instead. So the answer holds it.

use std::cell::RefCell;
use std::pin::Pin;
use std::rc::Rc;
use std::task::{Context, Poll};

use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::dev::{Payload, ServiceRequest, ServiceResponse};
use actix_web::error::PayloadError;
use actix_web::middleware::Next;
use actix_web::web::Bytes;
use actix_web::{Error, HttpMessage};
use futures_core::Stream;

/// A request body with several holders.
#[derive(Clone)]
struct SharedBody(Rc<RefCell<Payload>>);

/// An answer that holds the body of its request.
pub(super) struct HoldingAnswer {
    answer: BoxBody,
    _request_body: SharedBody,
}

/// Lets the answer hold the request body until it has been sent.
pub(super) async fn hold_request_body<B: MessageBody + 'static>(
    mut request: ServiceRequest,
    next: Next<B>,
) -> Result<ServiceResponse<HoldingAnswer>, Error> {
    let request_body = SharedBody(Rc::new(RefCell::new(request.take_payload())));
    request.set_payload(Payload::Stream { payload: Box::pin(request_body.clone()) });
    let response = next.call(request).await?.map_into_boxed_body();
    Ok(response.map_body(|_, answer| HoldingAnswer { answer, _request_body: request_body }))
}

impl Stream for SharedBody {
    type Item = Result<Bytes, PayloadError>;

    fn poll_next(self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<Option<Self::Item>> {
        Pin::new(&mut *self.0.borrow_mut()).poll_next(cx)
    }
}

impl MessageBody for HoldingAnswer {
    type Error = <BoxBody as MessageBody>::Error;

    fn size(&self) -> BodySize {
        self.answer.size()
    }

    fn poll_next(mut self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<Option<Result<Bytes, Self::Error>>> {
        Pin::new(&mut self.answer).poll_next(cx)
    }
}
