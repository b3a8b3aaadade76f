package dawnkettle.book;

import dawnkettle.book.Admission.Complaint;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads an order typed as words: {@code CUSTOMER PRODUCT PACKS … DATE}, or {@code CUSTOMER 12xFIRM-12 … DATE}.
 *
 * <p>All words are read before any complaint is made, and a complaint names its word by number.
 */
public final class ReadOrderText {
    private static final Pattern COUNTED = Pattern.compile("([0-9]+)[xX](.+)");
    private static final Problem TOO_FEW = new Problem(
            Place.of("order"),
            "a customer, a product with packs and a day are needed",
            "write as in: HARB FIRM-12 24 2026-12-04, or: HARB 24xFIRM-12 2026-12-04");

    private final Admission admission;
    private final List<Problem> problems = new ArrayList<>();
    private final List<Item> items = new ArrayList<>();
    private Optional<Customer> customer = Optional.empty();
    private Optional<LocalDate> day = Optional.empty();

    private ReadOrderText(Admission admission) {
        this.admission = admission;
    }

    /** An order as it was asked for, without a number yet. */
    public record Asked(String customer, LocalDate delivery, List<Item> items) {
        public Asked {
            items = List.copyOf(items);
        }
    }

    /** Packs of one product. */
    public record Item(String product, int packs) {}

    /** @throws BadFile with every word that cannot be read or served */
    public static Asked read(List<String> words, Admission admission) {
        return new ReadOrderText(admission).read(words);
    }

    private Asked read(List<String> words) {
        if (words.size() < 3) throw new BadFile(List.of(TOO_FEW));
        int last = words.size() - 1;
        customer = admission.findCustomer(words.get(0));
        if (customer.isEmpty()) complain(0, admission.unknownCustomer(words.get(0)));
        day = admission.findDay(words.get(last));
        if (day.isEmpty()) complain(last, admission.badDay(words.get(last)));
        for (int at = 1; at < last; ) at = item(words.subList(0, last), at);
        if (!problems.isEmpty()) throw new BadFile(problems);
        return new Asked(customer.orElseThrow().code(), day.orElseThrow(), items);
    }

    /** Reads the item that begins at a word. @return the word after it */
    private int item(List<String> words, int at) {
        Matcher counted = COUNTED.matcher(words.get(at));
        boolean together =
                counted.matches() && admission.findProduct(words.get(at)).isEmpty();
        String code = together ? counted.group(2) : words.get(at);
        String count = together ? counted.group(1) : at + 1 < words.size() ? words.get(at + 1) : "";
        Optional<Product> product = product(code, at);
        Optional<Integer> packs = admission.findPacks(count, 1);
        if (packs.isEmpty()) complain(together ? at : at + 1, admission.badPacks(count, 1));
        if (product.isPresent() && packs.isPresent())
            items.add(new Item(product.get().code(), packs.get()));
        return together ? at + 1 : at + 2;
    }

    private Optional<Product> product(String code, int at) {
        Optional<Product> product = admission.findProduct(code);
        if (product.isEmpty()) complain(at, admission.unknownProduct(code));
        if (product.isPresent() && customer.isPresent() && day.isPresent())
            admission
                    .unreachable(customer.get(), product.get(), day.get())
                    .ifPresent(complaint -> complain(at, complaint));
        return product;
    }

    private void complain(int word, Complaint complaint) {
        problems.add(new Problem(new Place("order word", word + 1, 0), complaint.what(), complaint.remedy()));
    }
}
