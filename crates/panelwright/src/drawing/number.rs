//! The one way numbers are written into files: shortest decimal form with a fixed most number of decimals.
//!
//! Invariant: the same number gives the same characters natively and in wasm. Only multiplication and rounding are
//! used, both exactly defined for `f64`; no locale, no exponent, no `-0`.

/// Decimals for coordinates in millimetres: a half unit in the last place is 0.00005 mm, far below the 0.01 mm a
/// printed line may be off.
pub const COORDINATE_DECIMALS: u8 = 4;

/// Most decimals that can be asked for; more would not fit the whole-number route for lengths in millimetres.
pub const MOST_DECIMALS: u8 = 9;

/// Largest scaled value that an `f64` still holds as an exact whole number (2^53).
const LARGEST_WHOLE: f64 = 9_007_199_254_740_992.0;

/// `value` with at most `decimals` decimals, trailing zeros dropped: `12.5`, `-0.25`, `3`.
///
/// Halves round away from zero. `decimals` above [`MOST_DECIMALS`] counts as that. A value that is not finite is
/// written as `0`, so that a file stays readable; the core hands no such value to a writer.
///
/// ```
/// use panelwright::drawing::number::format_number;
/// assert_eq!(format_number(12.50004, 4), "12.5");
/// assert_eq!(format_number(-0.00001, 4), "0");
/// ```
#[must_use]
pub fn format_number(value: f64, decimals: u8) -> String {
    let mut text = String::new();
    push_number(&mut text, value, decimals);
    text
}

/// Appends what [`format_number`] would return.
pub fn push_number(text: &mut String, value: f64, decimals: u8) {
    if !value.is_finite() {
        text.push('0');
        return;
    }
    let decimals = decimals.min(MOST_DECIMALS);
    let scale = 10_u64.pow(u32::from(decimals));
    let scaled = libm::round(value.abs() * scale as f64);
    if scaled > LARGEST_WHOLE {
        // Beyond the whole-number route there are no decimals worth keeping.
        text.push_str(&format!("{value:.0}"));
        return;
    }
    let scaled = scaled as u64;
    if scaled == 0 {
        text.push('0');
        return;
    }
    if value < 0.0 {
        text.push('-');
    }
    push_whole(text, scaled / scale);
    let mut fraction = scaled % scale;
    if fraction == 0 {
        return;
    }
    let mut places = usize::from(decimals);
    while fraction.is_multiple_of(10) {
        fraction /= 10;
        places -= 1;
    }
    text.push('.');
    let mut digits = [b'0'; MOST_DECIMALS as usize];
    for place in digits[..places].iter_mut().rev() {
        *place += (fraction % 10) as u8;
        fraction /= 10;
    }
    text.extend(digits[..places].iter().map(|&digit| char::from(digit)));
}

/// Appends a whole number.
fn push_whole(text: &mut String, mut whole: u64) {
    let mut digits = [0_u8; 20];
    let mut start = digits.len();
    loop {
        start -= 1;
        digits[start] = b'0' + (whole % 10) as u8;
        whole /= 10;
        if whole == 0 {
            break;
        }
    }
    text.extend(digits[start..].iter().map(|&digit| char::from(digit)));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_as_short_as_they_can_be() {
        for (value, decimals, expected) in [
            (0.0, 4, "0"),
            (-0.0, 4, "0"),
            (1.0, 4, "1"),
            (12.5, 4, "12.5"),
            (0.05, 4, "0.05"),
            (-0.05, 2, "-0.05"),
            (0.04996, 4, "0.05"),
            (100.0, 4, "100"),
            (9.99996, 4, "10"),
            (-123.456789, 3, "-123.457"),
            (0.5, 0, "1"),
            (-0.49, 0, "0"),
            (1e15, 4, "1000000000000000"),
            (2.834645669291, 9, "2.834645669"),
            (f64::NAN, 4, "0"),
            (f64::INFINITY, 4, "0"),
        ] {
            assert_eq!(format_number(value, decimals), expected, "{value} with {decimals}");
        }
    }

    #[test]
    fn numbers_agree_with_the_standard_library_away_from_halves() {
        // A fixed sweep (no randomness): 7 and 13 are coprime to 10 000, so all last digits turn up.
        for step in 0..20_000_i32 {
            let value = f64::from(step * 7 - 60_000) / 13.0;
            let plain = format!("{value:.4}");
            let plain = plain.trim_end_matches('0').trim_end_matches('.');
            let plain = if plain == "-0" { "0" } else { plain };
            assert_eq!(format_number(value, 4), plain);
        }
    }
}
