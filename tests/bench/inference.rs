//! How long the inference takes. Compare the figures of one run with each other; the machine
//! drops out of ratios.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, missing_docs, reason = "a test fails by panicking")]

#[path = "../inference/generate.rs"]
mod generate;

use std::hint::black_box;
use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use generate::{Random, add_readings, numbers, symptoms_seen};
use whybake::inference::{Findings, Network, Reading, Repair, Workspace, look_for, order_repairs, posterior};

/// Networks and cases a figure is averaged over, so that no lucky pattern decides it.
const CASES: usize = 40;

type Case = (Network, Findings);

/// Cases with some present symptoms, two absent ones and six readings.
fn cases(causes: usize, symptoms: usize, present: usize) -> Vec<Case> {
    let random = &mut Random(7);
    let mut case = || {
        let network = numbers(random, causes, symptoms).network();
        let mut findings = symptoms_seen(random, symptoms, present, 2);
        add_readings(random, &mut findings, causes, 6);
        (network, findings)
    };
    (0..CASES).map(|_| case()).collect()
}

fn reading(random: &mut Random, causes: usize) -> Reading {
    let touched = 1 + random.below(3);
    reading_of(random, touched, causes)
}

/// A reading that bears on so many of the causes.
fn reading_of(random: &mut Random, touched: usize, causes: usize) -> Reading {
    let touched = random.distinct(touched, causes);
    let weights = touched.into_iter().map(|cause| (cause, (0..3).map(|_| random.uniform(-1.0, 1.0)).collect()));
    Reading::new(&[0.2, 0.5, 0.3], &weights.collect::<Vec<_>>()).unwrap()
}

/// Mean time of `work` over the cases, one case after the other, as a real service would meet them.
fn over_cases(rounds: u64, cases: &[Case], mut work: impl FnMut(&Case)) -> Duration {
    let start = Instant::now();
    for round in 0..rounds {
        work(&cases[round as usize % CASES]);
    }
    start.elapsed()
}

fn posteriors(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("posterior");
    for (causes, symptoms, present) in
        [(60, 20, 4), (60, 20, 6), (60, 20, 8), (400, 80, 6), (400, 80, 12), (400, 80, 14), (400, 80, 16)]
    {
        let (cases, mut workspace) = (cases(causes, symptoms, present), Workspace::new());
        group.bench_function(format!("{causes} causes, {present} present"), |bencher| {
            bencher.iter_custom(|rounds| {
                over_cases(rounds, &cases, |(network, findings)| {
                    black_box(posterior(network, findings, &mut workspace).unwrap());
                })
            });
        });
    }
    group.finish();
}

/// What is asked after the posterior; each figure includes the 60-cause, 4-symptom posterior it
/// starts from.
fn questions(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("posterior and");
    let cases = cases(60, 20, 4);
    let (mut workspace, mut spare) = (Workspace::new(), Workspace::new());
    let top: Vec<usize> = (0..8).collect();
    let readings: Vec<Reading> = (0..30).map(|place| reading(&mut Random(place), 60)).collect();
    group.bench_function("nothing else", |bencher| {
        bencher.iter_custom(|rounds| {
            over_cases(rounds, &cases, |(network, findings)| {
                black_box(posterior(network, findings, &mut workspace).unwrap());
            })
        });
    });
    group.bench_function("every finding left out, for 8 causes", |bencher| {
        bencher.iter_custom(|rounds| {
            over_cases(rounds, &cases, |(network, findings)| {
                let case = posterior(network, findings, &mut workspace).unwrap();
                black_box(case.leave_one_out(&top, &mut spare).unwrap());
            })
        });
    });
    group.bench_function("information of 30 readings", |bencher| {
        bencher.iter_custom(|rounds| {
            over_cases(rounds, &cases, |(network, findings)| {
                let case = posterior(network, findings, &mut workspace).unwrap();
                black_box(readings.iter().map(|reading| reading.information(&case).unwrap()).sum::<f64>());
            })
        });
    });
    group.bench_function("information of 30 readings and the probabilities of their outcomes", |bencher| {
        bencher.iter_custom(|rounds| {
            over_cases(rounds, &cases, |(network, findings)| {
                let case = posterior(network, findings, &mut workspace).unwrap();
                for reading in &readings {
                    black_box((reading.information(&case).unwrap(), reading.probabilities(&case).unwrap()));
                }
            })
        });
    });
    for touched in [4, 6, 8, 10, 12] {
        let wide = reading_of(&mut Random(1), touched, 60);
        group.bench_function(format!("information of a reading of {touched} causes"), |bencher| {
            bencher.iter_custom(|rounds| {
                over_cases(rounds, &cases, |(network, findings)| {
                    let case = posterior(network, findings, &mut workspace).unwrap();
                    black_box(wide.information(&case).unwrap());
                })
            });
        });
    }
    group.bench_function("outcomes of 5 readings for 3 causes", |bencher| {
        bencher.iter_custom(|rounds| {
            over_cases(rounds, &cases, |(network, findings)| {
                let case = posterior(network, findings, &mut workspace).unwrap();
                for reading in &readings[..5] {
                    black_box(reading.outcomes(&case, &top[..3]).unwrap());
                }
            })
        });
    });
    group.finish();
}

fn look(criterion: &mut Criterion) {
    let (cases, mut workspace) = (cases(60, 20, 4), Workspace::new());
    criterion.bench_function("look for a symptom, information about 3 causes", |bencher| {
        bencher.iter_custom(|rounds| {
            over_cases(rounds, &cases, |(network, findings)| {
                let seen = |symptom: &usize| findings.observations().iter().any(|(other, _)| other == symptom);
                let symptom = (0..20).find(|symptom| !seen(symptom)).unwrap();
                let look = look_for(network, findings, symptom, &mut workspace).unwrap();
                black_box(look.information(&[0, 1, 2]).unwrap());
            })
        });
    });
}

/// What follows from the posterior of 60 causes and 4 symptoms in the rest of a diagnosis; each figure includes that posterior.
fn consequences(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("posterior and");
    let cases = cases(60, 20, 4);
    let (mut workspace, mut spare) = (Workspace::new(), Workspace::new());
    let outcomes: Vec<[(usize, f64); 4]> =
        (0..25).map(|n| [(n, 0.8), (n + 9, -0.4), (n + 20, 0.6), (n + 31, -0.2)]).collect();
    group.bench_function("the posteriors after 25 outcomes of readings", |bencher| {
        bencher.iter_custom(|rounds| {
            over_cases(rounds, &cases, |(network, findings)| {
                let case = posterior(network, findings, &mut workspace).unwrap();
                for weights in &outcomes {
                    black_box(case.after_reading(weights, &mut spare).unwrap());
                }
            })
        });
    });
    for causes in [5, 7, 9] {
        let at_issue: Vec<usize> = (0..causes).collect();
        let repair =
            |n: usize| Repair { mends: vec![(n % causes, 0.7), ((n + 1) % causes, 0.4)], cost: 5.0 + n as f64 };
        let repairs: Vec<Repair> = (0..2 * causes - 1).map(repair).collect();
        group.bench_function(format!("the order of {} actions against {causes} causes", repairs.len()), |bencher| {
            bencher.iter_custom(|rounds| {
                over_cases(rounds, &cases, |(network, findings)| {
                    let case = posterior(network, findings, &mut workspace).unwrap();
                    black_box(order_repairs(&case.joint(&at_issue).unwrap(), &repairs, 0, 8));
                })
            });
        });
    }
    group.finish();
}

criterion_group! {
    name = inference;
    config = Criterion::default().warm_up_time(Duration::from_millis(500)).measurement_time(Duration::from_secs(2));
    targets = posteriors, questions, consequences, look
}
criterion_main!(inference);
