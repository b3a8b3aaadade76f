package dawnkettle;

import dawnkettle.command.Dawnkettle;
import dawnkettle.command.Wiring;
import dawnkettle.conf.Configuration;
import dawnkettle.conf.PrinterProfiles;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.draw.DotDrawing;
import dawnkettle.draw.LabelDesigns;
import dawnkettle.draw.LabelTypefaces;
import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.draw.TypefaceFile;
import dawnkettle.intake.ReadHistory;
import dawnkettle.label.CaseLabels;
import dawnkettle.label.Designs;
import dawnkettle.label.LotLabels;
import dawnkettle.label.MarketWording;
import dawnkettle.label.PrinterProfile;
import dawnkettle.night.Office;
import dawnkettle.night.PastWeeks;
import dawnkettle.night.Story;
import dawnkettle.schedule.Ticker;
import dawnkettle.sheet.SheetDrawing;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.DiskAway;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.logging.Level;
import java.util.logging.Logger;

/** The door: builds everything by hand, runs one command, and leaves with its exit status. */
public final class Main implements Wiring {
    /** Held, so that its level stays: libraries only speak when something is wrong. */
    private static final Logger LIBRARIES = Logger.getLogger("org");

    private static final Duration TICK = Duration.ofMinutes(1);

    /** So long the ledger may take to be closed when the service stops (common practice, no source). */
    private static final Duration CLOSING = Duration.ofSeconds(10);

    private final InitSystem init = InitSystem.of(System.getenv());
    private final CountDownLatch allIsClosed = new CountDownLatch(1);

    Main() {}

    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true");
        LIBRARIES.setLevel(Level.WARNING);
        Main main = new Main();
        int status = Dawnkettle.run(main, args);
        main.allIsClosed.countDown();
        System.exit(status);
    }

    @Override
    public Clock clock(Configuration conf) {
        return Clock.system(conf.shop().house().zone());
    }

    @Override
    public Path shopFolder(Optional<Path> named) {
        return named.orElseGet(() -> Files.isDirectory(Path.of("conf")) ? Path.of("conf") : Defaults.unpacked());
    }

    @Override
    public Configuration configuration(Path folder) {
        Configuration conf = ReadConfiguration.from(folder);
        List<Problem> problems = new ArrayList<>();
        Designs designs = LabelDesigns.read(conf.labels().folder(), problems);
        Map<String, PrinterProfile> profiles =
                PrinterProfiles.read(conf.labels().folder().resolve("printers"), problems);
        List<TypefaceFile> typefaces = TypefaceFile.read(conf.typefaces(), problems);
        problems.addAll(MissingLetters.of(conf.shop(), new PdfTypeface(typefaces)));
        String profile = conf.labels().line().profile();
        if (profiles.containsKey(profile))
            problems.addAll(labels(conf, designs, drawing(conf, profiles.get(profile), typefaces)));
        else
            problems.add(new Problem(
                    Place.of("shop.toml"),
                    "no printer profile is called \"" + profile + "\"",
                    "write profile as one of " + String.join(", ", profiles.keySet())));
        if (!problems.isEmpty()) throw new BadFile(problems);
        return conf;
    }

    /** Tries every product's labels, so that what does not fit is known before the night. */
    private static List<Problem> labels(Configuration conf, Designs designs, DotDrawing drawing) {
        LotLabels lots = new LotLabels(designs, new CaseLabels(conf.shop().house()), drawing);
        return conf.shop().products().stream()
                .flatMap(product -> lots.check(product).stream())
                .distinct()
                .toList();
    }

    static DotDrawing drawing(Configuration conf, PrinterProfile profile, List<TypefaceFile> typefaces) {
        MarketWording wording = MarketWording.of(conf.shop().house().market());
        return new DotDrawing(
                new LabelTypefaces(typefaces),
                profile.head().pitch(),
                wording.type().leastXHeight());
    }

    @Override
    public Office rehearsal(Configuration conf, Stage stage) {
        return new Office(
                papers(conf, stage.folder()),
                stage.ledger(),
                stage.clock(),
                new Doors(conf).rehearsal(stage),
                stage.story());
    }

    /** In a rehearsal what changes from day to day lies in its own folder. */
    private static Office.Papers papers(Configuration conf, Path folder) {
        return new Office.Papers(conf.shop(), conf.standing(), conf.night().inFolder(folder));
    }

    @Override
    public Office service(Configuration conf, Ledger ledger, Story story) {
        Office.Papers papers = new Office.Papers(conf.shop(), conf.standing(), conf.night());
        return new Office(papers, ledger, init.watched(clock(conf)), new Doors(conf).service(init), story);
    }

    @Override
    public void loadHistory(Configuration conf, Path confFolder, Ledger ledger) {
        Path history = confFolder.resolve("rehearsal/history");
        if (Files.isDirectory(history)) PastWeeks.load(ledger, ReadHistory.from(history, conf.shop()));
    }

    @Override
    public SheetDrawing drawing() {
        return new PdfSheets(PdfTypeface.notoSans());
    }

    @Override
    public void serve(Runnable tick) {
        Runnable watched = init.watched(tick);
        CountDownLatch stopped = new CountDownLatch(1);
        AtomicReference<DiskAway> gone = new AtomicReference<>();
        Ticker ticker = Ticker.start(
                () -> {
                    try {
                        watched.run();
                    } catch (DiskAway away) {
                        gone.set(away);
                        stopped.countDown();
                    }
                },
                TICK);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            init.stopping();
            ticker.close();
            stopped.countDown();
            awaitClosed();
        }));
        try {
            stopped.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (gone.get() == null) return;
        ticker.close();
        throw gone.get();
    }

    /** The machine goes on stopping when the hooks are over, so they wait until the ledger's file is whole by itself. */
    private void awaitClosed() {
        try {
            allIsClosed.await(CLOSING.toSeconds(), TimeUnit.SECONDS); // longer, and the init system would cut it off
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
