//! Work on independent things, dealt out over threads in a fixed way: the results are the same however many there are.

use std::num::NonZeroUsize;
use std::sync::OnceLock;

/// More threads than this share a memory's way more than they share the work.
const MOST_THREADS: usize = 8;

/// Threads that this machine works with at once; asked once, as the answer takes longer than a step of a drag.
pub fn threads_of_this_machine() -> usize {
    static THREADS: OnceLock<usize> = OnceLock::new();
    *THREADS.get_or_init(|| std::thread::available_parallelism().map_or(1, NonZeroUsize::get).min(MOST_THREADS))
}

/// What is found about each thing, in the order of the things. Each thread takes every n-th of them. Fewer than
/// `worth_a_thread` to a thread are not worth starting it.
pub fn in_parts<T: Sync, R: Send>(
    threads: usize,
    worth_a_thread: usize,
    things: &[T],
    find: impl Fn(&T) -> R + Sync,
) -> Vec<R> {
    let threads = threads.min(things.len() / worth_a_thread.max(1));
    if threads < 2 {
        return things.iter().map(find).collect();
    }
    let share = |first: usize| things.iter().skip(first).step_by(threads).map(&find).collect::<Vec<R>>();
    let share = &share;
    let shares: Vec<std::thread::Result<Vec<R>>> = std::thread::scope(|scope| {
        let others: Vec<_> = (1..threads).map(|first| scope.spawn(move || share(first))).collect();
        let own = share(0);
        std::iter::once(Ok(own)).chain(others.into_iter().map(std::thread::ScopedJoinHandle::join)).collect()
    });
    let mut shares: Vec<std::vec::IntoIter<R>> = shares
        .into_iter()
        .map(|share| match share {
            Ok(found) => found.into_iter(),
            // It would have stopped this thread just so, had it done the work itself.
            Err(stopped) => std::panic::resume_unwind(stopped),
        })
        .collect();
    (0..things.len()).filter_map(|index| shares[index % threads].next()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn results_come_in_the_order_of_the_things_whatever_the_number_of_threads() {
        for count in [0, 1, 2, 7, 24, 25] {
            let things: Vec<usize> = (0..count).collect();
            let squares: Vec<usize> = things.iter().map(|n| n * n).collect();
            for threads in [0, 1, 2, 3, 8, 40] {
                assert_eq!(in_parts(threads, 1, &things, |n| n * n), squares, "{count} things, {threads} threads");
            }
        }
    }

    #[test]
    fn little_work_is_done_where_it_is_asked_for() {
        let here = std::thread::current().id();
        let where_done = |count: usize| in_parts(4, 10, &vec![(); count], |()| std::thread::current().id());
        assert!(where_done(19).iter().all(|id| *id == here));
        assert!(where_done(20).iter().any(|id| *id != here));
    }
}
