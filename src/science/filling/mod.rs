//! Fillings, jams and gels: how much water to boil off, whether they set, and whether they stay set.
//!
//! The thermometer reading at which to stop cooking is in [`boiling`](super::boiling).

mod bake_stable;
mod fruit_protease;
mod gelatin;
mod pectin;
mod soluble_solids;
mod starch_freeze_thaw;
mod window;

pub use bake_stable::{BakeStableFilling, bake_stable_filling};
pub use fruit_protease::{Heating, HoldRule, Inactivation, Protease, fruit_protease, minutes_to_reduce};
pub use gelatin::{GelatinGel, GelatinUse, bloom_exchange, gelatin_gel};
pub use pectin::{LowMethoxyl, PectinGel, SettingClass, high_methoxyl_gel, low_methoxyl_gel, setting_class};
pub use soluble_solids::{CookDown, FillingPart, cook_down, soluble_solids};
pub use starch_freeze_thaw::{FreezeThaw, Stability, StarchPaste, Thickener, freeze_thaw};
pub use window::{Check, Position, Window};
