package dawnkettle.draw;

import dawnkettle.sheet.Lettering;
import dawnkettle.sheet.Mark;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/** Puts the marks of one page onto it. */
final class PdfPen implements Mark.Pen, AutoCloseable {
    /** Thickness of the outline that stands in for bold, in body sizes (common practice, no source). */
    private static final double OUTLINE = 0.03;

    private final PDPageContentStream content;
    private final Fonts fonts;
    private final float height;

    PdfPen(PDDocument document, PDPage page, Fonts fonts) throws IOException {
        this.content = new PDPageContentStream(document, page);
        this.fonts = fonts;
        this.height = page.getMediaBox().getHeight();
    }

    @Override
    public void text(Mark.Text text) {
        attempt(() -> {
            Lettering lettering = text.lettering();
            content.beginText();
            content.setNonStrokingColor(lettering.ink() == Lettering.Ink.WHITE ? 1f : 0f);
            content.newLineAtOffset(PdfSheets.points(left(text)), y(text.baseline()));
            for (TypefaceWeight.Run run : fonts.typeface.weight(lettering).runs(text.string())) show(run, lettering);
            content.endText();
        });
    }

    /** Typefaces that stand in have one weight; where bold is wanted they are drawn with an outline. */
    private void show(TypefaceWeight.Run run, Lettering lettering) throws IOException {
        boolean outlined = lettering.weight() == Lettering.Weight.BOLD
                && run.file() != fonts.typeface.weight(lettering).ours();
        content.setFont(fonts.of(run.file()), (float) lettering.points());
        if (outlined) {
            content.setStrokingColor(lettering.ink() == Lettering.Ink.WHITE ? 1f : 0f);
            content.setLineWidth((float) (lettering.points() * OUTLINE));
            content.setRenderingMode(RenderingMode.FILL_STROKE);
        }
        content.showText(run.text());
        if (outlined) content.setRenderingMode(RenderingMode.FILL);
    }

    private double left(Mark.Text text) {
        return switch (text.lettering().align()) {
            case LEFT -> text.x();
            case CENTRE -> text.x() - fonts.typeface.widthMm(text.string(), text.lettering()) / 2;
            case RIGHT -> text.x() - fonts.typeface.widthMm(text.string(), text.lettering());
        };
    }

    @Override
    public void rule(Mark.Rule rule) {
        attempt(() -> {
            content.setStrokingColor(0f);
            content.setLineWidth(PdfSheets.points(rule.widthMm()));
            content.moveTo(PdfSheets.points(rule.x1()), y(rule.y1()));
            content.lineTo(PdfSheets.points(rule.x2()), y(rule.y2()));
            content.stroke();
        });
    }

    @Override
    public void box(Mark.Box box) {
        attempt(() -> {
            Mark.Look look = box.look();
            content.addRect(
                    PdfSheets.points(box.x()),
                    y(box.y() + box.height()),
                    PdfSheets.points(box.width()),
                    PdfSheets.points(box.height()));
            content.setStrokingColor(0f);
            content.setLineWidth(PdfSheets.points(look.strokeMm()));
            if (look.isFilled()) content.setNonStrokingColor((float) (1 - look.darkness()));
            if (look.isFilled() && look.strokeMm() > 0) content.fillAndStroke();
            else if (look.isFilled()) content.fill();
            else content.stroke();
        });
    }

    private float y(double mm) {
        return height - PdfSheets.points(mm);
    }

    @Override
    public void close() throws IOException {
        content.close();
    }

    /** Writing into memory, which fails only where we are wrong. */
    private interface Writing {
        void write() throws IOException;
    }

    private static void attempt(Writing writing) {
        try {
            writing.write();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The typefaces as fonts of one document, embedded as far as they are used. */
    static final class Fonts {
        private final PdfTypeface typeface;
        private final PDDocument document;
        private final Map<TypefaceFile, PDType0Font> fonts = new HashMap<>();

        Fonts(PDDocument document, PdfTypeface typeface) {
            this.document = document;
            this.typeface = typeface;
        }

        PDType0Font of(TypefaceFile file) throws IOException {
            PDType0Font font = fonts.get(file);
            if (font == null) {
                font = PDType0Font.load(document, file.font(), true);
                fonts.put(file, font);
            }
            return font;
        }
    }
}
