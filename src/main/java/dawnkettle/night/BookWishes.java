package dawnkettle.night;

import dawnkettle.book.Admission;
import dawnkettle.book.BookLine;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.book.OrderWish;
import dawnkettle.book.OrderWish.Drop;
import dawnkettle.book.OrderWish.More;
import dawnkettle.book.OrderWish.SameAs;
import dawnkettle.book.OrderWish.SetTo;
import dawnkettle.book.OrderWish.SkipDay;
import dawnkettle.book.OrderWish.Twice;
import dawnkettle.book.ReadMail.Question;
import dawnkettle.shop.Customer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/** Puts what a customer's mail asks for into the book, one wish after the other; what can't be done is asked. */
final class BookWishes {
    /** How far back "the same as" may look. */
    private static final int DAYS_BACK = 35;

    /** Nothing is made earlier for a delivery day. */
    private static final int LONGEST_LEAD = 14;

    private final Office office;
    private final Customer customer;
    private final String origin;
    private final Admission admission;
    private final List<Told> booked = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();
    private Optional<OrderNumber> number = Optional.empty();
    private int lines;
    private OrderBook book;

    /** A wish that is in the book now, in words, the day it is for, and the words it was read from. */
    record Told(LocalDate day, String words, String from) {}

    BookWishes(Office office, Customer customer, String origin) {
        this.office = office;
        this.customer = customer;
        this.origin = origin;
        this.admission = new Admission(office.shop(), today());
        this.book = read();
    }

    List<Told> booked() {
        return booked;
    }

    List<Question> questions() {
        return questions;
    }

    /** The days that were touched. */
    List<LocalDate> days() {
        return new ArrayList<>(new TreeSet<>(booked.stream().map(Told::day).toList()));
    }

    void take(OrderWish wish) {
        if (wish.day().isBefore(today())) ask(wish, "That day, " + wish.day() + ", is past.");
        else if (wish instanceof More more) more(more);
        else if (wish instanceof SetTo set) set(wish, set.product(), set.packs());
        else if (wish instanceof Drop drop) drop(drop);
        else if (wish instanceof Twice twice) twice(twice);
        else if (wish instanceof SkipDay) skip(wish);
        else if (wish instanceof SameAs same) same(same);
    }

    private void more(More wish) {
        if (!canHave(wish, wish.product())) return;
        if (add(wish, wish.product(), wish.packs())) told(wish, wish.packs() + " × " + name(wish.product()));
    }

    private boolean add(OrderWish wish, String product, int packs) {
        if (packs < 1 || packs > Admission.MOST_PACKS) {
            ask(wish, packs + " packs is more than is believed without asking.");
            return false;
        }
        OrderNumber order = number.orElseGet(() -> office.ledger().orders().freeNumber("M", today()));
        number = Optional.of(order);
        office.ledger()
                .orders()
                .add(List.of(new OrderLine(
                        order,
                        ++lines,
                        customer.code(),
                        product,
                        packs,
                        wish.day(),
                        OrderLine.Source.MAIL,
                        origin,
                        office.now())));
        book = read();
        return true;
    }

    private void set(OrderWish wish, String product, int packs) {
        List<BookLine> there = there(wish.day(), product);
        if (there.isEmpty() && packs == 0) {
            ask(wish, "Nothing of " + name(product) + " is in the book for " + wish.day() + ".");
            return;
        }
        if (packs > 0 && !canHave(wish, product)) return;
        if (there.isEmpty() ? add(wish, product, packs) : amend(wish, there, packs))
            told(
                    wish,
                    packs == 0
                            ? "no " + name(product)
                            : packs + " × " + name(product) + " in all, in place of what was there");
    }

    /** The first line carries all of it; the others are cancelled. */
    private boolean amend(OrderWish wish, List<BookLine> there, int packs) {
        if (packs > Admission.MOST_PACKS) {
            ask(wish, packs + " packs is more than is believed without asking.");
            return false;
        }
        AmendLine amending = new AmendLine(office, OrderLine.Source.MAIL, origin);
        for (int i = 0; i < there.size(); i++) {
            int wanted = i == 0 ? packs : 0;
            BookLine line = there.get(i);
            if (line.packs() != wanted)
                amending.to(book, book.findLine(line.order(), line.line()).orElseThrow(), wanted);
        }
        book = read();
        return true;
    }

    private void drop(Drop wish) {
        if (total(there(wish.day(), wish.product())) == 0)
            ask(wish, "Nothing of " + name(wish.product()) + " is in the book for " + wish.day() + ".");
        else set(wish, wish.product(), 0);
    }

    private void twice(Twice wish) {
        int now = total(there(wish.day(), wish.product()));
        if (now == 0)
            ask(wish, "Nothing of " + name(wish.product()) + " is in the book for " + wish.day() + " to double.");
        else set(wish, wish.product(), 2 * now);
    }

    private void skip(OrderWish wish) {
        Map<String, Integer> there = totals(wish.day());
        if (there.isEmpty()) ask(wish, "Nothing is in the book for " + wish.day() + ".");
        there.keySet().forEach(product -> set(wish, product, 0));
    }

    private void same(SameAs wish) {
        Map<String, Integer> then = totals(wish.as());
        if (then.isEmpty()) ask(wish, "Nothing was in the book for " + wish.as() + ".");
        then.forEach((product, packs) -> set(wish, product, packs));
    }

    private boolean canHave(OrderWish wish, String product) {
        Optional<Admission.Complaint> complaint =
                office.shop().findProduct(product).flatMap(known -> admission.unreachable(customer, known, wish.day()));
        complaint.ifPresent(said -> ask(wish, name(product) + ": " + said.what() + "; " + said.remedy() + "."));
        return complaint.isEmpty();
    }

    private void ask(OrderWish wish, String why) {
        questions.add(new Question(wish.words(), why));
    }

    private void told(OrderWish wish, String words) {
        booked.add(new Told(wish.day(), words, wish.words()));
    }

    private String name(String product) {
        return office.shop()
                .findProduct(product)
                .map(known -> known.name() + " (" + known.code() + ")")
                .orElse(product);
    }

    private static int total(List<BookLine> lines) {
        return lines.stream().mapToInt(BookLine::packs).sum();
    }

    /** What is in the book for a day, packs by product. */
    Map<String, Integer> totals(LocalDate day) {
        Map<String, Integer> totals = new TreeMap<>();
        for (BookLine line : there(day)) if (line.packs() > 0) totals.merge(line.product(), line.packs(), Integer::sum);
        return totals;
    }

    private List<BookLine> there(LocalDate day, String product) {
        return there(day).stream()
                .filter(line -> line.product().equals(product))
                .toList();
    }

    private List<BookLine> there(LocalDate day) {
        return day.minusDays(LONGEST_LEAD)
                .datesUntil(day.plusDays(1))
                .flatMap(making -> book.bookFor(making).stream())
                .filter(line -> line.customer().equals(customer.code())
                        && line.deliveryDate().equals(day))
                .toList();
    }

    /** What is changed by now is in the ledger, in the same transaction, and is read back from there. */
    private OrderBook read() {
        return office.ledger().book(office.shop(), office.papers().standing(), today().minusDays(DAYS_BACK));
    }

    /** When the book of a delivery day's making days closes, the first of them; empty where one is closed. */
    Optional<java.time.Instant> changeableUntil(LocalDate day) {
        List<LocalDate> making = there(day).stream()
                .map(BookLine::makingDate)
                .distinct()
                .sorted()
                .toList();
        if (making.isEmpty() || making.stream().anyMatch(book::isClosed)) return Optional.empty();
        return Optional.of(office.timetable().close(making.get(0)));
    }

    private LocalDate today() {
        return LocalDate.ofInstant(office.now(), office.shop().house().zone());
    }
}
