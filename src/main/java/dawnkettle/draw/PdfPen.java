package dawnkettle.draw;

import dawnkettle.sheet.Lettering;
import dawnkettle.sheet.Mark;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** Puts the marks of one page onto it. */
final class PdfPen implements Mark.Pen, AutoCloseable {
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
            String shown = fonts.typeface.face(lettering).shown(text.string());
            double width = fonts.typeface.widthMm(shown, lettering);
            content.beginText();
            content.setNonStrokingColor(lettering.ink() == Lettering.Ink.WHITE ? 1f : 0f);
            content.setFont(fonts.of(lettering), (float) lettering.points());
            content.newLineAtOffset(PdfSheets.points(left(text, width)), y(text.baseline()));
            content.showText(shown);
            content.endText();
        });
    }

    private static double left(Mark.Text text, double width) {
        return switch (text.lettering().align()) {
            case LEFT -> text.x();
            case CENTRE -> text.x() - width / 2;
            case RIGHT -> text.x() - width;
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

    /** The typeface's weights as fonts of one document, embedded as far as they are used. */
    static final class Fonts {
        private final PdfTypeface typeface;
        private final PDDocument document;
        private PDType0Font regular;
        private PDType0Font bold;

        Fonts(PDDocument document, PdfTypeface typeface) {
            this.document = document;
            this.typeface = typeface;
        }

        PDType0Font of(Lettering lettering) throws IOException {
            if (lettering.weight() == Lettering.Weight.BOLD) {
                if (bold == null)
                    bold = PDType0Font.load(document, typeface.bold().font(), true);
                return bold;
            }
            if (regular == null)
                regular = PDType0Font.load(document, typeface.regular().font(), true);
            return regular;
        }
    }
}
