//! `whybake trial-sheet`

use std::path::PathBuf;

use clap::Args;
use serde_json::{Map, Value, json};

use super::case_request::{told, wrapped};
use super::exit::Exit;
use super::input::read_case;
use super::measure::measure;
use super::options::{JsonOption, RulesOption};
use super::output::width;
use crate::trial_sheet::{TrialRequest, TrialSheet, markdown, page, text};

/// Plan a trial bake from a case
///
/// The control and the changes in the order of a diagnosis, the weights of every run, what to set, to hold and to write down,
/// how many pieces to measure, what counts as fixed, when to stop.
#[derive(Debug, Args)]
#[command(name = "trial-sheet")]
pub(super) struct TrialSheetCommand {
    /// File with the case as JSON, or a record or a rule test with the case as its member `case`; `-` reads standard input
    #[arg(value_name = "CASE.json")]
    case: PathBuf,
    /// Mass of the batch of a run, for example `20kg`
    #[arg(long, value_name = "MASS", conflicts_with = "pieces", required_unless_present = "pieces")]
    batch: Option<String>,
    /// Size of the batch in pieces
    #[arg(long, value_name = "N", requires = "piece_weight")]
    pieces: Option<u32>,
    /// Mass of one piece when baked, for example `60g`
    #[arg(long, value_name = "MASS", requires = "pieces")]
    piece_weight: Option<String>,
    /// Mass lost in baking and cooling, for example `12%`
    #[arg(long, value_name = "SHARE", requires = "pieces")]
    bake_loss: Option<String>,
    /// The part to weigh: `dough`, `filling` or `icing`; left out, the main part
    #[arg(long, value_name = "PART")]
    part: Option<String>,
    /// Id of an action to try; again for more; left out, the first of the order
    #[arg(long = "action", value_name = "ID")]
    actions: Vec<String>,
    /// `one_change_at_a_time` (when left out), `factorial` or `half_factorial`
    #[arg(long, value_name = "DESIGN")]
    design: Option<String>,
    /// When the control is baked: `by_lot` (when left out) or `first_and_last`
    #[arg(long, value_name = "PLACE")]
    control: Option<String>,
    /// How often every run is baked
    #[arg(long, value_name = "N")]
    repeats: Option<u32>,
    /// Whole number that the order of the runs is drawn from
    #[arg(long, value_name = "N")]
    seed: Option<u32>,
    /// Id of the reading that shall differ
    #[arg(long, value_name = "ID")]
    reading: Option<String>,
    /// Least difference that is worth the change, for example `0.2mL/g`
    #[arg(long, value_name = "VALUE")]
    difference: Option<String>,
    /// Standard deviation from piece to piece, for example `0.25mL/g`
    #[arg(long, value_name = "VALUE")]
    standard_deviation: Option<String>,
    /// Id of the symptom that makes a piece faulty
    #[arg(long, value_name = "ID")]
    symptom: Option<String>,
    /// Share of faulty pieces now, for example `20%`
    #[arg(long, value_name = "SHARE")]
    faulty_now: Option<String>,
    /// Share of faulty pieces that is wanted, for example `5%`
    #[arg(long, value_name = "SHARE")]
    faulty_wanted: Option<String>,
    /// Print Markdown
    #[arg(long, conflicts_with_all = ["page", "json"])]
    markdown: bool,
    /// Print HTML that prints on one side of A4
    #[arg(long, conflicts_with = "json")]
    page: bool,
    #[command(flatten)]
    json: JsonOption,
    #[command(flatten)]
    rules: RulesOption,
}

impl TrialSheetCommand {
    pub(super) fn run(self) -> Result<(), Exit> {
        let diagnostician = self.rules.load()?.diagnostician;
        let request = wrapped(&read_case(&self.case)?, &self.rest()?)?;
        let request = TrialRequest::parse(&request, diagnostician.knowledge()).map_err(told)?;
        let sheet = TrialSheet::plan(&diagnostician, &request).map_err(told)?;
        let written = || match (self.markdown, self.page) {
            (true, _) => markdown(&sheet),
            (_, true) => page(&sheet),
            _ => text(&sheet, width()),
        };
        self.json.show(&sheet, written)
    }

    /// What the request says beside the case.
    fn rest(&self) -> Result<Map<String, Value>, Exit> {
        let mut rest = Map::from_iter([("batch".to_owned(), Value::Object(self.batch()?))]);
        if !self.actions.is_empty() {
            rest.insert("actions".to_owned(), json!(self.actions));
        }
        let mut add = |name: &str, value: Option<Value>| {
            if let Some(value) = value {
                rest.insert(name.to_owned(), value);
            }
        };
        add("design", self.design.as_ref().map(|own| json!(own)));
        add("control", self.control.as_ref().map(|own| json!(own)));
        add("repeats", self.repeats.map(|own| json!(own)));
        add("seed", self.seed.map(|own| json!(own)));
        let wanted = self.measure()?;
        add("measure", (!wanted.is_empty()).then_some(Value::Object(wanted)));
        Ok(rest)
    }

    fn batch(&self) -> Result<Map<String, Value>, Exit> {
        let mut batch = Map::new();
        for (name, option, value) in [
            ("mass", "--batch", &self.batch),
            ("piece_mass", "--piece-weight", &self.piece_weight),
            ("bake_loss", "--bake-loss", &self.bake_loss),
        ] {
            if let Some(value) = value {
                batch.insert(name.to_owned(), measure(option, value)?);
            }
        }
        if let Some(pieces) = self.pieces {
            batch.insert("pieces".to_owned(), json!(pieces));
        }
        if let Some(part) = &self.part {
            batch.insert("part".to_owned(), json!(part));
        }
        Ok(batch)
    }

    fn measure(&self) -> Result<Map<String, Value>, Exit> {
        let mut wanted = Map::new();
        for (name, id) in [("reading", &self.reading), ("symptom", &self.symptom)] {
            if let Some(id) = id {
                wanted.insert(name.to_owned(), json!(id));
            }
        }
        for (name, option, value) in [
            ("difference", "--difference", &self.difference),
            ("standard_deviation", "--standard-deviation", &self.standard_deviation),
            ("faulty_now", "--faulty-now", &self.faulty_now),
            ("faulty_wanted", "--faulty-wanted", &self.faulty_wanted),
        ] {
            if let Some(value) = value {
                wanted.insert(name.to_owned(), measure(option, value)?);
            }
        }
        Ok(wanted)
    }
}
