package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Copies;
import dawnkettle.store.LedgerCopy;
import dawnkettle.store.LockedCopy;
import dawnkettle.store.LostSince;
import dawnkettle.store.PutBack;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows the copies of the ledger, and puts one back in its place. */
@Command(
        name = "restore",
        mixinStandardHelpOptions = true,
        description = {
            "Show the nightly copies of the ledger; with a day, put that day's copy back in its place.",
            "The ledger that stood there is put aside, never deleted."
        },
        footer = {"", "Example: dawnkettle restore 2026-12-04"})
final class Restore implements Callable<Integer> {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

    /** So many order numbers are named; the rest is "…". */
    private static final int MOST_ORDERS = 20;

    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Parameters(arity = "0..1", paramLabel = "DAY", description = "The day of the copy, as the list names it.")
    private LocalDate day;

    @Option(
            names = "--from",
            paramLabel = "DIR",
            description = "Folder of the copies. Default: the one that shop.toml names")
    private Path from;

    @Option(
            names = "--key",
            paramLabel = "FILE",
            description = "The key that a locked copy opens with. Default: the one that shop.toml names")
    private Path key;

    @Option(
            names = "--unsealed",
            description =
                    "Take a copy without a checksum, as older versions made them: a flipped byte would not be seen.")
    private boolean unsealed;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Restore(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() throws IOException {
        Configuration conf = wiring.configuration(folder.conf());
        Copies copies = new Copies(from == null ? conf.night().places().backups() : from);
        if (!Files.isDirectory(copies.folder()))
            throw new Dawnkettle.Refused("folder \"" + copies.folder() + "\" is not there; name another with --from");
        List<Copies.Dated> all = copies.newestFirst();
        if (all.isEmpty())
            throw new Dawnkettle.Refused(
                    "folder \"" + copies.folder() + "\" holds no copy of a ledger; name another with --from");
        return day == null ? show(all, conf) : putBack(chosen(all), conf);
    }

    private int show(List<Copies.Dated> all, Configuration conf) throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        for (Copies.Dated one : all) {
            String size = String.format(Locale.ROOT, "%6.1f MB", Files.size(one.file()) / 1e6);
            out.println("  " + one.day() + " " + size + "  "
                    + (one.isLocked() ? "locked" : told(one.copy().checked(), conf)));
            out.flush(); // each takes its time
        }
        out.println("To put one back: stop the service (systemctl stop dawnkettle), then: dawnkettle restore "
                + all.get(0).day());
        out.flush();
        return Dawnkettle.DONE;
    }

    private static String told(LedgerCopy.Verdict verdict, Configuration conf) {
        if (!verdict.isSound()) return "NOT SOUND: " + verdict.problems().get(0);
        String newest = verdict.newest()
                .map(at -> ", knows all until " + said(at, conf))
                .orElse("");
        String sealed = verdict.isSealed() ? "sound" : "sound as far as can be seen (no checksum)";
        String changed = verdict.changed().isEmpty()
                ? ""
                : "; LOOK: " + verdict.changed().get(0);
        return sealed + ", " + verdict.rowCount() + " rows" + newest + changed;
    }

    private Copies.Dated chosen(List<Copies.Dated> all) {
        return all.stream()
                .filter(one -> one.day().equals(day))
                .findFirst()
                .orElseThrow(() -> new Dawnkettle.Refused(
                        "there is no copy of " + day + "; say \"restore\" alone to see which there are"));
    }

    private int putBack(Copies.Dated chosen, Configuration conf) throws IOException {
        LedgerCopy copy = chosen.isLocked() ? opened(chosen, conf) : chosen.copy();
        if (!chosen.isLocked() && !copy.isSealed() && !unsealed)
            throw new Dawnkettle.Refused(
                    "copy " + copy.file().getFileName()
                            + " has no checksum beside it, so that a flipped byte would not be seen; take another, or add --unsealed");
        try {
            Instant now = wiring.clock(conf).instant();
            PutBack.Done done = new PutBack(folder.file(conf))
                    .from(copy, now, conf.shop().house().zone());
            tell(chosen, done, conf);
            return Dawnkettle.DONE;
        } finally {
            if (chosen.isLocked()) Files.deleteIfExists(copy.file());
        }
    }

    private LedgerCopy opened(Copies.Dated chosen, Configuration conf) throws IOException {
        Path keyFile = Optional.ofNullable(key)
                .or(() -> conf.night().care().copies().key())
                .orElseThrow(() -> new Dawnkettle.Refused(
                        "copy " + chosen.file().getFileName() + " is locked; name the file with its key with --key"));
        Path open = folder.file(conf).resolveSibling(chosen.file().getFileName() + ".open");
        try {
            new LockedCopy(chosen.file()).open(open, LockedCopy.key(keyFile));
            return new LedgerCopy(open);
        } catch (IOException e) {
            Files.deleteIfExists(open);
            throw DeviceAway.clean(
                    "copy " + chosen.file() + " can't be opened (" + e.getMessage() + "); look at it", e);
        }
    }

    private void tell(Copies.Dated chosen, PutBack.Done done, Configuration conf) {
        PrintWriter out = spec.commandLine().getOut();
        out.println(
                "The copy of " + chosen.day() + " is in place. It knows all until " + said(done.from(), conf) + ".");
        done.aside().ifPresent(aside -> out.println("What stood there lies in " + aside + "."));
        out.println(done.lost()
                .map(lost -> lost(lost, conf))
                .orElse("Nobody can say what it lacks: the ledger that stood "
                        + "there can't be read. Count on everything after " + said(done.from(), conf)
                        + " being lost."));
        out.println("What to do now:");
        out.println("  1. Drop order files that came since once more: they lie in \""
                + conf.night().places().dropFolder().resolve("taken") + "\"; a line counts once.");
        out.println(
                "  2. Type orders by telephone since then again (order CUSTOMER PRODUCT PACKS DATE); mails are read again by themselves.");
        out.println("  3. Write down again what came in, was cooked, counted or lost since (receive, record).");
        out.println(
                "  4. Start the service: systemctl start dawnkettle. Sheets come again, marked as perhaps printed before.");
        out.println(
                "  5. Labels of that time never print by themselves: count them, then \"status\" says what to print.");
        out.flush();
    }

    private static String lost(LostSince lost, Configuration conf) {
        StringBuilder said = new StringBuilder("It does not know of:");
        if (!lost.orders().isEmpty())
            said.append("\n  ")
                    .append(lost.orders().size())
                    .append(lost.orders().size() == 1 ? " order" : " orders")
                    .append(lost.firstOrder()
                            .map(at -> " from " + said(at, conf) + " on")
                            .orElse(""))
                    .append(": ")
                    .append(String.join(
                            ", ",
                            lost.orders()
                                    .subList(
                                            0,
                                            Math.min(MOST_ORDERS, lost.orders().size()))))
                    .append(lost.orders().size() > MOST_ORDERS ? " …" : "");
        if (!lost.files().isEmpty()) said.append("\n  order files: ").append(String.join(", ", lost.files()));
        if (lost.records() > 0) said.append("\n  ").append(lost.records()).append(" records of the crew");
        if (!lost.days().isEmpty())
            said.append("\n  the close of ")
                    .append(String.join(", ", lost.days()))
                    .append(" (it is closed anew)");
        if (!lost.labels().isEmpty())
            said.append("\n  labels of ")
                    .append(String.join(
                            ", ",
                            lost.labels().stream()
                                    .map(one -> one.lot() + " " + one.product())
                                    .toList()))
                    .append(" (in doubt)");
        return said.toString().endsWith(":") ? "It lacks nothing." : said.toString();
    }

    private static String said(Instant at, Configuration conf) {
        ZonedDateTime local = at.atZone(conf.shop().house().zone());
        return TIME.format(local);
    }
}
