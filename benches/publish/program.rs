//! Runs the real program as a child and says how long it took and how much memory it held at most.

use std::fs;
use std::process::{Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

/// How one run went.
#[derive(Clone, Copy)]
pub(crate) struct Run {
    pub(crate) wall: Duration,
    /// Time of all cores together.
    pub(crate) work: Duration,
    /// The most bytes that lay in memory at once; 0 where that was not asked.
    pub(crate) peak: usize,
}

/// How often the child's memory is looked at. What grows and goes away within the last such time is missed.
const BETWEEN: Duration = Duration::from_millis(3);

/// Runs the program with these words; panics unless it ends well, or with advice alone.
pub(crate) fn run(words: &[&str]) -> Run {
    let before = work_so_far(Whose::Children);
    let begun = Instant::now();
    let mut child = Command::new(env!("CARGO_BIN_EXE_seamwise")).args(words).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
    let status_file = format!("/proc/{}/status", child.id());
    let mut peak = 0;
    let status = loop {
        peak = fs::read_to_string(&status_file).ok().and_then(|text| bytes_of(&text, "VmHWM:")).map_or(peak, |seen| seen.max(peak));
        match child.try_wait().unwrap() {
            Some(status) => break status,
            None => sleep(BETWEEN),
        }
    };
    let wall = begun.elapsed();
    assert!(status.success(), "{words:?} ended with {status}");
    Run { wall, work: work_so_far(Whose::Children) - before, peak }
}

/// Whose time is asked for.
pub(crate) enum Whose {
    /// That of this process.
    Own,
    /// That of its children that have ended.
    Children,
}

/// The processor time that was used so far, in steps of a hundredth of a second: the times `utime` and `stime`, or
/// `cutime` and `cstime`, of proc_pid_stat(5), whose clock ticks a hundred times a second.
pub(crate) fn work_so_far(whose: Whose) -> Duration {
    let text = fs::read_to_string("/proc/self/stat").unwrap();
    // The second field is a name in brackets, which may hold blanks; `utime` is the fourteenth.
    let fields: Vec<&str> = text.rsplit_once(')').unwrap().1.split_whitespace().collect();
    let first = match whose {
        Whose::Own => 11,
        Whose::Children => 13,
    };
    let ticks: u64 = fields[first..first + 2].iter().map(|ticks| ticks.parse::<u64>().unwrap()).sum();
    Duration::from_millis(ticks * 10)
}

/// How much memory this process holds now, in bytes.
pub(crate) fn in_memory() -> usize {
    bytes_of(&fs::read_to_string("/proc/self/status").unwrap(), "VmRSS:").unwrap()
}

/// A line of proc_pid_status(5) in bytes: `VmRSS:` is resident memory, `VmHWM:` the most that it ever was.
fn bytes_of(status: &str, name: &str) -> Option<usize> {
    let line = status.lines().find_map(|line| line.strip_prefix(name))?;
    line.trim().strip_suffix("kB")?.trim().parse::<usize>().ok().map(|kilobytes| kilobytes * 1024)
}
