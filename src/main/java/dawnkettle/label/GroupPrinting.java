package dawnkettle.label;

import java.time.Duration;

/** Prints runs in small groups with a question between, over any line. */
public final class GroupPrinting implements LabelPrinter {
    private final Framing framing;
    private final PrinterProfile profile;
    private final LabelLine line;
    private final Pace pace;

    /**
     * How labels are printed.
     *
     * @param group most labels sent before the printer is asked how it is, where it does not count them itself
     * @param poll time between two questions
     * @param silence how long no answer is borne
     * @param patience how long a stop (out of labels, cover open) or no progress is borne
     */
    public record Pace(int group, Duration poll, Duration silence, Duration patience) {
        public Pace {
            if (group < 1 || group > 100)
                throw new IllegalArgumentException("group of \"" + group + "\" labels; write 1 to 100");
        }
    }

    public GroupPrinting(PrinterProfile profile, LabelLine line, Pace pace) {
        this.framing = new Framing(profile);
        this.profile = profile;
        this.line = line;
        this.pace = pace;
    }

    @Override
    public void print(LabelRun run, LabelJournal journal) {
        try (LabelLine.Link link = line.open()) {
            GroupTalk talk = new GroupTalk(new PrinterTalk(profile, link, pace), journal, line.name());
            talk.begin(run);
            int next = run.first();
            for (LabelCopies copies : run.labels()) next = print(talk, copies, next);
            talk.cut(framing.cut());
        }
    }

    /** @return number of the label after these */
    private int print(GroupTalk talk, LabelCopies copies, int first) {
        Dots fed = copies.fed();
        int most = framing.mostInGroup(pace.group());
        int next = first;
        for (int left = copies.copies(); left > 0; left -= most) {
            int count = Math.min(left, most);
            // A printer that was disturbed may have been switched off, and have lost what it kept.
            boolean isKept = profile.keeps() && left < copies.copies() && talk.isUndisturbed();
            byte[] bytes = isKept ? framing.again(count) : framing.group(fed, count);
            if (copies.isCounted()) {
                talk.print(bytes, next, count);
                next += count;
            } else talk.printSlip(bytes);
        }
        return next;
    }
}
