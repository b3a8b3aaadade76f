package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.mail.Bytes;
import dawnkettle.mail.FarmerNote;
import dawnkettle.mail.Mail;
import dawnkettle.mail.MorningSummary;
import dawnkettle.mail.NoPlanSummary;
import dawnkettle.plan.DayPlan;
import dawnkettle.sheet.Sheet;
import dawnkettle.trouble.DiskAway;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The mail that the owner reads first, and the note to whoever fetches the okara. */
final class SendSummary implements Work {
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
        DayPlan plan = found.get();
        NightSettings.Mailing mailing = office.papers().settings().letters();
        sendNote(plan, mailing.farmerTo());
        Mail mail = MorningSummary.of(
                        plan,
                        office.shop(),
                        new GatherReport(office).of(productionDate),
                        office.edges().mail().charts())
                .addressedTo(mailing.summaryTo());
        if (mailing.calendar()) mail = mail.with(MorningSummary.calendar(plan, office.shop()));
        for (Sheet sheet : enclosed(plan, mailing)) mail = mail.with(pdf(plan, sheet));
        return letters.send(mail);
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
