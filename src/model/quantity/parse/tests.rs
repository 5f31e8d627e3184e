//! Every spelling of the format, and every slip.
#![allow(clippy::unwrap_used, reason = "a test may fail")]

use super::*;

fn kg(text: &str) -> (f64, f64) {
    let range = mass(text).unwrap();
    (range.low.kilograms(), range.high.kilograms())
}

#[test]
fn weights_in_every_spelling() {
    assert_eq!(kg("6.5–8.0 kg"), (6.5, 8.0));
    assert_eq!(kg("6.5-8.0kg"), (6.5, 8.0));
    assert_eq!(kg("6.5 to 8.0 kg"), (6.5, 8.0));
    assert_eq!(kg("6.5 kg – 8 kg"), (6.5, 8.0));
    assert_eq!(kg("280 g"), (0.28, 0.28));
    assert_eq!(kg("155–165 g"), (0.155, 0.165));
    assert_eq!(kg("900 g – 1.2 kg"), (0.9, 1.2));
}

/// 1 lb is exactly 0.45359237 kg and 1 oz exactly 1/16 lb (format.md, "Quantities").
#[test]
fn pounds_and_ounces_are_exact() {
    let one = mass("1 lb").unwrap().low.picograms();
    assert_eq!(one, 453_592_370_000_000);
    assert_eq!(mass("16 oz").unwrap().low.picograms(), one);
    assert_eq!(mass("18 lb 10 oz").unwrap().low.picograms() * 16, one * (18 * 16 + 10));
    let range = mass("14–18 lb").unwrap();
    assert_eq!(range.low.picograms(), one * 14);
    assert_eq!(mass("18 lb 10 oz – 19 lb").unwrap().high.picograms(), one * 19);
}

#[test]
fn temperatures_compare_exactly_across_scales() {
    let one = |text| temperature(text).unwrap().low;
    assert_eq!(one("41 °F"), one("5 °C"));
    assert!(one("45 F") > one("7 C"));
    assert!(one("4 °C") < one("40 °F"));
    let cold = temperature("-20 to -18 °C").unwrap();
    assert_eq!((cold.low.thousandths(), cold.high.thousandths()), (-20_000, -18_000));
    assert_eq!(temperature("2–4 °C").unwrap().high.to_string(), "4 °C");
    assert_eq!(temperature("−20–−18 °C").unwrap().to_string(), "−20 to −18 °C");
    assert_eq!(mass("900 g – 1.2 kg").unwrap().to_string(), "900 g–1.2 kg");
}

#[test]
fn shares_in_percent_and_as_decimals() {
    let show = |text| share(text).unwrap().to_string();
    assert_eq!(show("31–35 %"), "31–35");
    assert_eq!(show("5 % – 7 %"), "5–7");
    assert_eq!(show("0.05–0.07"), "5–7");
    assert_eq!(show("0"), "0");
    assert_eq!(show("0–0.3 %"), "0–0.3");
    assert_eq!(show("12.25%"), "12.25");
    assert_eq!(show("100 %"), "100");
}

#[test]
fn lengths_minutes_counts_and_money() {
    assert_eq!(length("20–25 mm").unwrap().to_string(), "20–25 mm");
    assert_eq!(length("1 in").unwrap().low.nanometres, length("25.4 mm").unwrap().low.nanometres);
    assert_eq!(minutes("0.5–2").unwrap().to_string(), "0.5–2");
    assert_eq!(whole("13–17").unwrap(), Range { low: 13, high: 17 });
    assert_eq!(money("3.40 / kg").unwrap(), (3_400_000, "kg"));
    assert_eq!(money("24.00/h").unwrap(), (24_000_000, "h"));
}

#[test]
fn each_slip_is_told_apart() {
    let kind = |result: Result<(), Slip>| result.unwrap_err().kind;
    let m = |text| kind(mass(text).map(|_| ()));
    let s = |text| kind(share(text).map(|_| ()));
    assert_eq!(m("7.5"), SlipKind::UnitMissing);
    assert_eq!(m("6–8"), SlipKind::UnitMissing);
    assert_eq!(m("7.5 litres"), SlipKind::UnitWrong);
    assert_eq!(m("7,5 kg"), SlipKind::DecimalComma);
    assert_eq!(m("8–6.5 kg"), SlipKind::Inverted);
    assert_eq!(m("heavy"), SlipKind::Malformed);
    assert_eq!(m("-2 kg"), SlipKind::OutOfBounds);
    assert_eq!(s("1"), SlipKind::TwoReadings);
    assert_eq!(s("28"), SlipKind::TwoReadings);
    assert_eq!(s("28–32"), SlipKind::TwoReadings);
    assert_eq!(s("120 %"), SlipKind::OutOfBounds);
    assert_eq!(s("-5 %"), SlipKind::OutOfBounds);
    assert_eq!(s("35–31 %"), SlipKind::Inverted);
    assert_eq!(s("5 kg"), SlipKind::UnitUnexpected);
    assert_eq!(s("0.12345678901"), SlipKind::Digits);
    assert_eq!(kind(minutes("3 min").map(|_| ())), SlipKind::UnitUnexpected);
    assert_eq!(kind(temperature("4").map(|_| ())), SlipKind::UnitMissing);
    assert_eq!(kind(whole("two").map(|_| ())), SlipKind::Malformed);
    assert_eq!(kind(whole("2.5").map(|_| ())), SlipKind::Malformed);
}

#[test]
fn help_names_one_thing_to_type() {
    let of_share = |text| share(text).unwrap_err().help;
    assert_eq!(of_share("28"), "Write `28 %`, or `0.28` as a decimal.");
    assert_eq!(of_share("33.3–40"), "Write `33.3–40 %`, or `0.333–0.4` as a decimal.");
    assert_eq!(of_share("1"), "Write `1 %`, or `100 %`.");
    assert_eq!(of_share("0.5–1"), "Write `0.5–1 %`, or `50–100 %`.");
    assert_eq!(of_share("100"), "Write `100 %`.");
    assert_eq!(of_share("95–100"), "Write `95–100 %`.");
    assert_eq!(of_share("150"), "Write a share of at most 100 %.");
    assert_eq!(of_share("5 %–7"), "Write `5–7 %`.");
    assert_eq!(mass("6,5–8,0 kg").unwrap_err().help, "Write a decimal point: `6.5–8.0 kg`.");
    assert_eq!(mass("1,200 g").unwrap_err().help, "Write `1200 g` if it parts thousands, else a decimal point.");
    assert_eq!(mass("2 lb 10 oz – 1 lb 4 oz").unwrap_err().help, "Write `1 lb 4 oz–2 lb 10 oz`.");
    assert_eq!(temperature("-18 to -20 °C").unwrap_err().help, "Write `-20–-18 °C`.");
    assert_eq!(mass("8–6.5 kg").unwrap_err().help, "Write `6.5–8 kg`.");
    assert_eq!(mass("7.5").unwrap_err().help, "Add kg, g, lb or oz, as in `7.5 kg`.");
    assert_eq!(mass("6.5–8.0").unwrap_err().help, "Add kg, g, lb or oz, as in `6.5–8.0 kg`.");
    assert_eq!(mass("6–8 kilos").unwrap_err().help, "Write `kg`: `6–8 kg`.");
    assert_eq!(mass("7 lbs").unwrap_err().help, "Write `lb`: `7 lb`.");
    assert_eq!(minutes("3–5 min").unwrap_err().help, "Write `3–5`.");
}
