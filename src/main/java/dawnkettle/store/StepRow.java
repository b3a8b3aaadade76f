package dawnkettle.store;

import java.time.Instant;

/**
 * Where a step stands.
 *
 * @param changedAt when it came into this state
 * @param note what was done, or why not
 */
public record StepRow(StepKey key, State state, Instant dueAt, int attempts, Instant changedAt, String note) {
    /** The states of a step; done and skipped are final. */
    public enum State {
        DUE,
        STARTED,
        DONE,
        FAILED,
        SKIPPED;

        public boolean isFinal() {
            return this == DONE || this == SKIPPED;
        }
    }
}
