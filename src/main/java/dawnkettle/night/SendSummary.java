package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.mail.Bytes;
import dawnkettle.mail.FarmerNote;
import dawnkettle.mail.Mail;
import dawnkettle.mail.MorningSummary;
import dawnkettle.mail.NoPlanSummary;
import dawnkettle.plan.DayPlan;
import dawnkettle.sheet.Sheet;
import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import dawnkettle.trouble.DiskAway;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The mail that the owner reads first, and the note to whoever fetches the okara. */
final class SendSummary implements Work {
    /** By which the outbox knows it; one without a plan has the number 0. */
    private static final String SUMMARY = "summary";

    private static final String UNCONFIRMED = "summary-not-confirmed";

    private final Office office;
    private final Letters letters;
    private final PrintSheets sheets;

    SendSummary(Office office, Letters letters, PrintSheets sheets) {
        this.office = office;
        this.letters = letters;
        this.sheets = sheets;
    }

    @Override
    public String run(LocalDate productionDate) {
        Optional<DayPlan> found = office.plan(productionDate);
        if (found.isEmpty()) return letters.send(withoutPlan(productionDate));
        sendNote(found.get(), office.papers().settings().letters().farmerTo());
        Mail mail = of(found.get());
        Optional<String> before = before(productionDate);
        if (before.isPresent()) mail = second(mail, before.get());
        return letters.send(new ClockGate(office).isTrusted() ? mail : inDoubt(mail));
    }

    /** While the clock is in doubt, of a plan that waits for it. */
    String sendUnconfirmed(LocalDate productionDate) {
        DayPlan plan = office.unconfirmedPlan(productionDate).orElseThrow(() -> new NoPlan(productionDate));
        Mail mail = of(plan);
        String id = Mail.idOf(productionDate, UNCONFIRMED, 1);
        return letters.send(inDoubt(new Mail(id, mail.to(), mail.subject(), mail.body(), mail.attachments())));
    }

    /** The step that sends a second summary: a plan came, or a date was confirmed, after the first had gone. */
    Optional<StepKey> second(LocalDate productionDate) {
        StepKey first = StepKey.of(Step.SUMMARY.word(), productionDate);
        Optional<StepRow> sent = office.ledger().steps().find(first).filter(row -> row.state() == StepRow.State.DONE);
        boolean isUseful = sent.filter(row -> office.now().isBefore(row.dueAt().plus(Step.SUMMARY.useful())))
                .isPresent();
        boolean isFirst = office.ledger()
                .outbox()
                .find(Mail.idOf(productionDate, SUMMARY, 0))
                .isPresent();
        if (!isUseful || !isFirst || office.plan(productionDate).isEmpty()) return Optional.empty();
        return Optional.of(StepKey.of("second summary", productionDate));
    }

    /** What the first summary was, where there was one that this one replaces. */
    private Optional<String> before(LocalDate productionDate) {
        if (isKept(Mail.idOf(productionDate, SUMMARY, 0))) return Optional.of("when there was no plan");
        if (isKept(Mail.idOf(productionDate, UNCONFIRMED, 1))) return Optional.of("when the date was not confirmed");
        return Optional.empty();
    }

    private boolean isKept(String id) {
        return office.ledger().outbox().find(id).isPresent();
    }

    private static Mail second(Mail mail, String before) {
        return mail.withSubjectAfter("Second summary of ")
                .withFirstLine("This mail replaces the first summary of the day, which was sent " + before
                        + ". Work from this one, and delete the first.");
    }

    private Mail inDoubt(Mail mail) {
        LocalDate today = office.now().atZone(office.shop().house().zone()).toLocalDate();
        return mail.withSubjectAfter("Date not confirmed: ")
                .withFirstLine(
                        "DATE NOT CONFIRMED: the clock of the machine may be wrong, so that no book is closed and no"
                                + " label is dated by it. If today is " + today
                                + ", say so on the machine: dawnkettle clock confirm " + today
                                + ". If not, set the clock first.");
    }

    private Mail of(DayPlan plan) {
        LocalDate productionDate = plan.heading().productionDate();
        NightSettings.Mailing mailing = office.papers().settings().letters();
        Mail mail = MorningSummary.of(
                        plan,
                        office.shop(),
                        new GatherReport(office).of(productionDate),
                        office.edges().mail().charts())
                .addressedTo(mailing.summaryTo());
        if (mailing.calendar()) mail = mail.with(MorningSummary.calendar(plan, office.shop()));
        for (Sheet sheet : enclosed(plan, mailing)) mail = mail.with(pdf(plan, sheet));
        return mail;
    }

    /** Where even the book can't be read, the mail says what to work from all the same. */
    private Mail withoutPlan(LocalDate day) {
        List<BookLine> lines = List.of();
        List<String> questions = List.of();
        try {
            lines = office.book().bookFor(day).stream()
                    .filter(line -> line.packs() > 0)
                    .toList();
            questions = new GatherReport(office).of(day).notes().questions();
        } catch (DiskAway gone) {
            throw gone;
        } catch (RuntimeException mistake) {
            questions = List.of("not all could be read: " + mistake.getMessage());
        }
        return NoPlanSummary.of(
                        new NoPlanSummary.State(
                                day, StandIn.mode(office, day), StandIn.sheet(office, day), lines, questions),
                        office.shop())
                .addressedTo(office.papers().settings().letters().summaryTo());
    }

    private void sendNote(DayPlan plan, List<String> farmers) {
        if (farmers.isEmpty()) return;
        FarmerNote.of(plan, office.shop())
                .map(note -> note.addressedTo(farmers))
                .ifPresent(letters::send);
    }

    private List<Sheet> enclosed(DayPlan plan, NightSettings.Mailing mailing) {
        if (mailing.attached().isEmpty()) return List.of();
        return sheets.planned(plan).stream()
                .filter(sheet -> mailing.attached().contains(sheet.kind().word()))
                .toList();
    }

    /** As "2026-12-04-run.pdf". */
    private Mail.Attachment pdf(DayPlan plan, Sheet sheet) {
        byte[] bytes = office.edges().mail().enclosures().draw(sheet);
        String name = plan.heading().productionDate() + "-" + sheet.name() + ".pdf";
        return new Mail.Attachment(name, "application/pdf", Bytes.of(bytes));
    }
}
