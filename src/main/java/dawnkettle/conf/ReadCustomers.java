package dawnkettle.conf;

import dawnkettle.shop.Customer;
import dawnkettle.trouble.Place;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Reads {@code customers.csv}. Names and addresses are never repeated in a problem: the place and the code say enough. */
final class ReadCustomers {
    static final String FILE = "customers.csv";
    static final List<String> COLUMNS = List.of(
            "code",
            "name",
            "aliases",
            "mails",
            "price_list",
            "route",
            "stop",
            "priority",
            "prices_on_notes",
            "address");

    private final Known known;
    private final Map<String, String> callings = new HashMap<>();
    private final Map<String, String> mails = new HashMap<>();
    private final Map<String, String> stops = new HashMap<>();

    ReadCustomers(Known known) {
        this.known = known;
    }

    List<Placed<Customer>> read(Rows rows) {
        if (!rows.whole()) known.customers.notWhole();
        List<Placed<Customer>> customers = new ArrayList<>();
        for (Cells row : rows.cells())
            one(row).ifPresent(customer -> customers.add(new Placed<>(customer, row.place())));
        return customers;
    }

    private Optional<Customer> one(Cells row) {
        int before = row.problems().count();
        String code = known.customers.declare(row.in("code"));
        if (row.problems().count() == before) called(row.in("code"), code);
        String name = row.in("name").words();
        called(row.in("name"), code);
        List<String> calledAs = aliases(row.in("aliases").parts(), code);
        List<String> mayOrder = mails(row.in("mails").parts(), code);
        String priceList = known.priceLists.refer(row.in("price_list"));
        String route = known.routes.refer(row.in("route"));
        int stop = stop(row, code, route);
        int priority = row.in("priority").whole(1, 3);
        boolean pricesOnNotes = row.in("prices_on_notes").truth();
        String address = row.in("address").words();
        if (row.problems().count() > before) return Optional.empty();
        return Optional.of(
                new Customer(code, name, calledAs, mayOrder, priceList, route, stop, priority, pricesOnNotes, address));
    }

    private List<String> aliases(List<Written> parts, String code) {
        List<String> names = new ArrayList<>();
        for (Written part : parts) {
            if (part.isBlank()) note(part, code, "an alias is empty", "leave out the semicolon");
            else called(part, code);
            names.add(part.text());
        }
        return names;
    }

    /** Takes a word by which people mean the customer; it must not mean another. */
    private void called(Written word, String code) {
        String other = callings.putIfAbsent(word.text().toLowerCase(Locale.ROOT), code);
        if (other != null && !other.equals(code))
            note(word, code, "a name or alias also means customer \"" + other + "\"", "keep it at one of them");
    }

    private List<String> mails(List<Written> parts, String code) {
        List<String> addresses = new ArrayList<>();
        for (Written part : parts) {
            String address = part.text().toLowerCase(Locale.ROOT);
            String other = mails.putIfAbsent(address, code);
            if (!ReadEdges.isMailAddress(address))
                note(part, code, "what stands there is no mail address", "write it as orders@kitchen.example");
            else if (other != null)
                note(part, code, "the address already orders for customer \"" + other + "\"", "keep it at one of them");
            addresses.add(address);
        }
        return addresses;
    }

    private int stop(Cells row, String code, String route) {
        Written written = row.in("stop");
        int stop = written.whole(1, 1_000);
        String other = stops.putIfAbsent(route + " " + stop, code);
        if (other != null)
            written.bad(
                    stop,
                    "is already the stop of customer \"" + other + "\" on this route",
                    "give each stop its own number");
        return stop;
    }

    private static void note(Written part, String code, String what, String remedy) {
        Place place = part.place();
        part.problems().add(place, "customer \"" + code + "\": " + what, remedy);
    }
}
