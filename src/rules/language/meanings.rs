//! What every word means, in a line, for the authors' guide.

use super::Word;

/// Meanings by word; of words that also declare something, [`DECLARING`] has the other meaning.
const MEANINGS: &[(&str, &str)] = &[
    // Everything that has it.
    ("title", "name for people; of facts and readings so that it reads well in a sentence"),
    ("version", "the authors' version of the pack; it stands in every answer"),
    ("text", "what it says, in a sentence or two"),
    ("description", "how to recognise it, or what is measured where"),
    ("source", "where it comes from; several may be named"),
    ("caution", "what may hurt people when it is seen or done; it is told beside the answer"),
    ("citation", "author, title, year, table"),
    ("published", "the source is a publication that was read"),
    ("common_practice", "the source is a rule of thumb of the trade"),
    ("from_memory", "the source is a named work, quoted from memory"),
    ("always", "the caution stands in every answer"),
    ("family", "the family that the product belongs to"),
    ("main_stage", "the stage whose figures are meant when a rule names none"),
    ("flour", "it counts as flour, the base of baker's percentages"),
    ("composition", "composition in g/100 g; what is left out is unknown, not zero"),
    ("brings", "allergens that it brings"),
    ("not_for", "diets that it does not fit"),
    ("role", "what it does in a formula"),
    ("soda", "share of sodium bicarbonate, %"),
    ("potassium_bicarbonate", "share of potassium bicarbonate, %"),
    ("ammonium_bicarbonate", "share of ammonium bicarbonate, %"),
    ("neutralising_value", "grams of soda that 100 g of the acid neutralise"),
    ("acid", "leavening acid, and its share in %"),
    ("part", "part of the product: crust, crumb, shape, volume, flavour, keeping, dough, filling"),
    ("products", "families or products that it concerns"),
    ("synonyms", "other words that people use for it, by which a complaint in plain words is understood"),
    ("leak", "how often the symptom is seen though no cause of the pack is at work, 0 to 1"),
    ("contradicts", "symptoms that cannot be present together with it"),
    ("question", "the question to ask; yes means the fact is true"),
    ("answered_by", "what a formula has when the fact holds: a formula that tells it is not asked again"),
    ("effort", "minutes to find out, or until the next batch can show it"),
    // Readings.
    ("unit", "UCUM code of its unit"),
    ("plausible", "a value outside this range is set aside, not believed"),
    ("window", "usual low and high limit for a family or product; the target is the middle"),
    (
        "margin",
        "how far past a limit counts fully, in its unit, for all products or one family or product; a quarter of the window when left out",
    ),
    ("method", "how it is measured, by its standard where there is one"),
    ("low_shows", "symptom that counts as seen when it is below its low limit"),
    ("high_shows", "symptom that counts as seen when it is above its high limit"),
    ("computed", "what stands in when it was not measured"),
    // Actions.
    ("side_effect", "what else the action changes"),
    ("may_show", "symptoms that it can bring when overdone"),
    ("cost", "class of its cost, a word of the scale of costs; unknown when left out"),
    ("waste", "batches that are typically lost until it works; unknown when left out"),
    ("uses", "ingredients that it brings in; their allergens and diets follow"),
    (
        "set",
        "a quantity that the action sets: its name, its value and its unit, what caps it and what it changes; a reading of that name is set. Begin the name with `or_` where it is a choice instead of the quantity before",
    ),
    (
        "doses",
        "the quantity is what the amount of an ingredient, or of all lines with a role in proportion, becomes: mass in the batch, % on flour, % of a part, or what a reading that is computed from the formula shall read (the reading of the quantity's own name needs no naming)",
    ),
    ("adds", "the quantity is added to an ingredient or a role: mass in the batch, % on flour, % of a part as it was"),
    ("reads", "the quantity is what a reading shall read; the reading of the quantity's own name needs no naming"),
    ("takes_out", "the quantity is taken from an ingredient or a role, counted as for `adds`"),
    // Law and warnings.
    ("jurisdiction", "markets in which the caution is told; it is told too when a case gives no market"),
    ("not_permitted", "markets whose law does not permit the ingredient; actions that use it are excluded there"),
    ("market", "markets whose law the limit is"),
    ("of", "what the limit bounds"),
    ("at_most", "the most that is allowed, in the unit of the limit"),
    (
        "at_once",
        "it keeps harm from people, as holding a lot does: it comes first in the order of actions when a cause that it is prescribed for is probable",
    ),
    ("undoes", "actions that it undoes and that undo it: in an order the later one takes the place of the earlier"),
    ("instead", "actions that take its place where a diet, an allergen or the law excludes it"),
    ("capped_by", "legal limits that the quantity of an action never exceeds"),
    ("when", "the condition on which the caution stands in the answer, with the reason"),
    ("also_when_unknown", "the caution stands in the answer too while the condition is unknown"),
    // Causes.
    ("mechanism", "how the cause brings its symptoms about, in a sentence"),
    ("prior", "how often a complaint has this cause, 0 to 1; also for one family or product"),
    ("shows", "a symptom of the cause, and how often the cause by itself shows it"),
    ("action", "what to do about the cause, and how often that mends it"),
    ("confirm", "what settles that it is this cause"),
    ("excluded", "what settles that it is not"),
    // Evidence.
    ("evidence", "a condition, and its weight for the cause when it is true"),
    ("evidence_in_regions", "a quantity with the edges of its regions, a weight and a usual share for each"),
    ("against", "weight against the cause when the condition is false"),
    ("usual", "how often the condition holds when the cause is absent, 0 to 1"),
    ("group", "of the evidence of one group only the strongest counts"),
    // Conditions.
    ("rises", "graded: false at the first number and below, true at the second and above"),
    ("falls", "graded: false at the first number and above, true at the second and below"),
    ("between", "between two numbers, both included"),
    ("outside", "not between two numbers"),
    ("too_high", "graded: past the plant's high limit or the usual window, fully one margin past it"),
    ("too_low", "graded: past the plant's low limit or the usual window, fully one margin past it"),
    ("on_target", "within the plant's limits or the usual window"),
    ("formula_has", "the formula names the ingredient, or one of several"),
    ("formula_has_role", "something in the formula has the role"),
    ("all", "every condition of the list holds"),
    ("any", "at least one condition of the list holds"),
    (
        "judged",
        "the escape: a closure on plain values, called when all are known; `true`, `false` or a grade from 0 to 1",
    ),
    // Expressions.
    ("target", "the plant's target, or the middle of the usual window"),
    ("low_limit", "the plant's low limit, or that of the usual window"),
    ("high_limit", "the plant's high limit, or that of the usual window"),
    ("baker_percent", "share in the formula, % on flour"),
    ("mass_percent", "share in the mass of the main part or another part, %"),
    ("role_percent", "share of everything with a role, % on flour"),
    ("formula", "a quantity that is computed from the formula"),
    ("either", "the first, or the second where the first is unknown"),
    ("calculate", "a figure of a calculation"),
    ("min", "the smaller of two"),
    ("max", "the larger of two"),
    ("abs", "the value without its sign"),
    ("+", "sum"),
    ("-", "difference"),
    ("*", "product"),
    ("/", "quotient; unknown when the divisor is zero"),
    (">", "above"),
    (">=", "at or above"),
    ("<", "below"),
    ("<=", "at or below"),
    ("==", "not for measured values, which never equal a number"),
    ("!=", "not for measured values, which never equal a number"),
    ("&", "both hold"),
    ("|", "at least one holds"),
    ("!", "the contrary"),
];

/// Meanings of the words that declare things.
const DECLARING: &[(&str, &str)] = &[
    ("pack", "the pack itself"),
    ("source", "where facts come from"),
    ("caution", "a warning about what may hurt people"),
    ("limit", "a limit of a law"),
    ("diet", "a diet, for example vegan"),
    ("allergen", "an allergen, for example milk"),
    ("market", "a market whose law applies; its id is upper case"),
    ("family", "products that share causes"),
    ("product", "a product"),
    ("ingredient", "an ingredient"),
    ("symptom", "something that people see, feel or taste"),
    ("fact", "a yes or no about the line or the ingredients"),
    ("reading", "something that is measured or computed"),
    ("action", "something that can be done"),
    ("cause", "something that may have gone wrong"),
    ("warn", "a caution that stands in the answer on a condition"),
    ("prior_word", "a word for how common causes are, 0 to 1"),
    ("strength_word", "a word for how often causes show symptoms, 0 to 1"),
    ("weight_word", "a word for weights of evidence, decibans"),
    ("cost_word", "a class of cost, and the minutes of effort that weigh as much"),
    ("waste_word", "a word for what is lost until an action works, batches"),
];

/// The meaning of a word; `None` when nobody has written it.
pub(super) fn meaning(word: &Word) -> Option<&'static str> {
    let find =
        |table: &[(&str, &'static str)]| table.iter().find(|(name, _)| *name == word.name).map(|(_, meaning)| *meaning);
    if word.follows.is_empty() { find(DECLARING).or_else(|| find(MEANINGS)) } else { find(MEANINGS) }
}

#[cfg(test)]
mod tests {
    use super::super::sections;
    use super::{DECLARING, MEANINGS, meaning};

    /// Calculations tell theirs themselves.
    #[test]
    fn every_word_has_a_meaning() {
        let words = sections().flat_map(|(_, words)| words);
        let without: Vec<&str> = words.filter(|word| meaning(word).is_none()).map(|word| word.usage).collect();
        assert_eq!(without, [""; 0]);
    }

    #[test]
    fn no_word_has_two() {
        for table in [MEANINGS, DECLARING] {
            for (nth, (name, _)) in table.iter().enumerate() {
                assert!(table[..nth].iter().all(|(earlier, _)| earlier != name), "{name}");
            }
        }
    }
}
