package dawnkettle.paper;

import java.util.Locale;

/** How far a print job is (RFC 8011, 5.3.7). */
enum JobState {
    WAITING(3, 4),
    PRINTING(5),
    STOPPED(6),
    CANCELLED(7),
    ABORTED(8),
    COMPLETED(9),
    UNKNOWN;

    private final int[] numbers;

    JobState(int... numbers) {
        this.numbers = numbers;
    }

    static JobState of(int number) {
        for (JobState state : values()) for (int own : state.numbers) if (own == number) return state;
        return UNKNOWN;
    }

    boolean isOver() {
        return this == CANCELLED || this == ABORTED || this == COMPLETED;
    }

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
