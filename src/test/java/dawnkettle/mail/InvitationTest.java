package dawnkettle.mail;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Against RFC 5545 (iCalendar): content lines of at most 75 octets, CRLF, escapes, UTC times. */
class InvitationTest {
    private static final Mail.Attachment FILE = MorningSummary.calendar(MillraceFriday.well(), Millrace.shop());
    private static final String TEXT = new String(FILE.content().toArray(), UTF_8);

    @Test
    void every_line_ends_in_cr_lf_and_has_at_most_75_octets() {
        assertThat(TEXT).endsWith("\r\n");
        assertThat(TEXT.replace("\r\n", "")).doesNotContain("\r").doesNotContain("\n");
        assertThat(TEXT.split("\r\n")).allMatch(line -> line.getBytes(UTF_8).length <= 75);
    }

    @Test
    void a_van_is_an_entry_from_loading_to_departure() {
        assertThat(FILE.name()).isEqualTo("vans-2026-12-04.ics");
        assertThat(FILE.mediaType()).isEqualTo("text/calendar; charset=utf-8");
        List<String> lines = TEXT.replace("\r\n ", "").lines().toList();
        assertThat(lines).startsWith("BEGIN:VCALENDAR", "VERSION:2.0");
        assertThat(lines)
                .containsSubsequence(
                        "BEGIN:VEVENT",
                        "UID:2026-12-04.van-MIL@dawnkettle",
                        "SEQUENCE:0",
                        "DTSTART:20261204T150000Z",
                        "DTEND:20261204T153000Z",
                        "SUMMARY:Load and send off: Mill Lane",
                        "END:VEVENT");
    }

    @Test
    void commas_semicolons_and_backslashes_are_escaped() {
        assertThat(TEXT).contains("Loading from 10:00\\, off at 10:30.");
    }
}
