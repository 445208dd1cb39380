//! Actions that are done in a hypothetical case.

use super::amount::Size;
use super::answer::NotApplied;
use super::trial::Trial;
use crate::case::{LineContent, Measured};
use crate::diagnosis::Prescribed;
use crate::knowledge::{Action, Amount, Basis, Key, Limits, Portion, Reading, Setting};
use crate::units::convert;

/// A quantity with its value in the case.
type Valued<'k> = (&'k Setting, Option<f64>);

impl<'k> Trial<'k> {
    /// Does actions, each with the quantities that it has before any is done.
    pub(super) fn act(&mut self, actions: &[Key<Action>], causes: &[&str]) {
        let diagnostician = self.diagnostician;
        let declared = &diagnostician.knowledge().declared;
        let prescribed: Vec<(&'k str, Result<Prescribed<'k>, String>)> = actions
            .iter()
            .map(|action| {
                (declared.actions[*action].id.as_str(), diagnostician.prescribed(&self.case, *action, causes))
            })
            .collect();
        for (action, prescribed) in prescribed {
            match prescribed {
                Ok(prescribed) => self.do_all(action, &prescribed),
                Err(text) => self.refuse(action, None, text),
            }
        }
    }

    fn refuse(&mut self, action: &'k str, quantity: Option<&'k str>, text: String) {
        self.not_applied.push(NotApplied { action: Some(action), quantity, text });
    }

    /// Puts the quantities of an action into the case: amounts first, so that readings follow from them.
    fn do_all(&mut self, action: &'k str, prescribed: &Prescribed<'k>) {
        let (before, declared) = (self.applied.len(), &self.diagnostician.knowledge().declared);
        let settings = self.choices(&prescribed.settings);
        let (amounts, others): (Vec<Valued<'k>>, Vec<Valued<'k>>) =
            settings.into_iter().partition(|(setting, _)| setting.amount().is_some());
        let mut done: Vec<&'k Amount> = Vec::new();
        for (setting, value) in amounts {
            let Some(amount) = setting.amount() else { continue };
            // The same in another unit.
            if done.iter().any(|earlier| earlier.of.shared_with(&amount.of, declared).is_some()) {
                continue;
            }
            match value.map_or_else(|| Err(UNKNOWN.to_owned()), |value| self.dose(action, setting, amount, value)) {
                Ok(()) => done.push(amount),
                Err(text) => self.refuse(action, Some(&setting.name), text),
            }
        }
        for (setting, value) in others {
            if let Err(text) = self.set(action, setting, value, !done.is_empty()) {
                self.refuse(action, Some(&setting.name), text);
            }
        }
        if self.applied.len() == before {
            self.refuse(action, None, "nothing that it sets can be put into this case".to_owned());
        }
    }

    /// Of quantities that are a choice, the one whose ingredient stands in the formula, else the first.
    fn choices(&self, settings: &[Valued<'k>]) -> Vec<Valued<'k>> {
        let mut chosen: Vec<Valued<'k>> = Vec::new();
        for (setting, value) in settings {
            match chosen.last_mut() {
                Some(last) if setting.is_alternative() => {
                    if !self.stands(last.0) && self.stands(setting) {
                        *last = (setting, *value);
                    }
                }
                _ => chosen.push((setting, *value)),
            }
        }
        chosen
    }

    /// Whether the formula names what a quantity changes.
    fn stands(&self, setting: &Setting) -> bool {
        let Some(amount) = setting.amount() else { return false };
        let declared = &self.diagnostician.knowledge().declared;
        let lines = self.case.formula.iter().flat_map(|formula| &formula.lines);
        lines
            .filter_map(|line| if let LineContent::Declared(key) = &line.content { Some(*key) } else { None })
            .any(|key| amount.of.contains(key, declared))
    }

    /// Changes an amount; where there is no formula, the reading that counts it.
    fn dose(&mut self, action: &'k str, setting: &'k Setting, amount: &Amount, value: f64) -> Result<(), String> {
        let size = Size::of(setting, amount, value, &self.diagnostician.knowledge().declared)?;
        let brought_in = self.brought_in(action, setting, amount);
        let amount = brought_in.as_ref().unwrap_or(amount);
        let Basis::Reading(key) = amount.basis else {
            return self.weighed(amount, size, Some((action, &setting.name)));
        };
        // What was measured is what would be measured then.
        let measured = self.is_measured(key);
        match self.weighed(amount, size, Some((action, &setting.name))) {
            Ok(()) if !measured => return Ok(()),
            Ok(()) => {}
            Err(text) if self.case.formula.is_some() => {
                self.refuse(action, Some(&setting.name), format!("{text}; the reading alone is set"));
            }
            Err(_) => {}
        }
        self.set_reading(action, setting, key, value)
    }

    /// The ingredient that an action brings in, where the formula has nothing with the role that is changed.
    fn brought_in(&self, action: &str, setting: &Setting, amount: &Amount) -> Option<Amount> {
        let declared = &self.diagnostician.knowledge().declared;
        let Portion::Role(role) = amount.of else { return None };
        if self.stands(setting) {
            return None;
        }
        let uses = &declared.actions[declared.actions.find(action)?].uses;
        let key = uses.iter().find(|key| declared.ingredients[**key].roles.contains(&role))?;
        Some(Amount { of: Portion::Ingredients(vec![*key]), ..amount.clone() })
    }

    /// Sets a reading, unless it follows from amounts that were changed.
    fn set(&mut self, action: &'k str, setting: &'k Setting, value: Option<f64>, dosed: bool) -> Result<(), String> {
        let Some(key) = setting.reading() else {
            return Err("the rules do not say what it changes".to_owned());
        };
        let value = value.ok_or_else(|| UNKNOWN.to_owned())?;
        let computed = self.diagnostician.knowledge().declared.readings[key].computed.is_some();
        if dosed && computed && !self.is_measured(key) {
            return Ok(());
        }
        self.set_reading(action, setting, key, value)
    }

    fn set_reading(
        &mut self,
        action: &'k str,
        setting: &'k Setting,
        key: Key<Reading>,
        given: f64,
    ) -> Result<(), String> {
        let reading = &self.diagnostician.knowledge().declared.readings[key];
        let value = convert(given, &setting.unit, &reading.unit).map_err(|fault| fault.to_string())?;
        if !(reading.plausible.low..=reading.plausible.high).contains(&value) {
            return Err("the value is outside the plausible range of the reading".to_owned());
        }
        let (unit, limits) = (setting.unit.clone(), Limits::default());
        self.read(Measured { reading: key, value, given, unit, limits }, Some((action, &setting.name)));
        Ok(())
    }
}

/// Why a quantity has no value.
const UNKNOWN: &str = "it cannot be computed from what the case gives";
