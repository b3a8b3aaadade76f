package dawnkettle.night;

import dawnkettle.mail.Mail;
import dawnkettle.mail.RecallMail;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.RecallPage;
import dawnkettle.stock.Web;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Once a month: traces a lot that was drawn by chance, timed, and mails what was found. */
public final class RecallDrill implements Work {
    /** Lots delivered within so many days are drawn from. */
    private static final int DAYS_BACK = 45;

    private final Office office;
    private final Letters letters;

    RecallDrill(Office office, Letters letters) {
        this.office = office;
        this.letters = letters;
    }

    public RecallDrill(Office office) {
        this(office, new Letters(office));
    }

    @Override
    public String run(LocalDate day) {
        long started = System.nanoTime();
        Tracing tracing = new Tracing(office);
        Optional<LotCode> lot = drawn(tracing.web(), day);
        if (lot.isEmpty()) return "no lot has left the house lately; nothing to practise on";
        RecallPage page = tracing.ofLot(lot.get().text());
        Duration took = Duration.ofNanos(System.nanoTime() - started);
        Mail mail = RecallMail.of(page, day, took)
                .addressedTo(office.papers().settings().letters().summaryTo());
        letters.send(mail);
        return mail.subject() + ", in " + took.toMillis() + " ms";
    }

    /** The same lot for the same month, so that a drill that is tried again tells the same. */
    private Optional<LotCode> drawn(Web web, LocalDate day) {
        List<LotCode> lots = web.batches().stream()
                .map(Web.Batch::lot)
                .filter(lot -> web.handedOf(lot).stream()
                        .anyMatch(one -> one.gone()
                                && one.day().isAfter(day.minusDays(DAYS_BACK))
                                && !one.day().isAfter(day)))
                .toList();
        if (lots.isEmpty()) return Optional.empty();
        Random chance = new Random(day.getYear() * 100L + day.getMonthValue());
        return Optional.of(lots.get(chance.nextInt(lots.size())));
    }
}
