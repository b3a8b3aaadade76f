package dawnkettle.mail;

import dawnkettle.mail.Letter.Block;
import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Lines;
import dawnkettle.mail.Letter.Section;
import dawnkettle.shop.House;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** A mail that can't wait for the morning: what happened, what is safe, what to do, and by when. */
public final class AlertMail {
    /** Letters of a subject that a phone shows (common practice, no source). */
    private static final int SUBJECT = 70;

    private final House house;
    private final String id;
    private final Instant now;
    private final Figures figures;

    /**
     * @param id of the mail
     * @param now which times are told as seen from
     */
    public AlertMail(House house, String id, Instant now) {
        this.house = house;
        this.id = id;
        this.now = now;
        LocalDate today = now.atZone(house.zone()).toLocalDate();
        this.figures = new Figures(house, today);
    }

    /**
     * @param fresh what was not told yet
     * @param open what was told before and is still so
     * @param last whether it is the last one tonight
     */
    public Mail of(List<Alarm> fresh, List<Alarm> open, boolean last) {
        List<Section> sections = new ArrayList<>();
        fresh.forEach(alarm -> sections.add(section(alarm)));
        sections.add(new Section("Told before and still so", new Bullets(told(open))));
        String subject = fresh.isEmpty()
                ? "Still open: " + open.get(0).happened()
                : "Please look: " + fresh.get(0).happened() + more(fresh.size() - 1);
        String lead = fresh.isEmpty()
                ? Figures.count(open.size(), "thing is", "things are") + " still open."
                : Figures.count(fresh.size(), "thing needs", "things need") + " a person" + by(fresh) + ".";
        return mail(subject, lead, sections, last);
    }

    /** All that was told is over. */
    public Mail allClear(List<Alarm> over) {
        Section section = new Section("What is over", new Bullets(told(over)));
        return letter(
                "All clear: the clerk works again by itself",
                true,
                "All clear. Nothing waits for you.",
                List.of(section),
                List.of());
    }

    private Mail mail(String subject, String lead, List<Section> sections, boolean last) {
        List<String> foot = last
                ? List.of(
                        "This is the last of these mails tonight; the command \"status\" and the morning summary say the rest.")
                : List.of("What comes within the hour is told together; when all is over one mail says so.");
        return letter(subject, false, lead, sections, foot);
    }

    private Mail letter(String subject, boolean well, String lead, List<Section> sections, List<String> foot) {
        Letter letter = new Letter(house.name(), well, List.of(lead), sections, foot);
        Mail.Body body = new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), List.of());
        return new Mail(id, List.of(), shortened(subject), body, List.of());
    }

    private Section section(Alarm alarm) {
        List<String> lines = new ArrayList<>();
        if (!alarm.safe().isEmpty()) lines.add("What is safe: " + alarm.safe());
        if (!alarm.todo().isEmpty()) lines.add("What to do: " + alarm.todo());
        alarm.by().ifPresent(by -> lines.add("By when: " + figures.time(by) + "."));
        Block block = new Lines(lines);
        return new Section(Plain.sentence(alarm.happened()), block);
    }

    private static List<String> told(List<Alarm> alarms) {
        return alarms.stream().map(alarm -> Plain.sentence(alarm.happened())).toList();
    }

    /** As " by 03:14", the earliest that is not over. */
    private String by(List<Alarm> fresh) {
        return fresh.stream()
                .flatMap(alarm -> alarm.by().stream())
                .filter(now::isBefore)
                .min(Comparator.naturalOrder())
                .map(by -> " by " + figures.time(by))
                .orElse("");
    }

    private static String more(int others) {
        return others == 0 ? "" : ", and " + others + " more";
    }

    private static String shortened(String subject) {
        String plain = Plain.line(subject);
        return plain.length() <= SUBJECT ? plain : plain.substring(0, plain.lastIndexOf(' ', SUBJECT - 1)) + " …";
    }
}
