//! Where a word stands: in which records, and how weighty its best place in each is. Written as bits.

use super::bits::BitWriter;

/// The best place of a word in a record. A name is weightier than another name, that than the title of a step, that
/// than its text, and notes come last; a shorter name is weightier, because the word is more of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Class {
    /// Once in the text.
    Text,
    /// Several times in the text.
    TextOften,
    /// In the notes.
    Notes,
    /// In the title of a step or page.
    Title,
    /// In a name of three words or more.
    NameOfMany,
    /// In another name of three words or more.
    OtherOfMany,
    /// In a name of two words.
    NameOfTwo,
    /// In another name of two words.
    OtherOfTwo,
    /// It is the whole name.
    NameOfOne,
    /// It is the whole of another name.
    OtherOfOne,
}

impl Class {
    /// The class in a name of so many words.
    pub(super) const fn name(words: usize) -> Self {
        match words {
            0 | 1 => Self::NameOfOne,
            2 => Self::NameOfTwo,
            _ => Self::NameOfMany,
        }
    }

    /// The class in another name of so many words.
    pub(super) const fn other(words: usize) -> Self {
        match words {
            0 | 1 => Self::OtherOfOne,
            2 => Self::OtherOfTwo,
            _ => Self::OtherOfMany,
        }
    }

    /// The weight by which the best place is chosen when the index is made.
    pub(super) const fn weight(self) -> u32 {
        match self {
            Self::NameOfOne => 9,
            Self::OtherOfOne => 8,
            Self::NameOfTwo => 7,
            Self::NameOfMany => 6,
            Self::OtherOfTwo => 5,
            Self::OtherOfMany => 4,
            Self::Title => 3,
            Self::TextOften => 2,
            Self::Text => 1,
            Self::Notes => 0,
        }
    }

    /// Text is by far the most frequent: 0 text, 10 text often, 110 notes, and 111 with three bits the others.
    fn write(self, bits: &mut BitWriter) {
        let other = match self {
            Self::Text => return bits.bits(0, 1),
            Self::TextOften => return bits.bits(0b10, 2),
            Self::Notes => return bits.bits(0b110, 3),
            Self::Title => 0,
            Self::NameOfMany => 1,
            Self::OtherOfMany => 2,
            Self::NameOfTwo => 3,
            Self::OtherOfTwo => 4,
            Self::NameOfOne => 5,
            Self::OtherOfOne => 6,
        };
        bits.bits(0b11_1000 | other, 6);
    }
}

/// A word in one record.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Posting {
    /// The record, from 0.
    pub(super) record: u32,
    /// Its best place there.
    pub(super) class: Class,
}

/// Writes the postings of one word, sorted by record: how many, then each as the gap to the one before and its class.
///
/// Gaps are Rice codes (Rice and Plaunt, IEEE Transactions on Communication Technology 19, 1971), whose one number
/// follows from how many of the records hold the word.
pub(super) fn write(postings: &[Posting], records: usize, bits: &mut BitWriter) {
    let width = rice_width(records, postings.len());
    bits.gamma(u32::try_from(postings.len()).unwrap_or(u32::MAX));
    let mut next = 0;
    for posting in postings {
        let gap = posting.record.saturating_sub(next);
        bits.unary(gap >> width);
        bits.bits(gap, width);
        posting.class.write(bits);
        next = posting.record + 1;
    }
}

/// The binary logarithm, rounded down, of 11/16 of the mean gap: about ln 2 of it, which is the best choice where
/// words fall at random (Gallager and van Voorhis, IEEE Transactions on Information Theory 21, 1975).
fn rice_width(records: usize, holding: usize) -> u32 {
    let mean = records * 11 / (holding.max(1) * 16);
    mean.checked_ilog2().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_width_follows_the_mean_gap() {
        assert_eq!(rice_width(2_000, 2_000), 0);
        assert_eq!(rice_width(2_000, 500), 1); // mean 2.75
        assert_eq!(rice_width(2_000, 1), 10); // mean 1375
        assert_eq!(rice_width(0, 0), 0);
    }

    #[test]
    fn postings_are_gaps_and_classes() {
        let mut bits = BitWriter::default();
        let all = [Posting { record: 1, class: Class::Text }, Posting { record: 4, class: Class::OtherOfOne }];
        write(&all, 6, &mut bits); // mean 2.06, so the width is 1
        let mut plain = BitWriter::default();
        // Two; gap 1: 0 1, text 0; gap 2: 10 0, other 111110.
        for bit in "010010100111110".chars() {
            plain.bits(u32::from(bit == '1'), 1);
        }
        assert_eq!(bits.finish(), plain.finish());
    }
}
