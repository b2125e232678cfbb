//! Published layouts without waste, and facts about them.
//!
//! Lists: Hopper and Turton 2001 (C1 to C3), Jakobs 1996 (J1, J2), Ratanapan and Dagli (D2), Burke, Kendall and
//! Whitwell 2004 (N1 to N3); nine squares in 33 x 32; Duijvestijn's squared square of order 21 (1978); a pinwheel.
//! The witnesses are layouts found by another program, without turning a piece: they prove that the sheet holds all.

/// A sheet, the pieces that fill it, and one way they do.
#[derive(Debug)]
pub struct Perfect {
    pub name: &'static str,
    pub width: i64,
    pub height: i64,
    /// `wxh`, with `*count` where there are several.
    pub pieces: &'static str,
    /// `x,y:wxh`, from the lower left corner.
    pub witness: &'static str,
}

pub const PERFECT: [Perfect; 18] = [
    Perfect {
        name: "C1P1",
        width: 20,
        height: 20,
        pieces: "2x12 7x12 8x6 3x6 3x5 5x5 3x12 3x7 5x7 2x6 3x2 4x2 3x4 4x4 9x2 11x2",
        witness: "0,0:7x12 7,0:8x6 15,0:3x12 18,0:2x12 7,6:5x7 12,6:3x7 0,12:3x6 3,12:4x4 15,12:2x6 17,12:3x4 \
                  7,13:5x5 12,13:3x5 3,16:4x2 17,16:3x2 0,18:11x2 11,18:9x2",
    },
    Perfect {
        name: "C1P2",
        width: 20,
        height: 20,
        pieces: "4x1*2 4x5 9x4 3x5 3x9 1x4 5x3 5x5 7x2*2 9x3 3x13 2x8 15x4 5x4 10x6",
        witness: "0,0:15x4 15,0:2x8 17,0:3x13 0,4:10x6 10,4:5x4 10,8:7x2 0,10:3x9 3,10:5x5 8,10:9x4 17,13:3x5 \
                  8,14:9x3 3,15:1x4 4,15:4x5 8,17:5x3 13,17:4x1 13,18:7x2 0,19:4x1",
    },
    Perfect {
        name: "C1P3",
        width: 20,
        height: 20,
        pieces: "4x14 5x2 2x2 9x7 5x5 2x5 7x7 3x5 6x5 3x2 6x2 4x6 6x3*2 10x3*2",
        witness: "0,0:9x7 9,0:4x14 13,0:7x7 0,7:6x5 6,7:3x5 13,7:5x5 18,7:2x5 0,12:6x3 6,12:3x2 13,12:5x2 \
                  18,12:2x2 6,14:10x3 16,14:4x6 0,15:6x3 6,17:10x3 0,18:6x2",
    },
    Perfect {
        name: "C2P1",
        width: 40,
        height: 15,
        pieces: "11x3*2 13x3 9x2 7x2 9x3 7x3 11x2*2 13x2 11x4 13x4 3x5*2 2x2 2x3 5x4 6x4 12x2 1x2 13x5 12x4 1x4 \
                 5x2 6x2",
        witness: "0,0:13x5 13,0:13x4 26,0:11x4 37,0:3x5 13,4:13x3 26,4:11x3 0,5:12x4 12,5:1x4 37,5:3x5 13,7:13x2 \
                  26,7:11x3 0,9:6x4 6,9:5x4 11,9:12x2 23,9:1x2 24,9:2x3 26,10:9x2 35,10:5x2 11,11:11x2 22,11:2x2 \
                  24,12:9x3 33,12:7x3 0,13:11x2 11,13:6x2 17,13:7x2",
    },
    Perfect {
        name: "C2P2",
        width: 40,
        height: 15,
        pieces: "11x2*2 2x3 10x7 8x4*2 9x5 7x2 4x1 6x1 4x5 8x3 1x3 5x5 3x1 12x4 6x2*2 2x4 11x4 10x2 3x2*2 3x4 \
                 26x4",
        witness: "0,0:26x4 26,0:10x7 36,0:4x5 0,4:12x4 12,4:9x5 21,4:5x5 36,5:3x2 39,5:1x3 26,7:10x2 36,7:3x1 \
                  0,8:6x2 6,8:6x1 36,8:4x1 6,9:2x3 8,9:11x4 19,9:8x4 27,9:8x4 35,9:3x4 38,9:2x4 0,10:6x2 0,12:8x3 \
                  8,13:11x2 19,13:11x2 30,13:7x2 37,13:3x2",
    },
    Perfect {
        name: "C2P3",
        width: 40,
        height: 15,
        pieces: "12x7 7x7 7x1 5x1*2 3x2 6x2 7x2*2 5x2*2 3x1 6x1 12x6 9x6 12x2 10x3*2 4x1 16x3*2 5x3*2 4x2 9x3",
        witness: "0,0:12x7 12,0:12x6 24,0:9x6 33,0:7x7 12,6:16x3 28,6:5x3 0,7:9x3 9,7:3x2 33,7:7x2 9,9:16x3 \
                  25,9:10x3 35,9:5x3 0,10:5x2 5,10:4x2 0,12:10x3 10,12:12x2 22,12:7x2 29,12:6x2 35,12:5x2 \
                  10,14:7x1 17,14:6x1 23,14:5x1 28,14:5x1 33,14:4x1 37,14:3x1",
    },
    Perfect {
        name: "C3P1",
        width: 60,
        height: 30,
        pieces: "7x5 14x5*2 14x8 4x8 21x13 7x11 14x11 4x5 18x3 21x3 17x11 4x11 7x4 5x4 6x7 18x5*2 3x5 7x3 5x3 \
                 18x4 3x4 12x2 6x2 21x5 17x3 4x3",
        witness: "0,0:21x13 21,0:17x11 38,0:14x11 52,0:4x11 56,0:4x8 56,8:4x5 21,11:14x8 35,11:21x5 0,13:18x5 \
                  18,13:3x5 56,13:4x3 35,16:18x4 53,16:7x11 0,18:14x5 14,18:7x5 21,19:14x5 35,20:7x4 42,20:6x7 \
                  48,20:5x4 0,23:18x5 18,23:3x4 21,24:21x3 48,24:5x3 18,27:18x3 36,27:17x3 53,27:7x3 0,28:12x2 \
                  12,28:6x2",
    },
    Perfect {
        name: "C3P2",
        width: 60,
        height: 30,
        pieces: "18x6 12x2 7x10 23x4 1x4 7x7 4x11 5x6 7x2 11x6 19x10 5x11 2x4*2 5x7 12x7 13x7 6x3 10x6 16x9 4x1 \
                 10x4 24x6 9x9 1x2 5x8 5x3 25x7 21x5",
        witness: "0,0:25x7 25,0:24x6 49,0:10x6 59,0:1x4 59,4:1x2 25,6:16x9 41,6:19x10 0,7:18x6 18,7:7x10 0,13:12x7 \
                  12,13:4x11 16,13:2x4 25,15:5x11 30,15:5x8 35,15:6x3 41,16:12x2 53,16:7x7 16,17:9x9 35,18:13x7 \
                  48,18:5x7 0,20:10x4 10,20:2x4 30,23:5x3 53,23:7x2 0,24:11x6 11,24:5x6 35,25:4x1 39,25:21x5 \
                  16,26:23x4",
    },
    Perfect {
        name: "C3P3",
        width: 60,
        height: 30,
        pieces: "24x9 8x9 11x9 17x9 24x4 8x4 6x1 5x1 17x4 6x3 5x3 5x12 13x12 14x14 14x2 2x2 3x8 9x8 14x12 2x12 \
                 3x6 9x6 5x2 13x2 18x3 14x3 16x3 12x3",
        witness: "0,0:24x9 24,0:14x14 38,0:14x12 52,0:8x9 0,9:13x12 13,9:11x9 52,9:5x12 57,9:3x8 38,12:14x2 \
                  24,14:17x9 41,14:6x1 47,14:5x1 41,15:9x8 50,15:2x12 57,17:3x6 13,18:6x3 19,18:5x3 0,21:9x6 \
                  9,21:13x2 22,21:2x2 52,21:5x2 9,23:24x4 33,23:17x4 52,23:8x4 0,27:18x3 18,27:16x3 34,27:14x3 \
                  48,27:12x3",
    },
    Perfect {
        name: "J1",
        width: 40,
        height: 15,
        pieces: "12x6 4x7 6x7 10x2 2x5*2 6x4*2 4x2 4x6*2 7x9 4x5*2 6x3*2 2x4*2 8x4 8x6 8x3 2x6 8x2 3x5 3x4",
        witness: "0,0:12x6 12,0:7x9 19,0:8x6 27,0:6x7 33,0:4x7 37,0:3x5 37,5:3x4 0,6:8x4 8,6:4x5 19,6:8x3 \
                  27,7:10x2 12,9:6x4 18,9:6x4 24,9:4x6 28,9:4x6 32,9:6x3 38,9:2x6 0,10:4x5 4,10:2x5 6,10:2x5 \
                  8,11:2x4 10,11:2x4 32,12:6x3 12,13:8x2 20,13:4x2",
    },
    Perfect {
        name: "J2",
        width: 40,
        height: 15,
        pieces: "5x6 7x6 4x3*7 4x4*2 6x4 6x3 4x2*4 6x2 3x4*7 2x5*3 3x3*3 3x6*2 4x6 2x4*4 5x2 5x4 5x3 2x3*3 2x2*3 \
                 3x2*3",
        witness: "0,0:7x6 7,0:5x6 12,0:4x6 16,0:3x6 19,0:3x6 22,0:6x4 28,0:6x3 34,0:4x3 38,0:2x5 28,3:5x4 33,3:5x3 \
                  22,4:6x2 38,5:2x4 0,6:4x4 4,6:3x4 7,6:3x4 10,6:4x4 14,6:3x4 17,6:3x4 20,6:3x4 23,6:3x4 26,6:2x4 \
                  33,6:2x5 35,6:3x4 28,7:3x3 31,7:2x5 38,9:2x4 0,10:4x3 4,10:4x3 8,10:4x3 12,10:4x3 16,10:4x3 \
                  20,10:4x3 24,10:5x2 29,10:2x3 35,10:3x3 33,11:2x4 24,12:3x3 27,12:2x3 31,12:2x3 0,13:4x2 \
                  4,13:4x2 8,13:4x2 12,13:4x2 16,13:3x2 19,13:3x2 22,13:2x2 29,13:2x2 35,13:3x2 38,13:2x2",
    },
    Perfect {
        name: "D2",
        width: 60,
        height: 40,
        pieces: "12x12*4 12x10*5 12x9*6 12x8*6",
        witness: "0,0:12x12 12,0:12x12 24,0:12x12 36,0:12x12 48,0:12x8 48,8:12x8 0,12:12x10 12,12:12x10 \
                  24,12:12x10 36,12:12x10 48,16:12x8 0,22:12x10 12,22:12x9 24,22:12x9 36,22:12x9 48,24:12x8 \
                  12,31:12x9 24,31:12x9 36,31:12x9 0,32:12x8 48,32:12x8",
    },
    Perfect {
        name: "N1",
        width: 40,
        height: 40,
        pieces: "7x6*2 40x16 5x20 24x24 7x4 4x4 7x8 4x20 5x4",
        witness: "0,0:40x16 0,16:24x24 24,16:5x20 29,16:4x20 33,16:7x8 33,24:7x6 33,30:7x6 24,36:7x4 31,36:5x4 \
                  36,36:4x4",
    },
    Perfect {
        name: "N2",
        width: 30,
        height: 50,
        pieces: "23x9 19x4 12x21 6x4*2 7x13 9x4 4x6*2 23x6 16x6 4x14 14x6 6x6 5x4 7x6 14x11 4x7 8x4 14x4",
        witness: "0,0:12x21 12,0:14x11 26,0:4x14 12,11:14x6 26,14:4x7 12,17:14x4 0,21:23x9 23,21:7x13 0,30:23x6 \
                  23,34:7x6 0,36:6x6 6,36:9x4 15,36:8x4 6,40:16x6 22,40:4x6 26,40:4x6 0,42:6x4 0,46:19x4 19,46:6x4 \
                  25,46:5x4",
    },
    Perfect {
        name: "N3",
        width: 30,
        height: 50,
        pieces: "10x6 4x4 4x5 3x5*3 10x5 7x13 3x4*3 8x32 3x23 6x4 3x15 9x6 3x3*3 6x18 7x5 5x3*2 3x8 5x4 5x8 5x16 \
                 10x13 10x17 5x14",
        witness: "0,0:8x32 8,0:10x17 18,0:6x18 24,0:3x23 27,0:3x15 27,15:3x8 8,17:10x13 18,18:3x5 21,18:3x5 \
                  18,23:7x13 25,23:5x16 8,30:10x6 0,32:5x14 5,32:3x4 5,36:9x6 14,36:7x5 21,36:4x5 25,39:5x8 \
                  14,41:5x4 19,41:3x5 22,41:3x3 5,42:4x4 9,42:5x3 22,44:3x3 9,45:10x5 0,46:6x4 6,46:3x4 19,46:3x4 \
                  22,47:5x3 27,47:3x3",
    },
    Perfect {
        name: "SQ9",
        width: 33,
        height: 32,
        pieces: "1x1 4x4 7x7 8x8 9x9 10x10 14x14 15x15 18x18",
        witness: "0,0:18x18 18,0:15x15 18,15:7x7 25,15:8x8 0,18:14x14 14,18:4x4 14,22:10x10 24,22:1x1 24,23:9x9",
    },
    Perfect {
        name: "SQ21",
        width: 112,
        height: 112,
        pieces: "2x2 4x4 6x6 7x7 8x8 9x9 11x11 15x15 16x16 17x17 18x18 19x19 24x24 25x25 27x27 29x29 33x33 35x35 \
                 37x37 42x42 50x50",
        witness: "0,0:50x50 50,0:35x35 85,0:27x27 85,27:8x8 93,27:19x19 50,35:15x15 65,35:17x17 82,35:11x11 \
                  82,46:6x6 88,46:24x24 0,50:29x29 29,50:25x25 54,50:9x9 63,50:2x2 63,52:7x7 70,52:18x18 \
                  54,59:16x16 70,70:42x42 29,75:4x4 33,75:37x37 0,79:33x33",
    },
    Perfect {
        name: "PIN",
        width: 5,
        height: 5,
        pieces: "2x3*2 3x2*2 1x1",
        witness: "0,0:2x3 2,0:3x2 2,2:1x1 3,2:2x3 0,3:3x2",
    },
];

impl Perfect {
    /// The one of that name.
    pub fn named(name: &str) -> &'static Self {
        PERFECT.iter().find(|perfect| perfect.name == name).unwrap_or_else(|| panic!("{name}"))
    }

    /// Width, height and number of each kind of piece.
    pub fn sizes(&self) -> Vec<(i64, i64, usize)> {
        let size = |word: &str| {
            let (size, count) = word.split_once('*').unwrap_or((word, "1"));
            let (w, h) = size.split_once('x').expect("a size");
            (w.parse().expect("a width"), h.parse().expect("a height"), count.parse().expect("a count"))
        };
        self.pieces.split_whitespace().map(size).collect()
    }

    /// Place and size of each piece of the witness.
    pub fn places(&self) -> Vec<[i64; 4]> {
        let place = |word: &str| {
            let numbers: Vec<i64> =
                word.split([',', ':', 'x']).map(|number| number.parse().expect("a number")).collect();
            numbers.try_into().expect("four numbers")
        };
        self.witness.split_whitespace().map(place).collect()
    }
}
