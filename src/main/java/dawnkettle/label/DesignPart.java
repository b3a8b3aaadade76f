package dawnkettle.label;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Something that a design puts on the label. */
public sealed interface DesignPart permits DesignPart.Words, DesignPart.Bars, DesignPart.Block {
    /** Where it stands. */
    Area area();

    /** The line of the design file that it comes from. */
    int line();

    /**
     * Text with named fields in braces, as "Lot {lot}"; nothing is drawn where all its fields are empty.
     *
     * @param area width to fit, and height of all its lines
     * @param type how large and how heavy
     */
    record Words(String pattern, Area area, Type type, int line) implements DesignPart {
        private static final Pattern FIELD = Pattern.compile("\\{([a-z][a-zA-Z0-9]*)}");

        public List<String> fields() {
            List<String> fields = new ArrayList<>();
            Matcher matcher = FIELD.matcher(pattern);
            while (matcher.find()) fields.add(matcher.group(1));
            return fields;
        }

        /** The text for {@code values}; empty where there are fields and none has a value. */
        public String filled(Map<String, String> values) {
            List<String> fields = fields();
            if (!fields.isEmpty()
                    && fields.stream()
                            .allMatch(field -> values.getOrDefault(field, "").isBlank())) return "";
            return FIELD.matcher(pattern)
                    .replaceAll(found -> Matcher.quoteReplacement(values.getOrDefault(found.group(1), "")))
                    .strip();
        }
    }

    /**
     * How text is set.
     *
     * @param size em in micrometres that is tried first
     * @param least smallest em in micrometres that may be tried
     * @param lines most lines
     * @param look weight, colour and side
     */
    record Type(int size, int least, int lines, Look look) {
        public Type {
            if (least > size) throw new IllegalArgumentException("the least size is above the size");
            if (lines < 1) throw new IllegalArgumentException("text has at least one line");
        }
    }

    /**
     * The look of text.
     *
     * @param inverse white, to stand on a black block
     */
    record Look(boolean bold, boolean inverse, Side side) {}

    /** Which side text keeps to. */
    enum Side {
        LEFT,
        MIDDLE,
        RIGHT
    }

    /**
     * A symbol that carries those elements of the case's element string that it names, or all of them.
     *
     * @param area room for the symbol, its quiet zones and the text under it
     * @param carries identifiers, as "01" and "15"; empty for all
     * @param module narrowest and widest module
     */
    record Bars(String name, Symbology symbology, Area area, List<String> carries, Module module, int line)
            implements DesignPart {
        public Bars {
            carries = List.copyOf(carries);
        }
    }

    /** Narrowest and widest module of a symbol in micrometres. */
    record Module(int least, int most) {
        public Module {
            if (least > most) throw new IllegalArgumentException("the least module is above the most");
        }
    }

    /** A filled rectangle. */
    record Block(Area area, int line) implements DesignPart {}
}
