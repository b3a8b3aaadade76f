package dawnkettle.night;

import dawnkettle.book.Admission;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderLine.Source;
import dawnkettle.book.OrderNumber;
import dawnkettle.book.ReadOrderText;
import dawnkettle.stock.Desk;
import dawnkettle.stock.Fact;
import dawnkettle.stock.ReadFact;
import dawnkettle.stock.ReadReceipt;
import dawnkettle.stock.RecordTold;
import dawnkettle.stock.Recorded;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Does what a person says in the words of the command line, typed or mailed, and tells in a sentence what was done. */
public final class TakeWords {
    /** Of one order; nobody types more (common practice, no source). */
    private static final int MOST_LINES = 400;

    private final Office office;
    private final Source source;
    private final String origin;

    private TakeWords(Office office, Source source, String origin) {
        this.office = office;
        this.source = source;
        this.origin = origin;
    }

    public static TakeWords typed(Office office) {
        return new TakeWords(office, Source.COMMAND, "command line");
    }

    /** @param origin the mail and its line; the same line is written down once */
    static TakeWords mailed(Office office, String origin) {
        return new TakeWords(office, Source.MAIL, origin);
    }

    /** CUSTOMER PRODUCT PACKS … DATE. */
    public String order(List<String> words) {
        ReadOrderText.Asked asked = ReadOrderText.read(words, new Admission(office.shop(), today()));
        OrderNumber number = office.ledger().orders().freeNumber(source == Source.MAIL ? "M" : "C", today());
        List<OrderLine> lines = new ArrayList<>();
        for (ReadOrderText.Item item : asked.items())
            lines.add(new OrderLine(
                    number,
                    lines.size() + 1,
                    asked.customer(),
                    item.product(),
                    item.packs(),
                    asked.delivery(),
                    source,
                    origin,
                    office.now()));
        office.ledger().inTransaction(() -> office.ledger().orders().add(lines));
        return "Order " + number + " is taken: " + lines.size() + " lines for " + asked.delivery() + late(lines);
    }

    private String late(List<OrderLine> lines) {
        OrderBook book = office.ledger()
                .book(
                        office.shop(),
                        office.papers().standing(),
                        lines.get(0).deliveryDate().minusDays(7));
        boolean closed = lines.stream()
                .anyMatch(
                        line -> book.productionDate(line).filter(book::isClosed).isPresent());
        return closed ? ". The book of that day is closed: it counts as late, and is planned if there is room." : ".";
    }

    /** ORDER LINE PACKS: what the line stands for from now on, 0 cancels. */
    public String amend(List<String> words) {
        Admission admission = new Admission(office.shop(), today());
        if (words.size() != 3 || !words.get(1).matches("[1-9][0-9]{0,3}"))
            throw bad("an order, a line and packs are needed", "write as in: amend M-20261203-4 1 24");
        Optional<Integer> packs = admission.findPacks(words.get(2), 0);
        if (packs.isEmpty()) {
            Admission.Complaint complaint = admission.badPacks(Admission.quotable(words.get(2)), 0);
            throw bad(complaint.what(), complaint.remedy());
        }
        OrderBook book = office.book();
        int line = Integer.parseInt(words.get(1));
        OrderLine known = number(words.get(0))
                .flatMap(order -> book.findLine(order, line))
                .orElseThrow(() -> bad(
                        "order \"" + Admission.quotable(words.get(0)) + "\" has no line " + line + " to amend",
                        "write the numbers as they were ordered"));
        if (known.deliveryDate().isBefore(today()))
            throw bad("the line was due on " + known.deliveryDate() + ", which is past", "order anew");
        boolean late = new AmendLine(office, source, origin).to(book, known, packs.get());
        return "Order " + known.order() + " line " + line + " is now " + packs.get() + " packs " + known.product()
                + " for " + known.deliveryDate()
                + (late
                        ? ". The book of that day is closed: it counts as late, and is planned if there is room."
                        : ".");
    }

    /** ORDER [LINE]: nothing of the line, or of all its lines, is made. */
    String cancelOrder(List<String> words) {
        OrderBook book = office.book();
        Optional<OrderNumber> order = words.size() > 2 ? Optional.empty() : number(words.get(0));
        List<Integer> lines = words.size() == 1
                ? order.map(known -> lines(book, known)).orElse(List.of())
                : List.of(words.get(1)).stream()
                        .filter(word -> word.matches("[1-9][0-9]{0,3}"))
                        .map(Integer::valueOf)
                        .toList();
        if (order.isEmpty() || lines.isEmpty())
            throw new BadFile(List.of(new Problem(
                    Place.of("cancel"),
                    "there is no order \"" + Admission.quotable(String.join(" ", words)) + "\" to cancel",
                    "write as in: cancel M-20261203-4, or with a line behind it")));
        return lines.stream()
                .map(line -> amend(List.of(words.get(0), String.valueOf(line), "0")))
                .collect(Collectors.joining(" "));
    }

    /** Those that are not cancelled yet; a standing order has a line a product. */
    private List<Integer> lines(OrderBook book, OrderNumber order) {
        int most = Math.max(MOST_LINES, office.shop().products().size());
        return IntStream.rangeClosed(1, most)
                .filter(line -> book.findLine(order, line).isPresent())
                .boxed()
                .toList();
    }

    private static Optional<OrderNumber> number(String word) {
        try {
            return Optional.of(new OrderNumber(word));
        } catch (IllegalArgumentException notOne) {
            return Optional.empty();
        }
    }

    private static BadFile bad(String what, String remedy) {
        return new BadFile(List.of(new Problem(Place.of("amend"), what, remedy)));
    }

    /** What happened, as {@code yield 261204-FI01 212.4}. */
    public String record(List<String> words, Optional<LocalDateTime> at) {
        Recorded recorded = from(ReadFact.read(words, at, desk(words)));
        office.ledger().records().add(recorded);
        String number = "Record " + office.ledger().records().lastNumber() + ".";
        RecordTold told = new RecordTold(office.shop());
        String hold = new Gate(office)
                .holdIfOut(recorded)
                .map(held -> "\n" + told.of(held))
                .orElse("");
        return told.of(recorded) + hold + heldWith(recorded) + "\n" + number;
    }

    /** Which batches a held lot of a supplier's holds, and how much of them is still here. */
    private String heldWith(Recorded recorded) {
        if (!(recorded.fact() instanceof Fact.HeldBought held)) return "";
        List<String> lines = new Tracing(office).heldWith(held.lot());
        return lines.isEmpty() ? "\nNothing was made with it." : "\nMade with it:\n  " + String.join("\n  ", lines);
    }

    /** What came in, as MATERIAL LOT QUANTITY PRICE [DATE]. */
    public String receive(List<String> words) {
        Recorded receipt = from(ReadReceipt.read(words, desk(words)));
        office.ledger().records().add(receipt);
        return new RecordTold(office.shop()).of(receipt) + RecordTold.allOf(receipt, new FindLots(office).of(words));
    }

    private Desk desk(List<String> words) {
        return new Desk(office.shop(), office.now(), new FindLots(office).of(words));
    }

    /** A typed record keeps the origin that says when it was typed. */
    private Recorded from(Recorded read) {
        return source == Source.MAIL ? new Recorded(read.fact(), read.happenedAt(), read.recordedAt(), origin) : read;
    }

    private LocalDate today() {
        return LocalDate.ofInstant(office.now(), office.shop().house().zone());
    }
}
