//! The slow, obvious evaluator: every configuration of the causes, one after the other.

use whybake::inference::{Findings, Link, Observation, Odds};

use crate::generate::Numbers;

/// P(configuration, findings) of all 2^n configurations; bit `i` of an index says whether cause
/// `i` is present.
pub(crate) struct Enumeration {
    causes: usize,
    masses: Vec<f64>,
}

impl Enumeration {
    pub(crate) fn of(numbers: &Numbers, findings: &Findings) -> Self {
        let causes = numbers.priors.len();
        let mass = |configuration| prior(numbers, configuration) * likelihood(numbers, findings, configuration);
        Self { causes, masses: (0..1 << causes).map(mass).collect() }
    }

    pub(crate) fn odds(&self) -> Vec<Odds> {
        (0..self.causes).map(|cause| self.odds_of(cause)).collect()
    }

    fn odds_of(&self, cause: usize) -> Odds {
        let joint = self.joint(&[cause]);
        Odds { absent: joint[0], present: joint[1] }
    }

    pub(crate) fn log_probability(&self) -> f64 {
        self.masses.iter().sum::<f64>().ln()
    }

    pub(crate) fn joint(&self, causes: &[usize]) -> Vec<f64> {
        let total: f64 = self.masses.iter().sum();
        let mut joint = vec![0.0; 1 << causes.len()];
        for (configuration, mass) in self.masses.iter().enumerate() {
            joint[pick(configuration, causes)] += mass / total;
        }
        joint
    }

    /// Mutual information in bits between an outcome and the state of `causes`;
    /// `outcome(configuration)` is the distribution of the outcome.
    pub(crate) fn information(&self, causes: &[usize], outcome: impl Fn(usize) -> Vec<f64>) -> f64 {
        let total: f64 = self.masses.iter().sum();
        let mut table = vec![Vec::new(); 1 << causes.len()];
        for (configuration, mass) in self.masses.iter().enumerate() {
            let outcome = outcome(configuration);
            let row = &mut table[pick(configuration, causes)];
            row.resize(outcome.len(), 0.0);
            row.iter_mut().zip(outcome).for_each(|(cell, p)| *cell += p * mass / total);
        }
        let column = |index: usize| table.iter().map(|row| row[index]).sum::<f64>();
        let mut bits = 0.0;
        for row in &table {
            let row_sum: f64 = row.iter().sum();
            for (index, &cell) in row.iter().enumerate().filter(|(_, cell)| **cell > 0.0) {
                bits += cell * (cell / (row_sum * column(index))).log2();
            }
        }
        bits
    }

    /// Mean of a function of the configuration.
    pub(crate) fn mean(&self, value: impl Fn(usize) -> f64) -> f64 {
        let total: f64 = self.masses.iter().sum();
        self.masses.iter().enumerate().map(|(configuration, mass)| value(configuration) * mass / total).sum()
    }
}

fn pick(configuration: usize, causes: &[usize]) -> usize {
    causes.iter().enumerate().map(|(place, &cause)| (configuration >> cause & 1) << place).sum()
}

fn prior(numbers: &Numbers, configuration: usize) -> f64 {
    let side = |(cause, &prior): (usize, &f64)| {
        if configuration >> cause & 1 == 1 { prior } else { 1.0 - prior }
    };
    numbers.priors.iter().enumerate().map(side).product()
}

fn likelihood(numbers: &Numbers, findings: &Findings, configuration: usize) -> f64 {
    let readings = (0..findings.readings()).flat_map(|reading| findings.reading(reading));
    let log10: f64 = readings.filter(|(cause, _)| configuration >> cause & 1 == 1).map(|(_, weight)| weight).sum();
    let seen = |&(symptom, observation): &(usize, Observation)| {
        let (present, absent) = symptom_given(numbers, symptom, configuration);
        match observation {
            Observation::Present => present,
            Observation::Absent => absent,
            Observation::Likely(t) => t * present + (1.0 - t) * absent,
        }
    };
    10f64.powf(log10) * findings.observations().iter().map(seen).product::<f64>()
}

/// P(symptom present | configuration) and P(absent | configuration), neither as 1 − the other.
pub(crate) fn symptom_given(numbers: &Numbers, symptom: usize, configuration: usize) -> (f64, f64) {
    let leak = numbers.leaks[symptom];
    let active = |link: &&Link| link.symptom == symptom && configuration >> link.cause & 1 == 1;
    numbers.links.iter().filter(active).fold((leak, 1.0 - leak), |(present, absent), link| {
        (present + absent * link.strength, absent * (1.0 - link.strength))
    })
}
