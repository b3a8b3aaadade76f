package dawnkettle.label;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** How a printer's answer is read. What does not have the form is no answer, so that noise is never taken for one. */
public sealed interface StatusReply permits StatusReply.Bits, StatusReply.Fields {
    /** The state, where {@code answer} has the form; noise before it is passed over. */
    Optional<PrinterState> read(byte[] answer);

    /** Whether {@code answers} is nothing but whole answers, one or more. */
    boolean isAllAnswers(byte[] answers);

    /** Whether {@code one} may be a byte of an answer. */
    boolean mayHold(byte one);

    /**
     * So many bytes whose bits mean something.
     *
     * @param fixed bits that are always so
     * @param remaining byte that counts the labels still to come, from 0; -1 where none does
     */
    record Bits(int length, List<Flag> fixed, List<Flag> flags, int remaining) implements StatusReply {
        public Bits {
            fixed = List.copyOf(fixed);
            flags = List.copyOf(flags);
        }

        @Override
        public Optional<PrinterState> read(byte[] answer) {
            if (answer.length < length) return Optional.empty();
            byte[] last = Arrays.copyOfRange(answer, answer.length - length, answer.length);
            if (!isAnswer(last)) return Optional.empty();
            Set<Condition> conditions = EnumSet.noneOf(Condition.class);
            for (Flag flag : flags) if (flag.holds(last)) conditions.add(flag.means());
            return Optional.of(new PrinterState(
                    conditions, remaining < 0 ? OptionalInt.empty() : OptionalInt.of(last[remaining] & 0xFF)));
        }

        @Override
        public boolean isAllAnswers(byte[] answers) {
            if (answers.length == 0 || answers.length % length != 0) return false;
            for (int from = 0; from < answers.length; from += length)
                if (!isAnswer(Arrays.copyOfRange(answers, from, from + length))) return false;
            return true;
        }

        @Override
        public boolean mayHold(byte one) {
            for (int at = 0; at < length; at++) {
                int here = at;
                if (fixed.stream().filter(flag -> flag.at() == here).allMatch(flag -> (one & flag.mask()) == flag.is()))
                    return true;
            }
            return false;
        }

        private boolean isAnswer(byte[] answer) {
            return fixed.stream().allMatch(flag -> flag.holds(answer));
        }
    }

    /**
     * Bits of one byte and what they mean.
     *
     * @param at which byte, from 0
     * @param means unused where the bits are fixed
     */
    record Flag(int at, int mask, int is, Condition means) {
        boolean holds(byte[] answer) {
            return (answer[at] & mask) == is;
        }
    }

    /**
     * Lines of text cut into fields by commas, each line between two bytes.
     *
     * @param count fields of a whole answer
     * @param remaining field that counts the labels still to come, from 0; -1 where none does
     */
    record Fields(Lines lines, int count, List<Field> fields, int remaining) implements StatusReply {
        public Fields {
            fields = List.copyOf(fields);
        }

        @Override
        public Optional<PrinterState> read(byte[] answer) {
            String[] found = lines.fields(new String(answer, StandardCharsets.ISO_8859_1));
            if (found.length != count || !Arrays.stream(found).allMatch(field -> field.matches("[0-9A-Za-z]+")))
                return Optional.empty();
            if (remaining >= 0 && !found[remaining].matches("[0-9]{1,9}")) return Optional.empty();
            Set<Condition> conditions = EnumSet.noneOf(Condition.class);
            for (Field field : fields) if (field.holds(found[field.at()])) conditions.add(field.means());
            return Optional.of(new PrinterState(
                    conditions,
                    remaining < 0 ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(found[remaining]))));
        }

        @Override
        public boolean isAllAnswers(byte[] answers) {
            return read(answers).isPresent();
        }

        /** Letters, digits, commas and what stands between lines. */
        @Override
        public boolean mayHold(byte one) {
            boolean isText = one >= ' ' && one <= '~' || one == '\r' || one == '\n';
            return isText || (one & 0xFF) == lines.head() || (one & 0xFF) == lines.tail();
        }
    }

    /**
     * One field and what it means when it reads so.
     *
     * @param is its text; after an exclamation mark, any text but this
     */
    record Field(int at, String is, Condition means) {
        boolean holds(String found) {
            return is.startsWith("!") ? !found.equals(is.substring(1)) : found.equals(is);
        }
    }

    /**
     * How lines are told apart.
     *
     * @param head byte before a line
     * @param tail byte after it
     * @param count lines of a whole answer
     */
    record Lines(int head, int tail, int count) {
        String[] fields(String answer) {
            StringBuilder joined = new StringBuilder();
            int at = 0;
            for (int line = 0; line < count; line++) {
                int from = answer.indexOf(head, at);
                int to = answer.indexOf(tail, from + 1);
                if (from < 0 || to < 0) return new String[0];
                joined.append(line == 0 ? "" : ",").append(answer, from + 1, to);
                at = to + 1;
            }
            return joined.toString().split(",", -1);
        }
    }
}
