package dawnkettle.night;

import dawnkettle.mail.KeptMail;
import dawnkettle.mail.Mail;
import dawnkettle.shop.Customer;
import dawnkettle.store.ErasedRows;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Takes the words out of what is not needed any more. The ledger knows customers by code alone; their names and addresses
 * stand in mails, in papers of the tray and in files that were dropped. Lots, quantities and who got them stay.
 */
public final class Forget {
    private final Office office;

    public Forget(Office office) {
        this.office = office;
    }

    /** What became too old by the shop's own setting. @return what was done, in words behind others; empty for nothing */
    String run() {
        int years = office.papers().settings().care().keepYears();
        if (years == 0) return "";
        LocalDate first = today().minusYears(years);
        Instant before = first.atStartOfDay(office.shop().house().zone()).toInstant();
        List<String> mails = rows().keptBefore(before);
        if (!mails.isEmpty()) rows().blank(mails, office.now(), "older than " + years + " years");
        try {
            int copies = new OldCopies(office.papers().settings().places().backups()).clearBefore(first);
            int papers = papersBefore(before);
            return ", " + mails.size() + " mails, " + copies + " copies, " + papers + " papers of before " + first
                    + " erased";
        } catch (IOException | UncheckedIOException e) {
            return "; what is of before " + first + " can't all be erased (" + e.getMessage() + ")";
        }
    }

    private int papersBefore(Instant before) throws IOException {
        int erased = 0;
        for (Path file : papers())
            if (Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS)
                    .toInstant()
                    .isBefore(before)) {
                Files.delete(file);
                erased++;
            }
        return erased;
    }

    /** Everything in the tray, and order files that were dealt with. */
    private List<Path> papers() throws IOException {
        NightSettings.Places places = office.papers().settings().places();
        List<Path> all = new ArrayList<>();
        for (Path folder : List.of(
                places.outTray(),
                places.dropFolder().resolve("taken"),
                places.dropFolder().resolve("refused"))) {
            if (!Files.isDirectory(folder)) continue;
            try (Stream<Path> files = Files.walk(folder)) {
                files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                        .forEach(all::add);
            }
        }
        return all;
    }

    /**
     * Takes out the words of every mail that is over with and names a customer or one of its addresses.
     *
     * @return what was done, and what only a person can do
     */
    public List<String> customer(Customer customer) {
        List<String> wanted = wanted(customer);
        List<String> mails = rows().kept().stream()
                .filter(id -> names(office.ledger().outbox().message(id), wanted))
                .toList();
        rows().blank(mails, office.now(), "customer " + customer.code() + " asked for it");
        List<String> said = new ArrayList<>();
        said.add(mails.size() + " mails that named customer " + customer.code()
                + " are emptied; that they were sent stays.");
        said.add("What was made, and that " + customer.code() + " got it, stays under the code alone: "
                + "where food went is to be told for years.");
        said.addAll(papersNaming(wanted, mails));
        said.add(
                "Now take the row out of customers.csv, or write another name there; the nightly copies hold the mails "
                        + "until they are cleared away: delete those in \""
                        + office.papers().settings().places().backups() + "\" where the law wants it sooner.");
        return said;
    }

    /** Papers that hold words we can read; a PDF's are not looked into. */
    private List<String> papersNaming(List<String> wanted, List<String> mails) {
        try {
            List<Path> found = new ArrayList<>();
            for (Path file : papers())
                if (isMail(file, mails) || isText(file) && names(Files.readAllBytes(file), wanted)) found.add(file);
            for (Path file : found) Files.delete(file);
            return List.of(
                    found.size() + " mails and order files of the tray that named it are deleted.",
                    "Sheets (PDF) in \"" + office.papers().settings().places().outTray()
                            + "\" are not looked into: delete those that you need no more.");
        } catch (IOException | UncheckedIOException e) {
            return List.of("The tray can't be looked through (" + e.getMessage() + "): look there yourself.");
        }
    }

    /** A mail lies in the tray under its id. */
    private static boolean isMail(Path file, List<String> ids) {
        String name = file.getFileName().toString();
        return name.endsWith(".eml") && ids.contains(name.substring(0, name.length() - ".eml".length()));
    }

    private static boolean isText(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return name.endsWith(".eml") || name.endsWith(".csv") || name.endsWith(".txt");
    }

    private static List<String> wanted(Customer customer) {
        List<String> wanted = new ArrayList<>();
        wanted.add(customer.name());
        wanted.addAll(customer.mails());
        wanted.add(customer.address());
        return wanted.stream()
                .map(word -> word.toLowerCase(Locale.ROOT))
                .filter(word -> word.length() > 2) // a customer may have no address
                .toList();
    }

    private static boolean names(byte[] bytes, List<String> wanted) {
        String text = words(bytes).toLowerCase(Locale.ROOT);
        return wanted.stream().anyMatch(text::contains);
    }

    private static String words(byte[] bytes) {
        String plain = new String(bytes, StandardCharsets.UTF_8);
        if (!plain.startsWith(KeptMail.FIRST_LINE)) return plain;
        Mail mail = KeptMail.read(bytes);
        StringBuilder all = new StringBuilder(String.join(" ", mail.to()) + " " + mail.subject() + " "
                + mail.body().text());
        for (Mail.Attachment file : mail.attachments())
            all.append(' ').append(new String(file.content().toArray(), StandardCharsets.UTF_8));
        return all.toString();
    }

    private LocalDate today() {
        return office.now().atZone(office.shop().house().zone()).toLocalDate();
    }

    private ErasedRows rows() {
        return office.ledger().erased();
    }
}
