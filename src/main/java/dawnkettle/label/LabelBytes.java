package dawnkettle.label;

import java.util.Optional;

/** All bytes of one run after the other for a printer that never stops: what a rehearsal writes down. */
public final class LabelBytes {
    private final Framing framing;
    private final PrinterProfile profile;
    private final int group;
    private final Optional<KeptPictures> kept;

    /** @param group most labels between two questions */
    public LabelBytes(PrinterProfile profile, int group) {
        this.framing = new Framing(profile);
        this.profile = profile;
        this.group = framing.mostInGroup(group);
        this.kept = profile.coding()
                .keeping()
                .map(keeping -> new KeptPictures(framing, keeping.room().most()));
    }

    /** The run in its groups, the questions between them left out. */
    public byte[] of(LabelRun run) {
        ByteRoll bytes = new ByteRoll();
        for (LabelCopies copies : run.labels()) {
            Dots fed = copies.fed();
            for (int left = copies.copies(); left > 0; left -= group) {
                boolean isAgain = left < copies.copies() && profile.keeps();
                int count = Math.min(left, group);
                bytes.add(isAgain ? framing.again(count) : group(fed, count));
            }
        }
        return bytes.add(framing.cut()).toBytes();
    }

    private byte[] group(Dots fed, int count) {
        if (kept.isEmpty()) return framing.group(fed, count);
        ByteRoll bytes = new ByteRoll();
        KeptPictures.Base base = kept.get().base(fed);
        if (!kept.get().holds(base)) {
            if (kept.get().isFull()) {
                bytes.add(framing.drop());
                kept.get().forget();
            }
            bytes.add(framing.store(base));
            kept.get().add(base);
        }
        return bytes.add(framing.from(base, fed, count)).toBytes();
    }
}
