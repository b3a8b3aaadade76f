package dawnkettle.night;

import dawnkettle.label.LabelPrinter;
import dawnkettle.label.LotLabels;
import dawnkettle.mail.Charts;
import dawnkettle.mail.Post;
import dawnkettle.sheet.Printer;
import dawnkettle.sheet.SheetDrawing;
import dawnkettle.sheet.SheetStyle;
import java.time.LocalDate;
import java.util.function.Function;

/** All that the night calls and that lies outside: devices, or folders in a rehearsal. */
public record Edges(Senses senses, PaperDesk paper, LabelDesk labels, MailDesk mail, PlanForm plans) {
    /** What comes in. */
    public record Senses(OrderSource orders, Thermometer thermometer, TrustedTime time) {}

    /**
     * Sheets.
     *
     * @param records where a production day's batch records are kept
     */
    public record PaperDesk(Printer printer, SheetStyle style, Function<LocalDate, Printer> records) {
        /** Where no records are kept. */
        public PaperDesk(Printer printer, SheetStyle style) {
            this(printer, style, day -> sheet -> {});
        }
    }

    /** Case labels. */
    public record LabelDesk(LabelPrinter printer, LotLabels lots) {}

    /** Mails. */
    public record MailDesk(Post post, Charts charts, SheetDrawing enclosures) {}
}
