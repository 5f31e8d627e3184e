//! How large a picture is, read from its head, so that a page keeps room for it before it arrives.
//!
//! Nothing is decoded. Sizes are those at which a browser shows the picture: a photograph that its camera held
//! upright (Exif orientation 5 to 8) has width and height exchanged.

/// Width and height in pixels; `None` when the head does not tell.
pub(super) fn of(bytes: &[u8]) -> Option<(u32, u32)> {
    let size = match bytes {
        [0x89, b'P', b'N', b'G', ..] => Some((be32(bytes, 16)?, be32(bytes, 20)?)),
        [b'G', b'I', b'F', b'8', ..] => Some((le16(bytes, 6)?, le16(bytes, 8)?)),
        [0xff, 0xd8, ..] => jpeg(bytes),
        [b'R', b'I', b'F', b'F', ..] => webp(bytes),
        _ if bytes.get(4..8) == Some(b"ftyp") => avif(bytes),
        _ => svg(bytes),
    };
    size.filter(|(width, height)| *width > 0 && *height > 0)
}

fn be16(bytes: &[u8], at: usize) -> Option<u32> {
    let two: [u8; 2] = bytes.get(at..at + 2)?.try_into().ok()?;
    Some(u32::from(u16::from_be_bytes(two)))
}

fn le16(bytes: &[u8], at: usize) -> Option<u32> {
    let two: [u8; 2] = bytes.get(at..at + 2)?.try_into().ok()?;
    Some(u32::from(u16::from_le_bytes(two)))
}

fn be32(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_be_bytes(bytes.get(at..at + 4)?.try_into().ok()?))
}

/// Segments up to the start of a frame; the Exif segment may turn it.
fn jpeg(bytes: &[u8]) -> Option<(u32, u32)> {
    let mut at = 2;
    let mut turned = false;
    loop {
        while *bytes.get(at)? == 0xff && *bytes.get(at + 1)? == 0xff {
            at += 1;
        }
        if *bytes.get(at)? != 0xff {
            return None;
        }
        let marker = *bytes.get(at + 1)?;
        if matches!(marker, 0x01 | 0xd0..=0xd8) {
            at += 2;
            continue;
        }
        let length = usize::try_from(be16(bytes, at + 2)?).ok()?;
        // Start of frame, but for the tables of Huffman, arithmetic coding and the reserved JPG marker.
        if matches!(marker, 0xc0..=0xcf) && !matches!(marker, 0xc4 | 0xc8 | 0xcc) {
            let (height, width) = (be16(bytes, at + 5)?, be16(bytes, at + 7)?);
            return Some(if turned { (height, width) } else { (width, height) });
        }
        if marker == 0xe1
            && let Some(exif) = bytes.get(at + 4..at + 2 + length)
        {
            turned = turned || orientation(exif).is_some_and(|orientation| (5..=8).contains(&orientation));
        }
        at += 2 + length;
    }
}

/// The orientation tag (0x0112) of the first directory of an Exif segment.
fn orientation(exif: &[u8]) -> Option<u32> {
    let tiff = exif.strip_prefix(b"Exif\0\0")?;
    let little = tiff.starts_with(b"II");
    let two = |at| if little { le16(tiff, at) } else { be16(tiff, at) };
    let four = |at: usize| {
        let (one, other) = (two(at)?, two(at + 2)?);
        Some(if little { one | other << 16 } else { one << 16 | other })
    };
    let directory = usize::try_from(four(4)?).ok()?;
    let entries = usize::try_from(two(directory)?).ok()?;
    (0..entries.min(200)).map(|entry| directory + 2 + entry * 12).find(|at| two(*at) == Some(0x0112)).and_then(|at| two(at + 8))
}

fn webp(bytes: &[u8]) -> Option<(u32, u32)> {
    let three = |at: usize| Some(le16(bytes, at)? | u32::from(*bytes.get(at + 2)?) << 16);
    match bytes.get(12..16)? {
        b"VP8X" => Some((three(24)? + 1, three(27)? + 1)),
        b"VP8 " => Some((le16(bytes, 26)? & 0x3fff, le16(bytes, 28)? & 0x3fff)),
        b"VP8L" => {
            let bits = le16(bytes, 21)? | le16(bytes, 23)? << 16;
            Some(((bits & 0x3fff) + 1, (bits >> 14 & 0x3fff) + 1))
        }
        _ => None,
    }
}

/// The first image spatial extent (`ispe`) of an AVIF file.
fn avif(bytes: &[u8]) -> Option<(u32, u32)> {
    let head = bytes.get(..bytes.len().min(4096))?;
    let at = head.windows(4).position(|window| window == b"ispe")?;
    Some((be32(bytes, at + 8)?, be32(bytes, at + 12)?))
}

/// The width and height of the root element where both are plain numbers or pixels, else those of its view box.
fn svg(bytes: &[u8]) -> Option<(u32, u32)> {
    let head = bytes.get(..bytes.len().min(8192))?;
    let text = String::from_utf8_lossy(head);
    let root = text.get(text.find("<svg")?..)?;
    let root = root.get(..root.find('>')?)?;
    let attribute = |name: &str| {
        let at = root.match_indices(name).find(|(at, _)| root.get(..*at).is_some_and(|before| before.ends_with(char::is_whitespace)))?.0;
        let value = root.get(at + name.len()..)?.trim_start().strip_prefix('=')?.trim_start();
        let quote = value.chars().next().filter(|c| matches!(c, '"' | '\''))?;
        value.get(1..)?.split(quote).next()
    };
    let pixels = |name: &str| {
        let number = attribute(name)?.trim().trim_end_matches("px").parse::<f64>().ok()?;
        (1.0..1e6).contains(&number).then_some(number.round() as u32)
    };
    if let (Some(width), Some(height)) = (pixels("width"), pixels("height")) {
        return Some((width, height));
    }
    let view: Vec<f64> = attribute("viewBox")?.split([' ', ',']).filter_map(|part| part.parse().ok()).collect();
    match view.as_slice() {
        [_, _, width, height] if (1.0..1e6).contains(width) && (1.0..1e6).contains(height) => {
            Some((width.round() as u32, height.round() as u32))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_tells_its_size_in_either_way() {
        assert_eq!(of(b"<svg xmlns='x' viewBox=\"0 0 640 400\" width=\"640\" height=\"400\"><rect width=\"9\"/></svg>"), Some((640, 400)));
        assert_eq!(of(b"<?xml version='1.0'?><svg viewBox='0 0 320.4 150'>"), Some((320, 150)));
        assert_eq!(of(b"<svg width='100%' height='100%' viewBox='0,0,30,40'>"), Some((30, 40)));
        assert_eq!(of(b"<svg stroke-width='3' width='12px' height='8'>"), Some((12, 8)));
        assert_eq!(of(b"<svg>"), None);
    }

    #[test]
    fn photographs_tell_it_in_their_heads() {
        let png = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\x02\x80\0\0\x01\x90\x08\x02";
        assert_eq!(of(png), Some((640, 400)));
        assert_eq!(of(b"GIF89a\x80\x02\x90\x01\0"), Some((640, 400)));
        let jpeg = b"\xff\xd8\xff\xe0\0\x04\0\0\xff\xc0\0\x11\x08\x01\x90\x02\x80\x03";
        assert_eq!(of(jpeg), Some((640, 400)));
        assert_eq!(of(b"RIFF\0\0\0\0WEBPVP8X\n\0\0\0\0\0\0\0\x7f\x02\0\x8f\x01\0"), Some((640, 400)));
    }

    #[test]
    fn an_upright_photograph_is_higher_than_wide() {
        let exif = b"\xff\xd8\xff\xe1\0\x22Exif\0\0MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0\xff\xc0\0\x11\x08\x01\x90\x02\x80\x03";
        assert_eq!(of(exif), Some((400, 640)));
    }

    #[test]
    fn bytes_cut_short_tell_nothing() {
        for bytes in
            [&b"\x89PNG"[..], b"\xff\xd8", b"\xff\xd8\xff", b"RIFF", b"GIF8", b"\0\0\0\0ftypavif", b"", b"\xff\xd8\xff\xe1\0\x02\xff"]
        {
            assert_eq!(of(bytes), None);
        }
    }
}
