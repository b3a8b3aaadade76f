package dawnkettle.night;

import java.time.Duration;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * Lets a computation take so long and no longer. One that does not end is left behind, and no other is started here until it
 * has ended; whoever watches hears that the wait goes on, for the wait itself has an end.
 */
final class TimeBox {
    private final String what;
    private final Duration limit;
    private final Runnable moving;
    private FutureTask<?> last;

    /**
     * @param what is computed, in words
     * @param moving is called while it waits
     */
    TimeBox(String what, Duration limit, Runnable moving) {
        this.what = what;
        this.limit = limit;
        this.moving = moving;
    }

    /** It took longer than it may. */
    static final class Over extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Over(String message) {
            super(message);
        }
    }

    /**
     * @throws Over where it does not end in time, or an earlier one still has not
     * @throws RuntimeException what the computation itself throws
     */
    <T> T run(Supplier<T> work) {
        if (last != null && !last.isDone()) throw new Over(what + " that was begun earlier has not ended yet");
        FutureTask<T> task = new FutureTask<>(work::get);
        last = task;
        Thread worker = new Thread(task, "time-box");
        worker.setDaemon(true);
        worker.start();
        try {
            return await(task, worker);
        } catch (ExecutionException thrown) {
            if (thrown.getCause() instanceof RuntimeException mistake) throw mistake;
            throw new IllegalStateException(what + " broke: " + thrown.getCause(), thrown.getCause());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            worker.interrupt();
            throw new IllegalStateException(what + " was stopped", stopped);
        }
    }

    private <T> T await(FutureTask<T> task, Thread worker) throws ExecutionException, InterruptedException {
        long left = limit.toMillis();
        while (left > 0) {
            long slice = Math.min(left, 5_000);
            try {
                return task.get(slice, TimeUnit.MILLISECONDS);
            } catch (TimeoutException goesOn) {
                left -= slice;
                moving.run();
            }
        }
        worker.interrupt();
        throw new Over(what + " took longer than " + limit.toSeconds() + " s");
    }
}
