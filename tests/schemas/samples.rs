//! A sound document of each kind with every key that it can have, and one of each kind with as few as it may.

use seamwise::source::schema::Kind;

/// Every key. Values are spelled in many ways: quoted and bare, numbers and texts, ranges and single values.
pub(crate) const FULL: &[(Kind, &str, &str)] = &[
    (Kind::Guidebook, "guidebook.yaml", GUIDEBOOK),
    (Kind::Procedure, "pork/loin.yaml", PROCEDURE),
    (Kind::Cuts, "cuts/pork.yaml", CUTS),
    (Kind::Anatomy, "anatomy/boar.yaml", ANATOMY),
    (Kind::Cautions, "cautions.yaml", CAUTIONS),
    (Kind::Tools, "tools.yaml", TOOLS),
    (Kind::Course, "courses/first-term.yaml", COURSE),
    (Kind::Prices, "prices.yaml", PRICES),
];

/// No key that can be left out.
pub(crate) const BARE: &[(Kind, &str, &str)] = &[
    (Kind::Guidebook, "guidebook.yaml", "title: Cutting guides\n"),
    (
        Kind::Procedure,
        "pork/bare.yaml",
        "title: 2024\nspecies: pork\nrevision: { number: 1, date: 2026-10-05, author: course lead, state: draft }\n\
         start: { piece: pork-belly, weight: 4 kg }\nyields: { pork-belly-boned: 0.88–0.92, pork-belly-bone: 0.08–0.12 }\n",
    ),
    (Kind::Cuts, "cuts/pork.yaml", "pork-belly: { name: Belly }\n"),
    (Kind::Anatomy, "anatomy/boar.yaml", "like: pig\n"),
    (Kind::Cautions, "cautions.yaml", "# none yet\n"),
    (Kind::Tools, "tools.yaml", "rib-puller: { name: Rib puller }\n"),
    (Kind::Course, "courses/first-term.yaml", "title: First term\nlessons: [{ name: Loins, procedures: [pork/side] }]\n"),
    (Kind::Prices, "prices.yaml", "currency: EUR\ndate: 2026-11-02\n"),
];

/// Files that the samples name, so that they lack nothing.
pub(crate) const BESIDE: &[(&str, &str)] = &[
    ("guidebook.yaml", "title: Cutting guides\n"),
    ("cautions.yaml", CAUTIONS),
    (
        "pork/side.yaml",
        "title: A side into primals\nspecies: pork\nrevision: { number: 1, date: 2026-10-05, author: course lead, state: draft }\n\
         start: { piece: pork-side, weight: 40 kg }\nyields: { pork-loin: 25 %, pork-frame-rest: 75 % }\n",
    ),
    ("pictures/loin.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 10 10\"/>"),
];

const GUIDEBOOK: &str = "\
title: Cutting guides
publisher: Training kitchen
language: en-GB
also-in: [es, pt-BR]
units: metric
region: uk
limits: eu-853
stricter:
  - { limit: hold, at-most: 3 °C, watch: head butcher, every: morning and noon, if-missed: Back to the cold. }
  - { limit: time-out, at-most: 90 min }
  - { limit: cleaning-interval, at-most: 240 }
site: https://example.org/guides/
theme: ours
over: ../course
off:
  - { check: loss-unstated, reason: Losses are weighed once a quarter. }
";

const PROCEDURE: &str = "\
title: Pork loin off the bone
species: pork
house-cut: true
purpose: |
  For the counter: chops and a roast.
level: second year
needs: [pork/side]
product: red-meat
served-raw: \"false\"
parasites: frozen
allergens: [none]
age: under 12 months
tools: [steel]
wear: [mesh-gauntlet]
cautions: [keep-cold]
set-up-minutes: 5
clean-minutes: 10 to 15
after-work: Clean and dry the saw.
sources: [Course notes]
was: [loin-old]
waivers:
  - { check: loss-unstated, where: Lift the loin, reason: Weighed once., by: course lead, until: 2027-01-31 }
revision:
  number: 2
  date: 2026-10-05
  author: course lead
  owner: head butcher
  approved-by: head butcher
  review-by: \"2027-10-05\"
  change: The ribs are counted before the loin is lifted.
  state: in-force
start:
  piece: pork-loin
  weight: 6.5 kg to 8.0 kg
  typical: 7200 g
  as: chine on
  temperature: 0–4 °C
  side: left
  sources: [Course notes]
yields: { pork-ribs: 10–20 %, pork-eye: 55–65 %, loss: 0–2 % }
steps:
  - name: Lift the loin
    id: lift
    take: pork-loin
    do: Cut along the feather bones. Then follow the ribs.
    hold: Flat on the fat side, behind the blade.
    draws: toward-body
    tools: [boning-knife, { any-of: [band-saw, hand-saw] }]
    cautions: [protect-holding-hand, blade-away-from-body, apron-when-drawing-in]
    wear: [mesh-gauntlet, mesh-apron]
    minutes: 5–12
    landmark: The ridge of the spine.
    anatomy: [feather-bones]
    anatomy-note: The feather bones stand upright.
    good: No meat on the bone.
    mistakes: Cuts into the eye.
    pictures:
      - file: pictures/loin.svg
        alt: \"A loin, seen from above\"
        caption: Where to begin
        side: both
        lines:
          - { label: first cut, points: [[0.12, 0.40], [0.85, \"1\"], [0, .5]] }
    ask:
      - { question: Why count first?, answer: It fixes the length of the rack. }
    give:
      pork-eye-rough: 66–72 %
      pork-frame:
        share: 27.6 to 33.6 %
        typical: 30.5 %
        pieces: 1
        counts: { ribs: 11, lumbar-vertebrae: 5–6, true-ribs: rest }
        holds: [vertebral-column]
        side: left
        sources: [Course notes]
    loss: { share: 0–0.5 %, typical: 0.2 % }
    side: left
    sources: [Course notes]
  - name: Saw the ribs off
    take: [pork-frame]
    do: Feed the frame with the pusher.
    after: [{ step: lift, why: The eye would be sawn through. }]
    at-once: 2
    back-to-cold: all
    cuts-through: [ribs]
    give:
      pork-ribs: { share: 0.4–0.48, use: retail, portions: { weight: 1 lb 2 oz – 1 lb 6 oz, count: 1–2 } }
      pork-bone: { share: rest, use: bone }
    loss: 0
  - name: Slice
    take: pork-eye-rough
    do: Slice across.
    back-to-cold: [pork-eye]
    give:
      pork-eye: { share: 97.5–100%, use: retail, portions: { thickness: 20–25 mm } }
    loss: 0–2.5 %
";

const CUTS: &str = "\
pork-tenderloin:
  name: Tenderloin
  also: [fillet, { psoas: anatomy, undercut: uk }]
  codes: { imps: 415, unece: \"4280\" }
  weight: 0.4-0.6 kg
  per-animal: 2
  region: loin
  lies: Under the loin, along the lumbar bones.
  was: [pork-filet]
";

const ANATOMY: &str = "\
like: pig
shield:
  name: Shield
  also: [armour]
  kind: tissue
  count: 1–2
  regions: [shoulder]
  does: Guards the shoulder in fights.
  lies: Under the skin of the shoulder.
  sources: [Course notes]
";

const CAUTIONS: &str = "\
heavy-tub:
  name: A full tub is heavy
  signal: caution
  hazard: A full tub is heavy.
  consequence: A strained back.
  avoid: Lift it with two.
  harm: healing
  sign: W001
  sources: [Course notes]
";

const TOOLS: &str = "\
rib-puller:
  name: Rib puller
  cautions: [protect-holding-hand, heavy-tub]
  wear: [cut-glove]
  never: [disposable-gloves]
";

const COURSE: &str = "\
title: First term
class-size: \"16\"
lessons:
  - { name: Loins, procedures: [pork/side], aims: Joints as landmarks }
";

const PRICES: &str = "\
currency: EUR
date: 2026-11-02
tax: without
buy: { pork-loin: 3.40 / kg }
credit: { pork-bone: 0.03 / 100 g }
sell: { pork-eye: 15.90 / lb }
labour: 24.00 / h
cooked: { pork-eye: 70–75 % }
";
