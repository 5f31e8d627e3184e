//! The program: the only room that meets disk, terminal and clock. One command a file.

mod args;
mod failure;
mod folder;
mod read;
mod write;
