//! How far a long command is, on one line of standard error that goes away again. Nothing when nobody looks at it.

use std::io::{self, Write};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use super::layout::count;
use super::terminal::Terminal;

/// Short commands show nothing, and long ones do not flicker.
const BETWEEN: Duration = Duration::from_millis(100);

/// Progress over a known number of things.
pub(super) struct Progress {
    all: usize,
    done: AtomicUsize,
    /// When a line was last written; `None` where nobody looks.
    last: Option<Mutex<Instant>>,
    begun: Instant,
}

impl Progress {
    /// Progress over so many things.
    pub(super) fn new(terminal: Terminal, all: usize) -> Self {
        let begun = Instant::now();
        Self { all, done: AtomicUsize::new(0), last: terminal.watched.then(|| Mutex::new(begun)), begun }
    }

    /// One more is done; from any thread.
    pub(super) fn step(&self) {
        let done = self.done.fetch_add(1, Ordering::Relaxed) + 1;
        let Some(last) = &self.last else { return };
        // Whoever finds the line taken leaves it to the next.
        let Ok(mut last) = last.try_lock() else { return };
        if last.elapsed() >= BETWEEN {
            *last = Instant::now();
            drop(write!(io::stderr().lock(), "\r{} of {} files", count(done), count(self.all)));
        }
    }

    /// Takes the line away.
    pub(super) fn end(self) {
        if let Some(last) = &self.last
            && *last.lock().unwrap_or_else(PoisonError::into_inner) != self.begun
        {
            // Back to the start of the line, then clear to its end.
            drop(write!(io::stderr().lock(), "\r\u{1b}[K"));
        }
    }
}
