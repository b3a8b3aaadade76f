package dawnkettle.label;

import dawnkettle.trouble.DeviceAway;
import java.util.Optional;
import java.util.function.Supplier;

/** One run on an open line: what is certain, what is not, and how both are said. */
final class GroupTalk {
    private final PrinterTalk printer;
    private final LabelJournal journal;
    private final String name;
    private LabelRun run = LabelRun.whole("", "", java.util.List.of());
    private int certain;

    GroupTalk(PrinterTalk printer, LabelJournal journal, String name) {
        this.printer = printer;
        this.journal = journal;
        this.name = name;
    }

    void begin(LabelRun begun) {
        run = begun;
        certain = begun.first() - 1;
        clean(() -> mustBeDone(printer.startAfresh(this::tell)));
    }

    /** Whatever goes wrong in {@code step}, no label of ours has been sent by it. */
    private void clean(Runnable step) {
        try {
            step.run();
        } catch (DeviceAway e) {
            throw e.isAmbiguous() ? DeviceAway.clean(e.getMessage() + soFar(), e) : e;
        }
    }

    /** Slips are not counted: one too many harms nobody, so nothing about them is ever in doubt. */
    void printSlip(Supplier<byte[]> bytes) {
        ready();
        clean(() -> {
            printer.send(bytes.get());
            mustBeDone(printer.untilPrinted(this::tell, left -> {}));
        });
    }

    /** Whether nothing has happened since the last group by which the printer could have lost what it keeps. */
    boolean isUndisturbed() {
        return printer.isUndisturbed();
    }

    /** Sends what prints nothing. */
    void send(byte[] bytes) {
        clean(() -> printer.send(bytes));
    }

    /** What the printer says that it keeps; empty where it does not answer. */
    String listing(PrinterProfile.Listing asked, boolean isIdle) {
        return printer.listing(asked, isIdle);
    }

    /** After the last label of a run, all of them certain. */
    void cut(byte[] bytes) {
        if (bytes.length > 0) clean(() -> printer.send(bytes));
    }

    /** @param bytes asked for once the printer is ready, since what it keeps may be gone after a wait for that */
    void print(Supplier<byte[]> bytes, int first, int count) {
        ready();
        byte[][] chosen = new byte[1][];
        clean(() -> chosen[0] = bytes.get());
        Confirmed group = numbered(first, count);
        journal.intended(group);
        try {
            printer.send(chosen[0]);
        } catch (DeviceAway e) {
            if (!e.isAmbiguous()) throw DeviceAway.clean(e.getMessage() + soFar(), e);
            throw inDoubt(e.getMessage(), group.last(), e);
        }
        PrinterTalk.Outcome outcome = printed(group);
        if (outcome.ending() != PrinterTalk.Ending.DONE) throw givenUp(outcome, group);
        confirmTo(group.last());
    }

    private PrinterTalk.Outcome printed(Confirmed group) {
        try {
            return printer.untilPrinted(this::tell, left -> confirmTo(group.last() - left));
        } catch (DeviceAway e) {
            throw inDoubt(e.getMessage(), group.last(), e);
        }
    }

    private void ready() {
        clean(() -> mustBeDone(printer.untilReady(this::tell)));
    }

    private void mustBeDone(PrinterTalk.Outcome outcome) {
        if (outcome.ending() != PrinterTalk.Ending.DONE) throw DeviceAway.clean(said(outcome) + soFar(), null);
    }

    private void confirmTo(int last) {
        if (last <= certain) return;
        Confirmed group = numbered(certain + 1, last - certain);
        certain = last;
        journal.confirmed(group);
    }

    /** A printer that stopped and counts can say how far it came, once it has let go of the rest. */
    private DeviceAway givenUp(PrinterTalk.Outcome outcome, Confirmed group) {
        int left = outcome.last().flatMap(GroupTalk::remaining).orElse(-1);
        boolean isCounted = left >= 1 && left <= group.last() - certain;
        if (outcome.ending() != PrinterTalk.Ending.STOPPED || !isCounted || !cleared())
            return inDoubt(said(outcome), group.last(), null);
        confirmTo(group.last() - left);
        return inDoubt(said(outcome), certain + 1, null);
    }

    private boolean cleared() {
        try {
            return printer.clear();
        } catch (DeviceAway e) {
            return false;
        }
    }

    private static Optional<Integer> remaining(PrinterState state) {
        return state.remaining().isPresent() ? Optional.of(state.remaining().getAsInt()) : Optional.empty();
    }

    /** All after the last certain label, to {@code last}, may have come out or not. */
    private DeviceAway inDoubt(String what, int last, Exception cause) {
        Confirmed group = numbered(certain + 1, last - certain);
        journal.doubtful(group);
        String certainly = certain < 1 ? "none is certain" : "1 to " + certain + " are certain";
        String after = last < run.last() ? ", " + (last + 1) + " to " + run.last() + " were not printed" : "";
        return DeviceAway.ambiguous(
                what + "; of " + run.last() + " labels " + certainly + ", look at " + group + after, cause);
    }

    private void tell(Condition condition) {
        journal.paused(name + " " + condition.said() + "; " + condition.remedy());
    }

    private String said(PrinterTalk.Outcome outcome) {
        return switch (outcome.ending()) {
            case STOPPED ->
                outcome.last()
                        .flatMap(PrinterState::stop)
                        .map(condition -> name + " " + condition.said())
                        .orElse(name + " has stopped");
            case NO_PROGRESS -> name + " is busy and brings nothing out";
            default -> name + " has not answered";
        };
    }

    private String soFar() {
        return " (" + certain + " of " + run.last() + " labels printed); see to it, we go on with label "
                + (certain + 1);
    }

    private Confirmed numbered(int first, int count) {
        return new Confirmed(run.lot(), run.product(), first, first + count - 1);
    }
}
