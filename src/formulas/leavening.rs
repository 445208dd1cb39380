//! The balance of soda and acids in a part, and the gas that its chemical leavening gives.

use super::Weighed;
use super::figure::Outcome;
use crate::science::formula::{Part, PartLines};
use crate::science::leavening::{
    AcidDose, Carbonate, LeaveningBalance, LeaveningFigures, Release, gas_yield, leavening_figures,
};
use crate::science::{Estimate, Method};

/// Where the gas volume does not matter: room temperature and sea level.
const CELSIUS: f64 = 20.0;
const PRESSURE_PA: f64 = 101_325.0;

/// An ingredient of unknown leavening below it cannot be a leavener that counts, % of the mass (common practice: baking
/// powder is used from about 1 %).
const LEAST_LEAVENER: f64 = 0.1;

const SURPLUS: Method = Method {
    name: "leavening balance on flour: 100 × (soda − Σ acid × neutralising value / 100) / flour",
    source: "Miller D.D., Food Chemistry (laboratory manual), section 2.2.2",
    domain: "potassium bicarbonate counts as the soda that gives as much gas; acids and alkalis of other ingredients are \
             counted only where the rules state them",
};
const GAS: Method = Method {
    name: "carbon dioxide by stoichiometry: of soda and acid, of the soda left by heat, and of ammonium bicarbonate",
    source: "IUPAC standard atomic weights",
    domain: "full reaction; in a real dough part of the gas is lost in mixing and part stays dissolved",
};

/// Soda that no acid neutralises, % on flour; negative: acid left over.
pub(super) fn soda_surplus_on_flour(weighed: &Weighed<'_>, part: Part, lines: &PartLines<'_>) -> Outcome {
    let flour = lines.flour().value;
    if lines.brought_in(&[]).is_none() {
        return Outcome::unknown("this part has no flour to reckon on");
    }
    with_balance(weighed, part, lines, |figures, _| {
        let surplus = figures.residual_soda.value - figures.residual_acid_as_soda.value;
        Estimate::new(100.0 * surplus / grams(flour), "%", SURPLUS)
    })
}

/// Carbon dioxide that the chemical leavening can give, g/kg.
pub(super) fn carbon_dioxide(weighed: &Weighed<'_>, part: Part, lines: &PartLines<'_>) -> Outcome {
    let mass = lines.mass().value;
    with_balance(weighed, part, lines, |figures, ammonium_bicarbonate_g| {
        let ammonium = gas_yield(Carbonate::AmmoniumBicarbonate, Release::Heat).carbon_dioxide.value / 100.0;
        let gas =
            figures.carbon_dioxide.value + figures.carbon_dioxide_by_heat.value + ammonium_bicarbonate_g * ammonium;
        Estimate::new(gas / mass, "g/kg", GAS)
    })
}

fn with_balance(
    weighed: &Weighed<'_>,
    part: Part,
    lines: &PartLines<'_>,
    figure: impl Fn(&LeaveningFigures, f64) -> Estimate,
) -> Outcome {
    let mass = lines.mass().value;
    let mut balance = LeaveningBalance {
        soda_g: 0.0,
        acids: Vec::new(),
        product_g: grams(mass),
        celsius: CELSIUS,
        pressure_pa: PRESSURE_PA,
    };
    let (mut ammonium_bicarbonate_g, mut unknown_in) = (0.0, Vec::new());
    for (line, _) in weighed.lines().filter(|(_, own)| *own == part) {
        let Some(leavening) = weighed.leavening(line) else {
            if 100.0 * line.amount / mass > LEAST_LEAVENER {
                unknown_in.push(weighed.name(line).to_owned());
            }
            continue;
        };
        let share_g = grams(line.amount) / 100.0;
        let potassium_as_soda = Carbonate::SodiumBicarbonate.molar_mass_g_per_mol()
            / Carbonate::PotassiumBicarbonate.molar_mass_g_per_mol();
        balance.soda_g += share_g * (leavening.soda + leavening.potassium_bicarbonate * potassium_as_soda);
        ammonium_bicarbonate_g += share_g * leavening.ammonium_bicarbonate;
        if leavening.neutralising_value > 0.0 {
            balance.acids.push(AcidDose {
                name: weighed.name(line).to_owned(),
                mass_g: grams(line.amount),
                neutralising_value: leavening.neutralising_value,
            });
        }
    }
    if !unknown_in.is_empty() {
        return Outcome::unknown_because_of(unknown_in);
    }
    match leavening_figures(&balance) {
        Ok(figures) => Outcome::known(figure(&figures, ammonium_bicarbonate_g)),
        Err(nonsense) => Outcome::unknown(nonsense.to_string()),
    }
}

fn grams(kilograms: f64) -> f64 {
    1000.0 * kilograms
}
