//! Words on paper, broken into lines.

use crate::drawing::{Weight, text_width_mm};

/// Words broken into lines no wider than this; a word that is too long alone is broken anywhere.
#[must_use]
pub(super) fn wrapped(words: &str, width_mm: f64, size_mm: f64, weight: Weight) -> Vec<String> {
    let fits = |text: &str| text_width_mm(text, size_mm, weight) <= width_mm + 1e-6;
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in words.split_whitespace() {
        let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if fits(&longer) {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in word.chars() {
            line.push(letter);
            if !fits(&line) && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::take(&mut line));
                line.push(letter);
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    const SIZE_MM: f64 = 2.5;

    #[test]
    fn lines_break_between_words_and_keep_their_width() {
        let words = "Drill from the outside, thinnest first, on a board that may be drilled into.";
        let lines = wrapped(words, 40.0, SIZE_MM, Weight::Regular);
        assert!(lines.len() > 1);
        assert_eq!(lines.join(" "), words);
        assert!(lines.iter().all(|line| text_width_mm(line, SIZE_MM, Weight::Regular) <= 40.0 + 1e-6));
    }

    #[test]
    fn a_word_longer_than_the_line_is_broken_anywhere() {
        let lines = wrapped("an unbroken-word-that-is-far-too-long-for-it", 20.0, SIZE_MM, Weight::Regular);
        assert_eq!(lines.concat(), "anunbroken-word-that-is-far-too-long-for-it");
        assert!(lines.iter().all(|line| text_width_mm(line, SIZE_MM, Weight::Regular) <= 20.0 + 1e-6));
        assert!(wrapped(" ", 20.0, SIZE_MM, Weight::Regular).is_empty());
    }
}
