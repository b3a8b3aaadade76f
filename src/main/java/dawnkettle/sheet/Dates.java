package dawnkettle.sheet;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Days and times as the sheets write them: weekday and month always in letters. */
final class Dates {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter ZONE_LETTERS = DateTimeFormatter.ofPattern("z", Locale.ENGLISH);
    private static final DateTimeFormatter ON_LABEL = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    private final Words words;
    private final ZoneId zone;

    Dates(Words words, ZoneId zone) {
        this.words = words;
        this.zone = zone;
    }

    /** As "Friday 4 December 2026", in every language of the sheet. */
    String full(LocalDate day) {
        return words.say(
                Word.DATE_FULL,
                words.item(Word.WEEKDAYS, day.getDayOfWeek().ordinal()),
                day.getDayOfMonth(),
                words.item(Word.MONTHS, day.getMonth().ordinal()),
                day.getYear());
    }

    /** As "Fri 4 Dec". */
    String brief(LocalDate day) {
        return words.first(
                Word.DATE_SHORT,
                words.item(Word.WEEKDAYS_SHORT, day.getDayOfWeek().ordinal()),
                day.getDayOfMonth(),
                words.item(Word.MONTHS_SHORT, day.getMonth().ordinal()));
    }

    /** As "18 DEC 2026", in whatever language the sheet is: it is held beside the label, which says it so. */
    String onLabel(LocalDate day) {
        return ON_LABEL.format(day).toUpperCase(Locale.ROOT);
    }

    /** As "02:30"; in the hour that comes twice in autumn with the zone's letters. */
    String time(Instant instant) {
        ZonedDateTime local = instant.atZone(zone);
        boolean twice = zone.getRules().getValidOffsets(local.toLocalDateTime()).size() > 1;
        return TIME.format(local) + (twice ? " " + ZONE_LETTERS.format(local) : "");
    }

    String dayAndTime(Instant instant) {
        return words.first(Word.DAY_TIME, brief(day(instant)), time(instant));
    }

    /** The time, and the day before it where that is not {@code today}. */
    String timeFrom(Instant instant, LocalDate today) {
        return day(instant).equals(today) ? time(instant) : dayAndTime(instant);
    }

    LocalDate day(Instant instant) {
        return instant.atZone(zone).toLocalDate();
    }

    /** The beginning of the hour, by the clock on the wall. */
    Instant hourOf(Instant instant) {
        return instant.atZone(zone).truncatedTo(ChronoUnit.HOURS).toInstant();
    }

    int hour(Instant instant) {
        return instant.atZone(zone).getHour();
    }
}
