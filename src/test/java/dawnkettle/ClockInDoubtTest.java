package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.BookLine;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.label.Confirmed;
import dawnkettle.label.LabelJournal;
import dawnkettle.label.LabelRun;
import dawnkettle.mail.Mail;
import dawnkettle.measure.Celsius;
import dawnkettle.night.ClockGate;
import dawnkettle.night.Edges;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.night.Step;
import dawnkettle.plan.Temperatures;
import dawnkettle.sheet.Mark;
import dawnkettle.sheet.Page;
import dawnkettle.sheet.Sheet;
import dawnkettle.store.Ledger;
import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A night by a clock of which nobody knows whether it is right: people get their sheets, and nothing is done for good. */
class ClockInDoubtTest {
    private static final String BANNER = "DATE NOT CONFIRMED: the clock may be wrong.";
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final ZoneId ZONE = FewOrders.SHOP.house().zone();
    private static final Set<Step> ASKED = EnumSet.complementOf(EnumSet.of(Step.COSTS, Step.RECALL_DRILL));

    @TempDir
    Path folder;

    private final MovedClock clock = new MovedClock(at(6, 0), ZONE);
    private final List<Sheet> sheets = new ArrayList<>();
    private final List<Mail> mails = new ArrayList<>();
    private final List<String> story = new ArrayList<>();
    private final List<String> labelled = new ArrayList<>();
    private final FewOrders.WordsOnly drawing = new FewOrders.WordsOnly();
    private boolean isPrinterOff;
    private Optional<String> clockDoubt = Optional.empty();
    private Ledger ledger;
    private Office office;
    private Night night;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        Edges edges = new Edges(
                new Edges.Senses(
                        at -> List.of(),
                        at -> new Temperatures(Celsius.degrees(8), Celsius.degrees(9), "set by hand"),
                        at -> clockDoubt),
                new Edges.PaperDesk(this::print, FewOrders.STYLE),
                new Edges.LabelDesk(this::print, FewOrders.lots(drawing)),
                new Edges.MailDesk((mail, date) -> mails.add(mail), FewOrders.CHARTS, sheet -> new byte[] {1}),
                FewOrders.FORM);
        office = new Office(FewOrders.papers(folder), ledger, clock, edges, (at, line) -> story.add(line));
        start();
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private void start() {
        night = new Night(office, slot -> slot.businessDate().equals(DAY) && ASKED.contains(slot.step()));
    }

    private void print(Sheet sheet) {
        if (isPrinterOff) throw DeviceAway.clean("the printer is off", null);
        sheets.add(sheet);
    }

    private void print(LabelRun run, LabelJournal journal) {
        Confirmed all = new Confirmed(run.lot(), run.product(), run.first(), run.last());
        journal.intended(all);
        labelled.add(run.lot());
        journal.confirmed(all);
    }

    /** A time of the day before; from 24 on, of the day. */
    private static Instant at(int hour, int minute) {
        return FewOrders.at(DAY, hour, minute);
    }

    private void tickAt(int hour, int minute) {
        clock.moveTo(at(hour, minute));
        night.tick();
    }

    /** Through the day by that clock, a look now and then. */
    private void untilFour() {
        for (int minute : List.of(360, 375, 840, 855, 900, 915, 960)) tickAt(minute / 60, minute % 60);
    }

    private void doubt() {
        clockDoubt = Optional.of("the clock has not been set from the network since the start");
    }

    private void confirm() {
        new ClockGate(office).confirm(LocalDate.ofInstant(clock.instant(), ZONE));
    }

    private void order() {
        ledger.orders()
                .add(List.of(new OrderLine(
                        new OrderNumber("L-1"),
                        1,
                        FewOrders.SAME_DAY.get(1),
                        "FIRM-400",
                        24,
                        DAY,
                        OrderLine.Source.COMMAND,
                        "typed",
                        clock.instant())));
    }

    private static boolean isOurs(BookLine line) {
        return line.order().toString().equals("L-1");
    }

    private Optional<StepRow.State> state(Step step) {
        return ledger.steps().find(StepKey.of(step.word(), DAY)).map(StepRow::state);
    }

    private List<Sheet> named(String name) {
        return sheets.stream().filter(sheet -> sheet.name().equals(name)).toList();
    }

    private static String words(Page page) {
        return Stream.concat(page.head().stream(), page.marks().stream())
                .filter(Mark.Text.class::isInstance)
                .map(mark -> ((Mark.Text) mark).string())
                .collect(Collectors.joining(" "));
    }

    /** A delivery note goes to a customer and says it in fewer words. */
    private static boolean isMarked(Page page) {
        String words = words(page);
        return words.contains(BANNER) || words.contains("Delivery note") && words.contains("DATE NOT CONFIRMED");
    }

    private List<Sheet> marked() {
        return sheets.stream()
                .filter(sheet -> sheet.pages().stream().allMatch(ClockInDoubtTest::isMarked))
                .toList();
    }

    @Test
    void nothing_is_closed_planned_or_settled_and_every_page_of_every_sheet_says_why() {
        doubt();
        untilFour();

        assertThat(ledger.closes().find(DAY)).isEmpty();
        assertThat(ledger.plans().days()).isEmpty();
        assertThat(ledger.soaks().find(DAY)).isEmpty();
        for (Step step : List.of(Step.SOAK_CALL, Step.FALLBACK, Step.CLOSE, Step.PLAN, Step.SHEETS))
            assertThat(state(step)).as(step.word()).isEmpty();
        assertThat(sheets)
                .extracting(Sheet::name)
                .contains("soak-call", "fallback", "count", "soak", "run", "pick", "free", "records")
                .anyMatch(name -> name.startsWith("route-"))
                .anyMatch(name -> name.startsWith("delivery-"))
                .doesNotHaveDuplicates();
        assertThat(marked()).hasSameSizeAs(sheets);
        assertThat(labelled).isEmpty();
        assertThat(story)
                .anyMatch(
                        line -> line.startsWith("no day is closed and no date is printed: the clock has not been set"));
    }

    @Test
    void paper_waits_ten_minutes_for_a_clock_that_is_about_to_be_set() {
        tickAt(14, 50);
        doubt();
        tickAt(15, 1);
        tickAt(15, 9);
        clockDoubt = Optional.empty();
        tickAt(15, 10);

        assertThat(state(Step.SHEETS)).contains(StepRow.State.DONE);
        assertThat(marked()).isEmpty();
    }

    @Test
    void what_hangs_becomes_the_days_own_once_a_person_confirms_and_comes_again_without_the_mark() {
        doubt();
        untilFour();
        String json = ledger.unconfirmed().plan(DAY).orElseThrow();
        List<String> hung = sheets.stream().map(Sheet::name).sorted().toList();
        sheets.clear();
        order();

        confirm();
        tickAt(16, 16);

        assertThat(ledger.soaks().find(DAY)).isPresent();
        var book = ledger.closes().find(DAY).orElseThrow();
        assertThat(book.lines()).noneMatch(ClockInDoubtTest::isOurs);
        var first = ledger.plans().find(DAY, 1).orElseThrow();
        assertThat(office.edges().plans().read(first.json()).batches())
                .isEqualTo(office.edges().plans().read(json).batches());
        assertThat(ledger.broken(DAY)).isEmpty();
        for (Step step : List.of(Step.SOAK_CALL, Step.FALLBACK, Step.CLOSE, Step.PLAN, Step.SHEETS))
            assertThat(state(step)).as(step.word()).contains(StepRow.State.DONE);
        assertThat(marked()).isEmpty();
        assertThat(sheets.stream().map(Sheet::name).toList()).containsAll(hung);
        assertThat(words(named("run").get(0).pages().get(0)))
                .contains("The date is confirmed: destroy every sheet that says DATE NOT CONFIRMED.");
        assertThat(office.plan(DAY).orElseThrow().heading().revision())
                .as("the order that came meanwhile is a late one, in a revision of its own")
                .isEqualTo(2);
        assertThat(office.plan(DAY).orElseThrow().orders())
                .anyMatch(order -> isOurs(order.line()) && order.line().late());
    }

    @Test
    void labels_come_after_the_word_and_not_before() {
        doubt();
        untilFour();
        tickAt(29, 0);
        assertThat(labelled).isEmpty();

        confirm();
        tickAt(29, 1);
        assertThat(labelled).isNotEmpty().allMatch(lot -> lot.startsWith("261204-"));
    }

    @Test
    void a_word_that_comes_after_everything_was_due_still_makes_it_the_days_own() {
        doubt();
        untilFour();
        tickAt(34, 0);
        confirm();
        tickAt(34, 1);

        assertThat(state(Step.CLOSE)).contains(StepRow.State.DONE);
        assertThat(state(Step.PLAN)).contains(StepRow.State.DONE);
        assertThat(ledger.broken(DAY)).isEmpty();
    }

    @Test
    void a_clock_that_was_five_hours_fast_has_closed_nothing_and_what_hung_is_dropped() {
        doubt();
        tickAt(14, 55);
        for (int minute = 0; minute < 30; minute += 10) tickAt(15, minute);
        assertThat(ledger.unconfirmed().plan(DAY)).isPresent();

        clockDoubt = Optional.empty();
        order();
        tickAt(10, 30);
        assertThat(ledger.unconfirmed().plan(DAY)).isEmpty();
        assertThat(story)
                .anyMatch(line -> line.startsWith("the plan of 2026-12-04 that was not confirmed does not hold"));
        assertThat(ledger.closes().find(DAY)).isEmpty();

        sheets.clear();
        tickAt(15, 0);
        assertThat(ledger.closes().find(DAY).orElseThrow().lines()).anyMatch(ClockInDoubtTest::isOurs);
        assertThat(named("run")).hasSize(1);
        assertThat(words(named("run").get(0).pages().get(0))).contains("The date is confirmed: destroy");
    }

    @Test
    void a_clock_a_year_ahead_leaves_nothing_behind() {
        tickAt(14, 0);
        List<String> before = ledger.rowCounts().toString().lines().toList();
        doubt();
        clock.moveTo(at(14, 30).plus(Duration.ofDays(400)));
        night.tick();
        clock.moveTo(clock.instant().plus(Duration.ofMinutes(20)));
        night.tick();
        assertThat(ledger.rowCounts().toString().lines().toList())
                .as("but for the alert that tells of the clock")
                .isEqualTo(before.stream()
                        .map(row -> row.replace("alarm=0", "alarm=1").replace("outbox=0", "outbox=1"))
                        .toList());
        clockDoubt = Optional.empty();
        tickAt(15, 0);
        assertThat(state(Step.SHEETS)).contains(StepRow.State.DONE);
    }

    @Test
    void a_power_cut_while_in_doubt_prints_no_sheet_twice() {
        doubt();
        untilFour();
        int printed = sheets.size();
        start();
        tickAt(16, 1);
        tickAt(16, 15);
        assertThat(sheets).hasSize(printed);
    }

    @Test
    void the_summary_says_it_first_and_a_second_one_follows_the_word() {
        doubt();
        untilFour();
        tickAt(30, 30);
        Mail first = summary(0);
        assertThat(first.subject()).startsWith("Date not confirmed: Fri 4 Dec");
        assertThat(first.body().text().replaceAll("\\s+", " "))
                .startsWith(
                        "DATE NOT CONFIRMED: the clock of the machine may be wrong, so that no book is closed and no"
                                + " label is dated by it. If today is 2026-12-04, say so on the machine: dawnkettle clock"
                                + " confirm 2026-12-04. If not, set the clock first.");

        confirm();
        tickAt(30, 31);
        tickAt(30, 40);
        Mail second = summary(1);
        assertThat(second.subject()).startsWith("Second summary of Fri 4 Dec");
        assertThat(second.id()).isNotEqualTo(first.id());
        assertThat(second.body().text().replaceAll("\\s+", " "))
                .startsWith("This mail replaces the first summary of the day, which was sent when the date was not"
                        + " confirmed. Work from this one, and delete the first.");
        assertThat(mails.stream().filter(mail -> mail.id().contains("summary"))).hasSize(2);
    }

    private Mail summary(int which) {
        return mails.stream()
                .filter(mail -> mail.id().contains("summary"))
                .toList()
                .get(which);
    }

    @Test
    void a_plan_that_was_closed_in_time_and_printed_in_doubt_comes_again_too() {
        isPrinterOff = true;
        for (int minute : List.of(360, 840, 900)) tickAt(minute / 60, minute % 60);
        assertThat(state(Step.PLAN)).contains(StepRow.State.DONE);
        assertThat(state(Step.SHEETS)).contains(StepRow.State.FAILED);
        isPrinterOff = false;
        doubt();
        tickAt(15, 20);
        tickAt(15, 31);
        assertThat(named("run")).hasSize(1);
        assertThat(marked()).hasSameSizeAs(sheets);
        int hung = sheets.size();

        confirm();
        tickAt(15, 50);
        assertThat(named("run")).hasSize(2);
        assertThat(sheets.size()).isGreaterThanOrEqualTo(2 * hung);
        assertThat(state(Step.SHEETS)).contains(StepRow.State.DONE);
    }
}
