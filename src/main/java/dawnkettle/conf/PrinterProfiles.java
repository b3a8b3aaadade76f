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
import java.util.stream.Stream;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlTable;

/** Reads the printer profiles of {@code labels/printers}. */
public final class PrinterProfiles {
    private final ProfileTables tables;

    private PrinterProfiles(ProfileTables tables) {
        this.tables = tables;
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
        String file = "labels/printers/" + name;
        ProfileTables tables = new ProfileTables(file, problems);
        int before = problems.size();
        TomlParseResult toml = Toml.parse(text);
        toml.errors()
                .forEach(error -> tables.wrong(error.position(), "\"" + error.getMessage() + "\"", "mend the TOML"));
        if (toml.hasErrors()) return Optional.empty();
        PrinterProfile profile = new PrinterProfiles(tables).profile(toml);
        if (problems.size() == before)
            for (String lack : profile.lacking())
                problems.add(new Problem(Place.of(file), lack, "add it as your printer's manual says"));
        if (problems.size() == before && !name.equals(profile.name() + ".toml"))
            problems.add(new Problem(
                    Place.of(file), "name \"" + profile.name() + "\" is not the file's", "use one for both"));
        return problems.size() == before ? Optional.of(profile) : Optional.empty();
    }

    private PrinterProfile profile(TomlTable toml) {
        tables.known(toml, "", "name", "head", "picture", "send", "keep", "ask");
        TomlTable picture = tables.table(toml, "picture");
        tables.known(picture, "picture.", "form", "black");
        PrinterProfile.Form form = form(picture);
        return new PrinterProfile(
                tables.text(toml, "name"),
                head(tables.table(toml, "head")),
                new PrinterProfile.Coding(form, tables.number(picture, "black", 0, 1) == 1, keeping(toml)),
                sending(tables.table(toml, "send"), form),
                asking(tables.table(toml, "ask")));
    }

    private PrinterProfile.Form form(TomlTable picture) {
        String word = tables.text(picture, "form");
        return Arrays.stream(PrinterProfile.Form.values())
                .filter(one -> one.word().equals(word))
                .findFirst()
                .orElseGet(() -> {
                    tables.wrong(
                            picture.inputPositionOf("form"),
                            "form \"" + word + "\" is not known",
                            "write rows, band, hex-runs or deflated");
                    return PrinterProfile.Form.BAND;
                });
    }

    private PrinterProfile.Head head(TomlTable head) {
        tables.known(head, "head.", "dotsPerMm", "dots", "longestMm");
        Object per = head.get("dotsPerMm");
        int perMetre = per instanceof Number number
                ? new BigDecimal(number.toString()).movePointRight(3).intValue()
                : 0;
        if (perMetre < 4_000 || perMetre > 50_000) {
            tables.wrong(
                    head.inputPositionOf("dotsPerMm"),
                    "dotsPerMm \"" + per + "\" is not 4 to 50",
                    "write 8.0, 11.811, 12.0 or 23.622");
            perMetre = 8_000;
        }
        Pitch pitch = new Pitch(perMetre);
        return new PrinterProfile.Head(
                pitch,
                tables.number(head, "dots", 64, 20_000),
                pitch.dots(tables.number(head, "longestMm", 10, 2_000) * 1_000L));
    }

    private PrinterProfile.Sending sending(TomlTable send, PrinterProfile.Form form) {
        tables.known(
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
                tables.template(send, "start"),
                tables.template(send, "row"),
                feeds ? tables.template(send, "feed") : ByteTemplate.NOTHING,
                new PrinterProfile.After(
                        tables.template(send, "end"),
                        tables.perhaps(send, "again"),
                        send.contains("endKeeps") && tables.truth(send, "endKeeps"),
                        tables.perhaps(send, "cut"),
                        tables.template(send, "clear")),
                new PrinterProfile.Limits(
                        feeds ? tables.number(send, "mostFeed", 1, 65_535) : 1,
                        tables.number(send, "mostCopies", 1, 9_999),
                        tables.number(send, "darkness", 0, 255),
                        tables.number(send, "speed", 0, 255)));
    }

    private Optional<PrinterProfile.Keeping> keeping(TomlTable toml) {
        if (!toml.contains("keep")) return Optional.empty();
        TomlTable keep = tables.table(toml, "keep");
        tables.known(keep, "keep.", "store", "recall", "differ", "question", "answer", "tail", "drop", "most");
        return Optional.of(new PrinterProfile.Keeping(
                tables.template(keep, "store"),
                tables.template(keep, "recall"),
                tables.template(keep, "differ"),
                new PrinterProfile.Listing(
                        tables.template(keep, "question"),
                        tables.template(keep, "answer"),
                        tables.number(keep, "tail", 0, 255)),
                new PrinterProfile.Room(tables.template(keep, "drop"), tables.number(keep, "most", 1, 1_000))));
    }

    private PrinterProfile.Asking asking(TomlTable ask) {
        tables.known(
                ask,
                "ask.",
                "question",
                "length",
                "fixed",
                "flags",
                "inTurn",
                "lines",
                "fields",
                "remaining",
                "unasked");
        StatusReply reply = ask.contains("lines") ? fields(ask) : bits(ask);
        return new PrinterProfile.Asking(tables.template(ask, "question"), reply, inTurn(ask), unasked(ask));
    }

    private StatusReply bits(TomlTable ask) {
        int length = tables.number(ask, "length", 1, 32);
        int remaining = ask.contains("remaining") ? tables.number(ask, "remaining", 0, length - 1) : -1;
        return new StatusReply.Bits(length, flags(ask, "fixed", length), flags(ask, "flags", length), remaining);
    }

    private List<StatusReply.Flag> flags(TomlTable ask, String key, int length) {
        List<StatusReply.Flag> flags = new ArrayList<>();
        for (TomlTable flag : tables.tables(ask, key)) {
            tables.known(flag, "ask." + key + ".", "byte", "mask", "is", "means");
            flags.add(new StatusReply.Flag(
                    tables.number(flag, "byte", 0, length - 1),
                    tables.number(flag, "mask", 1, 255),
                    tables.number(flag, "is", 0, 255),
                    key.equals("fixed") ? Condition.BUSY : condition(flag)));
        }
        return flags;
    }

    private StatusReply fields(TomlTable ask) {
        TomlTable lines = tables.table(ask, "lines");
        tables.known(lines, "ask.lines.", "head", "tail", "count");
        int count = tables.number(ask, "fields", 1, 200);
        List<StatusReply.Field> fields = new ArrayList<>();
        for (TomlTable flag : tables.tables(ask, "flags")) {
            tables.known(flag, "ask.flags.", "field", "is", "means");
            fields.add(new StatusReply.Field(
                    tables.number(flag, "field", 0, count - 1), tables.text(flag, "is"), condition(flag)));
        }
        int remaining = ask.contains("remaining") ? tables.number(ask, "remaining", 0, count - 1) : -1;
        return new StatusReply.Fields(
                new StatusReply.Lines(
                        tables.number(lines, "head", 0, 255),
                        tables.number(lines, "tail", 0, 255),
                        tables.number(lines, "count", 1, 20)),
                count,
                fields,
                remaining);
    }

    private Optional<PrinterProfile.InTurn> inTurn(TomlTable ask) {
        if (!ask.contains("inTurn")) return Optional.empty();
        TomlTable turn = tables.table(ask, "inTurn");
        tables.known(turn, "ask.inTurn.", "question", "mask", "is");
        return Optional.of(new PrinterProfile.InTurn(
                tables.template(turn, "question"),
                tables.number(turn, "mask", 1, 255),
                tables.number(turn, "is", 0, 255)));
    }

    private List<PrinterProfile.Unasked> unasked(TomlTable ask) {
        List<PrinterProfile.Unasked> unasked = new ArrayList<>();
        if (!ask.contains("unasked")) return unasked;
        for (TomlTable one : tables.tables(ask, "unasked")) {
            tables.known(one, "ask.unasked.", "byte", "means");
            boolean saysNothing = "nothing".equals(one.get("means"));
            unasked.add(new PrinterProfile.Unasked(
                    tables.number(one, "byte", 0, 255), saysNothing ? Optional.empty() : Optional.of(condition(one))));
        }
        return unasked;
    }

    private Condition condition(TomlTable flag) {
        String word = tables.text(flag, "means");
        return Condition.find(word).orElseGet(() -> {
            String known = String.join(
                    ", ", Arrays.stream(Condition.values()).map(Condition::word).toList());
            tables.wrong(flag.inputPositionOf("means"), "means \"" + word + "\" is not known", "write one of " + known);
            return Condition.FAULT;
        });
    }
}
