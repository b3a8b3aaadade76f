package dawnkettle.sheet;

import dawnkettle.conf.ReadConfiguration;
import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.draw.TypefaceFile;
import dawnkettle.export.PlanJson;
import dawnkettle.plan.DayPlan;
import dawnkettle.shop.Shop;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * What all sheets of a day cost, from plan to bytes, beside a bare PDFBox program that writes the same strings, lines and
 * boxes on the same number of pages into the same number of documents, with nothing laid out, described or archived.
 *
 * <p>{@code SheetCost plan.json [typeface.ttf …]}, where a rehearsal left the plan of the demonstration shop.
 */
final class SheetCost {
    private static final int ROUNDS = 15;

    private SheetCost() {}

    /** One way to make all documents. */
    private interface Making {
        long bytes() throws IOException;
    }

    public static void main(String[] args) throws IOException {
        Shop shop = ReadConfiguration.from(Path.of("conf")).shop();
        DayPlan plan = PlanJson.read(Files.readString(Path.of(args[0])), shop);
        List<TypefaceFile> more =
                Stream.of(args).skip(1).map(Path::of).map(TypefaceFile::read).toList();
        PdfTypeface typeface = new PdfTypeface(more);
        List<Sheet> sheets = sheets(plan, shop, typeface, !more.isEmpty());
        int pages = sheets.stream().mapToInt(sheet -> sheet.pages().size()).sum();
        long[] ours = new long[ROUNDS];
        long[] laidOut = new long[ROUNDS];
        long[] bare = new long[ROUNDS];
        TrueTypeFont font = font();
        long bytes = 0;
        for (int round = 0; round < ROUNDS; round++) {
            laidOut[round] =
                    time(() -> sheets(plan, shop, typeface, !more.isEmpty()).size());
            ours[round] = time(() -> {
                PdfSheets drawing = new PdfSheets(typeface);
                long sum = 0;
                for (Sheet sheet : sheets(plan, shop, typeface, !more.isEmpty())) sum += drawing.draw(sheet).length;
                return sum;
            });
            bare[round] = time(() -> {
                long sum = 0;
                for (Sheet sheet : sheets) sum += bare(sheet, font);
                return sum;
            });
        }
        for (Sheet sheet : sheets) bytes += new PdfSheets(typeface).draw(sheet).length;
        System.out.printf(
                Locale.ROOT,
                "%d sheets, %d pages, %.1f kB a page; first: ours %.0f ms, bare %.0f ms; then (middle of %d): ours %.0f ms"
                        + " (of which to lay out %.0f), bare %.0f ms, %.2f times; heap at most %d MB%n",
                sheets.size(),
                pages,
                bytes / 1e3 / pages,
                ours[0] / 1e6,
                bare[0] / 1e6,
                ROUNDS,
                middle(ours) / 1e6,
                middle(laidOut) / 1e6,
                middle(bare) / 1e6,
                (double) middle(ours) / middle(bare),
                Runtime.getRuntime().maxMemory() >> 20);
    }

    /** With a typeface beside ours every sheet says something in it. */
    private static List<Sheet> sheets(DayPlan plan, Shop shop, PdfTypeface typeface, boolean marked) {
        List<Sheet> sheets = SheetSet.of(plan, shop, SheetStyle.of(shop.house(), typeface));
        return marked
                ? sheets.stream().map(sheet -> sheet.marked("木綿豆腐 嫩豆腐 豆浆")).toList()
                : sheets;
    }

    private static long time(Making making) throws IOException {
        ThreadMXBean thread = ManagementFactory.getThreadMXBean(); // other work of the machine does not count
        long before = thread.getCurrentThreadCpuTime();
        if (making.bytes() == 0) throw new IllegalStateException("nothing was made");
        return thread.getCurrentThreadCpuTime() - before;
    }

    private static long middle(long[] times) {
        long[] sorted = times.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static TrueTypeFont font() throws IOException {
        try (InputStream in = SheetCost.class.getResourceAsStream("/dawnkettle/fonts/NotoSans-Regular.ttf")) {
            TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
            font.setEnableGsub(false);
            return font;
        }
    }

    private static long bare(Sheet sheet, TrueTypeFont typeface) throws IOException {
        try (PDDocument document = new PDDocument();
                ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            PDType0Font regular = PDType0Font.load(document, typeface, true);
            PDType0Font bold = PDType0Font.load(document, typeface, true);
            for (Page page : sheet.pages()) {
                PDPage drawn = new PDPage(PDRectangle.A4);
                document.addPage(drawn);
                try (PDPageContentStream content = new PDPageContentStream(document, drawn)) {
                    for (Mark mark : page.marks()) mark.showTo(new Bare(content, regular, bold));
                }
            }
            document.save(bytes);
            return bytes.size();
        }
    }

    /** The shortest way from a mark to PDFBox. */
    private record Bare(PDPageContentStream content, PDType0Font regular, PDType0Font bold) implements Mark.Pen {
        @Override
        public void text(Mark.Text text) {
            try {
                content.beginText();
                content.setFont(text.lettering().weight() == Lettering.Weight.BOLD ? bold : regular, 10);
                content.newLineAtOffset((float) text.x() * 2.83f, 800 - (float) text.baseline() * 2.83f);
                content.showText(text.string().replaceAll("[\\p{IsHan}]", "x"));
                content.endText();
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }

        @Override
        public void rule(Mark.Rule rule) {
            try {
                content.moveTo((float) rule.x1(), (float) rule.y1());
                content.lineTo((float) rule.x2(), (float) rule.y2());
                content.stroke();
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }

        @Override
        public void box(Mark.Box box) {
            try {
                content.addRect((float) box.x(), (float) box.y(), (float) box.width(), (float) box.height());
                content.stroke();
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }
    }
}
