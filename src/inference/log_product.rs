//! Products of many factors that may leave the range of a double.

/// A product whose logarithm is taken as seldom as possible, since a logarithm costs ten
/// multiplications.
#[derive(Debug, Clone, Copy)]
pub(super) struct LogProduct {
    product: f64,
    logarithm: f64,
}

impl Default for LogProduct {
    fn default() -> Self {
        Self { product: 1.0, logarithm: 0.0 }
    }
}

impl LogProduct {
    pub(super) fn multiply(&mut self, factor: f64) {
        self.product *= factor;
        if !(1e-150..1e150).contains(&self.product) {
            self.logarithm += self.product.ln();
            self.product = 1.0;
        }
    }

    pub(super) fn ln(self) -> f64 {
        self.logarithm + self.product.ln()
    }
}
