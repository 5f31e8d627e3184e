//! Numbers as bits, bits as text: six bits a character, of characters that no script has to escape.

/// The sixty-four characters by value (RFC 4648, section 5), without padding.
const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Writes bits, the highest of a number first.
#[derive(Debug, Default)]
pub(super) struct BitWriter {
    text: String,
    held: u32,
    count: u32,
}

impl BitWriter {
    /// Adds the low `width` bits of a number.
    pub(super) fn bits(&mut self, value: u32, width: u32) {
        for at in (0..width).rev() {
            self.bit(value >> at & 1);
        }
    }

    /// Adds so many ones, and a zero.
    pub(super) fn unary(&mut self, ones: u32) {
        for _ in 0..ones {
            self.bit(1);
        }
        self.bit(0);
    }

    /// Adds a number of at least one in Elias's gamma code: the length of it less one in zeros, then the number.
    pub(super) fn gamma(&mut self, value: u32) {
        let value = value.max(1);
        let width = u32::BITS - value.leading_zeros();
        self.bits(0, width - 1);
        self.bits(value, width);
    }

    fn bit(&mut self, bit: u32) {
        self.held = self.held << 1 | bit;
        self.count += 1;
        if self.count == 6 {
            let character = ALPHABET.get(self.held as usize).map_or('A', |byte| char::from(*byte));
            self.text.push(character);
            self.held = 0;
            self.count = 0;
        }
    }

    /// The text, the last character filled with zeros.
    pub(super) fn finish(mut self) -> String {
        while self.count > 0 {
            self.bit(0);
        }
        self.text
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 4648 (IETF, 2006), section 10: "foobar" is `Zm9vYmFy`; both alphabets agree in these characters.
    #[test]
    fn bytes_come_out_as_published() {
        let mut writer = BitWriter::default();
        for byte in b"foobar" {
            writer.bits(u32::from(*byte), 8);
        }
        assert_eq!(writer.finish(), "Zm9vYmFy");
    }

    /// Elias, Universal codeword sets and representations of the integers, IEEE Transactions on Information Theory 21
    /// (1975), 194–203: gamma of 1, 2, 3, 4 and 5 is 1, 010, 011, 00100 and 00101.
    #[test]
    fn gamma_is_as_published() {
        let mut writer = BitWriter::default();
        for number in 1..=5 {
            writer.gamma(number);
        }
        let mut plain = BitWriter::default();
        for bit in "10100110010000101".chars() {
            plain.bits(u32::from(bit == '1'), 1);
        }
        assert_eq!(writer.finish(), plain.finish());
    }

    #[test]
    fn the_last_character_is_filled() {
        let mut writer = BitWriter::default();
        writer.unary(2);
        assert_eq!(writer.finish(), "w"); // 110 and three zeros: 48
        assert_eq!(BitWriter::default().finish(), "");
    }
}
