//! How many tests a program ran, read from what it printed.

/// Tests that passed, failed, were skipped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Count {
    /// Passed.
    pub passed: usize,
    /// Failed, or in error.
    pub failed: usize,
    /// Skipped.
    pub skipped: usize,
}

impl std::ops::AddAssign for Count {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
        self.skipped += other.skipped;
    }
}

impl Count {
    /// All of them.
    pub fn total(self) -> usize {
        self.passed + self.failed + self.skipped
    }

    /// Reads the closing lines of the three test programs: Rust's, pytest's and node's.
    pub fn read(printed: &str) -> Self {
        let mut count = Self::default();
        for line in printed.lines() {
            let line = line.trim();
            if let Some(rest) = line.strip_prefix("test result:") {
                // test result: ok. 12 passed; 0 failed; 1 ignored; …
                count.add_words(rest.split(['.', ';']));
            } else if let Some(rest) = line.strip_prefix("ℹ ") {
                // ℹ pass 3
                if let Some((word, number)) = rest.split_once(' ') {
                    count.add(word, number);
                }
            } else if let Some((rest, _)) = line.trim_matches('=').trim().rsplit_once(" in ") {
                // === 3 passed, 1 skipped in 0.12s ===
                count.add_words(rest.split(", "));
            }
        }
        count
    }

    fn add_words<'a>(&mut self, parts: impl Iterator<Item = &'a str>) {
        for part in parts {
            if let Some((number, word)) = part.trim().split_once(' ') {
                self.add(word, number);
            }
        }
    }

    fn add(&mut self, word: &str, number: &str) {
        let Ok(number) = number.parse::<usize>() else { return };
        match word {
            "passed" | "pass" => self.passed += number,
            "failed" | "fail" | "error" | "errors" | "cancelled" => self.failed += number,
            "skipped" | "todo" => self.skipped += number,
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_the_closing_lines_of_all_three() {
        let printed = "\
running 2 tests
test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.00s
test result: FAILED. 1 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out
======= 3 passed, 1 skipped, 2 errors in 0.12s =======
ℹ tests 6
ℹ pass 4
ℹ fail 1
ℹ skipped 1
";
        assert_eq!(Count::read(printed), Count { passed: 20, failed: 5, skipped: 2 });
    }

    #[test]
    fn other_lines_count_nothing() {
        let printed = "2 passed by\nℹ duration_ms 40\nBuilt in 3 s\nno tests ran in 0.01s\n";
        assert_eq!(Count::read(printed), Count::default());
    }
}
