package dawnkettle.label;

import java.time.Duration;
import java.util.Optional;

/** Questions to one printer and what its answers come to. */
final class PrinterTalk {
    private final PrinterProfile profile;
    private final Framing framing;
    private final LabelLine.Link link;
    private final GroupPrinting.Pace pace;
    private boolean answeredInTurn;

    PrinterTalk(PrinterProfile profile, LabelLine.Link link, GroupPrinting.Pace pace) {
        this.profile = profile;
        this.framing = new Framing(profile);
        this.link = link;
        this.pace = pace;
    }

    /** What ended a wait. */
    enum Ending {
        DONE,
        SILENT,
        STOPPED,
        NO_PROGRESS
    }

    /** How a wait ended, and the last state that was heard. */
    record Outcome(Ending ending, Optional<PrinterState> last) {}

    void send(byte[] bytes) {
        answeredInTurn = false;
        link.send(bytes);
    }

    /** Drops what the printer still has, and says whether it then answered that it has nothing. */
    boolean clear() {
        byte[] clear = framing.clear();
        if (clear.length == 0) return false;
        link.send(clear);
        return ask().filter(state -> state.remaining().orElse(1) == 0).isPresent();
    }

    void dropLeftovers() {
        byte[] clear = framing.clear();
        if (clear.length > 0) link.send(clear);
    }

    /** Waits until the printer would print at once. */
    Outcome untilReady(java.util.function.Consumer<Condition> onStop) {
        return until(state -> !state.isBusy() && state.stop().isEmpty(), onStop);
    }

    /** Waits until what was sent has come out; an answer that could be a flipped bit is asked for twice. */
    Outcome untilPrinted(java.util.function.Consumer<Condition> onStop) {
        return until(this::isPrinted, onStop);
    }

    private boolean isPrinted(PrinterState state) {
        if (profile.asking().inTurn().isPresent()) return answeredInTurn;
        return !state.isBusy() && state.remaining().isPresent();
    }

    private Outcome until(
            java.util.function.Predicate<PrinterState> isDone, java.util.function.Consumer<Condition> onStop) {
        Duration silent = Duration.ZERO;
        Duration waited = Duration.ZERO;
        Optional<PrinterState> last = Optional.empty();
        int agreeing = 0;
        while (true) {
            Optional<PrinterState> state = ask();
            if (state.isEmpty()) {
                agreeing = 0;
                silent = silent.plus(pace.poll());
                if (silent.compareTo(pace.silence()) > 0) return new Outcome(Ending.SILENT, last);
            } else {
                silent = Duration.ZERO;
                agreeing = isDone.test(state.get()) ? agreeing + 1 : 0;
                if (agreeing >= 2) return new Outcome(Ending.DONE, state);
                if (agreeing == 1) continue;
                if (!state.equals(last)) {
                    waited = Duration.ZERO;
                    state.get().stop().ifPresent(onStop);
                }
                last = state;
                waited = waited.plus(pace.poll());
                if (waited.compareTo(pace.patience()) > 0) return new Outcome(stopped(state.get()), last);
            }
            link.rest(pace.poll());
        }
    }

    private static Ending stopped(PrinterState state) {
        return state.stop().isPresent() ? Ending.STOPPED : Ending.NO_PROGRESS;
    }

    private Optional<PrinterState> ask() {
        byte[] answer = link.ask(
                framing.question(),
                bytes -> profile.asking().reply().read(withoutTurn(bytes)).isPresent(),
                pace.poll());
        if (profile.asking().inTurn().isPresent())
            for (byte one : answer) if (profile.asking().inTurn().get().isAnswer(one)) answeredInTurn = true;
        return profile.asking().reply().read(withoutTurn(answer));
    }

    private byte[] withoutTurn(byte[] answer) {
        if (profile.asking().inTurn().isEmpty()) return answer;
        ByteRoll rest = new ByteRoll();
        for (byte one : answer) if (!profile.asking().inTurn().get().isAnswer(one)) rest.add(one);
        return rest.toBytes();
    }
}
