//! Telling an answer: text to the output or to the error output. A reader that has seen enough is no fault.

use std::io::{self, ErrorKind, Write};

/// Tells the answer.
pub fn tell(text: &str) -> io::Result<()> {
    told(io::stdout().lock(), text)
}

/// Tells what stands beside the answer.
pub fn tell_beside(text: &str) -> io::Result<()> {
    told(io::stderr().lock(), text)
}

fn told(mut out: impl Write, text: &str) -> io::Result<()> {
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(fault) if fault.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    struct Closed(ErrorKind);

    impl Write for Closed {
        fn write(&mut self, _: &[u8]) -> io::Result<usize> {
            Err(self.0.into())
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn a_reader_that_has_seen_enough_is_no_fault_but_a_full_disk_is() {
        assert!(told(Closed(ErrorKind::BrokenPipe), "x").is_ok());
        assert!(told(Closed(ErrorKind::StorageFull), "x").is_err());
    }
}
