package dawnkettle.paper;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.sheet.Sheet;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.CRC32;

/**
 * What a queue is told of a sheet besides the document.
 *
 * @param sheet the name that all tries of one sheet share
 * @param check a figure of the document, so that one try is told from another
 * @param sides as RFC 8011, 5.2.8, has it; empty where the queue decides
 */
record JobTicket(String sheet, String check, int copies, Optional<String> sides, int pages) {
    /** RFC 8011, 5.1.3: a name has at most 255 octets; some of them are left for the check. */
    private static final int MOST_OCTETS = 220;

    static JobTicket of(Sheet sheet, PaperSettings settings, byte[] pdf) {
        CRC32 check = new CRC32();
        check.update(pdf);
        String kind = sheet.kind().word();
        return new JobTicket(
                shortened(sheet.imprint().title() + ", " + sheet.name()),
                String.format(Locale.ROOT, "%08x", check.getValue()),
                settings.copiesOf(kind),
                settings.sidesOf(kind).map(sides -> keyword(sides, sheet)),
                sheet.pages().size());
    }

    /** Two sides turn like a book's, whichever way the sheet is held. */
    private static String keyword(PaperSettings.Sides sides, Sheet sheet) {
        if (sides == PaperSettings.Sides.ONE) return "one-sided";
        boolean lying =
                sheet.imprint().paper().widthMm() > sheet.imprint().paper().heightMm();
        return lying ? "two-sided-short-edge" : "two-sided-long-edge";
    }

    private static String shortened(String name) {
        String kept = name;
        while (kept.getBytes(UTF_8).length > MOST_OCTETS)
            kept = kept.substring(0, kept.offsetByCodePoints(kept.length(), -1));
        return kept;
    }

    /** What the queue lists it by. */
    String name() {
        return sheet + " #" + check;
    }

    /** Whether a job of this name is a try of the same sheet, this one or an earlier. */
    boolean isSameSheet(String jobName) {
        return isOurs(jobName) && jobName.startsWith(sheet + " #");
    }

    static boolean isOurs(String jobName) {
        return jobName.matches(".* #[0-9a-f]{8}");
    }
}
