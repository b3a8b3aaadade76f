package dawnkettle;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/** Those who drop orders, and who remember outside the service what they dropped: sound files, wrong ones, the same twice. */
final class DroppedByHand {
    private static final String HEADER = "order,line,customer,product,packs,delivery_date,action\n";

    /** What becomes of a file. */
    enum Fate {
        TAKEN,
        REFUSED
    }

    /** A line that must be in the ledger once its file is taken. */
    record Line(String order, int line, String customer, String product, int packs, LocalDate delivery) {
        String key() {
            return order + "/" + line;
        }

        String row() {
            return order + " " + line + " " + customer + " " + product + " " + packs + " " + delivery;
        }
    }

    /** A dropped file. */
    record Dropped(String name, Fate fate, List<Line> lines, Map<String, Integer> amended, boolean sameBytes) {}

    final List<Dropped> files = new ArrayList<>();
    private final Map<String, String> texts = new HashMap<>();
    private final Path folder;
    private final LocalDate day;
    private final Random dice;
    private int orders;

    DroppedByHand(Path folder, LocalDate day, Random dice) {
        this.folder = folder;
        this.day = day;
        this.dice = dice;
    }

    /** Drops a file of some kind at this time. */
    void drop(Instant now) throws IOException {
        int number = files.size() + 1;
        String name = "orders-" + number + ".csv";
        int kind = dice.nextInt(12);
        if (kind == 0) write(name, Fate.REFUSED, List.of(), "order,line\n\u00e9;;;", now);
        else if (kind == 1)
            write(name, Fate.REFUSED, List.of(), HEADER + rows(lines()).strip() + ",\"open", now);
        else if (kind == 2 && !files.isEmpty()) again(name, now);
        else if (kind == 3 && hasLines()) conflict(name, now);
        else if (kind <= 5 && hasLines()) amend(name, now);
        else if (kind == 6) {
            List<Line> lines = lines();
            write(
                    name,
                    Fate.TAKEN,
                    lines,
                    HEADER + rows(lines) + "W-" + number + ",1,C001,NO-SUCH,3," + delivery("C001") + ",\n",
                    now);
        } else {
            List<Line> lines = lines();
            write(name, Fate.TAKEN, lines, HEADER + rows(lines), now);
        }
    }

    private boolean hasLines() {
        return files.stream().anyMatch(file -> !file.lines().isEmpty());
    }

    private Line anyLine() {
        List<Line> all = files.stream().flatMap(file -> file.lines().stream()).toList();
        return all.get(dice.nextInt(all.size()));
    }

    /** The same bytes under another name count once. */
    private void again(String name, Instant now) throws IOException {
        Dropped before = files.get(dice.nextInt(files.size()));
        Files.write(folder.resolve(name), texts.get(before.name()).getBytes(StandardCharsets.ISO_8859_1));
        Files.setLastModifiedTime(folder.resolve(name), FileTime.from(now));
        texts.put(name, texts.get(before.name()));
        files.add(new Dropped(name, before.fate(), List.of(), Map.of(), true));
    }

    /** The same order and line with other packs: the first stands, the second is kept beside it, the file is refused. */
    private void conflict(String name, Instant now) throws IOException {
        Line line = anyLine();
        Line other = new Line(
                line.order(), line.line(), line.customer(), line.product(), line.packs() + 40, line.delivery());
        write(name, Fate.REFUSED, List.of(), HEADER + rows(List.of(other)), now);
    }

    private void amend(String name, Instant now) throws IOException {
        Line line = anyLine();
        int packs = dice.nextInt(4) == 0 ? 0 : 1 + dice.nextInt(30);
        String text = HEADER + row(line, packs, "amend") + "\n";
        boolean isSame = texts.containsValue(text);
        files.add(new Dropped(name, Fate.TAKEN, List.of(), isSame ? Map.of() : Map.of(line.key(), packs), isSame));
        put(name, text, now);
    }

    private void write(String name, Fate fate, List<Line> lines, String text, Instant now) throws IOException {
        files.add(new Dropped(name, fate, lines, Map.of(), false));
        put(name, text, now);
    }

    private void put(String name, String text, Instant now) throws IOException {
        texts.put(name, text);
        Path part = folder.resolve(name + ".part");
        Files.write(part, text.getBytes(StandardCharsets.ISO_8859_1));
        Files.setLastModifiedTime(part, FileTime.from(now));
        Files.move(part, folder.resolve(name));
    }

    private List<Line> lines() {
        List<Line> lines = new ArrayList<>();
        String order = "N" + ++orders;
        List<String> customers = dice.nextBoolean() ? FewOrders.SAME_DAY : FewOrders.DAY_AFTER;
        String customer = customers.get(dice.nextInt(customers.size()));
        int count = 1 + dice.nextInt(FewOrders.PRODUCTS.size());
        for (int i = 0; i < count; i++)
            lines.add(new Line(
                    order, i + 1, customer, FewOrders.PRODUCTS.get(i), 1 + dice.nextInt(30), delivery(customer)));
        return lines;
    }

    /** A day whose making date is the night's: the day itself, or the next on which the early van runs. */
    private LocalDate delivery(String customer) {
        if (FewOrders.SAME_DAY.contains(customer)) return day;
        LocalDate next = day.plusDays(1);
        return next.getDayOfWeek() == DayOfWeek.SUNDAY ? next.plusDays(1) : next;
    }

    private static String rows(List<Line> lines) {
        StringBuilder rows = new StringBuilder();
        for (Line line : lines) rows.append(row(line, line.packs(), "")).append('\n');
        return rows.toString();
    }

    private static String row(Line line, int packs, String action) {
        return String.join(
                ",",
                line.order(),
                "" + line.line(),
                line.customer(),
                line.product(),
                "" + packs,
                line.delivery().toString(),
                action);
    }

    /** Packs each line of the taken files stands for, by order and line, with all that was amended. */
    Map<String, Integer> wanted(List<String> taken) {
        Map<String, Integer> packs = new TreeMap<>();
        for (Dropped file : files) {
            if (!taken.contains(file.name())) continue;
            file.lines().forEach(line -> packs.put(line.key(), line.packs()));
            packs.putAll(file.amended());
        }
        return packs;
    }
}
