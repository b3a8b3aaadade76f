package dawnkettle.draw;

import dawnkettle.sheet.Imprint;
import dawnkettle.sheet.Lettering;
import dawnkettle.sheet.Page;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetDrawing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** Draws sheets as PDF: text that can be selected, typefaces embedded as far as used, the same bytes every time. */
public final class PdfSheets implements SheetDrawing {
    private static final double POINTS_A_MM = 1 / Lettering.MM_A_POINT;

    private final PdfTypeface typeface;

    public PdfSheets(PdfTypeface typeface) {
        this.typeface = typeface;
    }

    @Override
    public byte[] draw(Sheet sheet) {
        try (PDDocument document = new PDDocument();
                ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            describe(document, sheet.imprint());
            PdfArchive.declare(document, sheet.imprint());
            pages(document, sheet);
            // No object streams: PDF/A-1 knows none.
            document.save(bytes, CompressParameters.NO_COMPRESSION);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException("sheet " + sheet.name() + " cannot be drawn", e);
        }
    }

    /** Dates and identity come from the sheet, not from the machine, so that a second drawing is the same document. */
    private static void describe(PDDocument document, Imprint imprint) {
        Calendar madeAt = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        madeAt.setTimeInMillis(imprint.madeAt().toEpochMilli());
        PDDocumentInformation about = new PDDocumentInformation();
        about.setTitle(imprint.title());
        about.setProducer(PdfArchive.PRODUCER);
        about.setCreationDate(madeAt);
        document.setDocumentInformation(about);
        document.setDocumentId(imprint.madeAt().toEpochMilli());
        document.getDocumentCatalog().setLanguage(imprint.language());
        PDViewerPreferences preferences = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
        preferences.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(preferences);
    }

    private void pages(PDDocument document, Sheet sheet) throws IOException {
        PdfPen.Fonts fonts = new PdfPen.Fonts(document, typeface);
        PDDocumentOutline outline = new PDDocumentOutline();
        PDRectangle size = new PDRectangle(
                points(sheet.imprint().paper().widthMm()),
                points(sheet.imprint().paper().heightMm()));
        for (Page page : sheet.pages()) {
            PDPage drawn = new PDPage(size);
            document.addPage(drawn);
            try (PdfPen pen = new PdfPen(document, drawn, fonts)) {
                page.marks().forEach(mark -> mark.showTo(pen));
            }
            for (Page.Bookmark bookmark : page.bookmarks()) outline.addLast(item(bookmark, drawn));
        }
        if (outline.hasChildren()) document.getDocumentCatalog().setDocumentOutline(outline);
    }

    private static PDOutlineItem item(Page.Bookmark bookmark, PDPage page) {
        PDPageXYZDestination there = new PDPageXYZDestination();
        there.setPage(page);
        there.setTop((int) (page.getMediaBox().getHeight() - points(bookmark.y())));
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(bookmark.title());
        item.setDestination(there);
        return item;
    }

    static float points(double mm) {
        return (float) (mm * POINTS_A_MM);
    }
}
