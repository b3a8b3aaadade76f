package dawnkettle;

import dawnkettle.command.Wiring;
import dawnkettle.conf.Configuration;
import dawnkettle.conf.OrderMailChoice;
import dawnkettle.conf.PrinterProfiles;
import dawnkettle.draw.ChartPictures;
import dawnkettle.draw.DotPng;
import dawnkettle.draw.LabelDesigns;
import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.draw.TypefaceFile;
import dawnkettle.export.PlanJson;
import dawnkettle.intake.DropFolder;
import dawnkettle.intake.RoomReading;
import dawnkettle.intake.SynchronizedClock;
import dawnkettle.intake.Thermometers;
import dawnkettle.label.CaseLabels;
import dawnkettle.label.LabelPrinter;
import dawnkettle.label.LotLabels;
import dawnkettle.label.PrinterProfile;
import dawnkettle.line.LabelFolder;
import dawnkettle.line.SerialLabels;
import dawnkettle.mail.Post;
import dawnkettle.night.Edges;
import dawnkettle.night.Lookout;
import dawnkettle.night.MailIn;
import dawnkettle.night.PlanForm;
import dawnkettle.night.Thermometer;
import dawnkettle.night.TrustedTime;
import dawnkettle.paper.PaperFolder;
import dawnkettle.paper.PrintQueues;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.RoomCurve;
import dawnkettle.plan.Temperatures;
import dawnkettle.post.ImapMailbox;
import dawnkettle.post.MimeForm;
import dawnkettle.post.PostFolder;
import dawnkettle.post.SmtpPost;
import dawnkettle.sheet.Printer;
import dawnkettle.sheet.SheetStyle;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.watch.WatchCall;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.logging.Logger;

/** Builds the night's doors to the outside: to the devices that {@code conf/} names, or into a folder. */
final class Doors {
    /** A dropped file that has not grown for so long is whole. */
    private static final Duration SETTLED = Duration.ofSeconds(10);

    private static final Logger LOG = Logger.getLogger("dawnkettle.tray");

    private final Configuration conf;
    private final Shop shop;
    private final List<TypefaceFile> typefaces;
    private final PdfTypeface typeface;
    private final PdfSheets pdf;
    private final MimeForm mime;
    private final PrinterProfile profile;

    Doors(Configuration conf) {
        this.conf = conf;
        this.shop = conf.shop();
        this.typefaces = conf.typefaces().stream().map(TypefaceFile::read).toList();
        this.typeface = new PdfTypeface(typefaces);
        this.pdf = new PdfSheets(typeface);
        this.mime = new MimeForm(
                conf.post().from(),
                conf.orderMail().flatMap(OrderMailChoice::address),
                shop.house().zone());
        this.profile = PrinterProfiles.read(conf.labels().folder().resolve("printers"))
                .get(conf.labels().line().profile());
    }

    Edges rehearsal(Wiring.Stage stage) {
        Path out = stage.folder();
        DropFolder drop = new DropFolder(out.resolve("drop"), Duration.ZERO);
        Edges.Senses senses = new Edges.Senses(
                new DroppedOrders(drop), stage.thermometer().orElseGet(this::thermometer), now -> Optional.empty());
        return edges(
                senses,
                paper(new PaperFolder(out.resolve("sheets"), pdf), out),
                labelFolder(out.resolve("labels")),
                new PostFolder(out.resolve("mail"), mime));
    }

    Edges service(InitSystem init) {
        Path tray = conf.night().places().outTray();
        DropFolder drop = new DropFolder(conf.night().places().dropFolder(), SETTLED);
        return edges(
                        new Edges.Senses(
                                new DroppedOrders(drop),
                                thermometer(),
                                trustedTime(),
                                new Probes(conf, profile).all(),
                                lookout()),
                        paper(
                                printer(tray, init),
                                conf.night().places().ledger().toAbsolutePath().getParent()),
                        labels(tray, init),
                        post(tray, init))
                .takingMail(mailIn())
                .watchedBy(init::moved);
    }

    private static TrustedTime trustedTime() {
        SynchronizedClock clock = new SynchronizedClock();
        return new TrustedTime() {
            @Override
            public Optional<String> doubt(Instant now) {
                return clock.doubt(now);
            }

            @Override
            public String boot() {
                return clock.boot();
            }
        };
    }

    private Lookout lookout() {
        return conf.watch().map(WatchCall::new).<Lookout>map(call -> call::call).orElse(Lookout.NONE);
    }

    private MailIn mailIn() {
        return conf.orderMail()
                .map(choice ->
                        new MailIn(new ImapMailbox(choice.box()), choice.rules(), new AttachedTables(), choice.words()))
                .orElse(MailIn.NONE);
    }

    /** The tray always; the queue where there is one. */
    private Printer printer(Path tray, InitSystem init) {
        Printer folder = new PaperFolder(tray.resolve("sheets"), pdf);
        if (!conf.paper().reachesPaper()) return folder;
        Printer queue = new PrintQueues(conf.paper(), pdf);
        return sheet -> {
            inTray(() -> folder.print(sheet));
            init.patiently(conf.paper().patience(), () -> queue.print(sheet));
        };
    }

    private LabelPrinter labels(Path tray, InitSystem init) {
        LabelPrinter folder = labelFolder(tray.resolve("labels"));
        if (conf.labels().line().device().isEmpty()) return folder;
        LabelPrinter line = new SerialLabels(conf.labels().line(), profile);
        return (run, journal) -> {
            inTray(() -> folder.print(run, seen -> {})); // a preview is no label: the journal hears of the line only
            init.patiently(conf.labels().line().patience().multipliedBy(2), () -> line.print(run, journal));
        };
    }

    /** A tray that is full keeps nothing from paper, labels and mail: they need no disk, and may be what says that it is full. */
    private static void inTray(Runnable copy) {
        try {
            copy.run();
        } catch (DeviceAway trayIsFull) {
            LOG.warning(trayIsFull.getMessage());
        }
    }

    private Post post(Path tray, InitSystem init) {
        Post folder = new PostFolder(tray.resolve("mail"), mime);
        if (conf.post().host().isEmpty()) return folder;
        Post server = new SmtpPost(conf.post(), mime);
        return (mail, date) -> {
            inTray(() -> folder.send(mail, date));
            init.patiently(conf.post().patience().multipliedBy(SmtpPost.PATIENCES), () -> server.send(mail, date));
        };
    }

    /** The desk that prints so, and keeps the batch records of each day in a folder of its own below {@code state}. */
    private Edges.PaperDesk paper(Printer printer, Path state) {
        return new Edges.PaperDesk(
                printer,
                SheetStyle.of(shop.house(), conf.sheets(), typeface),
                day -> new PaperFolder(state.resolve("records").resolve(day.toString()), pdf));
    }

    private Edges edges(Edges.Senses senses, Edges.PaperDesk paper, LabelPrinter labels, Post post) {
        return new Edges(
                senses,
                paper,
                new Edges.LabelDesk(labels, lots()),
                new Edges.MailDesk(post, new ChartPictures(), pdf),
                planForm(shop));
    }

    private LotLabels lots() {
        return new LotLabels(
                LabelDesigns.read(conf.labels().folder()),
                new CaseLabels(shop.house()),
                Main.drawing(conf, profile, typefaces));
    }

    private LabelPrinter labelFolder(Path folder) {
        return new LabelFolder(
                folder, profile, new DotPng(), conf.labels().line().group());
    }

    private Thermometer thermometer() {
        Thermometers thermometers = new Thermometers(
                conf.thermometer(), shop.climate(), shop.house().zone());
        return now -> {
            RoomReading reading = thermometers.read(now);
            return new Temperatures(
                    reading.room(), reading.tap(), reading.source(), curve(thermometers.past(now), reading, now));
        };
    }

    /** The room as the log has it until now; what it is now holds from now on. */
    private static RoomCurve curve(List<RoomReading.Logged> past, RoomReading reading, Instant now) {
        List<RoomCurve.Reading> readings = new ArrayList<>();
        for (RoomReading.Logged one : past)
            if (one.at().isBefore(now)) readings.add(new RoomCurve.Reading(one.at(), one.celsius()));
        readings.add(new RoomCurve.Reading(now, reading.room()));
        return new RoomCurve(readings);
    }

    private static PlanForm planForm(Shop shop) {
        return new PlanForm() {
            @Override
            public String write(DayPlan plan) {
                return PlanJson.write(plan, shop);
            }

            @Override
            public String write(DayPlan plan, Shop counted) {
                return PlanJson.write(plan, counted);
            }

            @Override
            public DayPlan read(String text) {
                return PlanJson.read(text, shop);
            }
        };
    }
}
