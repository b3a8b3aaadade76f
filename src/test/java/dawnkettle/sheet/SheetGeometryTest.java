package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** No letter on another, nothing over the margin, no heading without what it heads, whatever the size of the day. */
class SheetGeometryTest {
    private static final Typeface TYPEFACE = new AnyScript();

    /** Extent of Noto Sans above and below the baseline as letters without stacked accents use it, in body sizes. */
    private static final double ASCENT = 0.76;

    private static final double DESCENT = 0.22;

    /** In capitals of Vietnamese a mark stands on a mark. */
    private static final double STACKED_ASCENT = 0.98;

    private static final double SQUARE_ASCENT = 0.88;

    /** The mark of a changed row stands in the margin. */
    private static final double CHANGE_MARK_MM = 6;

    private record Bounds(double left, double top, double right, double bottom) {
        boolean touches(Bounds other) {
            return left < other.right - 0.05
                    && other.left < right - 0.05
                    && top < other.bottom - 0.05
                    && other.top < bottom - 0.05;
        }

        boolean holds(Bounds other) {
            return left <= other.left + 0.05
                    && right >= other.right - 0.05
                    && top <= other.top + 0.3
                    && bottom >= other.bottom - 0.3;
        }
    }

    /** A day to write sheets of: how large, on what paper, in which languages. */
    record Case(int batches, int products, int customers, House.Paper paper, int revision, String languages) {
        House.Units units() {
            return paper == House.Paper.A4 ? House.Units.METRIC : House.Units.US_CUSTOMARY;
        }
    }

    /** Every size of day, and a day of every step in every language on either paper. */
    static Stream<Case> days() {
        Stream<Case> sizes = Stream.of(
                new Case(0, 1, 2, House.Paper.A4, 1, "en"),
                new Case(3, 14, 24, House.Paper.A4, 1, "en"),
                new Case(20, 14, 24, House.Paper.LETTER, 2, "en es"),
                new Case(45, 40, 60, House.Paper.A4, 2, "ja"),
                new Case(45, 40, 150, House.Paper.LETTER, 1, "vi en"),
                new Case(45, 40, 150, House.Paper.A4, 1, "zh ja"),
                new Case(120, 40, 150, House.Paper.A4, 3, "es"),
                new Case(120, 40, 150, House.Paper.LETTER, 1, "en pt"));
        Stream<Case> languages = Tongue.SPOKEN.stream()
                .flatMap(one -> Stream.of(
                        new Case(9, 40, 24, House.Paper.A4, 2, one),
                        new Case(9, 40, 24, House.Paper.LETTER, 2, "en " + one)));
        return Stream.concat(sizes, languages);
    }

    @ParameterizedTest
    @MethodSource("days")
    void nothing_overlaps_or_leaves_the_page(Case day) {
        Shop shop = SampleShop.of(day.units(), day.products(), day.customers());
        for (Sheet sheet : sheets(day, shop))
            for (int i = 0; i < sheet.pages().size(); i++)
                check(
                        day + " " + sheet.name() + " page " + (i + 1),
                        sheet,
                        sheet.pages().get(i));
    }

    private static List<Sheet> sheets(Case day, Shop shop) {
        SheetSettings settings =
                new SheetSettings(List.of(day.languages().split(" ")), Map.of("NIGARI", Mass.grams(250)));
        SheetStyle style = new SheetStyle(PaperSize.of(day.paper()), day.units(), settings, TYPEFACE);
        if (day.revision() > 1) style = style.inPlaceOf(OrdersOnlySheet.number(SampleDay.DATE));
        Heading.Mode[] modes = Heading.Mode.values();
        Heading.Mode mode = modes[day.batches() % modes.length];
        DayPlan first = SampleDay.of(shop, Math.max(0, day.batches() - 2));
        OptionalInt of = day.revision() == 1 ? OptionalInt.empty() : OptionalInt.of(day.revision() - 1);
        DayPlan plan = SampleDay.of(shop, day.batches(), SampleDay.heading(day.revision(), of, mode));
        List<Sheet> sheets = new ArrayList<>(
                day.revision() == 1 ? SheetSet.of(plan, shop, style) : SheetSet.of(plan, first, shop, style));
        sheets.addAll(SheetSet.records(plan, shop, style));
        sheets.add(FallbackSheet.of(SampleDay.fallback(shop), shop, style));
        sheets.add(OrdersOnlySheet.of(SampleDay.ordered(shop), shop, style));
        sheets.add(SoakSheet.of(SampleDay.soakCall(plan), shop, style));
        List<BeanLot> bought = List.of(new BeanLot("SB-1187", "BEAN", Mass.kilograms(400), SampleDay.DATE));
        sheets.add(CountSheet.of(
                new CountSheet.Stocktake(SampleDay.DATE, SampleDay.PLANNED_AT, plan.stock(), bought), shop, style));
        sheets.add(IfSheet.of(SampleCard.of(shop, plan, 3 + day.batches() / 8), plan, shop, style));
        return sheets;
    }

    private static void check(String where, Sheet sheet, Page page) {
        PaperSize paper = sheet.imprint().paper();
        boolean quarters = sheet.kind() == Sheet.Kind.DELIVERY;
        List<Mark> marks = page.marks();
        List<Mark.Text> texts = new ArrayList<>();
        for (int i = 0; i < marks.size(); i++) {
            Bounds bounds = bounds(marks.get(i));
            double margin = (quarters ? NotePaper.EDGE_MM : Flow.MARGIN_MM) - 0.4;
            double left = marks.get(i) instanceof Mark.Text ? margin : margin - CHANGE_MARK_MM;
            assertThat(bounds.left() >= left
                            && bounds.top() >= margin
                            && bounds.right() <= paper.widthMm() - margin
                            && bounds.bottom() <= paper.heightMm() - margin + 0.4)
                    .as("%s: within the margins: %s", where, marks.get(i))
                    .isTrue();
            if (quarters && marks.get(i) instanceof Mark.Text text) clearOfTheCuts(where, text, paper);
            if (marks.get(i) instanceof Mark.Text text) {
                for (Mark.Text other : texts)
                    assertThat(bounds(other).touches(bounds))
                            .as("%s: %s on %s", where, text, other)
                            .isFalse();
                texts.add(text);
                notCrossed(where, marks, i, bounds);
            }
        }
        nothingIsLeftAlone(where, page);
    }

    /** What is cut apart keeps the same margin on either side of the cut. */
    private static void clearOfTheCuts(String where, Mark.Text text, PaperSize paper) {
        Bounds bounds = bounds(text);
        double free = NotePaper.EDGE_MM - 0.8;
        double across = paper.heightMm() / 2;
        double down = paper.widthMm() / 2;
        assertThat((bounds.bottom() <= across - free || bounds.top() >= across + free)
                        && (bounds.right() <= down - free || bounds.left() >= down + free))
                .as("%s: clear of the cuts: %s", where, text)
                .isTrue();
    }

    /** A rule or a box's edge runs through no text, unless a filled box lies between. */
    private static void notCrossed(String where, List<Mark> marks, int at, Bounds text) {
        for (int i = 0; i < marks.size(); i++) {
            Mark mark = marks.get(i);
            if (mark instanceof Mark.Text || !bounds(mark).touches(text)) continue;
            boolean inside = mark instanceof Mark.Box && bounds(mark).holds(text);
            assertThat(inside || i < at && hidden(marks, i, at, text))
                    .as("%s: %s through %s", where, mark, marks.get(at))
                    .isTrue();
        }
    }

    private static boolean hidden(List<Mark> marks, int from, int until, Bounds text) {
        return marks.subList(from + 1, until).stream()
                .anyMatch(mark -> mark instanceof Mark.Box box
                        && box.look().isFilled()
                        && bounds(box).holds(text));
    }

    /** Below every heading, every bar and every head of a table stands something in the same column before the foot. */
    private static void nothingIsLeftAlone(String where, Page page) {
        List<Bounds> content = page.body().stream()
                .filter(mark ->
                        mark instanceof Mark.Text text && text.lettering().points() != 9
                                || mark instanceof Mark.Rule rule && rule.widthMm() == 0.2
                                || mark instanceof Mark.Box field && field.look() == Mark.Look.OPEN)
                .map(SheetGeometryTest::bounds)
                .toList();
        for (Mark mark : page.body()) {
            if (!announces(mark)) continue;
            Bounds above = bounds(mark);
            assertThat(content.stream()
                            .anyMatch(one -> one.top() >= above.bottom() - 0.5
                                    && one.left() < above.right()
                                    && one.right() > above.left()))
                    .as("%s: something below %s", where, mark)
                    .isTrue();
        }
    }

    private static boolean announces(Mark mark) {
        boolean bar = mark instanceof Mark.Box box
                && box.width() > 80
                && (box.look() == Mark.Look.SHADE || box.look() == Mark.Look.BLACK);
        boolean heading = mark instanceof Mark.Text text
                && (text.lettering().equals(Lettering.bold(14))
                        || text.lettering().equals(Lettering.bold(11.5)) && text.x() == Flow.MARGIN_MM
                        || text.lettering().equals(Lettering.bold(8.5))
                        || text.lettering().equals(Lettering.bold(9.5)));
        return bar || heading;
    }

    private static double ascent(String text) {
        if (text.codePoints().anyMatch(one -> one >= 0x1EA0 && one <= 0x1EF9)) return STACKED_ASCENT;
        return text.codePoints().anyMatch(AnyScript::isSquare) ? SQUARE_ASCENT : ASCENT;
    }

    private static Bounds bounds(Mark mark) {
        if (mark instanceof Mark.Box box)
            return new Bounds(box.x(), box.y(), box.x() + box.width(), box.y() + box.height());
        if (mark instanceof Mark.Rule rule)
            return new Bounds(
                    Math.min(rule.x1(), rule.x2()) - 0.06,
                    Math.min(rule.y1(), rule.y2()) - 0.06,
                    Math.max(rule.x1(), rule.x2()) + 0.06,
                    Math.max(rule.y1(), rule.y2()) + 0.06);
        Mark.Text text = (Mark.Text) mark;
        double width = TYPEFACE.widthMm(text.string(), text.lettering());
        double left = switch (text.lettering().align()) {
            case LEFT -> text.x();
            case CENTRE -> text.x() - width / 2;
            case RIGHT -> text.x() - width;
        };
        double em = text.lettering().points() * Lettering.MM_A_POINT;
        return new Bounds(
                left, text.baseline() - ascent(text.string()) * em, left + width, text.baseline() + DESCENT * em);
    }
}
