package dawnkettle.label;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * An application identifier: which values it takes, what it needs beside it and what it excludes.
 *
 * @param pattern its digits, an n standing for any digit
 * @param least least characters of the value
 * @param most most characters of the value
 * @param needs one of each group must stand beside it
 * @param excludes none of these may stand beside it
 */
record Identifier(String pattern, Kind kind, int least, int most, List<List<String>> needs, List<String> excludes) {
    /**
     * After github.com/gs1/gs1-syntax-dictionary, gs1-syntax-dictionary.txt of 2026-07-27 (read). N digits, X the 82
     * characters, C digits with a check digit, D a date.
     */
    private static final String TABLE = """
            00    C 18 18  -                               -
            01    C 14 14  -                               255,37
            02    C 14 14  37                              01,03
            10    X 1 20   01/02/03/8006/8026              -
            11    D 6 6    01/02/03/8006/8026              -
            13    D 6 6    01/02/03/8006/8026              -
            15    D 6 6    01/02/03/8006/8026              -
            16    D 6 6    01/02/03/8006/8026              -
            17    D 6 6    01/02/03/255/8006/8026          -
            21    X 1 20   01/03/8006                      235
            235   X 1 28   01                              -
            30    N 1 8    01/02                           -
            37    N 1 8    00&02/8026                      -
            310n  N 6 6    01/02                           310n
            320n  N 6 6    01/02                           320n
            330n  N 6 6    00/01                           330n
            340n  N 6 6    00/01                           340n
            390n  N 1 15   -                               391n,394n
            392n  N 1 15   01&30/31nn/32nn/35nn/36nn       393n
            393n  N 4 18   30/31nn/32nn/35nn/36nn          392n
            7003  N 10 10  01/02/03                        -
            8008  N 8 12   01/02/03                        -
            90    X 1 30   -                               -
            9n    X 1 90   -                               -
            """;

    private static final List<Identifier> ALL =
            TABLE.lines().map(Identifier::row).toList();

    /**
     * The 82 characters (GS1 syntax dictionary, src/lint_cset82.c, read).
     */
    private static final Pattern CSET_82 = Pattern.compile("[!\"%&'()*+,./0-9:;<=>?A-Z_a-z-]*");

    /** What a value is made of. */
    enum Kind {
        NUMBER,
        CHECKED,
        DATE,
        TEXT
    }

    Identifier {
        needs = List.copyOf(needs);
        excludes = List.copyOf(excludes);
    }

    static Optional<Identifier> find(String code) {
        return ALL.stream().filter(one -> matches(one.pattern, code)).findFirst();
    }

    /** The identifier at the head of {@code text}. */
    static Optional<String> leading(String text) {
        for (int length = 2; length <= Math.min(4, text.length()); length++) {
            String code = text.substring(0, length);
            if (find(code).isPresent()) return Optional.of(code);
        }
        return Optional.empty();
    }

    static boolean matches(String pattern, String code) {
        if (pattern.length() != code.length()) return false;
        for (int i = 0; i < code.length(); i++) {
            boolean any = pattern.charAt(i) == 'n' && Character.isDigit(code.charAt(i));
            if (!any && pattern.charAt(i) != code.charAt(i)) return false;
        }
        return true;
    }

    /**
     * The length of a value that needs no separator after it, counted with its identifier; 0 where one is needed (GS1
     * syntax engine, src/c-lib/ai.c, table fixedAIprefixLengths, read).
     */
    static int predefinedLength(String code) {
        int prefix = Integer.parseInt(code.substring(0, 2));
        int value = switch (prefix) {
            case 0 -> 18;
            case 1, 2, 3 -> 14;
            case 4 -> 16;
            case 11, 12, 13, 14, 15, 16, 17, 18, 19, 31, 32, 33, 34, 35, 36 -> 6;
            case 20 -> 2;
            case 41 -> 13;
            default -> 0;
        };
        return value == 0 ? 0 : value + code.length();
    }

    /** @throws IllegalArgumentException saying what is wrong with {@code value} */
    void check(String code, String value) {
        if (value.length() < least || value.length() > most)
            throw wrong(code, value, "has " + value.length() + " characters", "write " + lengths());
        if (kind == Kind.TEXT) {
            if (!CSET_82.matcher(value).matches())
                throw wrong(code, value, "has a character outside the 82 of GS1", "write letters, digits, - / . _");
            return;
        }
        if (!value.matches("[0-9]+")) throw wrong(code, value, "is not all digits", "write digits");
        if (kind == Kind.CHECKED && !CheckDigit.holds(value)) {
            int right = CheckDigit.of(value.substring(0, value.length() - 1));
            throw wrong(code, value, "has a wrong check digit", "it ends in " + right + " if the rest is right");
        }
        if (kind == Kind.DATE && !Gs1Date.isDate(value))
            throw wrong(code, value, "is not a date", "write YYMMDD, as 270131");
    }

    private String lengths() {
        return least == most ? "exactly " + most : least + " to " + most;
    }

    private static IllegalArgumentException wrong(String code, String value, String what, String remedy) {
        return new IllegalArgumentException("(" + code + ") \"" + value + "\" " + what + "; " + remedy);
    }

    private static Identifier row(String line) {
        String[] cells = line.strip().split("\\s+");
        Kind kind = switch (cells[1]) {
            case "C" -> Kind.CHECKED;
            case "D" -> Kind.DATE;
            case "X" -> Kind.TEXT;
            default -> Kind.NUMBER;
        };
        List<List<String>> needs = new ArrayList<>();
        if (!cells[4].equals("-")) for (String group : cells[4].split("&")) needs.add(List.of(group.split("/")));
        List<String> excludes = cells[5].equals("-") ? List.of() : List.of(cells[5].split(","));
        return new Identifier(cells[0], kind, Integer.parseInt(cells[2]), Integer.parseInt(cells[3]), needs, excludes);
    }
}
