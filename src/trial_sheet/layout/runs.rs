//! The tables of runs: what to weigh, what to set, in which order to bake.

use super::block::Cell;
use super::detail::Detail;
use crate::trial_sheet::answer::{RunSetting, RunWeight, TrialRun, TrialSheet};

/// The design, and the order of baking.
pub(super) fn design(sheet: &TrialSheet<'_>, detail: Detail) -> String {
    let design = &sheet.design;
    let named = match (&design.resolution, &design.generator) {
        (Some(resolution), Some(generator)) => format!(" (resolution {resolution}, {generator})"),
        _ => String::new(),
    };
    let told = if detail.has_desk() { format!(" {}", design.text.join(" ")) } else { String::new() };
    let repeats =
        if design.repeats > 1 { format!(" Every run is baked {} times.", design.repeats) } else { String::new() };
    let bakes = bakes(sheet);
    let of_repeat = bakes.len() / usize::try_from(design.repeats.max(1)).unwrap_or(1);
    let order: Vec<String> = bakes.chunks(of_repeat.max(1)).map(order).collect();
    format!(
        "Design: {}{named}.{told}{repeats} Bake in this order, drawn by lot from the seed {}: {}.",
        design.name,
        design.seed,
        order.join("; then ")
    )
}

/// All bakes in their order, with their numbers.
pub(super) fn bakes<'s>(sheet: &'s TrialSheet<'_>) -> Vec<(u32, &'s str)> {
    let of_run = |run: &'s TrialRun| run.order.iter().map(|place| (*place, run.label.as_str()));
    let mut bakes: Vec<(u32, &str)> = sheet.runs.iter().flat_map(of_run).collect();
    bakes.sort_unstable();
    bakes
}

fn order(bakes: &[(u32, &str)]) -> String {
    bakes.iter().map(|(place, label)| format!("{place} {label}")).collect::<Vec<_>>().join(", ")
}

/// From so many lines on that are the same in all runs, they stand in a table of their own, two side by side.
const FEW: usize = 4;

/// What differs between the runs; before it what does not, where that are many lines.
pub(super) fn tables(sheet: &TrialSheet<'_>) -> Vec<Vec<Vec<Cell>>> {
    let weights = weights(sheet);
    let same: Vec<&Line> = weights.iter().filter(|own| own.is_same).collect();
    if same.len() < FEW {
        return vec![table(sheet, &weights.iter().collect::<Vec<_>>())];
    }
    let other: Vec<&Line> = weights.iter().filter(|own| !own.is_same).collect();
    vec![side_by_side(&same), table(sheet, &other)]
}

/// Name, weight and lot of what every run takes alike, the first half on the left.
fn side_by_side(lines: &[&Line]) -> Vec<Vec<Cell>> {
    let head = ["The same in every run", "Weight", "Lot used"].map(Cell::new);
    let (left, right) = lines.split_at(lines.len().div_ceil(2));
    let cells = |line: Option<&&Line>| {
        let weight = line.map(|own| own.cells.iter().take(1).cloned().collect::<Vec<_>>()).unwrap_or_default();
        let name = line.map(|own| own.name.clone()).unwrap_or_default();
        [name, weight.into_iter().next().unwrap_or_default(), Cell::default()]
    };
    let rows = left.iter().enumerate().map(|(place, line)| [cells(Some(line)), cells(right.get(place))].concat());
    std::iter::once([head.clone(), head].concat()).chain(rows).collect()
}

fn table(sheet: &TrialSheet<'_>, weights: &[&Line]) -> Vec<Vec<Cell>> {
    let has_lots = !weights.is_empty();
    let row = |name: Cell, cells: Vec<Cell>, lot: Cell| {
        std::iter::once(name).chain(cells).chain(has_lots.then_some(lot)).collect::<Vec<Cell>>()
    };
    let order = |run: &TrialRun| run.order.iter().map(u32::to_string).collect::<Vec<_>>().join(", ");
    let none = || Cell::new("–");
    let labels = sheet.runs.iter().map(|run| Cell::new(run.label.as_str())).collect();
    let mut rows = vec![row(Cell::new("Run"), labels, Cell::new("Lot used"))];
    rows.push(row(Cell::new("Bake as no."), sheet.runs.iter().map(|run| Cell::new(order(run))).collect(), none()));
    rows.extend(weights.iter().map(|own| row(own.name.clone(), own.cells.clone(), Cell::default())));
    if sheet.runs.iter().any(|run| run.mass_kg.is_some()) {
        let mass =
            |run: &TrialRun| run.mass_kg.map_or_else(Cell::default, |mass| Cell::new(Scale::Kilograms.read(mass)));
        rows.push(row(Cell::new("Batch in all, kg"), sheet.runs.iter().map(mass).collect(), none()));
    }
    rows.extend(settings(sheet).into_iter().map(|(name, cells)| row(name, cells, none())));
    rows
}

/// What stands under the table.
pub(super) fn remarks(sheet: &TrialSheet<'_>) -> Option<String> {
    let batch = sheet.batch.as_ref()?;
    let remarks: String = batch.remarks.iter().map(|own| format!(" Mind: {own}.")).collect();
    Some(format!(
        "Weights of the {}; what differs from the control is marked. Flour of the control {} kg.{remarks}",
        batch.part,
        Scale::Kilograms.read(batch.flour_kg)
    ))
}

/// What is weighed of an ingredient, run by run.
struct Line {
    name: Cell,
    cells: Vec<Cell>,
    is_same: bool,
}

/// Every line of any run, in the order of the control; what a change brings in comes last.
fn weights(sheet: &TrialSheet<'_>) -> Vec<Line> {
    let mut names: Vec<(&str, &str)> = Vec::new();
    for line in sheet.runs.iter().flat_map(|run| &run.weights) {
        if !names.contains(&(line.name.as_str(), line.stage)) {
            names.push((&line.name, line.stage));
        }
    }
    let main = names.first().map_or("", |(_, stage)| stage);
    let has_stages = names.iter().any(|(_, stage)| *stage != main);
    let row = |(name, stage): &(&str, &str)| {
        let of_run =
            |run: &'_ TrialRun| run.weights.iter().find(|line| line.name == *name && line.stage == *stage).cloned();
        let lines: Vec<_> = sheet.runs.iter().map(of_run).collect();
        let scale = Scale::of(lines.iter().flatten().map(|line| line.mass_kg));
        let stage = if has_stages { format!(" [{stage}]") } else { String::new() };
        let cell = |line: &Option<RunWeight>| match line {
            Some(line) if line.is_changed => Cell::marked(scale.read(line.mass_kg)),
            Some(line) => Cell::new(scale.read(line.mass_kg)),
            None => Cell::new("–"),
        };
        Line {
            name: Cell::new(format!("{name}{stage}, {}", scale.unit())),
            cells: lines.iter().map(cell).collect(),
            is_same: lines.iter().all(|line| line.as_ref().is_some_and(|own| !own.is_changed)),
        }
    };
    names.iter().map(row).collect()
}

/// What a line is weighed on: all runs on the same, so that a row has one unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Scale {
    Kilograms,
    Grams,
}

impl Scale {
    /// Grams where every run takes less than a kilogram.
    fn of(masses: impl Iterator<Item = f64>) -> Self {
        if masses.fold(0.0, f64::max) < 1.0 { Self::Grams } else { Self::Kilograms }
    }

    fn unit(self) -> &'static str {
        match self {
            Self::Kilograms => "kg",
            Self::Grams => "g",
        }
    }

    /// A mass as it can be weighed: grams, tenths of a gram below 100 g, hundredths below 10 g.
    fn read(self, kilograms: f64) -> String {
        let grams = 1000.0 * kilograms;
        match (self, grams) {
            (Self::Kilograms, _) => format!("{kilograms:.3}"),
            (Self::Grams, grams) if grams < 10.0 => format!("{grams:.2}"),
            (Self::Grams, grams) if grams < 100.0 => format!("{grams:.1}"),
            (Self::Grams, grams) => format!("{grams:.0}"),
        }
    }
}

/// A row for everything that any run sets beside the weights. What sets no reading has its letter before it: two changes
/// may call different things alike, "shorter by" of mixing and of proof.
fn settings(sheet: &TrialSheet<'_>) -> Vec<(Cell, Vec<Cell>)> {
    let mut set: Vec<&RunSetting> = Vec::new();
    for setting in sheet.runs.iter().flat_map(|run| &run.settings) {
        if set.iter().all(|own| !is_of_one_row(own, setting)) {
            set.push(setting);
        }
    }
    let row = |setting: &RunSetting| {
        let held = sheet.hold.iter().find(|own| own.reading.is_some() && own.reading == setting.reading.as_deref());
        let cell = |run: &TrialRun| {
            let own = run.settings.iter().filter(|own| is_of_one_row(own, setting)).map(|own| own.value.as_str());
            let own: Vec<&str> = own.collect();
            let moves = held.is_some_and(|held| run.changes.iter().any(|letter| held.except_in.contains(letter)));
            match (own.is_empty(), moves) {
                (false, _) => Cell::marked(own.join(", ")),
                (true, true) => Cell::new("as it comes"),
                (true, false) => Cell::new(held.and_then(|own| own.value.as_deref()).unwrap_or("as today")),
            }
        };
        let name = if setting.reading.is_some() {
            setting.name.clone()
        } else {
            format!("{}: {}", setting.letter, setting.name)
        };
        (Cell::new(name), sheet.runs.iter().map(cell).collect())
    };
    set.into_iter().map(row).collect()
}

fn is_of_one_row(one: &RunSetting, other: &RunSetting) -> bool {
    one.name == other.name && one.reading == other.reading && (one.reading.is_some() || one.letter == other.letter)
}

#[cfg(test)]
mod tests {
    use super::Scale;

    #[test]
    fn a_row_is_weighed_on_one_scale() {
        assert_eq!(Scale::of([0.9996, 0.3].into_iter()).read(0.9996), "1000");
        assert_eq!(Scale::of([1.2, 0.3].into_iter()).read(0.3), "0.300");
        let grams = Scale::of([0.00525].into_iter());
        assert_eq!(
            (grams.unit(), grams.read(0.00525), grams.read(0.0123)),
            ("g", "5.25".to_owned(), "12.3".to_owned())
        );
    }
}
