//! Chemical leavening: how much acid a soda needs, how much gas it gives, and what is left over.

mod acids;
mod balance;
mod gas;

pub use acids::{
    HIGHEST_NEUTRALISING_VALUE, LEAVENING_ACIDS, LeaveningAcid, acid_for_soda, leavening_acid, soda_for_acid,
    stoichiometric_neutralising_value,
};
pub use balance::{
    AcidDose, LeaveningBalance, LeaveningFigures, PhDirection, SOAPY_RESIDUAL_SODA_PERCENT, leavening_figures,
};
pub use gas::{
    Carbonate, GasAmount, GasYield, Release, gas_volume, gas_yield, powder_carbon_dioxide, soda_for_carbon_dioxide,
};

/// Molar masses, g/mol (IUPAC standard atomic weights).
mod molar {
    pub(super) const SODIUM_BICARBONATE: f64 = 84.007;
    pub(super) const POTASSIUM_BICARBONATE: f64 = 100.115;
    pub(super) const AMMONIUM_BICARBONATE: f64 = 79.055;
    pub(super) const CARBON_DIOXIDE: f64 = 44.009;
    pub(super) const AMMONIA: f64 = 17.031;
    pub(super) const WATER: f64 = 18.015;
}
