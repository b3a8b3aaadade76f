package dawnkettle;

import java.util.Locale;
import java.util.Random;

/**
 * One thing that goes wrong in a night.
 *
 * @param at at which call of the device, or which point of the night, it begins
 * @param times how many calls it lasts
 */
record Mishap(Kind kind, int at, int times) {
    /** What fails. */
    enum Device {
        PAPER,
        LABELS,
        POST,
        DISK,
        DISK_AT_NOTES,
        POWER,
        POWER_AT_DEVICE,
        POWER_AFTER_SHEET,
        POWER_BETWEEN_LABELS,
        POWER_AFTER_MAIL,
        CLOCK,
        THERMOMETER,
        MAILBOX,
        MAILBOX_MARK
    }

    /** In which way. */
    enum Kind {
        PAPER_OFF(Device.PAPER),
        PAPER_REFUSES(Device.PAPER),
        PAPER_DIES_AFTER_TAKING(Device.PAPER),
        PAPER_HANGS(Device.PAPER),
        PAPER_LIES(Device.PAPER),
        LABELS_OFF(Device.LABELS),
        LABELS_SILENT(Device.LABELS),
        LABELS_IN_PART(Device.LABELS),
        LABELS_SILENT_BUT_OUT(Device.LABELS),
        POST_421(Device.POST),
        POST_550(Device.POST),
        POST_DROPS_AFTER_DATA(Device.POST),
        POST_LOSES_ITS_250(Device.POST),
        DISK_FULL(Device.DISK),
        DISK_FAILS(Device.DISK),
        DISK_FULL_AT_A_NOTE(Device.DISK_AT_NOTES),
        DISK_FAILS_AT_A_NOTE(Device.DISK_AT_NOTES),
        POWER_CUT(Device.POWER),
        POWER_CUT_AT_DEVICE(Device.POWER_AT_DEVICE),
        POWER_CUT_AFTER_A_SHEET(Device.POWER_AFTER_SHEET),
        POWER_CUT_BETWEEN_LABELS(Device.POWER_BETWEEN_LABELS),
        POWER_CUT_AFTER_A_MAIL(Device.POWER_AFTER_MAIL),
        CLOCK_IN_1970(Device.CLOCK),
        CLOCK_BACK(Device.CLOCK),
        CLOCK_AHEAD(Device.CLOCK),
        CLOCK_YEAR_AHEAD(Device.CLOCK),
        THERMOMETER_AWAY(Device.THERMOMETER),
        MAILBOX_AWAY(Device.MAILBOX),
        MAILBOX_GIVES_NEW_PLACES(Device.MAILBOX),
        MAILBOX_CUT_BEFORE_THE_MARK(Device.MAILBOX_MARK);

        final Device device;

        Kind(Device device) {
            this.device = device;
        }
    }

    /** Any of them, early or late, short or the whole night. */
    static Mishap any(Random dice) {
        Kind kind = Kind.values()[dice.nextInt(Kind.values().length)];
        if (dice.nextInt(4) == 0) kind = dice.nextBoolean() ? Kind.POWER_CUT : Kind.POWER_CUT_AT_DEVICE;
        int at = switch (kind.device) {
            case PAPER, POWER_AFTER_SHEET -> 1 + dice.nextInt(16);
            case LABELS -> 1 + dice.nextInt(10);
            case POST, POWER_AFTER_MAIL, MAILBOX_MARK -> 1 + dice.nextInt(4);
            case POWER_BETWEEN_LABELS -> 1 + dice.nextInt(40);
            case MAILBOX -> 1 + dice.nextInt(50);
            case DISK, POWER -> 1 + dice.nextInt(1_400);
            case DISK_AT_NOTES -> 1 + dice.nextInt(220);
            case POWER_AT_DEVICE -> 1 + dice.nextInt(90);
            case CLOCK, THERMOMETER -> 1 + dice.nextInt(34 * 60);
        };
        return new Mishap(kind, at, times(kind.device, dice));
    }

    private static int times(Device device, Random dice) {
        boolean isLong = dice.nextInt(8) == 0;
        return switch (device) {
            case POWER, POWER_AT_DEVICE, POWER_AFTER_SHEET, POWER_BETWEEN_LABELS, POWER_AFTER_MAIL -> 1;
            case DISK, DISK_AT_NOTES -> isLong ? 40 : 1 + dice.nextInt(3);
            case CLOCK -> isLong ? 10_000 : 1 + dice.nextInt(300);
            default -> isLong ? 10_000 : 1 + dice.nextInt(3);
        };
    }

    boolean isNow(int call) {
        return call >= at && call - at < times;
    }

    @Override
    public String toString() {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ') + " at " + at + " for " + times;
    }
}
