package dawnkettle;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dawnkettle.export.PlanCheck;
import dawnkettle.store.Ledger;
import jakarta.mail.MessagingException;
import jakarta.mail.Part;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The demonstration shop's night as its owner would first see it: one command, and all that lies in the folder then. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ANightTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);

    @TempDir
    static Path folder;

    private Terminal.Told told;
    private Left left;
    private String text;
    private JsonNode plan;

    @BeforeAll
    void rehearse() throws IOException {
        told = Terminal.run("rehearse", "--conf", "conf", "--out", folder, "--at", "2026-12-03T15:00");
        left = new Left(folder);
        text = Files.readString(folder.resolve("plan.json"), UTF_8);
        plan = new ObjectMapper().readTree(text);
    }

    @Test
    void all_is_well_and_nobody_complains() {
        assertThat(told.err()).isEmpty();
        assertThat(told.out()).contains("All well: 2552 packs ordered, all planned; every van in time.");
        assertThat(told.status()).isZero();
    }

    @Test
    void the_plan_is_of_the_day_searched_and_conforms_to_the_shipped_schema() throws IOException {
        assertThat(ShippedSchema.problems(text)).isEmpty();
        assertThat(plan.path("productionDate").asText()).isEqualTo("2026-12-04");
        assertThat(plan.path("mode").asText()).isEqualTo("full");
        assertThat(plan.path("quality").path("decodeBudget").asLong()).isEqualTo(100_000);
    }

    @Test
    void the_plan_breaks_no_rule_of_a_checker_that_knows_only_the_file() {
        assertThat(PlanCheck.broken(text)).isEmpty();
    }

    @Test
    void every_kind_of_sheet_lies_there_as_a_pdf_with_a_route_sheet_for_each_van() throws IOException {
        List<String> sheets = left.names("sheets", ".pdf");
        assertThat(sheets)
                .contains("soak.pdf", "pick.pdf", "fallback.pdf", "count.pdf", "free.pdf", "records.pdf")
                .filteredOn(name -> name.startsWith("run"))
                .hasSizeGreaterThanOrEqualTo(3);
        List<String> vans = new ArrayList<>();
        plan.path("allocation")
                .forEach(line -> vans.add("route-" + line.path("route").asText() + ".pdf"));
        assertThat(sheets)
                .filteredOn(name -> name.startsWith("route-"))
                .containsExactlyInAnyOrderElementsOf(vans.stream().distinct().toList());
        for (String sheet : sheets)
            assertThat(Files.readString(folder.resolve("sheets").resolve(sheet), ISO_8859_1))
                    .as(sheet)
                    .startsWith("%PDF-");
    }

    @Test
    void the_record_of_each_batch_is_kept_in_the_folder_of_its_day() throws IOException {
        List<String> records = new ArrayList<>();
        plan.path("batches")
                .forEach(batch -> records.add("record-" + batch.path("id").asText() + "-"
                        + batch.path("lot").asText() + "-r1.pdf"));
        assertThat(left.names("records/2026-12-04", ".pdf"))
                .containsExactlyInAnyOrderElementsOf(records)
                .isNotEmpty();
    }

    @Test
    void every_label_of_the_plan_has_its_preview_and_its_bytes_and_no_other_is_there() throws IOException {
        List<String> lots = new ArrayList<>();
        plan.path("labels")
                .forEach(label -> lots.add(
                        label.path("lot").asText() + "-" + label.path("product").asText()));
        assertThat(lots).isNotEmpty().doesNotHaveDuplicates();
        assertThat(left.names("labels", ""))
                .containsExactlyInAnyOrderElementsOf(lots.stream()
                        .flatMap(lot -> Stream.of(lot + ".bin", lot + ".png"))
                        .toList());
        for (String name : left.names("labels", ".png")) {
            BufferedImage preview =
                    ImageIO.read(folder.resolve("labels").resolve(name).toFile());
            assertThat(preview.getColorModel().getPixelSize()).as(name).isEqualTo(1);
        }
    }

    @Test
    void as_many_labels_are_counted_as_printed_as_the_plan_has_cases() {
        int cases = 0;
        for (JsonNode label : plan.path("labels"))
            cases += label.path("cases").asInt() + label.path("partCases").size();
        int printed = told.out()
                .lines()
                .filter(line -> line.matches(".* labels? of lot .*"))
                .mapToInt(line -> Integer.parseInt(line.substring(9).strip().split(" ")[0]))
                .sum();
        assertThat(printed).isEqualTo(cases).isPositive();
    }

    @Test
    void the_mails_are_whole_in_plain_text_and_in_html() throws IOException, MessagingException {
        List<MimeMessage> mails = new ArrayList<>();
        for (String name : left.names("mail", ".eml")) mails.add(mail(name));
        assertThat(mails)
                .extracting(MimeMessage::getSubject)
                .anySatisfy(subject -> assertThat(subject).startsWith("Fri 4 Dec: all well"))
                .anySatisfy(subject -> assertThat(subject).startsWith("Week 48: "))
                .anySatisfy(subject -> assertThat(subject).contains(" of okara, ready "))
                .hasSize(3);
        for (MimeMessage mail : mails) {
            assertThat(mail.getMessageID()).matches("<[^<>@\\s]+@[^<>@\\s]+>");
            assertThat(mail.getFrom()).containsExactly(new InternetAddress("clerk@millrace.example"));
            String to = mail.getSubject().contains("okara") ? "farm@quillhaven.example" : "owner@millrace.example";
            assertThat(mail.getAllRecipients()).containsExactly(new InternetAddress(to));
            assertThat(mail.getSentDate()).isNotNull();
            assertThat(words(mail, "text/html")).as(mail.getSubject()).contains("<html");
        }
        assertThat(words(mails.get(0), "text/plain")).contains("A kilogram cost 1.955 USD");
        assertThat(words(mails.get(0), "text/html")).contains("1.955");
        assertThat(words(mails.get(2), "text/plain")).contains("All is well.").contains("Schools and colleges");
        assertThat(words(mails.get(2), "text/html")).contains("Schools and colleges");
    }

    private MimeMessage mail(String name) throws IOException, MessagingException {
        try (InputStream in = Files.newInputStream(folder.resolve("mail").resolve(name))) {
            return new MimeMessage(null, in);
        }
    }

    /** All words of one type, however deep the part lies. */
    private static String words(Part part, String type) throws IOException, MessagingException {
        if (part.isMimeType(type)) return part.getContent().toString();
        if (!(part.getContent() instanceof MimeMultipart parts)) return "";
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < parts.getCount(); i++) words.append(words(parts.getBodyPart(i), type));
        return words.toString();
    }

    @Test
    void the_ledger_opens_again_and_keeps_every_conservation_law() {
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            assertThat(ledger.plans().latest(DAY).orElseThrow().json()).isEqualTo(text);
            assertThat(ledger.broken(DAY)).isEmpty();
        }
    }

    @Test
    void the_story_is_what_the_terminal_showed() throws IOException {
        assertThat(told.out()).isEqualTo(Files.readString(folder.resolve("story.txt"), UTF_8));
    }
}
