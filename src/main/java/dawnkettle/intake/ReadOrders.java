package dawnkettle.intake;

import dawnkettle.book.Admission;
import dawnkettle.book.Amendment;
import dawnkettle.book.Conflict;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.intake.OrderTable.Column;
import dawnkettle.intake.OrderTable.Line;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.Problem;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads the orders of one dropped file; an order with a problem in any of its lines is left out whole. */
final class ReadOrders {
    private static final int MOST_LINES_OF_AN_ORDER = 999;

    private final OrderBook book;
    private final Instant now;
    private final Admission admission;
    private final List<Problem> problems = new ArrayList<>();
    private final List<Conflict> conflicts = new ArrayList<>();
    private final Map<Integer, OrderLine> lines = new LinkedHashMap<>();
    private final List<OrderLine> allLines = new ArrayList<>();
    private final List<Amendment> amendments = new ArrayList<>();
    private final List<Amendment> allAmendments = new ArrayList<>();
    private int same;
    private int allSame;

    ReadOrders(Shop shop, OrderBook book, Instant now) {
        this.book = book;
        this.now = now;
        this.admission =
                new Admission(shop, LocalDate.ofInstant(now, shop.house().zone()));
    }

    Reading read(OrderTable table) {
        if (!table.problems().isEmpty()) return new Reading(List.of(), List.of(), List.of(), table.problems(), 0);
        Map<String, List<Line>> orders = new LinkedHashMap<>();
        for (Line row : table.rows())
            orders.computeIfAbsent(row.text(Column.ORDER), number -> new ArrayList<>())
                    .add(row);
        orders.values().forEach(this::order);
        return new Reading(allLines, allAmendments, conflicts, problems, allSame);
    }

    private void order(List<Line> rows) {
        lines.clear();
        amendments.clear();
        same = 0;
        int before = problems.size();
        Optional<OrderNumber> number = number(rows.get(0));
        if (number.isPresent()) for (Line row : rows) line(number.get(), row);
        if (problems.size() > before) return;
        allLines.addAll(lines.values());
        allAmendments.addAll(amendments);
        allSame += same;
    }

    private void line(OrderNumber order, Line row) {
        if (!row.whole()) {
            problems.add(new Problem(
                    row.place(), "the line does not have a cell for each column", "look for a missing comma or quote"));
            return;
        }
        Optional<Integer> line = lineNumber(row);
        String action = row.text(Column.ACTION);
        if (action.equalsIgnoreCase("amend")) line.ifPresent(number -> amend(order, number, row));
        else if (action.isEmpty() || action.equalsIgnoreCase("new")) added(order, line, row);
        else
            complain(
                    row,
                    Column.ACTION,
                    "action \"" + Admission.quotable(action) + "\" is not known",
                    "write new or amend, or leave it empty");
    }

    private void added(OrderNumber order, Optional<Integer> line, Line row) {
        if (order.text().startsWith("S-"))
            complain(
                    row,
                    Column.ORDER,
                    "order number \"" + order + "\" is kept for standing orders",
                    "give it another number, or write amend as its action");
        Optional<Customer> customer = customer(row);
        Optional<Product> product = product(row);
        Optional<Integer> packs = packs(row, 1);
        Optional<LocalDate> day = day(row);
        if (line.isEmpty() || customer.isEmpty() || product.isEmpty() || packs.isEmpty() || day.isEmpty()) return;
        OrderLine taken = new OrderLine(
                order,
                line.get(),
                customer.get().code(),
                product.get().code(),
                packs.get(),
                day.get(),
                OrderLine.Source.FILE,
                row.place().toString(),
                now);
        Optional<OrderLine> first = known(order, line.get());
        if (first.isPresent()) again(first.get(), taken, row);
        else if (admission
                .unreachable(customer.get(), product.get(), day.get())
                .map(complaint -> complain(row, Column.DELIVERY_DATE, complaint.what(), complaint.remedy()))
                .isEmpty()) lines.put(line.get(), taken);
    }

    private void again(OrderLine first, OrderLine taken, Line row) {
        if (OrderBook.sameContent(first, taken)) {
            same++;
            return;
        }
        conflicts.add(new Conflict(first, taken));
        complain(
                row,
                Column.LINE,
                "order \"%s\" line %d was taken before with other content (%d of \"%s\" for %s)"
                        .formatted(taken.order(), taken.line(), first.packs(), first.product(), first.deliveryDate()),
                "to change it write amend as its action; a new order needs another number");
    }

    private void amend(OrderNumber order, int line, Line row) {
        Optional<Integer> packs = packs(row, 0);
        Optional<OrderLine> known = known(order, line);
        if (known.isEmpty()) {
            complain(
                    row,
                    Column.LINE,
                    "order \"" + order + "\" has no line " + line + " to amend",
                    "write the numbers as they were ordered");
            return;
        }
        if (!namesTheSame(row, known.get()) || packs.isEmpty()) return;
        if (known.get().deliveryDate().isBefore(admission.today())) {
            complain(
                    row,
                    Column.DELIVERY_DATE,
                    "the line was due on " + known.get().deliveryDate() + ", which is past",
                    "order anew");
            return;
        }
        if (!book.isTaken(order, line) && !lines.containsKey(line)) lines.put(line, written(known.get(), row));
        boolean late = book.productionDate(known.get()).filter(book::isClosed).isPresent();
        amendments.add(new Amendment(
                order, line, packs.get(), OrderLine.Source.FILE, row.place().toString(), now, late));
    }

    /** A standing order's line, written out in the book before it is amended, so that it keeps its number. */
    private OrderLine written(OrderLine standing, Line row) {
        return standing.takenAs(OrderLine.Source.STANDING, row.place().toString(), now);
    }

    /** An amendment changes packs alone; where it names more, it must name the line as it was ordered. */
    private boolean namesTheSame(Line row, OrderLine line) {
        int before = problems.size();
        if (!row.text(Column.CUSTOMER).isEmpty())
            customer(row)
                    .filter(customer -> !customer.code().equals(line.customer()))
                    .ifPresent(other -> differs(row, Column.CUSTOMER, line.customer()));
        if (!row.text(Column.PRODUCT).isEmpty())
            product(row)
                    .filter(product -> !product.code().equals(line.product()))
                    .ifPresent(other -> differs(row, Column.PRODUCT, line.product()));
        if (!row.text(Column.DELIVERY_DATE).isEmpty())
            day(row).filter(day -> !day.equals(line.deliveryDate()))
                    .ifPresent(other -> differs(
                            row, Column.DELIVERY_DATE, line.deliveryDate().toString()));
        return problems.size() == before;
    }

    private void differs(Line row, Column column, String ordered) {
        complain(
                row,
                column,
                "the line was ordered with \"" + ordered + "\", not \"" + Admission.quotable(row.text(column)) + "\"",
                "an amendment changes packs alone: cancel the line with packs 0 and order anew");
    }

    private Optional<OrderLine> known(OrderNumber order, int line) {
        return lines.containsKey(line) ? Optional.of(lines.get(line)) : book.findLine(order, line);
    }

    private Optional<OrderNumber> number(Line row) {
        String word = row.text(Column.ORDER);
        try {
            return Optional.of(new OrderNumber(word));
        } catch (IllegalArgumentException notANumber) {
            complain(
                    row,
                    Column.ORDER,
                    "order number \"" + Admission.quotable(word) + "\" cannot be read",
                    "write 1 to 40 of letters, digits, - _ . / :");
            return Optional.empty();
        }
    }

    private Optional<Integer> lineNumber(Line row) {
        String word = row.text(Column.LINE);
        if (word.matches("[0-9]{1,3}") && Integer.parseInt(word) > 0) return Optional.of(Integer.parseInt(word));
        complain(
                row,
                Column.LINE,
                "line \"%s\" is not a whole number from 1 to %d"
                        .formatted(Admission.quotable(word), MOST_LINES_OF_AN_ORDER),
                "number the order's lines from 1");
        return Optional.empty();
    }

    private Optional<Customer> customer(Line row) {
        Optional<Customer> customer = admission.findCustomer(row.text(Column.CUSTOMER));
        if (customer.isEmpty()) complain(row, Column.CUSTOMER, admission::unknownCustomer);
        return customer;
    }

    private Optional<Product> product(Line row) {
        Optional<Product> product = admission.findProduct(row.text(Column.PRODUCT));
        if (product.isEmpty()) complain(row, Column.PRODUCT, admission::unknownProduct);
        return product;
    }

    private Optional<Integer> packs(Line row, int least) {
        Optional<Integer> packs = admission.findPacks(row.text(Column.PACKS), least);
        if (packs.isEmpty()) complain(row, Column.PACKS, word -> admission.badPacks(word, least));
        return packs;
    }

    private Optional<LocalDate> day(Line row) {
        Optional<LocalDate> day = admission.findDay(row.text(Column.DELIVERY_DATE));
        if (day.isEmpty()) complain(row, Column.DELIVERY_DATE, admission::badDay);
        return day;
    }

    private void complain(
            Line row, Column column, java.util.function.Function<String, Admission.Complaint> complaintOf) {
        Admission.Complaint complaint = complaintOf.apply(Admission.quotable(row.text(column)));
        complain(row, column, complaint.what(), complaint.remedy());
    }

    private boolean complain(Line row, Column column, String what, String remedy) {
        return problems.add(new Problem(row.place(column), what, remedy));
    }
}
