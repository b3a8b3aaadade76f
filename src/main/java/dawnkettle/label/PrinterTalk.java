package dawnkettle.label;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import java.util.function.Predicate;

/** Questions to one printer and what its answers come to. */
final class PrinterTalk {
    /** Noise beyond this is no late answer. */
    private static final int MOST_UNREAD = 1_024;

    /** A list that does not come costs a picture sent whole, so it is not waited for as long as a state. */
    private static final int SHORTER = 10;

    private final PrinterProfile profile;
    private final Framing framing;
    private final LabelLine.Link link;
    private final GroupPrinting.Pace pace;
    private boolean answeredInTurn;
    private byte[] unread = new byte[0];
    private boolean undisturbed;

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

    /** Whether the printer answered each question since it was last sent something, and said of no stop. */
    boolean isUndisturbed() {
        return undisturbed;
    }

    void send(byte[] bytes) {
        answeredInTurn = false;
        undisturbed = true;
        link.send(bytes);
    }

    /**
     * What the printer says that it keeps, as characters; empty where no whole answer comes.
     *
     * @param isIdle whether it has nothing to read before the question, and would answer soon
     */
    String listing(PrinterProfile.Listing asked, boolean isIdle) {
        Duration patience = isIdle ? pace.silence().dividedBy(SHORTER) : pace.silence();
        byte[] heard = link.ask(asked.question().bytes(), bytes -> isEnded(bytes, asked.tail()), patience);
        return isEnded(heard, asked.tail()) ? new String(heard, StandardCharsets.ISO_8859_1) : "";
    }

    private static boolean isEnded(byte[] heard, int tail) {
        for (byte one : heard) if ((one & 0xFF) == tail) return true;
        return false;
    }

    /** Drops what the printer still has, and says whether it then answered that it has nothing. */
    boolean clear() {
        byte[] clear = framing.clear();
        if (clear.length == 0) return false;
        link.send(clear);
        return ask().filter(state -> state.remaining().orElse(1) == 0).isPresent();
    }

    /**
     * Makes sure that nothing of an earlier run is still to come: drops it where the family can, and where answers come in
     * their turn, waits for one and then for quiet, so that an old one is never taken for that of a new group.
     */
    Outcome startAfresh(Consumer<Condition> onStop) {
        byte[] clear = framing.clear();
        if (clear.length > 0) link.send(clear);
        if (profile.asking().inTurn().isEmpty()) return new Outcome(Ending.DONE, Optional.empty());
        send(profile.asking().inTurn().get().question().bytes());
        Outcome outcome = untilPrinted(onStop, left -> {});
        for (int quiet = 0; outcome.ending() == Ending.DONE && quiet < 2; quiet++) {
            link.rest(pace.poll());
            ask();
        }
        return outcome;
    }

    /** Waits until the printer would print at once. */
    Outcome untilReady(Consumer<Condition> onStop) {
        return until(state -> !state.isBusy() && state.stop().isEmpty(), onStop, left -> {});
    }

    /** Waits until what was sent has come out; an answer that could be a flipped bit is asked for twice. */
    Outcome untilPrinted(Consumer<Condition> onStop, IntConsumer onLeft) {
        return until(this::isPrinted, onStop, onLeft);
    }

    private boolean isPrinted(PrinterState state) {
        if (profile.asking().inTurn().isPresent()) return answeredInTurn;
        return !state.isBusy() && state.remaining().isPresent();
    }

    private Outcome until(Predicate<PrinterState> isDone, Consumer<Condition> onStop, IntConsumer onLeft) {
        Wait wait = new Wait(onStop, onLeft);
        int agreeing = 0;
        while (true) {
            Optional<PrinterState> state = ask();
            agreeing = state.filter(isDone).isPresent() ? agreeing + 1 : 0;
            if (agreeing >= 2) return new Outcome(Ending.DONE, state);
            if (agreeing == 1) continue;
            Optional<Ending> ending = wait.goOn(state);
            if (ending.isPresent()) return new Outcome(ending.get(), wait.last);
            link.rest(pace.poll());
        }
    }

    /** How long has been waited, and for what. */
    private final class Wait {
        private final Consumer<Condition> onStop;
        private final IntConsumer onLeft;
        private final Set<Condition> told = EnumSet.noneOf(Condition.class);
        private Duration silent = Duration.ZERO;
        private Duration waited = Duration.ZERO;
        private int left = Integer.MAX_VALUE;
        private Optional<PrinterState> last = Optional.empty();

        Wait(Consumer<Condition> onStop, IntConsumer onLeft) {
            this.onStop = onStop;
            this.onLeft = onLeft;
        }

        /** Why to wait no longer; empty to go on. Only a falling count is progress: an answer may have flipped bits. */
        Optional<Ending> goOn(Optional<PrinterState> state) {
            waited = waited.plus(pace.poll());
            silent = state.isPresent() ? Duration.ZERO : silent.plus(pace.poll());
            if (silent.compareTo(pace.silence()) > 0) return Optional.of(Ending.SILENT);
            state.ifPresent(this::hear);
            if (waited.compareTo(pace.patience()) <= 0) return Optional.empty();
            return Optional.of(last.map(PrinterTalk::stopped).orElse(Ending.SILENT));
        }

        private void hear(PrinterState state) {
            // Said twice running, so that no flipped bit is believed; nought may only mean that nothing was read yet.
            boolean isSaidAgain = last.map(PrinterState::remaining)
                    .filter(state.remaining()::equals)
                    .isPresent();
            if (isSaidAgain && state.remaining().orElse(0) > 0)
                onLeft.accept(state.remaining().getAsInt());
            last = Optional.of(state);
            state.stop().filter(told::add).ifPresent(onStop);
            int now = state.remaining().orElse(left);
            if (now < left) waited = Duration.ZERO;
            left = Math.min(left, now);
        }
    }

    private static Ending stopped(PrinterState state) {
        return state.stop().isPresent() ? Ending.STOPPED : Ending.NO_PROGRESS;
    }

    private Optional<PrinterState> ask() {
        byte[] late = unread;
        byte[] answer = link.ask(
                framing.question(),
                bytes -> reply().read(withoutTurn(joined(late, asking().asked(bytes))))
                        .isPresent(),
                pace.poll());
        Optional<PrinterState> state =
                read(joined(late, asking().asked(answer))).map(said -> said.and(asking().byThemselves(answer)));
        undisturbed &= state.filter(said -> said.stop().isEmpty()).isPresent();
        return state.or(() -> byItself(asking().byThemselves(answer)));
    }

    /** A printer that only speaks by itself is not silent, though it says no more than that. */
    private static Optional<PrinterState> byItself(Set<Condition> said) {
        return said.isEmpty() ? Optional.empty() : Optional.of(new PrinterState(said, OptionalInt.empty()));
    }

    private Optional<PrinterState> read(byte[] heard) {
        byte[] rest = withoutTurn(heard);
        Optional<PrinterState> state = reply().read(rest);
        // Beside whole answers only: among others, it may be a byte of an answer with a flipped bit.
        if (rest.length < heard.length && reply().isAllAnswers(rest)) answeredInTurn = true;
        // An answer that comes late is read with the next one.
        unread = state.isPresent() || heard.length > MOST_UNREAD ? new byte[0] : heard;
        return state;
    }

    private PrinterProfile.Asking asking() {
        return profile.asking();
    }

    private StatusReply reply() {
        return asking().reply();
    }

    private static byte[] joined(byte[] first, byte[] second) {
        return new ByteRoll().add(first).add(second).toBytes();
    }

    private byte[] withoutTurn(byte[] answer) {
        if (profile.asking().inTurn().isEmpty()) return answer;
        ByteRoll rest = new ByteRoll();
        for (byte one : answer) if (!profile.asking().inTurn().get().isAnswer(one)) rest.add(one);
        return rest.toBytes();
    }
}
