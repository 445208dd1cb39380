//! How much of a fat is solid at each temperature.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const BETWEEN_READINGS: Method = Method {
    name: "straight line between two readings of the solids curve",
    source: "common practice",
    domain: "between the coldest and the warmest reading; never beyond them",
};

/// The two scales of solids; a figure on one never goes with a figure on the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SolidsScale {
    /// Solid fat content by pulsed NMR, % (AOCS Cd 16b-93, ISO 8292).
    SolidFatContent,
    /// Solid fat index by dilatometry (AOCS Cd 10-57); reads lower than the content at 10 °C.
    SolidFatIndex,
}

/// One reading of a solids curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SolidsReading {
    /// Temperature of the fat, °C.
    pub celsius: f64,
    /// Solid part, % (0 to 100).
    pub percent: f64,
}

/// A checked solids curve, coldest reading first.
#[derive(Debug, Clone, PartialEq)]
pub struct SolidsCurve {
    scale: SolidsScale,
    readings: Vec<SolidsReading>,
}

impl SolidsCurve {
    /// Sorts the readings by temperature and checks them.
    ///
    /// # Errors
    /// No readings, a solid part that is no percentage, a temperature outside −60 to 350 °C, a temperature given
    /// twice.
    pub fn new(scale: SolidsScale, mut readings: Vec<SolidsReading>) -> Result<Self, Nonsense> {
        let mut nonsense = Nonsense::default();
        input_checks::not_empty(&mut nonsense, "solids", &readings);
        for reading in &readings {
            input_checks::temperature(&mut nonsense, "solids temperature", reading.celsius);
            let input = format!("solids at {} °C", reading.celsius);
            input_checks::percent(&mut nonsense, &input, reading.percent);
        }
        readings.sort_by(|a, b| a.celsius.total_cmp(&b.celsius));
        for (colder, warmer) in readings.iter().zip(readings.iter().skip(1)) {
            nonsense.unless(
                colder.celsius != warmer.celsius,
                &format!("solids at {} °C", warmer.celsius),
                "is given twice",
            );
        }
        nonsense.or_ok()?;
        Ok(Self { scale, readings })
    }

    /// The scale of the readings.
    #[must_use]
    pub fn scale(&self) -> SolidsScale {
        self.scale
    }

    /// The readings, coldest first.
    #[must_use]
    pub fn readings(&self) -> &[SolidsReading] {
        &self.readings
    }

    /// Solid part at a temperature, %: on the straight line between the neighbouring readings. Beyond the
    /// readings the nearest one is repeated and the estimate is flagged, because the real curve goes on.
    ///
    /// # Errors
    /// A temperature outside −60 to 350 °C.
    pub fn at(&self, celsius: f64) -> Result<Estimate, Nonsense> {
        let mut nonsense = Nonsense::default();
        input_checks::temperature(&mut nonsense, "temperature", celsius);
        nonsense.or_ok()?;
        Ok(self.read(celsius))
    }

    pub(super) fn read(&self, celsius: f64) -> Estimate {
        let colder = self.readings.iter().rev().find(|reading| reading.celsius <= celsius);
        let warmer = self.readings.iter().find(|reading| reading.celsius >= celsius);
        let (value, bound) = match (colder, warmer) {
            (Some(colder), Some(warmer)) => (on_the_line(*colder, *warmer, celsius), None),
            (Some(warmest), None) => (warmest.percent, Some(("warmest", warmest, "at most"))),
            (None, Some(coldest)) => (coldest.percent, Some(("coldest", coldest, "at least"))),
            // A curve has at least one reading, so one of the three arms above has matched.
            (None, None) => (f64::NAN, None),
        };
        Estimate::new(value, "%", BETWEEN_READINGS).valid_if(bound.is_none(), || {
            bound.map_or_else(String::new, |(end, reading, bound)| {
                format!(
                    "{celsius} °C lies beyond the {end} reading at {} °C; the solids are {bound} this",
                    reading.celsius
                )
            })
        })
    }

    /// The warmest temperature, °C, at which the solids still reach `percent`; `None` when they never do.
    /// When even the warmest reading reaches it, that temperature is given and flagged.
    #[must_use]
    pub fn warmest_with(&self, percent: f64) -> Option<Estimate> {
        let place = self.readings.iter().rposition(|reading| reading.percent >= percent)?;
        let reading = self.readings.get(place)?;
        let Some(next) = self.readings.get(place + 1) else {
            let warmest = Estimate::new(reading.celsius, "Cel", BETWEEN_READINGS);
            return Some(
                warmest.valid_if(false, || format!("the warmest reading still has {} % solids", reading.percent)),
            );
        };
        let fall = reading.percent - next.percent;
        let share = (reading.percent - percent) / fall;
        let celsius = reading.celsius + share * (next.celsius - reading.celsius);
        Some(Estimate::new(celsius, "Cel", BETWEEN_READINGS))
    }
}

fn on_the_line(colder: SolidsReading, warmer: SolidsReading, celsius: f64) -> f64 {
    let width = warmer.celsius - colder.celsius;
    if width == 0.0 {
        return colder.percent;
    }
    let share = (celsius - colder.celsius) / width;
    colder.percent * (1.0 - share) + warmer.percent * share
}
