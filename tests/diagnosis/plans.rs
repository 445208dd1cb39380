//! Plans for generated rules, against the enumeration of every configuration of the causes.

use serde_json::json;
use whybake::case::InquiryRequest;
use whybake::diagnosis::{Diagnostician, Inquiries, InquiryKind, PlanStep, StopReason};
use whybake::inference::{Findings, Link, Observation, usual_share};
use whybake::rules::{RuleFiles, load};

use crate::enumeration::{Enumeration, symptom_given};
use crate::generate::{Numbers, Random};

const CAUSES: usize = 7;
const SYMPTOMS: usize = 5;
const READINGS: usize = 4;
const FACTS: usize = 3;
const LOOK_MINUTES: f64 = 2.0;
const CLOSE: f64 = 1e-9;

/// A reading or fact with two outcomes: minutes, and for some causes the decibans for and against.
#[derive(Default)]
struct Input {
    minutes: f64,
    decibans: Vec<(usize, f64, f64)>,
}

/// Generated rules, as text and as numbers.
struct World {
    numbers: Numbers,
    readings: Vec<Input>,
    facts: Vec<Input>,
    rules: Diagnostician,
}

/// What can be found out: by enumeration its outcomes' distribution, and the findings after each.
struct Candidate {
    id: String,
    minutes: f64,
    rows: Vec<Vec<f64>>,
    after: Vec<Findings>,
}

fn round(value: f64) -> f64 {
    (value * 1e3).round() / 1e3
}

fn world(random: &mut Random) -> World {
    let mut numbers = crate::generate::numbers(random, CAUSES, SYMPTOMS);
    numbers.priors.iter_mut().chain(&mut numbers.leaks).for_each(|value| *value = round(*value));
    numbers.links.iter_mut().for_each(|link| link.strength = round(link.strength));
    let mut inputs = |count: usize| -> Vec<Input> {
        let mut input = || {
            let bears = 1 + random.below(3);
            let bears = random.distinct(bears, CAUSES);
            let decibans = bears
                .into_iter()
                .map(|cause| (cause, round(random.uniform(3.0, 15.0)), round(random.uniform(1.0, 9.0))));
            Input { decibans: decibans.collect(), minutes: 1.0 + random.below(5) as f64 }
        };
        (0..count).map(|_| input()).collect()
    };
    let (readings, facts) = (inputs(READINGS), inputs(FACTS));
    let rules = Diagnostician::new(load(&text(&numbers, &readings, &facts)).unwrap().knowledge).unwrap();
    World { numbers, readings, facts, rules }
}

fn text(numbers: &Numbers, readings: &[Input], facts: &[Input]) -> RuleFiles {
    let mut files = RuleFiles::default();
    files.insert("pack.rhai", r#"pack("generated").title("Generated").version("1");"#);
    files.insert("sources.rhai", r#"source("rule").citation("rule of thumb of the trade").common_practice();"#);
    files.insert("products.rhai", r#"family("buns").title("Buns"); product("bun").title("Bun").family(buns);"#);
    let (mut symptoms, mut thermometers, mut questions) = <(String, String, String)>::default();
    for (place, leak) in numbers.leaks.iter().enumerate() {
        symptoms += &format!(
            "symptom(\"symptom_{place}\").title(\"Symptom {place}\").description(\"Invented.\").part(\"crumb\").products(buns).leak({leak:?});\n"
        );
    }
    for (place, reading) in readings.iter().enumerate() {
        thermometers += &format!(
            "reading(\"reading_{place}\").title(\"reading {place}\").description(\"Invented.\").unit(\"Cel\").plausible(-50, 150).window(buns, 20, 30)\
             .method(\"thermometer\").effort({:?}).products(buns).source(rule);\n",
            reading.minutes
        );
    }
    for (place, fact) in facts.iter().enumerate() {
        questions += &format!(
            "fact(\"fact_{place}\").title(\"fact {place}\").question(\"Is it so?\").products(buns).effort({:?});\n",
            fact.minutes
        );
    }
    for (file, text) in [("symptoms.rhai", &symptoms), ("readings.rhai", &thermometers), ("facts.rhai", &questions)] {
        files.insert(file, text);
    }
    let mut causes = String::new();
    for (cause, prior) in numbers.priors.iter().enumerate() {
        causes += &format!(
            "cause(\"cause_{cause}\").title(\"Cause {cause}\").mechanism(\"Invented.\").products(buns).prior({prior:?})"
        );
        for Link { symptom, strength, .. } in numbers.links.iter().filter(|link| link.cause == cause) {
            causes += &format!(".shows(symptom_{symptom}, {strength:?})");
        }
        for (kind, inputs) in [("reading", readings), ("fact", facts)] {
            for (place, input) in inputs.iter().enumerate() {
                for (_, supports, against) in input.decibans.iter().filter(|(own, ..)| *own == cause) {
                    let condition = if kind == "reading" { ".rises(26, 32)" } else { "" };
                    causes += &format!(".evidence({kind}_{place}{condition}, {supports:?}, against({against:?}))");
                }
            }
        }
        causes += ".source(rule);\n";
    }
    files.insert("causes.rhai", &causes);
    files
}

impl World {
    fn candidates(&self, findings: &Findings, known: &[String]) -> Vec<Candidate> {
        let inputs = self.readings.iter().enumerate().map(|(place, input)| (format!("reading_{place}"), input));
        let facts = self.facts.iter().enumerate().map(|(place, input)| (format!("fact_{place}"), input));
        let mut found: Vec<Candidate> = inputs.chain(facts).map(|(id, input)| input.candidate(id, findings)).collect();
        let shown = |symptom: &usize| self.numbers.links.iter().any(|link| link.symptom == *symptom);
        for symptom in (0..SYMPTOMS).filter(shown) {
            let rows = (0..1 << CAUSES).map(|configuration| {
                let (present, absent) = symptom_given(&self.numbers, symptom, configuration);
                vec![absent, present]
            });
            let after = |observation| {
                let mut more = findings.clone();
                more.observe(symptom, observation);
                more
            };
            found.push(Candidate {
                id: format!("symptom_{symptom}"),
                minutes: LOOK_MINUTES,
                rows: rows.collect(),
                after: vec![after(Observation::Absent), after(Observation::Present)],
            });
        }
        found.retain(|candidate| !known.contains(&candidate.id));
        found
    }

    /// Causes that can explain a symptom that was seen; all when nothing was.
    fn asked(&self, findings: &Findings) -> Vec<usize> {
        let seen = |symptom: usize| findings.observations().contains(&(symptom, Observation::Present));
        let explains = |cause: &usize| self.numbers.links.iter().any(|link| link.cause == *cause && seen(link.symptom));
        let asked: Vec<usize> = (0..CAUSES).filter(explains).collect();
        if asked.is_empty() { (0..CAUSES).collect() } else { asked }
    }
}

impl Input {
    /// Two regions; how usual the upper one is follows from the weights, their mean where several causes tell.
    fn candidate(&self, id: String, findings: &Findings) -> Candidate {
        let shares = self.decibans.iter().map(|(_, plus, minus)| usual_share(plus / 10.0, -minus / 10.0).unwrap());
        let above = shares.sum::<f64>() / self.decibans.len() as f64;
        let above = above.max(0.01) / (above.max(0.01) + (1.0 - above).max(0.01));
        let row = |configuration: usize| {
            let present = || self.decibans.iter().filter(|(cause, ..)| configuration >> cause & 1 == 1);
            let no = (1.0 - above) * 10_f64.powf(present().map(|(_, _, minus)| -minus / 10.0).sum());
            let yes = above * 10_f64.powf(present().map(|(_, plus, _)| plus / 10.0).sum());
            vec![no / (no + yes), yes / (no + yes)]
        };
        let after = |weight: fn(&(usize, f64, f64)) -> (usize, f64)| {
            let mut more = findings.clone();
            more.weigh(&self.decibans.iter().map(weight).collect::<Vec<_>>());
            more
        };
        let after =
            vec![after(|(cause, _, minus)| (*cause, -minus / 10.0)), after(|(cause, plus, _)| (*cause, plus / 10.0))];
        Candidate { id, minutes: self.minutes, rows: (0..1 << CAUSES).map(row).collect(), after }
    }
}

#[track_caller]
fn assert_close(told: f64, expected: f64) {
    assert!((told - expected).abs() < CLOSE, "{told} for {expected}");
}

/// Walks a plan along its own choices, each of which must be the best, and gives its minutes and how often it ends certain.
struct Walk<'a> {
    world: &'a World,
    answer: &'a Inquiries<'a>,
    stops: Vec<StopReason>,
}

impl Walk<'_> {
    fn step(&mut self, step: &PlanStep<'_>, findings: &Findings, known: &[String], minutes: f64) -> (f64, f64) {
        let slow = Enumeration::of(&self.world.numbers, findings);
        let asked = self.world.asked(findings);
        let probabilities: Vec<f64> = slow.odds().iter().map(|odds| odds.probability()).collect();
        let lifted = |cause: &usize| probabilities[*cause] > 1.05 * self.world.numbers.priors[*cause];
        let at_issue = |cause: &usize| asked.contains(cause) || lifted(cause);
        let leader =
            (0..CAUSES).filter(at_issue).max_by(|a, b| probabilities[*a].total_cmp(&probabilities[*b])).unwrap();
        let told = step.leader.as_ref().unwrap();
        assert_eq!(told.cause, format!("cause_{leader}"));
        assert_close(told.probability, probabilities[leader]);

        let options = &self.answer.options;
        let left = options.most_minutes.unwrap_or(f64::INFINITY) - minutes;
        let mut candidates = self.world.candidates(findings, known);
        let rate = |candidate: &Candidate| {
            slow.information(&asked, |configuration| candidate.rows[configuration].clone()) / candidate.minutes.max(1.0)
        };
        let worth = |candidate: &Candidate| rate(candidate) >= options.least_bits_per_minute && rate(candidate) > 1e-3;
        if let Some(stop) = &step.stop {
            self.stops.push(stop.reason);
            let fits: Vec<bool> = candidates.iter().filter(|one| worth(one)).map(|one| one.minutes <= left).collect();
            match stop.reason {
                StopReason::Certain => assert!(probabilities[leader] >= options.certain_enough),
                StopReason::RivalsExcluded => {
                    let doubt: f64 = (0..CAUSES)
                        .filter(|cause| *cause != leader && lifted(cause))
                        .map(|cause| probabilities[cause])
                        .sum();
                    assert!(probabilities[leader] > 0.5 && doubt <= 1.0 - options.certain_enough);
                }
                StopReason::NotWorthTheEffort => assert!(fits.is_empty()),
                StopReason::MinutesUsedUp => assert!(!fits.is_empty() && fits.iter().all(|fits| !fits)),
                StopReason::DepthReached => assert!(known.len() > usize::from(options.depth)),
            }
            return (0.0, if stop.reason == StopReason::Certain { 1.0 } else { 0.0 });
        }
        let sought = step.find_out.as_ref().unwrap();
        let best = candidates.iter().filter(|one| one.minutes <= left).map(rate).fold(0.0, f64::max);
        assert_close(sought.bits_per_minute, best);
        let chosen = candidates.iter().position(|one| one.id == sought.finding).unwrap();
        let chosen = candidates.swap_remove(chosen);
        assert_close(sought.information_bits, rate(&chosen) * chosen.minutes.max(1.0));
        assert_eq!(sought.effort_minutes, chosen.minutes);
        assert!(sought.exact);
        assert_eq!(step.outcomes.len(), 2);
        let mut known = known.to_vec();
        known.push(chosen.id);
        let (mut expected, mut certain) = (chosen.minutes, 0.0);
        for (place, (outcome, after)) in step.outcomes.iter().zip(&chosen.after).enumerate() {
            assert_close(outcome.probability, slow.mean(|configuration| chosen.rows[configuration][place]));
            let then = self.step(&outcome.then, after, &known, minutes + chosen.minutes);
            expected += outcome.probability * then.0;
            certain += outcome.probability * then.1;
        }
        (expected, certain)
    }

    /// Every inquiry: its information, and what its outcomes would change.
    fn inquiries(&self, findings: &Findings, known: &[String]) {
        let slow = Enumeration::of(&self.world.numbers, findings);
        let asked = self.world.asked(findings);
        let probability = |findings: &Findings, cause: usize| {
            Enumeration::of(&self.world.numbers, findings).odds()[cause].probability()
        };
        let inquiries = &self.answer.inquiries;
        assert!(inquiries.is_sorted_by(|a, b| a.find_out.bits_per_minute >= b.find_out.bits_per_minute));
        let candidates = self.world.candidates(findings, known);
        assert_eq!(inquiries.len() + self.answer.tell_nothing.len(), candidates.len());
        for inquiry in inquiries {
            let candidate = candidates.iter().find(|one| one.id == inquiry.find_out.finding).unwrap();
            let bits = slow.information(&asked, |configuration| candidate.rows[configuration].clone());
            assert_close(inquiry.find_out.information_bits, bits);
            assert_close(inquiry.outcomes.iter().map(|outcome| outcome.probability).sum(), 1.0);
            for (outcome, after) in inquiry.outcomes.iter().zip(&candidate.after) {
                for change in &outcome.changes {
                    let cause = change.cause.strip_prefix("cause_").unwrap().parse().unwrap();
                    assert_close(change.before, probability(findings, cause));
                    assert_close(change.after, probability(after, cause));
                }
                // Looking cannot move the mean; of a reading this holds as far as its weights agree.
                if inquiry.find_out.kind == InquiryKind::Symptom {
                    let mean: f64 = inquiry
                        .outcomes
                        .iter()
                        .zip(&candidate.after)
                        .map(|(outcome, after)| outcome.probability * probability(after, asked[0]))
                        .sum();
                    assert_close(mean, probability(findings, asked[0]));
                }
            }
        }
    }
}

#[test]
fn plans_agree_with_the_enumeration_of_all_causes() {
    let random = &mut Random(2026);
    let mut stops = Vec::new();
    for round in 0..24_u64 {
        let world = world(random);
        let options = [
            json!({}),
            json!({"certain_enough": 0.6}),
            json!({"most_minutes": 4}),
            json!({"least_bits_per_minute": 0.25, "depth": 2}),
        ];
        let mut request = options[round as usize % options.len()].clone();
        let complaint = random.below(SYMPTOMS);
        request["case"] = json!({"product": "bun", "symptoms": [{"symptom": format!("symptom_{complaint}")}]});
        let request = InquiryRequest::parse(request.to_string().as_bytes(), world.rules.knowledge()).unwrap();
        let answer = world.rules.inquire(request).unwrap();
        let mut findings = Findings::new();
        findings.observe(complaint, Observation::Present);
        let known = [format!("symptom_{complaint}")];
        let mut walk = Walk { world: &world, answer: &answer, stops: Vec::new() };
        walk.inquiries(&findings, &known);
        let (minutes, certain) = walk.step(&answer.plan.start, &findings, &known, 0.0);
        assert_close(answer.plan.expected_minutes, minutes);
        assert_close(answer.plan.probability_certain, certain);
        stops.extend(walk.stops);
    }
    let all = [
        StopReason::Certain,
        StopReason::RivalsExcluded,
        StopReason::NotWorthTheEffort,
        StopReason::MinutesUsedUp,
        StopReason::DepthReached,
    ];
    for reason in all {
        assert!(stops.contains(&reason), "no plan stopped for {reason:?}");
    }
}
