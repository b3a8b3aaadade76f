package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.draw.PdfTypeface;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** No letter on another, nothing over the margin, no heading without what it heads, whatever the size of the day. */
class SheetGeometryTest {
    private static final PdfTypeface TYPEFACE = PdfTypeface.notoSans();

    /** Extent of Noto Sans above and below the baseline as letters without stacked accents use it, in body sizes. */
    private static final double ASCENT = 0.76;

    private static final double DESCENT = 0.22;

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

    @ParameterizedTest
    @CsvSource({
        "3, 14, 24, A4, METRIC, 1, FULL",
        "20, 14, 24, LETTER, US_CUSTOMARY, 2, NO_SEARCH",
        "45, 40, 60, A4, METRIC, 2, LAST_WEEK",
        "45, 40, 150, LETTER, US_CUSTOMARY, 1, FULL",
        "120, 40, 150, A4, US_CUSTOMARY, 3, ORDERS_ONLY",
        "0, 1, 2, A4, METRIC, 1, FULL"
    })
    void nothing_overlaps_or_leaves_the_page(
            int batches,
            int products,
            int customers,
            House.Paper paper,
            House.Units units,
            int revision,
            Heading.Mode mode) {
        Shop shop = SampleShop.of(units, products, customers);
        OptionalInt of = revision == 1 ? OptionalInt.empty() : OptionalInt.of(revision - 1);
        DayPlan plan = SampleDay.of(shop, batches, SampleDay.heading(revision, of, mode));
        SheetStyle style = new SheetStyle(PaperSize.of(paper), units, SheetSettings.in("en"), TYPEFACE);
        List<Sheet> sheets = new ArrayList<>(SheetSet.of(plan, shop, style));
        sheets.add(FallbackSheet.of(SampleDay.fallback(shop), shop, style));
        sheets.add(SoakSheet.of(SampleDay.soakCall(plan), shop, style));
        sheets.add(CountSheet.of(
                new CountSheet.Stocktake(SampleDay.DATE, SampleDay.PLANNED_AT, plan.stock(), List.<BeanLot>of()),
                shop,
                style));
        for (Sheet sheet : sheets)
            for (int i = 0; i < sheet.pages().size(); i++)
                check(
                        sheet.name() + " page " + (i + 1),
                        sheet.imprint().paper(),
                        sheet.pages().get(i));
    }

    private static void check(String where, PaperSize paper, Page page) {
        List<Mark> marks = page.marks();
        List<Mark.Text> texts = new ArrayList<>();
        for (int i = 0; i < marks.size(); i++) {
            Bounds bounds = bounds(marks.get(i));
            double margin = Flow.MARGIN_MM - 0.4;
            assertThat(bounds.left() >= margin
                            && bounds.top() >= margin
                            && bounds.right() <= paper.widthMm() - margin
                            && bounds.bottom() <= paper.heightMm() - margin + 0.4)
                    .as("%s: within the margins: %s", where, marks.get(i))
                    .isTrue();
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

    /** Below every heading and every bar stands something of the page's own before the foot. */
    private static void nothingIsLeftAlone(String where, Page page) {
        double lowest = page.body().stream()
                .filter(mark ->
                        mark instanceof Mark.Text text && text.lettering().points() != 9
                                || mark instanceof Mark.Box field && field.look() == Mark.Look.OPEN)
                .mapToDouble(mark -> bounds(mark).bottom())
                .max()
                .orElse(0);
        for (Mark mark : page.body()) {
            boolean bar = mark instanceof Mark.Box box
                    && box.width() > 150
                    && (box.look() == Mark.Look.SHADE || box.look() == Mark.Look.BLACK);
            boolean heading = mark instanceof Mark.Text text
                    && text.lettering().equals(Lettering.bold(14))
                    && text.x() == Flow.MARGIN_MM;
            double bottom = bounds(mark).bottom();
            if (bar || heading)
                assertThat(lowest).as("%s: nothing below %s", where, mark).isGreaterThan(bottom);
        }
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
        return new Bounds(left, text.baseline() - ASCENT * em, left + width, text.baseline() + DESCENT * em);
    }
}
