package dawnkettle.label;

import java.time.Duration;
import java.util.Optional;
import java.util.function.Supplier;

/** Prints runs in small groups with a question between, over any line. */
public final class GroupPrinting implements LabelPrinter {
    private final Framing framing;
    private final PrinterProfile profile;
    private final LabelLine line;
    private final Pace pace;
    private final Optional<KeptPictures> kept;

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
        this.kept = profile.coding()
                .keeping()
                .map(keeping -> new KeptPictures(framing, keeping.room().most()));
    }

    @Override
    public void print(LabelRun run, LabelJournal journal) {
        try (LabelLine.Link link = line.open()) {
            GroupTalk talk = new GroupTalk(new PrinterTalk(profile, link, pace), journal, line.name());
            talk.begin(run);
            Group group = group(talk);
            int next = run.first();
            for (LabelCopies copies : run.labels()) next = print(talk, copies, next, group);
            talk.cut(framing.cut());
        }
    }

    /** The bytes of so many labels, after {@code before} of the same picture. */
    private interface Group {
        byte[] bytes(Dots fed, int count, int before);
    }

    private Group group(GroupTalk talk) {
        if (kept.isPresent()) {
            KeptTalk pictures = new KeptTalk(framing, profile.coding().keeping().orElseThrow(), kept.get(), talk);
            return (fed, count, before) -> pictures.group(fed, count);
        }
        // A printer that was disturbed may have been switched off, and have lost what it kept.
        return (fed, count, before) -> profile.keeps() && before > 0 && talk.isUndisturbed()
                ? framing.again(count)
                : framing.group(fed, count);
    }

    /** @return number of the label after these */
    private int print(GroupTalk talk, LabelCopies copies, int first, Group group) {
        Dots fed = copies.fed();
        int most = framing.mostInGroup(pace.group());
        int next = first;
        for (int before = 0; before < copies.copies(); before += most) {
            int count = Math.min(copies.copies() - before, most);
            int done = before;
            Supplier<byte[]> bytes = () -> group.bytes(fed, count, done);
            if (copies.isCounted()) {
                talk.print(bytes, next, count);
                next += count;
            } else talk.printSlip(bytes);
        }
        return next;
    }
}
