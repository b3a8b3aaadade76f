package dawnkettle;

import dawnkettle.label.Confirmed;
import dawnkettle.label.LabelCopies;
import dawnkettle.label.LabelJournal;
import dawnkettle.label.LabelRun;
import dawnkettle.label.LabelText;
import dawnkettle.mail.Mail;
import dawnkettle.sheet.Sheet;
import dawnkettle.trouble.DeviceAway;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/** The night's devices: they fail as the mishaps say, and count what really came out. */
final class FaultyDoors {
    private static final int GROUP = 4;

    /** What the devices ask of the night around them. */
    interface Surroundings {
        /** A point at which the power may go. */
        void point(String name);

        /** What the ledger's file says, asked from outside, so that only what is committed counts. */
        List<String> committed(String query);

        Instant now();

        Optional<String> clockDoubt();

        /** Whether a person holds the lot. */
        boolean isHeld(String lot);

        /** What a label really says. */
        LabelText printed(LabelText words);
    }

    /** A label as it came out. */
    record Out(String lot, String product, int number, boolean copy, LabelText words, Instant at) {}

    /** A mail as it arrived. */
    record Received(String id, boolean saysAgain, int bodyHash) {}

    final List<Out> labels = new ArrayList<>();
    final Map<String, List<Boolean>> sheets = new HashMap<>();
    final Set<String> liedAbout = new HashSet<>();
    final List<Received> mails = new ArrayList<>();
    final List<String> complaints = new ArrayList<>();
    final Map<Mishap.Device, Integer> failures = new EnumMap<>(Mishap.Device.class);
    final FewOrders.WordsOnly drawing = new FewOrders.WordsOnly();
    private final Map<Mishap.Device, Integer> calls = new EnumMap<>(Mishap.Device.class);
    private final Surroundings around;
    private final Random dice;
    private List<Mishap> mishaps;

    FaultyDoors(Surroundings around, List<Mishap> mishaps, Random dice) {
        this.around = around;
        this.mishaps = mishaps;
        this.dice = dice;
    }

    void heal() {
        mishaps = List.of();
    }

    int failures(Mishap.Device device) {
        return failures.getOrDefault(device, 0);
    }

    /** What goes wrong in this call of a device; null where all is well. */
    Mishap.Kind next(Mishap.Device device) {
        int call = calls.merge(device, 1, Integer::sum);
        for (Mishap mishap : mishaps)
            if (mishap.kind().device == device && mishap.isNow(call)) {
                failures.merge(device, 1, Integer::sum);
                return mishap.kind();
            }
        return null;
    }

    void print(Sheet sheet) {
        String key = lastSending();
        Mishap.Kind kind = next(Mishap.Device.PAPER);
        around.point("before a sheet");
        if (kind == Mishap.Kind.PAPER_OFF) throw DeviceAway.clean("the printer is off", null);
        if (kind == Mishap.Kind.PAPER_REFUSES) throw DeviceAway.clean("the printer refuses it", null);
        if (kind == Mishap.Kind.PAPER_HANGS) throw DeviceAway.ambiguous("the printer hangs", null);
        if (kind == Mishap.Kind.PAPER_LIES) liedAbout.add(key);
        else sheets.computeIfAbsent(key, all -> new ArrayList<>()).add(isMarked(sheet));
        around.point("after a sheet");
        if (kind == Mishap.Kind.PAPER_DIES_AFTER_TAKING) throw DeviceAway.ambiguous("the printer is gone", null);
    }

    static boolean isMarked(Sheet sheet) {
        return sheet.pages().get(0).head().stream()
                .anyMatch(mark -> mark.toString().contains("May have been printed before"));
    }

    /** The sheet that was committed last as on its way. */
    private String lastSending() {
        List<String> keys = around.committed("""
                SELECT key FROM effect JOIN (SELECT key, max(seq) AS seq FROM effect_event GROUP BY key) USING (key)
                WHERE kind = 'sheet' AND state = 'sending' ORDER BY seq DESC LIMIT 1""");
        if (keys.isEmpty()) complaints.add("I3: a sheet leaves, and none is committed as on its way");
        return keys.isEmpty() ? "nothing" : keys.get(0);
    }

    void print(LabelRun run, LabelJournal journal) {
        List<LabelText> words = new ArrayList<>();
        for (LabelCopies copies : run.labels())
            for (int i = 0; copies.isCounted() && i < copies.copies(); i++) words.add(drawing.on(copies.picture()));
        if (words.isEmpty()) {
            if (next(Mishap.Device.LABELS) != null) throw DeviceAway.clean("the label printer is off", null);
            around.point("at a slip");
            return;
        }
        String key = "label/" + run.lot() + "/" + run.product();
        if (!run.again()
                && around.committed("SELECT key FROM effect WHERE state = 'sending' AND key = '" + key + "'")
                        .isEmpty()) complaints.add("I3: labels leave, and " + key + " is not committed as on its way");
        for (int first = run.first(); first <= run.last(); first += GROUP) {
            Confirmed group = new Confirmed(run.lot(), run.product(), first, Math.min(first + GROUP - 1, run.last()));
            print(group, words.subList(first - run.first(), group.last() - run.first() + 1), run.again(), journal);
        }
    }

    private void print(Confirmed group, List<LabelText> words, boolean copy, LabelJournal journal) {
        Mishap.Kind kind = next(Mishap.Device.LABELS);
        if (kind == Mishap.Kind.LABELS_OFF) throw DeviceAway.clean("out of labels", null);
        journal.intended(group);
        if (around.committed("SELECT 1 FROM label_in_flight WHERE landed_at IS NULL AND lot = '" + group.lot()
                        + "' AND product = '" + group.product() + "' AND from_number <= " + group.first()
                        + " AND to_number >= " + group.last())
                .isEmpty())
            complaints.add("I3: " + group + " of " + group.lot() + " leaves and is not committed as in flight");
        around.point("before labels");
        int out = words.size();
        if (kind == Mishap.Kind.LABELS_SILENT) out = 0;
        if (kind == Mishap.Kind.LABELS_IN_PART) out = dice.nextInt(words.size());
        for (int i = 0; i < out; i++) {
            labels.add(new Out(
                    group.lot(), group.product(), group.first() + i, copy, around.printed(words.get(i)), around.now()));
            if (around.isHeld(group.lot())) complaints.add("I7: a label of held lot " + group.lot() + " comes out");
            around.clockDoubt().ifPresent(doubt -> complaints.add("I7: a dated label comes out though " + doubt));
            around.point("between labels");
        }
        if (kind != null) {
            journal.doubtful(group);
            throw DeviceAway.ambiguous("the label printer has not answered", null);
        }
        journal.confirmed(group);
        around.point("after labels");
    }

    void send(Mail mail) {
        if (around.committed("SELECT 1 FROM outbox WHERE state = 'sending' AND message_id = '" + mail.id() + "'")
                .isEmpty()) complaints.add("I5: mail " + mail.id() + " leaves and is not committed as on its way");
        Mishap.Kind kind = next(Mishap.Device.POST);
        around.point("before a mail");
        if (kind == Mishap.Kind.POST_421) throw DeviceAway.clean("421 try later", null);
        if (kind == Mishap.Kind.POST_550) throw DeviceAway.clean("550 no", null);
        if (kind == Mishap.Kind.POST_DROPS_AFTER_DATA) throw DeviceAway.ambiguous("the line went after the data", null);
        boolean again = mail.body().text().replaceAll("\\s+", " ").startsWith("This mail may have arrived before");
        mails.add(new Received(mail.id(), again, mail.subject().hashCode()));
        around.point("after a mail");
        if (kind == Mishap.Kind.POST_LOSES_ITS_250) throw DeviceAway.ambiguous("no answer after the data", null);
    }
}
