//! The changes of a design as bytes: what differs from the defaults, by ascending code of the choice.
//!
//! Each change is a varint `step * 4 + form`, where `step` is the distance from the code before it (from 0 at first),
//! followed by what its form says:
//!
//! | form | what follows | used for |
//! |---|---|---|
//! | 0 | a varint | option of a pick; 0 or 1 of a switch; hundredths of a number, zigzag |
//! | 1 | nothing | left open |
//! | 2 | a varint length, then that many bytes | text as UTF-8; points as hundredths, zigzag varints x, y, x, y … |
//! | 3 | a zigzag varint | a whole number |
//!
//! The form tells where a change ends, so a choice that goes away one day can still be passed over.
//! Varints are little endian in groups of seven bits; zigzag maps 0, -1, 1, -2 to 0, 1, 2, 3.

use crate::design::choice::{Choice, Kind, Value};
use crate::design::design::{Design, DesignError, hundredths};
use crate::design::list::choices;
use crate::sorting::sort_by_key;

const FORM_VARINT: u64 = 0;
const FORM_OPEN: u64 = 1;
const FORM_BYTES: u64 = 2;
const FORM_WHOLE: u64 = 3;

/// Bytes that are no changes of a design.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum PackedError {
    /// They end within a change, or a change does not suit its choice.
    Malformed,
    /// No choice has this code.
    UnknownChoice(u64),
    /// A value outside its range.
    Value(DesignError),
}

/// What differs from the defaults, as bytes.
pub(crate) fn pack(design: &Design) -> Vec<u8> {
    let mut changed = design.changed();
    sort_by_key(&mut changed, |index| choices()[*index].code);
    let mut bytes = Vec::new();
    let mut code = 0;
    for index in changed {
        let choice = &choices()[index];
        let step = u64::from(choice.code - code) * 4;
        code = choice.code;
        match design.value(index) {
            Value::Open => push_varint(&mut bytes, step + FORM_OPEN),
            Value::Pick(option) => {
                push_varint(&mut bytes, step + FORM_VARINT);
                push_varint(&mut bytes, *option as u64);
            }
            Value::Switch(on) => {
                push_varint(&mut bytes, step + FORM_VARINT);
                push_varint(&mut bytes, u64::from(*on));
            }
            Value::Number(number) => {
                let hundredths = whole_hundredths(*number);
                if hundredths % 100 == 0 {
                    push_varint(&mut bytes, step + FORM_WHOLE);
                    push_varint(&mut bytes, zigzag(hundredths / 100));
                } else {
                    push_varint(&mut bytes, step + FORM_VARINT);
                    push_varint(&mut bytes, zigzag(hundredths));
                }
            }
            Value::Text(text) => push_bytes(&mut bytes, step, text.as_bytes()),
            Value::Points(points) => {
                let mut inner = Vec::new();
                for number in points.iter().flatten() {
                    push_varint(&mut inner, zigzag(whole_hundredths(*number)));
                }
                push_bytes(&mut bytes, step, &inner);
            }
        }
    }
    bytes
}

/// The design whose changes these bytes are.
pub(crate) fn unpack(mut bytes: &[u8]) -> Result<Design, PackedError> {
    let mut design = Design::default();
    let mut code = 0_u64;
    while !bytes.is_empty() {
        let head = take_varint(&mut bytes)?;
        // Codes ascend, so no choice comes twice.
        let step = Some(head / 4).filter(|step| *step > 0).ok_or(PackedError::Malformed)?;
        code = code.checked_add(step).ok_or(PackedError::Malformed)?;
        let raw = take_raw(&mut bytes, head % 4)?;
        let choice =
            choices().iter().find(|choice| u64::from(choice.code) == code).ok_or(PackedError::UnknownChoice(code))?;
        let value = meaning(choice, raw)?;
        design.set(&choice.key, value).map_err(PackedError::Value)?;
    }
    Ok(design)
}

enum Raw<'a> {
    Varint(u64),
    Open,
    Bytes(&'a [u8]),
    Whole(i64),
}

fn take_raw<'a>(bytes: &mut &'a [u8], form: u64) -> Result<Raw<'a>, PackedError> {
    Ok(match form {
        FORM_VARINT => Raw::Varint(take_varint(bytes)?),
        FORM_OPEN => Raw::Open,
        FORM_BYTES => {
            let length = usize::try_from(take_varint(bytes)?).map_err(|_| PackedError::Malformed)?;
            let (inner, rest) = bytes.split_at_checked(length).ok_or(PackedError::Malformed)?;
            *bytes = rest;
            Raw::Bytes(inner)
        }
        _ => Raw::Whole(unzigzag(take_varint(bytes)?)),
    })
}

fn meaning(choice: &Choice, raw: Raw<'_>) -> Result<Value, PackedError> {
    Ok(match (&choice.kind, raw) {
        (Kind::Pick(options), Raw::Varint(option)) => {
            let known = usize::try_from(option).ok().filter(|option| *option < options.len());
            Value::Pick(known.ok_or_else(|| {
                PackedError::Value(DesignError::BadValue {
                    key: choice.key.clone(),
                    given: format!("option number {option}"),
                    allowed: choice.allowed(),
                })
            })?)
        }
        (Kind::Switch, Raw::Varint(on @ 0..=1)) => Value::Switch(on == 1),
        (Kind::Number { .. }, Raw::Varint(number)) => Value::Number(from_hundredths(unzigzag(number))),
        (Kind::Number { .. }, Raw::Whole(number)) => Value::Number(number as f64),
        (Kind::Number { .. }, Raw::Open) => Value::Open,
        (Kind::Text { .. }, Raw::Bytes(text)) => {
            Value::Text(std::str::from_utf8(text).map_err(|_| PackedError::Malformed)?.to_owned())
        }
        (Kind::Points { .. }, Raw::Bytes(mut inner)) => {
            let mut points = Vec::new();
            while !inner.is_empty() {
                let x = unzigzag(take_varint(&mut inner)?);
                let y = unzigzag(take_varint(&mut inner)?);
                points.push([from_hundredths(x), from_hundredths(y)]);
            }
            Value::Points(points)
        }
        _ => return Err(PackedError::Malformed),
    })
}

fn push_bytes(bytes: &mut Vec<u8>, step: u64, inner: &[u8]) {
    push_varint(bytes, step + FORM_BYTES);
    push_varint(bytes, inner.len() as u64);
    bytes.extend(inner);
}

/// Appends a number in groups of seven bits, lowest first; the high bit says that more follow.
pub(super) fn push_varint(bytes: &mut Vec<u8>, mut number: u64) {
    while number >= 0x80 {
        bytes.push(number as u8 | 0x80);
        number >>= 7;
    }
    bytes.push(number as u8);
}

/// Takes a varint off the front.
pub(super) fn take_varint(bytes: &mut &[u8]) -> Result<u64, PackedError> {
    let mut number = 0_u64;
    for shift in (0..64).step_by(7) {
        let (byte, rest) = bytes.split_first().ok_or(PackedError::Malformed)?;
        *bytes = rest;
        let group = u64::from(byte & 0x7f);
        // The tenth group has room for one bit only.
        if group << shift >> shift != group {
            return Err(PackedError::Malformed);
        }
        number |= group << shift;
        if byte & 0x80 == 0 {
            return Ok(number);
        }
    }
    Err(PackedError::Malformed)
}

const fn zigzag(number: i64) -> u64 {
    (number << 1 ^ number >> 63) as u64
}

const fn unzigzag(number: u64) -> i64 {
    (number >> 1) as i64 ^ -((number & 1) as i64)
}

/// Values of a design are multiples of 0.01 below 1e5, so this is exact.
fn whole_hundredths(number: f64) -> i64 {
    libm::round(number * 100.0) as i64
}

fn from_hundredths(number: i64) -> f64 {
    hundredths(number as f64 / 100.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn varints_and_zigzag_come_back() {
        for number in [0, 1, 127, 128, 300, 15_800, u64::from(u32::MAX), u64::MAX] {
            let mut bytes = Vec::new();
            push_varint(&mut bytes, number);
            assert_eq!(take_varint(&mut bytes.as_slice()), Ok(number));
        }
        for number in [0, -1, 1, i64::MIN, i64::MAX] {
            assert_eq!(unzigzag(zigzag(number)), number);
        }
        assert_eq!([0, -1, 1, -2].map(zigzag), [0, 1, 2, 3]);
        assert!(take_varint(&mut [0xff; 11].as_slice()).is_err());
        assert!(take_varint(&mut [0x80].as_slice()).is_err());
    }

    /// The bytes are permanent: code 51 (cooler.height) is 51 * 4 + 3, 125 whole is zigzag 250.
    #[test]
    fn one_change_packs_to_the_bytes_the_table_says() {
        let mut design = Design::default();
        design.set_json("cooler.height", &125.into()).unwrap();
        assert_eq!(pack(&design), [0xcf, 0x01, 0xfa, 0x01]);
        design.set_json("cooler.height", &125.5.into()).unwrap();
        // 12 550 hundredths is zigzag 25 100 = 0xc4 * 128 + 0x0c.
        assert_eq!(pack(&design), [0xcc, 0x01, 0x8c, 0xc4, 0x01]);
    }

    #[test]
    fn bytes_that_suit_no_choice_are_refused() {
        assert_eq!(unpack(&[]), Ok(Design::default()));
        assert_eq!(unpack(&[0x00, 0x00]), Err(PackedError::Malformed), "no step");
        assert_eq!(unpack(&[0xcf, 0x01]), Err(PackedError::Malformed), "no value");
        assert_eq!(unpack(&[0xce, 0x01, 0x01, 0x00]), Err(PackedError::Malformed), "bytes for a number");
        assert_eq!(unpack(&[0x08, 0x00]), Err(PackedError::UnknownChoice(2)));
        assert!(
            matches!(unpack(&[0x28, 0x3f]), Err(PackedError::Value(error)) if error.to_string().contains("number 63"))
        );
        assert!(matches!(unpack(&[0xcf, 0x01, 0x90, 0x4e]), Err(PackedError::Value(error))
            if error.to_string() == "cooler.height: 5000 is not allowed; it must be 20 to 200 mm"));
    }
}
