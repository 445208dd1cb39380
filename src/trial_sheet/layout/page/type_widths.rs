//! How wide text is in print.

/// Advance widths of the printable ASCII characters in thousandths of the type size: Arial, which Helvetica and Liberation
/// Sans share (read from the `hmtx` table of Liberation Sans Regular 2.1).
const ASCII: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
    556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
    722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
    556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
    260, 334, 584,
];

/// Of any other character: few letters are wider, signs and quotation marks are narrower.
const OTHER: u16 = 600;

/// Bold against regular type: capitals are 10 % wider, text on the whole 5 %.
const BOLD: f64 = 1.1;

/// Width of a text at a type size of 1.
pub(super) fn width(text: &str) -> f64 {
    let width = |own: char| {
        let place = u32::from(own).checked_sub(32).and_then(|own| usize::try_from(own).ok());
        place.and_then(|place| ASCII.get(place)).copied().unwrap_or(if own.is_control() { 278 } else { OTHER })
    };
    text.chars().map(|own| f64::from(width(own))).sum::<f64>() / 1000.0
}

pub(super) fn bold_width(text: &str) -> f64 {
    BOLD * width(text)
}

/// Width of the widest word.
pub(super) fn widest_word(text: &str) -> f64 {
    text.split_whitespace().map(width).fold(0.0, f64::max)
}

/// Lines of a text in a column, words moved down whole; `room` and `first` in type sizes, `first` taken up in the first line.
pub(super) fn lines(text: &str, first: f64, room: f64) -> f64 {
    let (mut lines, mut taken) = (1.0, first);
    let space = width(" ");
    for word in text.split_whitespace() {
        let own = width(word);
        if taken > 0.0 && taken + space + own > room {
            lines += 1.0;
            taken = own;
        } else {
            taken += if taken > 0.0 { space + own } else { own };
        }
        // A word that is wider than the column is broken.
        while taken > room && room > 0.0 {
            lines += 1.0;
            taken -= room;
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::{lines, width};

    #[test]
    fn widths_are_those_of_the_type() {
        assert!((width("Ai") - 0.889).abs() < 1e-9);
        assert!((width("−") - 0.6).abs() < 1e-9);
    }

    /// A digit is 0.556 wide, a space 0.278: two words of three digits are 3.614 wide.
    #[test]
    fn words_move_down_whole_and_long_ones_break() {
        for (room, expected) in [(3.7, 1.0), (3.6, 2.0), (1.7, 2.0), (1.0, 4.0)] {
            let own = lines("123 456", 0.0, room);
            assert!((own - expected).abs() < 1e-9, "{own} lines in {room}");
        }
        assert!((lines("123", 2.0, 3.5) - 2.0).abs() < 1e-9);
    }
}
