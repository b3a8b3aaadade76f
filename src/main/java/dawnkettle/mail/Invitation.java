package dawnkettle.mail;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.mail.Mail.Attachment;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The day's vans and the okara pick-up as entries that a phone's calendar takes in (iCalendar, RFC 5545). */
final class Invitation {
    /** RFC 5545, 3.1: lines of at most 75 octets, the break not counted. */
    private static final int OCTETS = 75;

    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    /** So long an entry for the farmer is (common practice, no source). */
    private static final Duration PICK_UP = Duration.ofMinutes(30);

    private final DayPlan plan;
    private final Shop shop;
    private final List<String> lines = new ArrayList<>();

    private Invitation(DayPlan plan, Shop shop) {
        this.plan = plan;
        this.shop = shop;
    }

    /** A revised plan's entries replace the earlier ones: the same UID, a higher SEQUENCE. */
    static Attachment of(DayPlan plan, Shop shop) {
        Invitation made = new Invitation(plan, shop);
        made.write();
        String text = String.join("\r\n", made.lines) + "\r\n";
        String name = "vans-" + plan.heading().productionDate() + ".ics";
        return new Attachment(name, "text/calendar; charset=utf-8", Bytes.of(text.getBytes(UTF_8)));
    }

    private void write() {
        line("BEGIN:VCALENDAR");
        line("VERSION:2.0");
        line("PRODID:-//Dawnkettle//Night clerk//EN");
        line("METHOD:PUBLISH");
        plan.routes().forEach(this::van);
        pickUp().ifPresent(at -> event(
                "okara",
                new Span(at, at.plus(PICK_UP)),
                "Okara is ready to be fetched",
                "Keep it at or below 5 °C (41 °F), covered. It is soy."));
        line("END:VCALENDAR");
    }

    private record Span(Instant from, Instant to) {}

    private void van(PlannedRoute route) {
        Route written = shop.route(route.route());
        String late = route.lateMinutes() > 0 ? " (late " + route.lateMinutes() + " min by the plan)" : "";
        Instant from = route.departs().minus(Duration.ofMinutes(route.loadMinutes()));
        event(
                "van-" + route.route(),
                new Span(from, route.departs()),
                "Load and send off: " + written.name() + late,
                "Loading from " + time(from) + ", off at " + time(route.departs()) + ".");
    }

    private String time(Instant at) {
        return new Figures(shop.house(), plan.heading().productionDate()).time(at);
    }

    /** When the last okara leaves the filter. */
    private Optional<Instant> pickUp() {
        return plan.operations().stream()
                .filter(operation -> operation.stage().contains("filter"))
                .map(PlannedOperation::end)
                .max(Comparator.naturalOrder());
    }

    private void event(String name, Span when, String summary, String words) {
        line("BEGIN:VEVENT");
        line("UID:" + plan.heading().productionDate() + "." + name + "@dawnkettle");
        line("SEQUENCE:" + (plan.heading().revision() - 1));
        line("DTSTAMP:" + UTC.format(plan.heading().computedAt()));
        line("DTSTART:" + UTC.format(when.from()));
        line("DTEND:" + UTC.format(when.to()));
        line("SUMMARY:" + escaped(summary));
        line("DESCRIPTION:" + escaped(words));
        line("LOCATION:" + escaped(shop.house().name()));
        line("TRANSP:TRANSPARENT");
        line("END:VEVENT");
    }

    /** RFC 5545, 3.3.11. */
    private static String escaped(String text) {
        return Plain.line(text).replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,");
    }

    /** Folded between characters, never inside one. */
    private void line(String whole) {
        StringBuilder line = new StringBuilder();
        int octets = 0;
        for (int i = 0; i < whole.length(); ) {
            String next = Character.toString(whole.codePointAt(i));
            int size = next.getBytes(UTF_8).length;
            if (octets + size > OCTETS) {
                lines.add(line.toString());
                line = new StringBuilder(" ");
                octets = 1;
            }
            line.append(next);
            octets += size;
            i += next.length();
        }
        lines.add(line.toString());
    }
}
