package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.cost.WeekBook;
import dawnkettle.mail.Mail;
import dawnkettle.night.GatherBook;
import dawnkettle.night.Office;
import dawnkettle.night.ReportWeek;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The cost report of a week, read here; nothing is sent. */
@Command(
        name = "week",
        mixinStandardHelpOptions = true,
        description = "Say what the last whole week cost and what moved it; nothing is mailed.")
final class CostWeek implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(
            names = "--day",
            paramLabel = "DATE",
            description = "The week before this day's, as 2026-12-07; today where it is left out.")
    private LocalDate day;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Write its page as PDF, its tables as CSV and the mail's HTML there as well.")
    private Path out;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    CostWeek(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (at, line) -> {});
            LocalDate asked = Optional.ofNullable(day)
                    .orElseGet(() -> LocalDate.ofInstant(
                            office.clock().instant(), conf.shop().house().zone()));
            Optional<WeekBook> book = new GatherBook(office).before(asked);
            if (book.isEmpty())
                throw new Dawnkettle.Refused("no week before " + asked
                        + " has anything made in it; name a later day with --day, or record what was made");
            Mail mail = new ReportWeek(office).mail(book.get());
            spec.commandLine().getOut().print(mail.body().text());
            spec.commandLine().getOut().flush();
            if (out != null) write(mail);
        }
        return Dawnkettle.DONE;
    }

    private void write(Mail mail) {
        try {
            Files.createDirectories(out);
            for (Mail.Attachment attachment : mail.attachments())
                Files.write(out.resolve(attachment.name()), attachment.content().toArray());
            String html = mail.body().html();
            for (Mail.Picture picture : mail.body().pictures()) {
                Files.write(out.resolve(picture.name() + ".png"), picture.png().toArray());
                html = html.replace("cid:" + picture.cid(mail.id()), picture.name() + ".png");
            }
            Files.writeString(out.resolve("costs.html"), html);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
