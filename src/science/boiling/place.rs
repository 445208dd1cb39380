//! Where the kettle stands.

use super::water::check_pressure;
use crate::science::Nonsense;
use crate::science::humidity::standard_pressure;

/// Where the kettle stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Place {
    /// Height above sea level, -500 to 5000 m, in standard weather; a deep low takes off up to about 1 K.
    AltitudeMetres(f64),
    /// Pressure over the liquid, 612 to 22 064 000 Pa: a barometer reading, or a vacuum kettle.
    PressurePascal(f64),
}

impl Place {
    /// Pressure over the liquid, Pa; adds to `nonsense` what is wrong with it.
    pub(super) fn pascal(self, nonsense: &mut Nonsense) -> f64 {
        match self {
            Self::AltitudeMetres(metres) => match standard_pressure(metres) {
                Ok(pressure) => pressure.value,
                Err(altitude) => {
                    nonsense.faults.extend(altitude.faults);
                    f64::NAN
                }
            },
            Self::PressurePascal(pascal) => {
                check_pressure(nonsense, pascal);
                pascal
            }
        }
    }
}
