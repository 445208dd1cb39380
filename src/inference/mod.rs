//! scratch
mod conditioned; mod cover; mod faults; mod findings; mod grouped; mod information; mod lattice; mod leave_one_out; mod look; mod marginal; mod network; mod odds; mod posterior; mod reading; mod solution;
pub use conditioned::{MAX_SYMPTOMS,MAX_WEIGHT}; pub use faults::*; pub use findings::*; pub use information::{usual_share,total_under_cause}; pub use leave_one_out::*; pub use look::*; pub use network::{Network,Link,NetworkFault,MIN_LEAK}; pub use odds::*; pub use posterior::{Posterior,posterior,Workspace,MAX_JOINT_CAUSES}; pub use reading::*;
