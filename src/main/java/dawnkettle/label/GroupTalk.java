package dawnkettle.label;

import dawnkettle.trouble.DeviceAway;
import java.util.Optional;

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
        clean(printer::dropLeftovers);
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
    void printSlip(byte[] bytes) {
        ready();
        clean(() -> {
            printer.send(bytes);
            PrinterTalk.Outcome outcome = printer.untilPrinted(this::tell);
            if (outcome.ending() != PrinterTalk.Ending.DONE) throw DeviceAway.clean(said(outcome) + soFar(), null);
        });
    }

    void print(byte[] bytes, int first, int count) {
        ready();
        Confirmed group = numbered(first, count);
        journal.intended(group);
        try {
            printer.send(bytes);
        } catch (DeviceAway e) {
            if (!e.isAmbiguous()) throw DeviceAway.clean(e.getMessage() + soFar(), e);
            throw inDoubt(e.getMessage(), group, e);
        }
        PrinterTalk.Outcome outcome = printed(group);
        if (outcome.ending() != PrinterTalk.Ending.DONE) throw givenUp(outcome, group);
        confirm(group);
    }

    private PrinterTalk.Outcome printed(Confirmed group) {
        try {
            return printer.untilPrinted(this::tell);
        } catch (DeviceAway e) {
            throw inDoubt(e.getMessage(), group, e);
        }
    }

    private void ready() {
        clean(() -> {
            PrinterTalk.Outcome outcome = printer.untilReady(this::tell);
            if (outcome.ending() != PrinterTalk.Ending.DONE) throw DeviceAway.clean(said(outcome) + soFar(), null);
        });
    }

    private void confirm(Confirmed group) {
        certain = group.last();
        journal.confirmed(group);
    }

    /** A printer that stopped and counts can say how far it came, once it has let go of the rest. */
    private DeviceAway givenUp(PrinterTalk.Outcome outcome, Confirmed group) {
        int left = outcome.last().flatMap(GroupTalk::remaining).orElse(-1);
        if (outcome.ending() == PrinterTalk.Ending.STOPPED && left >= 1 && left <= group.count() && cleared()) {
            int printed = group.count() - left;
            if (printed > 0) confirm(numbered(group.first(), printed));
            return inDoubt(said(outcome), numbered(group.first() + printed, 1), null);
        }
        return inDoubt(said(outcome), group, null);
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

    private DeviceAway inDoubt(String what, Confirmed group, Exception cause) {
        journal.doubtful(group);
        String certainly = certain < 1 ? "none is certain" : "1 to " + certain + " are certain";
        String after =
                group.last() < run.last() ? ", " + (group.last() + 1) + " to " + run.last() + " were not printed" : "";
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
