//! Directions in the case frame.

/// Product of two vectors, summed from x to z: the order decides the last bit.
pub fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// The opposite direction. Zero stays zero: a minus before it would show in files.
pub fn minus(direction: [f64; 3]) -> [f64; 3] {
    direction.map(|along| if along == 0.0 { 0.0 } else { -along })
}
