package dawnkettle.night;

import dawnkettle.DemoDay;
import dawnkettle.draw.DotDrawing;
import dawnkettle.draw.LabelDesigns;
import dawnkettle.draw.LabelTypefaces;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.label.CaseLabels;
import dawnkettle.label.Confirmed;
import dawnkettle.label.Design;
import dawnkettle.label.Dots;
import dawnkettle.label.LabelCopies;
import dawnkettle.label.LabelDrawing;
import dawnkettle.label.LabelJournal;
import dawnkettle.label.LabelPrinter;
import dawnkettle.label.LabelRun;
import dawnkettle.label.LabelText;
import dawnkettle.label.LotLabels;
import dawnkettle.label.MarketWording;
import dawnkettle.label.Pitch;
import dawnkettle.measure.Celsius;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.Temperatures;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetStyle;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.Problem;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The demonstration shop's labels on a real ledger, with a label printer that stops where it is told to. */
final class LabelShop {
    static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    static final DemoDay DEMO = new DemoDay(DAY);
    static final DayPlan PLAN = DEMO.plan(Celsius.degrees(18), 0);

    /** The lot and product with the most labels. */
    static final PlannedLabel MOST = PLAN.labels().stream()
            .max(Comparator.comparingInt(PlannedLabel::count))
            .orElseThrow();

    private static final Instant LATE = DAY.atTime(20, 0).atZone(zone()).toInstant();
    private static final LotLabels LOTS = lots();

    final Printer printer = new Printer();
    final List<Sheet> sheets = new ArrayList<>();
    final List<String> story = new ArrayList<>();
    final Office office;
    Temperatures temperatures;
    Optional<String> clockDoubt = Optional.empty();
    Instant now = LATE;

    LabelShop(Ledger ledger) {
        Edges edges = new Edges(
                new Edges.Senses(null, at -> temperatures, at -> clockDoubt),
                new Edges.PaperDesk(sheets::add, SheetStyle.of(DEMO.conf.shop().house(), PdfTypeface.notoSans())),
                new Edges.LabelDesk(printer, LOTS),
                null,
                new JsonPlans(DEMO.conf.shop()));
        Office.Papers papers = new Office.Papers(DEMO.conf.shop(), DEMO.conf.standing(), DEMO.conf.night());
        office = new Office(papers, ledger, new Moved(), edges, (at, line) -> story.add(line));
        ledger.plans().keep(PLAN, office.edges().plans().write(PLAN));
    }

    private static ZoneId zone() {
        return DEMO.conf.shop().house().zone();
    }

    private static LotLabels lots() {
        DotDrawing drawing = new DotDrawing(
                LabelTypefaces.ours(),
                new Pitch(8_000),
                MarketWording.of(DEMO.conf.shop().house().market()).type().leastXHeight());
        return new LotLabels(
                LabelDesigns.read(DEMO.conf.labels().folder()),
                new CaseLabels(DEMO.conf.shop().house()),
                new Remembered(drawing, new HashMap<>()));
    }

    /** The same labels are drawn night after night. */
    private record Remembered(LabelDrawing drawing, Map<Object, Dots> drawn) implements LabelDrawing {
        @Override
        public Dots draw(Design design, LabelText text) {
            return drawn.computeIfAbsent(List.of(design.name(), text), key -> drawing.draw(design, text));
        }

        @Override
        public List<Problem> check(Design design, LabelText text) {
            return drawing.check(design, text);
        }
    }

    /** A clock that stands still where it is put, and a millisecond further each time it is asked. */
    private final class Moved extends Clock {
        @Override
        public ZoneId getZone() {
            return zone();
        }

        @Override
        public Clock withZone(ZoneId other) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Instant instant() {
            now = now.plusMillis(1);
            return now;
        }
    }

    /** Ends everything, as a machine that goes dark does. */
    static final class PowerCut extends Error {
        private static final long serialVersionUID = 1L;
    }

    /** Prints in groups of four and stops in the group that holds a label of one lot and product. */
    static final class Printer implements LabelPrinter {
        private static final int GROUP = 4;

        final List<LabelRun> runs = new ArrayList<>();
        final List<String> printed = new ArrayList<>();
        int stopAt;
        int cutAt;
        boolean isClean;
        boolean isGone;

        @Override
        public void print(LabelRun run, LabelJournal journal) {
            boolean isSlip = run.labels().stream().noneMatch(LabelCopies::isCounted);
            if (isSlip && isGone) throw DeviceAway.clean("the label printer is not there", null);
            runs.add(run);
            for (int first = run.first(); first <= run.last(); first += GROUP)
                group(
                        run,
                        new Confirmed(run.lot(), run.product(), first, Math.min(first + GROUP - 1, run.last())),
                        journal);
        }

        private void group(LabelRun run, Confirmed group, LabelJournal journal) {
            boolean isStop = run.lot().equals(MOST.lot().text())
                    && run.product().equals(MOST.product())
                    && group.first() <= stopAt
                    && stopAt <= group.last();
            if (isStop && isClean) throw DeviceAway.clean("out of labels", null);
            journal.intended(group);
            if (run.lot().equals(MOST.lot().text())
                    && run.product().equals(MOST.product())
                    && group.first() <= cutAt
                    && cutAt <= group.last()) throw new PowerCut();
            if (isStop) {
                journal.doubtful(group);
                throw DeviceAway.ambiguous("the label printer has not answered", null);
            }
            for (int number = group.first(); number <= group.last(); number++)
                printed.add(run.lot() + " " + run.product() + " " + number + (run.again() ? " copy" : ""));
            journal.confirmed(group);
        }

        /** Runs of the lot with the most labels. */
        List<LabelRun> runsOfMost() {
            return runs.stream()
                    .filter(run ->
                            run.lot().equals(MOST.lot().text()) && run.product().equals(MOST.product()))
                    .toList();
        }
    }
}
