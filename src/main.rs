//! The program: hands the arguments to the library's `cli` room and leaves with its exit status.
fn main() {}
