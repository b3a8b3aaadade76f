package dawnkettle.mail;

import dawnkettle.DemoDay;
import dawnkettle.cost.WeekBook;
import dawnkettle.cost.WeekCosts;
import dawnkettle.draw.ChartPictures;
import dawnkettle.mail.Answer.Part;
import dawnkettle.measure.Celsius;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.plan.Shortage;
import dawnkettle.sheet.SampleReports;
import dawnkettle.shop.Shop;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** A mail of each kind that the service sends, of the demonstration's fullest kind of day; the bad ones with all that can be bad. */
public final class EveryMail {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final Instant NIGHT = Instant.parse("2026-12-04T07:14:00Z");
    private static final String WHY =
            "the cold bath is full from 05:40 to 07:10, and the second press stands for want of two hands until 06:00";

    private final DemoDay demo = new DemoDay(DAY);
    private final Shop shop = demo.conf.shop();
    private final DayPlan plan = demo.plan(Celsius.degrees(18), 50);
    private final ChartPictures charts = new ChartPictures();

    /** By its name, in the order in which they are sent over a day. */
    public Map<String, Mail> all() {
        Map<String, Mail> mails = new LinkedHashMap<>();
        summaries(mails);
        alerts(mails);
        answers(mails);
        mails.put("recall", RecallMail.of(SampleReports.recall(shop, plan), DAY, Duration.ofMillis(412)));
        mails.put("okara", FarmerNote.of(plan, shop).orElseThrow());
        Shop small = Millrace.shop();
        mails.put("costs", CostReport.of(WeekBook.of(WeekCosts.byWeek(MillraceHalfYear.days(), small), small), charts));
        mails.replaceAll(
                (name, mail) -> mail.to().isEmpty() ? mail.addressedTo(List.of("owner@millrace.example")) : mail);
        return mails;
    }

    private void summaries(Map<String, Mail> mails) {
        mails.put(
                "summary-good",
                MorningSummary.of(plan, shop, MillraceFriday.quietNight(List.of()), charts)
                        .with(MorningSummary.calendar(plan, shop)));
        mails.put("summary-bad", MorningSummary.of(troubled(), shop, badNight(), charts));
        DayPlan second = plan.withHeading(new Heading(
                DAY, 2, OptionalInt.of(1), NIGHT, shop.house().zone(), 1, Heading.Mode.NO_SEARCH, List.of()));
        mails.put(
                "summary-second",
                MorningSummary.of(second, shop, MillraceFriday.quietNight(List.of()), charts)
                        .withFirstLine(
                                "This mail may have arrived before: the server did not say. It is the same mail."));
        mails.put(
                "summary-no-plan",
                NoPlanSummary.of(
                        new NoPlanSummary.State(
                                DAY,
                                Heading.Mode.ORDERS_ONLY,
                                "the sheet \"orders only\" that was printed at 15:09",
                                plan.orders().stream().map(PlannedOrder::line).toList(),
                                some("plan: a mistake of ours: IllegalStateException at Attempt.java:88", 6)),
                        shop));
    }

    /** Every van late, every product short, every order cut. */
    private DayPlan troubled() {
        List<PlannedRoute> late = plan.routes().stream()
                .map(r -> new PlannedRoute(r.route(), r.departs(), r.loadMinutes(), r.weight(), r.packedBy(), 47))
                .toList();
        List<Shortage> short_ = shop.products().stream()
                .map(product -> new Shortage(product.code(), 48, WHY))
                .toList();
        List<PlannedOrder> cut = plan.orders().stream()
                .map(order ->
                        new PlannedOrder(order.line(), 0, "priority 3 in a shortage, fair shares of what there is"))
                .toList();
        return new DayPlan(
                plan.heading(),
                cut,
                plan.demand(),
                plan.batches(),
                plan.soaks(),
                plan.floor(),
                plan.operations(),
                plan.stock(),
                plan.allocation(),
                late,
                plan.labels(),
                short_,
                some("Starting the first grind at 02:15 instead of 02:40 would bring both early vans out on time.", 8),
                some(
                        "Lot QS-2211 is the first tub of a new lot: watch its soak, and feel the beans before the grind.",
                        12),
                plan.quality());
    }

    private NightReport badNight() {
        return new NightReport(
                new NightReport.Orders(
                        141,
                        341,
                        some(
                                "mail \"tomorrow\" that says it is from C002: the receiving server does not vouch for its sender",
                                12),
                        some("mail \"You have won\" from somebody at elsewhere.example: nobody known wrote it", 13),
                        some("order M-20261203-14 line 1: 88 FIRM-400", 12)),
                new NightReport.Sheets(
                        List.of("soak", "run", "run-packing"), some("routes: the print queue is stopped", 12)),
                new NightReport.Labels(
                        28,
                        some("261204-FI02 FIRM-400: labels 1 to 10 are certain, look at 11 to 18", 12),
                        some("261204-FP01 POUCH-6: the label printer is out of ribbon", 12)),
                new NightReport.Notes(
                        some("Tub T04 was filled 25 minutes late; its beans are ready at 03:50 instead of 03:25.", 8),
                        some("Yellow soybeans, cleaned: 3485 kg left; order 165 x 30 kg by 2026-12-07", 14),
                        some("mail of C014: 2 lines are taken, 1 not", 14)),
                shop.recipes().stream()
                        .map(recipe -> new NightReport.Yielded(
                                DAY.minusDays(1),
                                recipe.code(),
                                dawnkettle.measure.Mass.kilograms(120),
                                dawnkettle.measure.Mass.grams(312_600)))
                        .toList());
    }

    private static List<String> some(String words, int count) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(i -> words + (i == 1 ? "" : " (" + i + ")"))
                .toList();
    }

    private void alerts(Map<String, Mail> mails) {
        Alarm labels = new Alarm(
                "labels",
                "no more labels come: label printer \"/dev/ttyUSB0\" is out of labels",
                "Sheets are printed; no label was printed twice.",
                "Put in a roll and close the cover. It goes on by itself.",
                Optional.of(NIGHT.plusSeconds(3_600)),
                false);
        Alarm given = new Alarm(
                "given up",
                "mail \"Thu 3 Dec: all well, first van 10:30\" could not be sent: \"mail.millrace.example\" refused it"
                        + " with 550; look at the addresses and the account",
                "It lies in the tray folder.",
                "Look at the mail account.",
                Optional.empty(),
                true);
        AlertMail mail = new AlertMail(shop.house(), "2026-12-04.alert.0214", NIGHT);
        mails.put("alert", mail.of(List.of(labels), List.of(), false));
        mails.put("digest", mail.of(List.of(given), List.of(labels, given), true));
        mails.put("clear", mail.allClear(List.of(labels, given)));
        mails.put("still-open", mail.of(List.of(), List.of(labels), false));
    }

    private void answers(Map<String, Mail> mails) {
        List<Part> order = List.of(
                new Part(
                        "Friday 4 December",
                        List.of(
                                "24 × Firm tofu 400 g (FIRM-400), from your words “2 cs firm for Friday”",
                                "4 × Medium tofu bucket 5 kg (MED-BKT), from your words “4 buckets medium”",
                                "It can be changed until Thursday 3 December, 15:00.")),
                new Part(
                        "Not taken: please write again",
                        List.of("“15 puchoes”: \"puchoes\" is near to two products; which one is meant?")),
                new Part("Not read as an order", List.of("Thanks a lot, and greetings to all of you!")));
        List<Part> owner = List.of(
                new Part(
                        "Done",
                        List.of(
                                "“yield 261204-FI01 66.2”: lot 261204-FI01 gave 66.2 kg. Record 7.",
                                "“lost B12”: the whole lot 261204-FP04 is lost (told by mail); nothing of it is planned any"
                                        + " more. Record 8. What has not begun is planned again now; the sheets that change are printed.")),
                new Part(
                        "Not done",
                        List.of(
                                "“hold 261204-XX01 smells”: record: lot \"261204-XX01\" is not like 261204-FI03; write it as"
                                        + " its label and the run sheet have it")));
        mails.put("reply-order", reply("order for friday", "Please look: 2 lines are taken, 1 not.", false, order));
        mails.put("reply-booked", reply("order", "All of it is taken: 2 lines are taken.", true, order.subList(0, 1)));
        mails.put("reply-nothing", reply("", "Nothing is taken yet: please look.", false, order.subList(2, 3)));
        mails.put(
                "reply-owner",
                reply("Re: Fri 4 Dec: all well", "Please look: 2 lines are taken, 1 not.", false, owner));
    }

    private Mail reply(String subject, String verdict, boolean well, List<Part> parts) {
        return new Answer(shop.house(), "2026-12-04.reply.1")
                .of(new Answer.Asked("orders@ambercote-grocery.example", subject), verdict, well, parts)
                .answering("<1@kitchen.example>");
    }
}
