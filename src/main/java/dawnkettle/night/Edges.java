package dawnkettle.night;

import dawnkettle.label.LabelPrinter;
import dawnkettle.label.LotLabels;
import dawnkettle.mail.Charts;
import dawnkettle.mail.Post;
import dawnkettle.sheet.Printer;
import dawnkettle.sheet.SheetDrawing;
import dawnkettle.sheet.SheetStyle;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * All that the night calls and that lies outside: devices, or folders in a rehearsal.
 *
 * @param moving is called while a long computation moves, for whoever watches that the service does not stand still
 */
public record Edges(Senses senses, PaperDesk paper, LabelDesk labels, MailDesk mail, PlanForm plans, Runnable moving) {
    /** Where nobody watches. */
    public Edges(Senses senses, PaperDesk paper, LabelDesk labels, MailDesk mail, PlanForm plans) {
        this(senses, paper, labels, mail, plans, () -> {});
    }

    /** The same, watched. */
    public Edges watchedBy(Runnable watcher) {
        return new Edges(senses, paper, labels, mail, plans, watcher);
    }

    /** The same with an order mailbox. */
    public Edges takingMail(MailIn in) {
        return new Edges(
                senses, paper, labels, new MailDesk(mail.post(), mail.charts(), mail.enclosures(), in), plans, moving);
    }

    /** The same with what the self-test asks besides. */
    public Edges asking(List<Probe> more) {
        List<Probe> probes = new ArrayList<>(senses.probes());
        probes.addAll(more);
        Senses all = new Senses(senses.orders(), senses.thermometer(), senses.time(), probes, senses.lookout());
        return new Edges(all, paper, labels, mail, plans);
    }

    /**
     * What comes in, what is asked how it is, and who is told that all is well.
     *
     * @param probes what the evening self-test asks
     */
    public record Senses(
            OrderSource orders, Thermometer thermometer, TrustedTime time, List<Probe> probes, Lookout lookout) {
        public Senses {
            probes = List.copyOf(probes);
        }

        /** Where nothing is asked and nobody is told. */
        public Senses(OrderSource orders, Thermometer thermometer, TrustedTime time) {
            this(orders, thermometer, time, List.of(), Lookout.NONE);
        }
    }

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

    /** Mails, out and in. */
    public record MailDesk(Post post, Charts charts, SheetDrawing enclosures, MailIn in) {
        /** Where none come in. */
        public MailDesk(Post post, Charts charts, SheetDrawing enclosures) {
            this(post, charts, enclosures, MailIn.NONE);
        }
    }
}
