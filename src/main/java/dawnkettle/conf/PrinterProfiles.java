package dawnkettle.conf;

import dawnkettle.label.ByteTemplate;
import dawnkettle.label.Condition;
import dawnkettle.label.Pitch;
import dawnkettle.label.PrinterProfile;
import dawnkettle.label.StatusReply;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** Reads the printer profiles of {@code labels/printers}. */
public final class PrinterProfiles {
    private final String file;
    private final List<Problem> problems;

    private PrinterProfiles(String file, List<Problem> problems) {
        this.file = file;
        this.problems = problems;
    }

    /** Profiles by name. @throws BadFile with all that is wrong in any of them */
    public static Map<String, PrinterProfile> read(Path folder) {
        List<Problem> problems = new ArrayList<>();
        Map<String, PrinterProfile> profiles = read(folder, problems);
        if (!problems.isEmpty()) throw new BadFile(problems);
        return profiles;
    }

    /** The profiles that are whole; what is wrong with the others goes to {@code problems}. */
    public static Map<String, PrinterProfile> read(Path folder, List<Problem> problems) {
        Map<String, PrinterProfile> profiles = new LinkedHashMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path path : files.filter(one -> one.toString().endsWith(".toml"))
                    .sorted()
                    .toList())
                read(path.getFileName().toString(), Files.readString(path), problems)
                        .ifPresent(profile -> profiles.put(profile.name(), profile));
        } catch (IOException e) {
            problems.add(new Problem(
                    Place.of(folder.toString()), "cannot be read: \"" + e.getMessage() + "\"", "see that it is there"));
        }
        return profiles;
    }

    /** One profile of text; what is wrong with it goes to {@code problems}. */
    public static Optional<PrinterProfile> read(String name, String text, List<Problem> problems) {
        PrinterProfiles reader = new PrinterProfiles("labels/printers/" + name, problems);
        int before = problems.size();
        TomlParseResult toml = Toml.parse(text);
        toml.errors()
                .forEach(error -> reader.wrong(error.position(), "\"" + error.getMessage() + "\"", "mend the TOML"));
        if (toml.hasErrors()) return Optional.empty();
        PrinterProfile profile = reader.profile(toml);
        if (problems.size() == before)
            for (String lack : profile.lacking())
                problems.add(new Problem(Place.of(reader.file), lack, "add it as your printer's manual says"));
        if (problems.size() == before && !name.equals(profile.name() + ".toml"))
            problems.add(new Problem(
                    Place.of(reader.file), "name \"" + profile.name() + "\" is not the file's", "use one for both"));
        return problems.size() == before ? Optional.of(profile) : Optional.empty();
    }

    private PrinterProfile profile(TomlTable toml) {
        known(toml, "", "name", "head", "picture", "send", "keep", "ask");
        TomlTable picture = table(toml, "picture");
        known(picture, "picture.", "form", "black");
        PrinterProfile.Form form = form(picture);
        return new PrinterProfile(
                text(toml, "name"),
                head(table(toml, "head")),
                new PrinterProfile.Coding(form, number(picture, "black", 0, 1) == 1, keeping(toml)),
                sending(table(toml, "send"), form),
                asking(table(toml, "ask")));
    }

    private PrinterProfile.Form form(TomlTable picture) {
        String word = text(picture, "form");
        return Arrays.stream(PrinterProfile.Form.values())
                .filter(one -> one.word().equals(word))
                .findFirst()
                .orElseGet(() -> {
                    wrong(
                            picture.inputPositionOf("form"),
                            "form \"" + word + "\" is not known",
                            "write rows, band, hex-runs or deflated");
                    return PrinterProfile.Form.BAND;
                });
    }

    private PrinterProfile.Head head(TomlTable head) {
        known(head, "head.", "dotsPerMm", "dots", "longestMm");
        Object per = head.get("dotsPerMm");
        int perMetre = per instanceof Number number
                ? new BigDecimal(number.toString()).movePointRight(3).intValue()
                : 0;
        if (perMetre < 4_000 || perMetre > 50_000) {
            wrong(
                    head.inputPositionOf("dotsPerMm"),
                    "dotsPerMm \"" + per + "\" is not 4 to 50",
                    "write 8.0, 11.811, 12.0 or 23.622");
            perMetre = 8_000;
        }
        Pitch pitch = new Pitch(perMetre);
        return new PrinterProfile.Head(
                pitch, number(head, "dots", 64, 20_000), pitch.dots(number(head, "longestMm", 10, 2_000) * 1_000L));
    }

    private PrinterProfile.Sending sending(TomlTable send, PrinterProfile.Form form) {
        known(
                send,
                "send.",
                "start",
                "row",
                "feed",
                "mostFeed",
                "end",
                "endKeeps",
                "again",
                "cut",
                "mostCopies",
                "clear",
                "darkness",
                "speed");
        boolean feeds = form == PrinterProfile.Form.ROWS;
        return new PrinterProfile.Sending(
                template(send, "start"),
                template(send, "row"),
                feeds ? template(send, "feed") : ByteTemplate.NOTHING,
                new PrinterProfile.After(
                        template(send, "end"),
                        perhaps(send, "again"),
                        send.contains("endKeeps") && truth(send, "endKeeps"),
                        perhaps(send, "cut"),
                        template(send, "clear")),
                new PrinterProfile.Limits(
                        feeds ? number(send, "mostFeed", 1, 65_535) : 1,
                        number(send, "mostCopies", 1, 9_999),
                        number(send, "darkness", 0, 255),
                        number(send, "speed", 0, 255)));
    }

    private Optional<PrinterProfile.Keeping> keeping(TomlTable toml) {
        if (!toml.contains("keep")) return Optional.empty();
        TomlTable keep = table(toml, "keep");
        known(keep, "keep.", "store", "recall", "differ", "question", "answer", "tail", "drop", "most");
        return Optional.of(new PrinterProfile.Keeping(
                template(keep, "store"),
                template(keep, "recall"),
                template(keep, "differ"),
                new PrinterProfile.Listing(
                        template(keep, "question"), template(keep, "answer"), number(keep, "tail", 0, 255)),
                new PrinterProfile.Room(template(keep, "drop"), number(keep, "most", 1, 1_000))));
    }

    private PrinterProfile.Asking asking(TomlTable ask) {
        known(ask, "ask.", "question", "length", "fixed", "flags", "inTurn", "lines", "fields", "remaining", "unasked");
        StatusReply reply = ask.contains("lines") ? fields(ask) : bits(ask);
        return new PrinterProfile.Asking(template(ask, "question"), reply, inTurn(ask), unasked(ask));
    }

    private StatusReply bits(TomlTable ask) {
        int length = number(ask, "length", 1, 32);
        int remaining = ask.contains("remaining") ? number(ask, "remaining", 0, length - 1) : -1;
        return new StatusReply.Bits(length, flags(ask, "fixed", length), flags(ask, "flags", length), remaining);
    }

    private List<StatusReply.Flag> flags(TomlTable ask, String key, int length) {
        List<StatusReply.Flag> flags = new ArrayList<>();
        for (TomlTable flag : tables(ask, key)) {
            known(flag, "ask." + key + ".", "byte", "mask", "is", "means");
            flags.add(new StatusReply.Flag(
                    number(flag, "byte", 0, length - 1),
                    number(flag, "mask", 1, 255),
                    number(flag, "is", 0, 255),
                    key.equals("fixed") ? Condition.BUSY : condition(flag)));
        }
        return flags;
    }

    private StatusReply fields(TomlTable ask) {
        TomlTable lines = table(ask, "lines");
        known(lines, "ask.lines.", "head", "tail", "count");
        int count = number(ask, "fields", 1, 200);
        List<StatusReply.Field> fields = new ArrayList<>();
        for (TomlTable flag : tables(ask, "flags")) {
            known(flag, "ask.flags.", "field", "is", "means");
            fields.add(new StatusReply.Field(number(flag, "field", 0, count - 1), text(flag, "is"), condition(flag)));
        }
        int remaining = ask.contains("remaining") ? number(ask, "remaining", 0, count - 1) : -1;
        return new StatusReply.Fields(
                new StatusReply.Lines(
                        number(lines, "head", 0, 255), number(lines, "tail", 0, 255), number(lines, "count", 1, 20)),
                count,
                fields,
                remaining);
    }

    private Optional<PrinterProfile.InTurn> inTurn(TomlTable ask) {
        if (!ask.contains("inTurn")) return Optional.empty();
        TomlTable turn = table(ask, "inTurn");
        known(turn, "ask.inTurn.", "question", "mask", "is");
        return Optional.of(new PrinterProfile.InTurn(
                template(turn, "question"), number(turn, "mask", 1, 255), number(turn, "is", 0, 255)));
    }

    private List<PrinterProfile.Unasked> unasked(TomlTable ask) {
        List<PrinterProfile.Unasked> unasked = new ArrayList<>();
        if (!ask.contains("unasked")) return unasked;
        for (TomlTable one : tables(ask, "unasked")) {
            known(one, "ask.unasked.", "byte", "means");
            boolean saysNothing = "nothing".equals(one.get("means"));
            unasked.add(new PrinterProfile.Unasked(
                    number(one, "byte", 0, 255), saysNothing ? Optional.empty() : Optional.of(condition(one))));
        }
        return unasked;
    }

    private Condition condition(TomlTable flag) {
        String word = text(flag, "means");
        return Condition.find(word).orElseGet(() -> {
            String known = String.join(
                    ", ", Arrays.stream(Condition.values()).map(Condition::word).toList());
            wrong(flag.inputPositionOf("means"), "means \"" + word + "\" is not known", "write one of " + known);
            return Condition.FAULT;
        });
    }

    private ByteTemplate perhaps(TomlTable table, String key) {
        return table.contains(key) ? template(table, key) : ByteTemplate.NOTHING;
    }

    private boolean truth(TomlTable table, String key) {
        if (table.get(key) instanceof Boolean truth) return truth;
        wrong(
                table.inputPositionOf(key),
                shown(table, key) + " is neither true nor false",
                "write true or leave it out");
        return false;
    }

    private ByteTemplate template(TomlTable table, String key) {
        String text = text(table, key);
        try {
            return new ByteTemplate(text);
        } catch (IllegalArgumentException e) {
            wrong(table.inputPositionOf(key), e.getMessage(), "see the example profiles");
            return ByteTemplate.NOTHING;
        }
    }

    private String text(TomlTable table, String key) {
        if (table.get(key) instanceof String text) return text;
        wrong(table.inputPositionOf(key), shown(table, key) + " is not text", "write " + key + " = \"…\"");
        return "";
    }

    private int number(TomlTable table, String key, int least, int most) {
        if (table.get(key) instanceof Long number && number >= least && number <= most) return number.intValue();
        wrong(
                table.inputPositionOf(key),
                shown(table, key) + " is not a whole number that goes here",
                "write " + least + " to " + most);
        return least;
    }

    private static String shown(TomlTable table, String key) {
        return table.contains(key) ? key + " \"" + table.get(key) + "\"" : key + " is missing and so";
    }

    private TomlTable table(TomlTable table, String key) {
        if (table.get(key) instanceof TomlTable found) return found;
        wrong(table.inputPositionOf(key), "there is no table \"" + key + "\"", "add it");
        return Toml.parse("");
    }

    private List<TomlTable> tables(TomlTable table, String key) {
        List<TomlTable> tables = new ArrayList<>();
        if (table.get(key) instanceof TomlArray array && array.toList().stream().allMatch(TomlTable.class::isInstance))
            for (int i = 0; i < array.size(); i++) tables.add(array.getTable(i));
        else wrong(table.inputPositionOf(key), key + " is not a list of tables", "write " + key + " = [ { … } ]");
        return tables;
    }

    private void known(TomlTable table, String path, String... keys) {
        Set<String> known = Set.of(keys);
        for (String key : table.keySet())
            if (!known.contains(key))
                wrong(
                        table.inputPositionOf(List.of(key)),
                        "key \"" + path + key + "\" is not known",
                        "known are " + String.join(", ", keys));
    }

    private void wrong(TomlPosition at, String what, String remedy) {
        Place place = at == null ? Place.of(file) : new Place(file, at.line(), at.column());
        problems.add(new Problem(place, what, remedy));
    }
}
