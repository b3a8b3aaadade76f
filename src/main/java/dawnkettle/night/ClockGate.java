package dawnkettle.night;

import dawnkettle.store.ClockRows;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.TextStyle;
import java.util.Locale;
import java.util.Optional;

/**
 * The one place that says whether the clock may close a day or date a label. What a person confirmed holds for a day and a half, and no
 * longer than the machine runs and its clock does not jump.
 */
public final class ClockGate {
    /** Long enough for a night without a network, short enough that a drifting clock is asked about again. Common practice, no source. */
    private static final Duration A_WORD_HOLDS = Duration.ofHours(36);

    /** Two programs that write a ledger may do so in another order than they asked for the time. */
    private static final Duration SLACK = Duration.ofSeconds(90);

    /** A shop that works leaves its clerk alone for no more working days than these. Common practice, no source. */
    static final int MOST_WORKING_DAYS = 5;

    private final Office office;

    public ClockGate(Office office) {
        this.office = office;
    }

    /** Why no date is printed now, in words; empty where the clock is known to be right. */
    Optional<String> doubt() {
        Instant now = office.now();
        if (isConfirmed(now)) return Optional.empty();
        Optional<Instant> newest =
                rows().newest().filter(then -> now.plus(SLACK).isBefore(then));
        if (newest.isPresent())
            return Optional.of("the clock says " + said(now) + ", and the ledger was written to at "
                    + said(newest.get()) + "; set it, or say that it is right: clock confirm " + date(now));
        Optional<ClockRows.Noted> gap = openGap();
        if (gap.isPresent())
            return gap.map(noted -> noted.note() + "; say that it is right: clock confirm " + date(now));
        return time().doubt(now);
    }

    private boolean isConfirmed(Instant now) {
        return rows().last(ClockRows.Kind.CONFIRMED)
                .filter(word -> word.boot().equals(time().boot()))
                .filter(word -> !now.isBefore(word.at().minus(SLACK))
                        && now.isBefore(word.at().plus(A_WORD_HOLDS)))
                .filter(word -> isBefore(ClockRows.Kind.JUMP, word))
                .filter(word -> isBefore(ClockRows.Kind.GAP, word))
                .isPresent();
    }

    private boolean isBefore(ClockRows.Kind kind, ClockRows.Noted word) {
        return rows().last(kind).filter(other -> other.seq() > word.seq()).isEmpty();
    }

    private Optional<ClockRows.Noted> openGap() {
        Optional<ClockRows.Noted> gap = rows().last(ClockRows.Kind.GAP);
        return gap.filter(noted -> rows().last(ClockRows.Kind.CONFIRMED)
                .filter(word -> word.seq() > noted.seq())
                .isEmpty());
    }

    /**
     * At the start of the service, before it writes anything: how many working days the ledger was left alone. Closed days
     * do not count, so that a holiday blocks no morning.
     */
    public void lookBack() {
        Instant now = office.now();
        Optional<Instant> newest = rows().newest();
        if (newest.isEmpty() || openGap().isPresent()) return;
        LocalDate then = date(newest.get());
        long days = then.plusDays(1).isBefore(date(now))
                ? then.plusDays(1)
                        .datesUntil(date(now))
                        .filter(office.shop().calendar()::isWorkDay)
                        .limit(MOST_WORKING_DAYS + 1L)
                        .count()
                : 0;
        if (days <= MOST_WORKING_DAYS) return;
        String note = "the clock says " + said(now) + ", and the ledger was last written to at " + said(newest.get())
                + ", more than " + MOST_WORKING_DAYS + " working days ago";
        rows().note(ClockRows.Kind.GAP, now, date(now), time().boot(), note);
        office.tell(note);
    }

    /** The clock and the machine's own count of seconds went apart by so much. */
    void jumped(Duration by) {
        Instant now = office.now();
        String note = "the clock jumped " + (by.isNegative() ? "back" : "forward") + " by "
                + by.abs().toSeconds() + " s; it is looked at anew before a date is printed";
        rows().note(ClockRows.Kind.JUMP, now, date(now), time().boot(), note);
        office.tell(note);
    }

    /**
     * Takes a person's word for it.
     *
     * @param day the date that the person says it is
     * @return what was done, in a sentence
     * @throws dawnkettle.trouble.BadFile where the clock shows another date
     */
    public String confirm(LocalDate day) {
        Instant now = office.now();
        if (!day.equals(date(now)))
            throw ByHand.refused(
                    "clock confirm " + day,
                    "the clock says " + said(now),
                    "if it is wrong, set it first (timedatectl set-time), then say this again");
        rows().note(ClockRows.Kind.CONFIRMED, now, day, time().boot(), "a person said that the clock is right");
        return "It is " + said(now)
                + " by the clock; dates are printed again. What hangs with DATE NOT CONFIRMED comes again within"
                + " minutes without those words, then the labels. If that is more than five minutes off, "
                + "set the clock and confirm it once more.";
    }

    /** What is known of the clock now, in a sentence. */
    public String told() {
        return doubt().map(why -> "The clock is not trusted: " + why)
                .orElse("The clock is trusted: " + said(office.now())
                        + (isConfirmed(office.now()) ? ", on a person's word." : "."));
    }

    /** Whether neither the machine's own sources nor a person vouch for it. */
    boolean isUnknown() {
        Instant now = office.now();
        return time().doubt(now).isPresent() && !isConfirmed(now);
    }

    public boolean isTrusted() {
        return doubt().isEmpty();
    }

    private LocalDate date(Instant instant) {
        return instant.atZone(office.shop().house().zone()).toLocalDate();
    }

    private String said(Instant instant) {
        ZonedDateTime local = instant.atZone(office.shop().house().zone());
        DayOfWeek day = local.getDayOfWeek();
        return day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH) + " " + local.toLocalDate() + " "
                + String.format(Locale.ROOT, "%02d:%02d", local.getHour(), local.getMinute());
    }

    private ClockRows rows() {
        return office.ledger().clock();
    }

    private TrustedTime time() {
        return office.edges().senses().time();
    }
}
