package dawnkettle.sheet;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;

/** Days and times as the sheets write them: weekday and month always in letters. */
final class Dates {
    private final Words words;
    private final ZoneId zone;

    Dates(Words words, ZoneId zone) {
        this.words = words;
        this.zone = zone;
    }

    /** As "Friday 4 December 2026". */
    String full(LocalDate day) {
        return format(Word.DATE_FULL).format(day);
    }

    /** As "Fri 4 Dec". */
    String brief(LocalDate day) {
        return format(Word.DATE_SHORT).format(day);
    }

    /** As "18 DEC 2026", the month in letters, so that no reader takes it for a day. */
    String onLabel(LocalDate day) {
        return format(Word.DATE_LABEL).format(day).toUpperCase(words.locale());
    }

    /** As "02:30"; in the hour that comes twice in autumn with the zone's letters. */
    String time(Instant instant) {
        ZonedDateTime local = instant.atZone(zone);
        boolean twice = zone.getRules().getValidOffsets(local.toLocalDateTime()).size() > 1;
        return format(Word.TIME).format(local)
                + (twice ? format("z").format(local).transform(z -> " " + z) : "");
    }

    String dayAndTime(Instant instant) {
        return brief(day(instant)) + ", " + time(instant);
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

    private DateTimeFormatter format(Word pattern) {
        return format(words.say(pattern));
    }

    private DateTimeFormatter format(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, words.locale());
    }
}
