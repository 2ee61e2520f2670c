//! Reads files whole and within a size.

use std::fs::File;
use std::io::Read;
use std::path::Path;

use super::{Deed, DiskFault};

/// The bytes of a file, if it has no more than so many.
pub fn read_within(path: &Path, most_bytes: usize) -> Result<Vec<u8>, DiskFault> {
    let fault = |cause| DiskFault::system(Deed::Read, path, cause);
    let file = File::open(path).map_err(fault)?;
    let most_bytes = most_bytes as u64;
    let too_large = |has_bytes| DiskFault::TooLarge { path: path.to_owned(), has_bytes, most_bytes };
    let told = file.metadata().map_err(fault)?.len();
    if told > most_bytes {
        return Err(too_large(told));
    }
    let mut bytes = Vec::with_capacity(usize::try_from(told).unwrap_or_default());
    // A file may grow while it is read, and a pipe tells no size.
    file.take(most_bytes + 1).read_to_end(&mut bytes).map_err(fault)?;
    if bytes.len() as u64 > most_bytes {
        return Err(too_large(bytes.len() as u64));
    }
    Ok(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_over_the_size_is_refused_and_one_at_it_is_read() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.dxf");
        std::fs::write(&path, b"12345").unwrap();
        assert_eq!(read_within(&path, 5).unwrap(), b"12345");
        assert!(matches!(read_within(&path, 4), Err(DiskFault::TooLarge { has_bytes: 5, most_bytes: 4, .. })));
        assert!(read_within(&folder.path().join("none.dxf"), 5).unwrap_err().is_not_there());
    }
}
