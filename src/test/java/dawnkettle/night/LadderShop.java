package dawnkettle.night;

import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.draw.ChartPictures;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.export.PlanJson;
import dawnkettle.mail.Mail;
import dawnkettle.measure.Celsius;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.plan.IfCard;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.Temperatures;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetStyle;
import dawnkettle.shop.Shop;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.DeviceAway;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;

/** The demonstration shop's evening with a planner, a printer and a book that fail as they are told to. */
final class LadderShop {
    static final LocalDate DAY = LocalDate.of(2026, 12, 4);

    final List<Sheet> sheets = new ArrayList<>();
    final List<Mail> mails = new ArrayList<>();
    final List<String> story = new ArrayList<>();
    final Office office;
    final Night night;
    BiFunction<Shop, Evening, DayPlan> planner = PlanDay::of;
    BoxedPlanner.Calls calls = PlanDay::soakCall;
    BoxedPlanner.Cards cards = IfCard::of;
    Optional<String> clockDoubt = Optional.empty();
    boolean isPrinterOff;
    int roomDegrees = 25;
    Instant now = at(14, 0);

    /** @param limit how long the planner may take, each time it is asked */
    LadderShop(Ledger ledger, Duration limit) {
        this(ledger, limit, EnumSet.of(Step.FALLBACK, Step.CLOSE, Step.PLAN, Step.SHEETS, Step.SUMMARY));
    }

    /** @param asked the steps of the day that are done */
    LadderShop(Ledger ledger, Duration limit, Set<Step> asked) {
        NightSettings was = LetterShop.CONF.night();
        NightSettings settings = new NightSettings(
                was.times(),
                was.places(),
                new NightSettings.Search(60, 60_000, 1),
                new NightSettings.Mailing(
                        List.of("owner@millrace.example"),
                        List.of("owner@millrace.example"),
                        List.of(),
                        false,
                        Set.of()));
        Edges edges = new Edges(
                new Edges.Senses(at -> List.of(), at -> room(), at -> clockDoubt),
                new Edges.PaperDesk(this::print, SheetStyle.of(shop().house(), PdfTypeface.notoSans())),
                null,
                new Edges.MailDesk((mail, date) -> mails.add(mail), new ChartPictures(), null),
                form());
        office = new Office(
                new Office.Papers(shop(), LetterShop.CONF.standing(), settings),
                ledger,
                new Standing(),
                edges,
                (at, line) -> story.add(line));
        night = new Night(
                office,
                slot -> slot.businessDate().equals(DAY) && asked.contains(slot.step()),
                new BoxedPlanner(
                        office,
                        new BoxedPlanner.Planner(
                                (shop, evening) -> planner.apply(shop, evening),
                                (shop, evening, closesAt) -> calls.call(shop, evening, closesAt),
                                (shop, evening, plan) -> cards.card(shop, evening, plan)),
                        limit));
    }

    static Shop shop() {
        return LetterShop.CONF.shop();
    }

    /** A time of the day before; from 24 on, of the day. */
    static Instant at(int hour, int minute) {
        return DAY.minusDays(1)
                .atStartOfDay(shop().house().zone())
                .plusHours(hour)
                .plusMinutes(minute)
                .toInstant();
    }

    void tickAt(int hour, int minute) {
        now = at(hour, minute);
        night.tick();
    }

    /** So many packs of each of a customer's first products, besides what stands. */
    void order(String customer, String product, int packs) {
        OrderLine line = new OrderLine(
                new OrderNumber("L-" + customer + "-" + product),
                1,
                customer,
                product,
                packs,
                DAY,
                OrderLine.Source.COMMAND,
                "typed",
                now);
        office.ledger().orders().add(List.of(line));
    }

    /** Sheets of one name, in the order in which they came out. */
    List<Sheet> named(String name) {
        return sheets.stream().filter(sheet -> sheet.name().equals(name)).toList();
    }

    private Temperatures room() {
        return new Temperatures(Celsius.degrees(roomDegrees), Celsius.degrees(9), "set by hand");
    }

    private void print(Sheet sheet) {
        if (isPrinterOff) throw DeviceAway.clean("the printer is off", null);
        sheets.add(sheet);
    }

    private static PlanForm form() {
        return new PlanForm() {
            @Override
            public String write(DayPlan plan) {
                return PlanJson.write(plan, shop());
            }

            @Override
            public DayPlan read(String text) {
                return PlanJson.read(text, shop());
            }
        };
    }

    /** A clock that stands where it is put. */
    private final class Standing extends Clock {
        @Override
        public ZoneId getZone() {
            return shop().house().zone();
        }

        @Override
        public Clock withZone(ZoneId other) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Instant instant() {
            return now;
        }
    }
}
