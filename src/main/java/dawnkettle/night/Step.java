package dawnkettle.night;

import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The steps of a night, in the order in which they run where several are due at once. */
public enum Step {
    SOAK_CALL(Duration.ofHours(10)),
    FALLBACK(Duration.ofHours(12)),
    CLOSE(Duration.ofHours(18)),
    PLAN(Duration.ofHours(18)),
    SHEETS(Duration.ofHours(18)),
    SELF_TEST(Duration.ofHours(5)),
    BACKUP(Duration.ofHours(20)),
    DAWN_CHECK(Duration.ofHours(6)),
    LABELS(Duration.ofHours(22)),
    SUMMARY(Duration.ofHours(12)),
    COSTS(Duration.ofHours(60)),
    RECALL_DRILL(Duration.ofHours(60));

    private final Duration useful;

    Step(Duration useful) {
        this.useful = useful;
    }

    /** How long after it was due it is still of use; later it is skipped, and told. */
    public Duration useful() {
        return useful;
    }

    /** The step that is known by a word, where one is. */
    static Optional<Step> ofWord(String word) {
        return Arrays.stream(values()).filter(step -> step.word().equals(word)).findFirst();
    }

    /** The word by which the ledger and people know it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
