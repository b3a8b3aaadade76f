package dawnkettle.label;

import java.util.function.Consumer;

/** Where label runs go: a printer on a line, or a folder in a rehearsal. */
public interface LabelPrinter {
    /**
     * Prints {@code run} in small groups.
     *
     * @throws dawnkettle.trouble.DeviceAway clean where nothing is in doubt (go on with {@code run.from(next)}), ambiguous
     *     where the last intended group is
     */
    void print(LabelRun run, LabelJournal journal);

    /** The same for whoever only wants to hear what came out. */
    default void print(LabelRun run, Consumer<Confirmed> onGroup) {
        print(run, new LabelJournal() {
            @Override
            public void intended(Confirmed group) {
                // Whoever keeps a journal passes one.
            }

            @Override
            public void confirmed(Confirmed group) {
                onGroup.accept(group);
            }

            @Override
            public void doubtful(Confirmed group) {
                // Said by the exception as well.
            }
        });
    }
}
