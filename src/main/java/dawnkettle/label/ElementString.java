package dawnkettle.label;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * GS1 element strings: what the bars of a case label say. {@link #of} holds the rules on what needs or excludes what;
 * {@link #read} and its kin only hold the form of each element.
 */
public record ElementString(List<Element> elements) {
    /** The separator as a keyboard wedge sends it (GS1 General Specifications R18 7.8.4, read). */
    public static final char GROUP_SEPARATOR = '\u001D';

    public ElementString {
        elements = List.copyOf(elements);
        if (elements.isEmpty()) throw new IllegalArgumentException("an element string has at least one element");
    }

    /** A string that may be printed: those of predefined length first, so that no separator is spent on them. */
    public static ElementString of(List<Element> elements) {
        ElementString whole = new ElementString(elements.stream()
                .sorted(Comparator.comparing(element -> !element.isPredefined()))
                .toList());
        List<String> complaints = whole.complaints();
        if (!complaints.isEmpty()) throw new IllegalArgumentException(String.join("\n", complaints));
        return whole;
    }

    public static ElementString of(Element... elements) {
        return of(Arrays.asList(elements));
    }

    /** Reads "(01)…(15)…(10)…"; a bracket that is part of a value has a backslash before it. */
    public static ElementString read(String bracketed) {
        List<Element> elements = new ArrayList<>();
        int at = 0;
        while (at < bracketed.length()) {
            int close = bracketed.indexOf(')', at);
            if (bracketed.charAt(at) != '(' || close < 0)
                throw new IllegalArgumentException("\"" + bracketed + "\" has no identifier in brackets at position "
                        + (at + 1) + "; write (01)…");
            int end = nextBracket(bracketed, close + 1);
            String value = bracketed.substring(close + 1, end).replace("\\(", "(");
            elements.add(new Element(bracketed.substring(at + 1, close), value));
            at = end;
        }
        return new ElementString(elements);
    }

    private static int nextBracket(String text, int from) {
        for (int i = from; i < text.length(); i++) if (text.charAt(i) == '(' && text.charAt(i - 1) != '\\') return i;
        return text.length();
    }

    /** Reads the form without brackets, as "^01…10…^15…", in which ^ is the separator and stands at the head. */
    public static ElementString readJoined(String joined) {
        if (!joined.startsWith("^"))
            throw new IllegalArgumentException("\"" + joined + "\" does not begin with ^; write ^01…");
        return readAfterHead(joined.substring(1), '^');
    }

    /** Reads what a scanner sends: a symbology identifier, as "]C1", then data with group separators. */
    public static ElementString readScanned(String scanned) {
        if (!scanned.matches("(?s)\\](C1|d2|Q3|J1|e0).*"))
            throw new IllegalArgumentException("\"" + scanned + "\" is not a GS1 scan; it begins as ]C1 or ]d2");
        return readAfterHead(scanned.substring(3), GROUP_SEPARATOR);
    }

    private static ElementString readAfterHead(String data, char separator) {
        List<Element> elements = new ArrayList<>();
        String rest = data;
        while (!rest.isEmpty()) {
            String code = leading(rest);
            int separated = rest.indexOf(separator);
            int predefined = Identifier.predefinedLength(code);
            int end = separated < 0 ? rest.length() : separated;
            if (predefined != 0) end = Math.min(predefined, end);
            elements.add(new Element(code, rest.substring(code.length(), end)));
            // A separator after a value of predefined length is more than is needed, and tolerated.
            rest = rest.substring(end < rest.length() && rest.charAt(end) == separator ? end + 1 : end);
        }
        return new ElementString(elements);
    }

    private static String leading(String rest) {
        return Identifier.leading(rest)
                .orElseThrow(() -> new IllegalArgumentException(
                        "\"" + rest + "\" does not begin with an identifier that we know; write 01, 10, 15 …"));
    }

    /** What breaks the rules on which elements go together; empty where all is well. */
    public List<String> complaints() {
        List<String> complaints = new ArrayList<>();
        Map<String, String> seen = new HashMap<>();
        for (Element element : elements) {
            String before = seen.putIfAbsent(element.code(), element.value());
            if (before != null) complaints.add("(" + element.code() + ") stands twice; write it once");
            Identifier identifier = Identifier.find(element.code()).orElseThrow();
            for (List<String> group : identifier.needs())
                if (group.stream().noneMatch(this::hasLike))
                    complaints.add("(" + element.code() + ") needs " + named(group) + " beside it; add it");
            for (String excluded : identifier.excludes())
                if (hasOther(excluded, element.code()))
                    complaints.add("(" + element.code() + ") may not stand beside " + named(List.of(excluded))
                            + "; leave one out");
        }
        complaints.addAll(variableMeasure());
        return complaints;
    }

    /** A GTIN that begins with 9 is of variable measure and says how much (fact sheet of a GS1 member, read). */
    private List<String> variableMeasure() {
        boolean variable = value("01").filter(gtin -> gtin.startsWith("9")).isPresent();
        List<String> measures = List.of("30", "31nn", "32nn", "35nn", "36nn");
        return variable && measures.stream().noneMatch(this::hasLike)
                ? List.of(
                        "(01) begins with 9, of variable measure, and needs a measure beside it; add (310n) or (320n)")
                : List.of();
    }

    private static String named(List<String> patterns) {
        return patterns.stream().map(pattern -> "(" + pattern + ")").collect(Collectors.joining(" or "));
    }

    private boolean hasLike(String pattern) {
        return elements.stream().anyMatch(element -> Identifier.matches(pattern, element.code()));
    }

    private boolean hasOther(String pattern, String code) {
        return elements.stream()
                .anyMatch(element -> !element.code().equals(code) && Identifier.matches(pattern, element.code()));
    }

    public Optional<String> value(String code) {
        return elements.stream()
                .filter(element -> element.code().equals(code))
                .map(Element::value)
                .findFirst();
    }

    /** The part of this string that one of several symbols on the same case carries. */
    public Optional<ElementString> only(List<String> codes) {
        List<Element> part = elements.stream()
                .filter(element -> codes.contains(element.code()))
                .toList();
        return part.isEmpty() ? Optional.empty() : Optional.of(new ElementString(part));
    }

    /** As people read it, with identifiers in brackets. */
    public String bracketed() {
        return elements.stream()
                .map(element -> "(" + element.code() + ")" + element.value().replace("(", "\\("))
                .collect(Collectors.joining());
    }

    /** As a symbol carries it, ^ standing for the separator and the mark at its head. */
    public String joined() {
        return "^" + data('^');
    }

    /** What a scanner sends, with {@code symbology} as its head: "]C1" or "]d2". */
    public String scanned(String symbology) {
        return symbology + data(GROUP_SEPARATOR);
    }

    private String data(char separator) {
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < elements.size(); i++) {
            data.append(elements.get(i).joined());
            if (i < elements.size() - 1 && !elements.get(i).isPredefined()) data.append(separator);
        }
        return data.toString();
    }

    /** Characters that count towards the 48 of a GS1-128 symbol: identifiers, values and separators. */
    public int characters() {
        return data('^').length();
    }

    @Override
    public String toString() {
        return bracketed();
    }
}
