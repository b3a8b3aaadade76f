package dawnkettle;

import dawnkettle.command.Dawnkettle;
import dawnkettle.command.Wiring;
import dawnkettle.conf.Configuration;
import dawnkettle.conf.PrinterProfiles;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.draw.DotDrawing;
import dawnkettle.draw.DotPng;
import dawnkettle.draw.LabelDesigns;
import dawnkettle.draw.LabelTypefaces;
import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.export.PlanJson;
import dawnkettle.intake.DropFolder;
import dawnkettle.intake.ReadHistory;
import dawnkettle.label.LabelPrinter;
import dawnkettle.label.MarketWording;
import dawnkettle.label.PrinterProfile;
import dawnkettle.line.LabelFolder;
import dawnkettle.mail.Post;
import dawnkettle.night.Edges;
import dawnkettle.night.Office;
import dawnkettle.night.PastWeeks;
import dawnkettle.night.PlanForm;
import dawnkettle.night.Story;
import dawnkettle.night.Thermometer;
import dawnkettle.plan.DayPlan;
import dawnkettle.post.MimeForm;
import dawnkettle.post.PostFolder;
import dawnkettle.schedule.Ticker;
import dawnkettle.sheet.Printer;
import dawnkettle.sheet.SheetStyle;
import dawnkettle.shop.Shop;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;

/** The door: builds everything by hand, runs one command, and leaves with its exit status. */
public final class Main implements Wiring {
    private Main() {}

    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true");
        System.exit(Dawnkettle.run(new Main(), args));
    }

    @Override
    public Clock clock(Configuration conf) {
        return Clock.system(conf.shop().house().zone());
    }

    @Override
    public Configuration configuration(Path folder) {
        return ReadConfiguration.from(folder);
    }

    @Override
    public Office rehearsal(Configuration conf, Stage stage) {
        Path out = stage.folder();
        PdfTypeface typeface = PdfTypeface.notoSans();
        PdfSheets pdf = new PdfSheets(typeface);
        Printer printer = sheet -> {
            try {
                Files.createDirectories(out.resolve("sheets"));
                Files.write(out.resolve("sheets").resolve(sheet.name() + ".pdf"), pdf.draw(sheet));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        };
        PrinterProfile profile =
                PrinterProfiles.read(Path.of("labels/printers")).get("text-with-hex-runs");
        LabelPrinter labels = new LabelFolder(out.resolve("labels"), profile, new DotPng(), 10);
        MarketWording wording = MarketWording.of(conf.shop().house().market());
        DotDrawing drawing = new DotDrawing(
                LabelTypefaces.ours(), profile.head().pitch(), wording.type().leastXHeight());
        Post post = new PostFolder(
                out.resolve("mail"),
                new MimeForm(conf.post().from(), conf.shop().house().zone()));
        Edges edges = new Edges(
                new Edges.Senses(
                        new DroppedOrders(new DropFolder(out.resolve("drop"), Duration.ZERO)),
                        stage.thermometer().orElseGet(() -> norms(conf)),
                        now -> Optional.empty()),
                new Edges.PaperDesk(printer, SheetStyle.of(conf.shop().house(), typeface)),
                new Edges.LabelDesk(
                        labels,
                        drawing,
                        LabelDesigns.read(Path.of("labels")),
                        conf.labels().design()),
                new Edges.MailDesk(post, chart -> {
                    throw new IllegalStateException("no charts");
                }),
                planForm(conf.shop()));
        return new Office(
                new Office.Papers(conf.shop(), conf.standing(), conf.night()),
                stage.ledger(),
                stage.clock(),
                edges,
                stage.story());
    }

    private static Thermometer norms(Configuration conf) {
        return now -> new dawnkettle.plan.Temperatures(
                conf.shop()
                        .climate()
                        .room(now.atZone(conf.shop().house().zone()).getMonth()),
                conf.shop().climate().tap(now.atZone(conf.shop().house().zone()).getMonth()),
                "norm of the month");
    }

    private static PlanForm planForm(Shop shop) {
        return new PlanForm() {
            @Override
            public String write(DayPlan plan) {
                return PlanJson.write(plan, shop);
            }

            @Override
            public DayPlan read(String text) {
                return PlanJson.read(text, shop);
            }
        };
    }

    @Override
    public Office service(Configuration conf, Ledger ledger, Story story) {
        throw new IllegalStateException("not yet");
    }

    @Override
    public void loadHistory(Configuration conf, Path confFolder, Ledger ledger) {
        Path history = confFolder.resolve("rehearsal/history");
        if (Files.isDirectory(history)) PastWeeks.load(ledger, ReadHistory.from(history, conf.shop()));
    }

    @Override
    public void serve(Runnable tick) {
        Ticker ticker = Ticker.start(tick, Duration.ofMinutes(1));
        CountDownLatch stopped = new CountDownLatch(1);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            ticker.close();
            stopped.countDown();
        }));
        try {
            stopped.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public List<Path> rehearsalOrders(Path conf) {
        try (Stream<Path> files = Files.list(conf.resolve("rehearsal"))) {
            return files.filter(file -> file.toString().endsWith(".csv"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
