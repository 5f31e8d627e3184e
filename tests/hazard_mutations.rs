//! Every guide of the demonstration, harmed in one place at a time: each harm must give exactly the right finding.
//!
//! Removed cautions and protection, gloves at the saw, steps that take too long, a start that is too warm, a gland in
//! the fat tub, a bone of another animal. What is right is decided here, from the table of the guidebook format, and
//! not by the code under test.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may fail")]
#![expect(clippy::disallowed_methods, reason = "these tests read the demonstration")]

use std::fs;
use std::path::Path;

use seamwise::finding::Level;
use seamwise::source::{Entry, Files};

/// The demonstration as texts and other files.
fn demo() -> Files {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("procedures");
    let mut files = Files::new();
    let mut folders = vec![root.clone()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let inside = path.strip_prefix(&root).unwrap().to_string_lossy().replace('\\', "/");
                files.insert(inside, Entry::File(fs::read(&path).unwrap()));
            }
        }
    }
    files
}

/// A guide of the demonstration, line by line.
struct Guide {
    path: String,
    lines: Vec<String>,
}

/// One step of a guide, by the positions of its lines.
struct Step {
    first: usize,
    end: usize,
}

impl Guide {
    fn all(files: &Files) -> Vec<Self> {
        let beside = ["cuts/", "anatomy/", "courses/", "cutting-tests/", "pages/", "pictures/"];
        let is_guide = |path: &str| path.contains('/') && path.ends_with(".yaml") && !beside.iter().any(|folder| path.starts_with(folder));
        let text = |entry: &Entry| match entry {
            Entry::File(bytes) => String::from_utf8(bytes.clone()).unwrap(),
            _ => panic!("not a file"),
        };
        let guides = files.iter().filter(|(path, _)| is_guide(path));
        guides.map(|(path, entry)| Self { path: path.clone(), lines: text(entry).lines().map(str::to_owned).collect() }).collect()
    }

    fn steps(&self) -> Vec<Step> {
        let firsts: Vec<usize> = (0..self.lines.len()).filter(|at| self.lines[*at].starts_with("  - name: ")).collect();
        let is_beside = |line: &str| line.starts_with(|first: char| first.is_ascii_lowercase());
        let last = (firsts[0]..self.lines.len()).find(|at| is_beside(&self.lines[*at])).unwrap_or(self.lines.len());
        let ends = firsts.iter().skip(1).copied().chain([last]);
        firsts.iter().zip(ends).map(|(first, end)| Step { first: *first, end }).collect()
    }

    /// The position of a key of a step.
    fn key(&self, step: &Step, key: &str) -> Option<usize> {
        (step.first..step.end).find(|at| self.lines[*at].starts_with(&format!("    {key}: ")))
    }

    /// The items of a list of a step that stands on one line.
    fn list(&self, step: &Step, key: &str) -> Vec<String> {
        self.key(step, key).map_or_else(Vec::new, |at| items(&self.lines[at]))
    }

    /// What is found when one line reads otherwise.
    fn with(&self, files: &Files, at: usize, line: &str) -> Vec<Found> {
        let mut lines = self.lines.clone();
        line.clone_into(&mut lines[at]);
        found(files, &self.path, &(lines.join("\n") + "\n"))
    }
}

/// The ids between brackets, those of a choice among them.
fn items(line: &str) -> Vec<String> {
    let inner = line.split_once('[').unwrap().1;
    let words = inner.split([',', ' ', '[', ']', '{', '}']).map(|word| word.trim_end_matches(':'));
    words.filter(|word| !word.is_empty() && *word != "any-of").map(str::to_owned).collect()
}

/// A line with one item of its list taken out.
fn without(line: &str, item: &str) -> String {
    let kept: Vec<String> = items(line).into_iter().filter(|other| other != item).collect();
    format!("{}[{}]", line.split_once('[').unwrap().0, kept.join(", "))
}

/// A finding as a test compares it.
#[derive(Debug, PartialEq, Eq)]
struct Found {
    level: Level,
    check: &'static str,
    path: String,
    line: u32,
    column: u32,
    message: String,
}

/// What is found when a file reads otherwise, in the guides of its species alone: that is quicker, and as good.
fn found(files: &Files, path: &str, text: &str) -> Vec<Found> {
    let species = path.split('/').next().filter(|_| path.contains('/'));
    let cuts = species.map(|species| format!("cuts/{species}.yaml"));
    let belongs = |other: &str| {
        let same = other.split('/').next() == species || cuts.as_deref() == Some(other);
        species.is_none() || same || other == "guidebook.yaml" || other.starts_with("pictures/")
    };
    let mut files: Files = files.iter().filter(|(other, _)| belongs(other)).map(|(path, entry)| (path.clone(), entry.clone())).collect();
    files.insert(path.to_owned(), Entry::File(text.as_bytes().to_vec()));
    let inspection = seamwise::inspect(files);
    let told = inspection.findings.iter().map(|finding| {
        let at = inspection.sources.line_column(finding.place);
        let path = inspection.sources.path(finding.place.file).to_owned();
        Found { level: finding.level, check: finding.check, path, line: at.line, column: at.column, message: finding.message.clone() }
    });
    told.collect()
}

fn faults(found: &[Found]) -> Vec<&Found> {
    found.iter().filter(|found| found.level == Level::Fault).collect()
}

/// Exactly one fault, of this check, at the first character of this line (counted from 0), with these words.
#[track_caller]
fn one_fault(found: &[Found], check: &str, line: usize, words: &str) {
    let faults = faults(found);
    let [only] = faults[..] else { panic!("expected one `{check}` about {words}, found {faults:#?}") };
    assert_eq!((only.check, only.line as usize), (check, line + 1), "{only:#?}");
    assert!(only.message.contains(words), "{only:#?} does not say {words}");
}

/// The cautions that the table of the guidebook format demands of a step, with the conditions beyond it.
fn demanded(guide: &Guide, step: &Step) -> Vec<&'static str> {
    let mut all = Vec::new();
    for tool in guide.list(step, "tools") {
        all.extend_from_slice(match tool.as_str() {
            "boning-knife" | "breaking-knife" => &["protect-holding-hand", "blade-away-from-body"][..],
            "slicing-knife" | "fillet-knife" | "cleaver" | "hand-saw" => &["protect-holding-hand"],
            "band-saw" => &["no-glove-at-moving-blade", "saw-guard-and-pusher", "isolate-before-cleaning"],
            "mincer" | "slicing-machine" | "tenderizer" => &["isolate-before-cleaning"],
            _ => &[],
        });
    }
    if guide.key(step, "draws").is_some() {
        all.push("apron-when-drawing-in");
    }
    // Skull, backbone, cord, tonsils or ileum; of the demonstration only the backbone and the cord are met.
    let spine = ["neck-bones", "thoracic-vertebrae", "vertebral-column", "sacrum", "spinal-cord"];
    if guide.list(step, "anatomy").iter().any(|part| spine.contains(&part.as_str())) {
        match guide.path.split('/').next() {
            Some("beef") => all.push("risk-material-beef"),
            Some("lamb") => all.push("risk-material-sheep"),
            _ => {}
        }
    }
    if guide.lines.contains(&"served-raw: true".to_owned()) {
        all.push("parasite-freezing");
        if guide.list(step, "wear").contains(&"cut-glove".to_owned()) {
            all.push("cover-cut-glove-for-raw-service");
        }
    }
    all
}

/// True when what is worn meets the demand of a tool, by the table of the guidebook format.
fn serves(tool: &str, worn: &[String]) -> bool {
    let has = |id: &str| worn.iter().any(|own| own == id);
    match tool {
        "boning-knife" | "breaking-knife" => has("mesh-gauntlet") || (has("cut-glove") && has("arm-guard")),
        "slicing-knife" | "fillet-knife" | "cleaver" | "hand-saw" => has("cut-glove") || has("mesh-gauntlet"),
        _ => true,
    }
}

#[test]
fn the_demonstration_is_sound() {
    let inspection = seamwise::inspect(demo());
    assert!(inspection.findings.is_empty(), "{:#?}", inspection.findings);
}

/// One caution less: a fault at the step's tools when the table demands it, otherwise none.
#[test]
fn removing_any_one_caution() {
    let files = demo();
    let mut missing = 0;
    for guide in Guide::all(&files) {
        for step in guide.steps() {
            let Some(at) = guide.key(&step, "cautions") else { continue };
            for caution in guide.list(&step, "cautions") {
                let found = guide.with(&files, at, &without(&guide.lines[at], &caution));
                if demanded(&guide, &step).contains(&caution.as_str()) {
                    one_fault(&found, "caution-missing", guide.key(&step, "tools").unwrap(), &format!("`{caution}`"));
                    missing += 1;
                } else {
                    assert!(faults(&found).is_empty(), "{}: {caution}: {found:#?}", guide.path);
                }
            }
        }
        let beside = guide.lines.iter().position(|line| line.starts_with("cautions: ")).unwrap();
        for caution in items(&guide.lines[beside]) {
            let found = guide.with(&files, beside, &without(&guide.lines[beside], &caution));
            // What every step owes is told once, at the first of them.
            let first = &guide.steps()[0];
            if demanded(&guide, first).contains(&caution.as_str()) {
                one_fault(&found, "caution-missing", guide.key(first, "tools").unwrap(), &format!("`{caution}`"));
            } else {
                assert!(faults(&found).is_empty(), "{}: {caution}: {found:#?}", guide.path);
            }
        }
    }
    assert!(missing > 50, "only {missing} removals were faults");
}

/// A saw caution that is moved behind its step, to one that does not owe it.
#[test]
fn moving_a_caution_behind_its_step() {
    let files = demo();
    let loin = Guide::all(&files).into_iter().find(|guide| guide.path == "pork/loin-boneless.yaml").unwrap();
    let steps = loin.steps();
    let saw = steps.iter().position(|step| loin.list(step, "tools").contains(&"band-saw".to_owned())).unwrap();
    let (here, later) = (loin.key(&steps[saw], "cautions").unwrap(), loin.key(&steps[saw + 1], "cautions").unwrap());
    let mut lines = loin.lines.clone();
    lines[here] = without(&lines[here], "saw-guard-and-pusher");
    lines[later] = lines[later].replace(']', ", saw-guard-and-pusher]");
    let found = found(&files, &loin.path, &(lines.join("\n") + "\n"));
    one_fault(&found, "caution-after-act", loin.key(&steps[saw], "tools").unwrap(), "after the act");
}

/// One piece of protection less: a fault at the step's tools when what is left does not serve, otherwise none.
#[test]
fn removing_any_one_protection() {
    let files = demo();
    let mut missing = 0;
    for guide in Guide::all(&files) {
        for step in guide.steps() {
            let at = guide.key(&step, "wear").unwrap();
            let worn = guide.list(&step, "wear");
            for item in &worn {
                let left: Vec<String> = worn.iter().filter(|other| *other != item).cloned().collect();
                let served = guide.list(&step, "tools").iter().all(|tool| serves(tool, &left));
                let apron = item == "mesh-apron" && guide.key(&step, "draws").is_some();
                let found = guide.with(&files, at, &without(&guide.lines[at], item));
                if served && !apron {
                    assert!(faults(&found).is_empty(), "{}: {item}: {found:#?}", guide.path);
                } else {
                    one_fault(&found, "protection-missing", guide.key(&step, "tools").unwrap(), "demands");
                    missing += 1;
                }
            }
        }
    }
    assert!(missing > 30, "only {missing} removals were faults");
}

/// One glove more at the band saw: a fault at the glove. What is no glove may be added.
#[test]
fn adding_any_one_glove_at_the_saw() {
    let files = demo();
    let mut saws = 0;
    for guide in Guide::all(&files) {
        for step in guide.steps().iter().filter(|step| guide.list(step, "tools").contains(&"band-saw".to_owned())) {
            saws += 1;
            let at = guide.key(step, "wear").unwrap();
            for item in ["cut-glove", "mesh-gauntlet", "disposable-gloves", "arm-guard", "mesh-apron", "non-slip-boots"] {
                let line = guide.lines[at].replace('[', &format!("[{item}, "));
                let found = guide.with(&files, at, &line);
                if ["arm-guard", "mesh-apron", "non-slip-boots"].contains(&item) {
                    assert!(found.is_empty(), "{item}: {found:#?}");
                } else {
                    one_fault(&found, "protection-forbidden", at, &format!("`{item}`"));
                    assert_eq!(faults(&found)[0].column as usize, line.find(item).unwrap() + 1);
                }
            }
            // A knife beside the saw contradicts it, whatever is worn.
            let tools = guide.key(step, "tools").unwrap();
            let found = guide.with(&files, tools, &guide.lines[tools].replace('[', "[cleaver, "));
            let wrong: Vec<&str> = faults(&found).iter().map(|found| found.check).collect();
            assert_eq!(wrong, ["caution-missing", "tools-contradict"], "the cleaver's own caution is missing too");
        }
    }
    assert!(saws > 0);
}

/// Every step is made just so long that the stretch passes the limit of the shop in it, by one minute.
#[test]
fn stretching_any_one_step_past_the_limit() {
    const LIMIT: f64 = 30.0;
    let files = demo();
    for guide in Guide::all(&files) {
        let mut out = 0.0;
        for step in guide.steps() {
            let at = guide.key(&step, "minutes").unwrap();
            let (key, value) = guide.lines[at].split_once(": ").unwrap();
            let (low, high) = value.split_once('–').unwrap_or((value, value));
            let high: f64 = high.parse().unwrap();
            out += high;
            assert!(out <= LIMIT, "{}: {out} minutes", guide.path);
            let longer = guide.with(&files, at, &format!("{key}: {low}–{}", high + LIMIT - out + 1.0));
            one_fault(&longer, "out-too-long", step.first, "31 minutes");
            let just = guide.with(&files, at, &format!("{key}: {low}–{}", high + LIMIT - out));
            assert!(!faults(&just).iter().any(|fault| fault.line as usize == step.first + 1), "equal is not over: {just:#?}");
            if guide.lines[step.first..step.end].iter().any(|line| line.trim() == "back-to-cold: all") {
                out = 0.0;
            }
        }
    }
}

/// A step without minutes is one advice, and no fault of the cold.
#[test]
fn leaving_out_the_minutes_of_any_one_step() {
    let files = demo();
    for guide in Guide::all(&files) {
        for step in guide.steps() {
            let found = guide.with(&files, guide.key(&step, "minutes").unwrap(), "    # no minutes");
            let [one] = &found[..] else { panic!("{found:#?}") };
            assert_eq!((one.check, one.level, one.line as usize), ("minutes-missing", Level::Advice, step.first + 1));
        }
    }
}

/// A start that may arrive half a degree too warm.
#[test]
fn warming_the_start() {
    let files = demo();
    for guide in Guide::all(&files) {
        let at = guide.lines.iter().position(|line| line.starts_with("  temperature: ")).unwrap();
        // Poultry 4 °C, red meat and game 7 °C, and for fresh fish of eu-853 words without a figure.
        let limit = match guide.path.split('/').next() {
            Some("chicken") => 4.0,
            Some("salmon") => {
                assert!(guide.with(&files, at, "  temperature: 0–9 °C").is_empty(), "no figure, no fault");
                continue;
            }
            _ => 7.0,
        };
        assert!(guide.with(&files, at, &format!("  temperature: 0–{limit} °C")).is_empty(), "equal is fine");
        one_fault(&guide.with(&files, at, &format!("  temperature: 0–{} °C", limit + 0.5)), "start-above-hold-limit", at, "0.5 °C above");
    }
}

/// A gland in any tub but the inedible one, and bones of another animal or another region.
#[test]
fn glands_and_bones_in_the_wrong_place() {
    let files = demo();
    let guide = |path: &str| Guide::all(&files).into_iter().find(|guide| guide.path == path).unwrap();
    let lamb = guide("lamb/leg-seam-boned.yaml");
    let node = lamb.lines.iter().position(|line| line.contains("lamb-popliteal-node: {")).unwrap();
    one_fault(
        &lamb.with(&files, node, &lamb.lines[node].replace("inedible", "fat-trim")),
        "gland-not-inedible",
        node,
        "`popliteal-node` ends in `lamb-popliteal-node`",
    );
    let side = guide("pork/side-primals.yaml");
    for (path, part, check) in [
        ("chicken/eight-pieces.yaml", "aitch-bone", "part-not-in-species"),
        ("pork/loin-boneless.yaml", "keel", "part-not-in-species"),
        ("pork/loin-boneless.yaml", "femur", "part-not-in-region"),
        ("lamb/leg-seam-boned.yaml", "blade-bone", "part-not-in-region"),
        ("lamb/leg-seam-boned.yaml", "femor", "part-unknown"),
    ] {
        let guide = guide(path);
        let step = &guide.steps()[0];
        let at = guide.key(step, "anatomy").unwrap();
        one_fault(&guide.with(&files, at, &guide.lines[at].replace('[', &format!("[{part}, "))), check, at, &format!("`{part}`"));
    }
    let beef = guide("beef/chuck-boned.yaml");
    let spine = beef.lines.iter().position(|line| line.trim() == "use: risk-material").unwrap();
    one_fault(&beef.with(&files, spine, "        use: bone"), "risk-material-not-set-apart", spine, "over 30 months under eu-853");
    let age = beef.lines.iter().position(|line| line.starts_with("age: ")).unwrap();
    let unknown = beef.with(&files, age, "age: unknown");
    assert!(unknown.is_empty(), "unknown counts as over, and all is set apart: {unknown:#?}");
    let ribs = side.lines.iter().position(|line| line.contains("counts: { ribs: 3 }")).unwrap();
    let found = side.with(&files, ribs, &side.lines[ribs].replace("ribs: 3", "ribs: 18"));
    one_fault(&found, "count-outside-species", ribs, "18 ribs, and pork has 13–17 a side");
}

/// The profile taken out: one advice. A figure of the shop that is looser than the profile: one fault.
#[test]
fn the_guidebook_itself() {
    let files = demo();
    let Some(Entry::File(bytes)) = files.get("guidebook.yaml") else { panic!("no guidebook.yaml") };
    let text = String::from_utf8(bytes.clone()).unwrap();
    let none = found(&files, "guidebook.yaml", &text.replace("limits: eu-853\n", ""));
    assert!(matches!(&none[..], [one] if one.check == "profile-missing" && one.level == Level::Advice), "{none:#?}");
    let looser =
        text.replace("stricter:\n", "stricter:\n  - { limit: hold, at-most: 9 °C, watch: me, every: piece, if-missed: Chill it. }\n");
    let at = looser.lines().position(|line| line.contains("9 °C")).unwrap();
    one_fault(&found(&files, "guidebook.yaml", &looser), "stricter-looser-than-profile", at, "eu-853");
}
