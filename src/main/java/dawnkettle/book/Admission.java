package dawnkettle.book;

import dawnkettle.shop.Customer;
import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What an order's words must satisfy before it is taken, whichever way it came.
 *
 * @param today the shop's date when it is read
 */
public record Admission(Shop shop, LocalDate today) {
    /** Above this a slip of the finger is likelier than an order (common practice, no source). */
    public static final int MOST_PACKS = 5_000;

    /** Orders further ahead are taken for a slip in the year (common practice, no source). */
    private static final int MOST_DAYS_AHEAD = 180;

    /** What is wrong with a word, and what to write instead. */
    public record Complaint(String what, String remedy) {}

    /** A customer by code or by a name they go by, in capitals or not. */
    public Optional<Customer> findCustomer(String word) {
        return shop.customers().stream()
                .filter(customer -> callings(customer).anyMatch(word::equalsIgnoreCase))
                .findFirst();
    }

    public Complaint unknownCustomer(String word) {
        Optional<String> near = Nearest.to(
                word, shop.customers().stream().flatMap(Admission::callings).toList());
        Optional<String> code = near.flatMap(this::findCustomer).map(Customer::code);
        return unknown("customer", word, code, "customers.csv");
    }

    /** A product by its code, in capitals or not. */
    public Optional<Product> findProduct(String word) {
        return shop.products().stream()
                .filter(product -> product.code().equalsIgnoreCase(word))
                .findFirst();
    }

    public Complaint unknownProduct(String word) {
        List<String> codes = shop.products().stream().map(Product::code).toList();
        return unknown("product", word, Nearest.to(word, codes), "products.csv");
    }

    /** A material by its code, in capitals or not. */
    public Optional<Material> findMaterial(String word) {
        return shop.materials().stream()
                .filter(material -> material.code().equalsIgnoreCase(word))
                .findFirst();
    }

    public Complaint unknownMaterial(String word) {
        List<String> codes = shop.materials().stream().map(Material::code).toList();
        return unknown("material", word, Nearest.to(word, codes), "materials.csv");
    }

    /** A whole number from {@code least} to the most that is believed; empty where the word is none. */
    public Optional<Integer> findPacks(String word, int least) {
        if (!word.matches("[0-9]{1,6}")) return Optional.empty();
        int packs = Integer.parseInt(word);
        return packs >= least && packs <= MOST_PACKS ? Optional.of(packs) : Optional.empty();
    }

    public Complaint badPacks(String word, int least) {
        return new Complaint(
                "packs \"%s\" is not a whole number from %d to %d".formatted(word, least, MOST_PACKS),
                word.equals("0") ? "to cancel a line, amend it with packs 0" : "write the packs as a number, as 24");
    }

    /** A day written as 2026-12-04. */
    public Optional<LocalDate> findDay(String word) {
        try {
            return word.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}") ? Optional.of(LocalDate.parse(word)) : Optional.empty();
        } catch (DateTimeException noSuchDay) {
            return Optional.empty();
        }
    }

    public Complaint badDay(String word) {
        return new Complaint(
                "delivery date \"" + word + "\" is not a day", "write year-month-day, as " + today.plusDays(1));
    }

    /** Why a product cannot be delivered to a customer on a day; empty where it can. */
    public Optional<Complaint> unreachable(Customer customer, Product product, LocalDate delivery) {
        if (delivery.isBefore(today))
            return Optional.of(
                    new Complaint("delivery date \"" + delivery + "\" is past", "write a day from " + today + " on"));
        if (delivery.isAfter(today.plusDays(MOST_DAYS_AHEAD)))
            return Optional.of(new Complaint(
                    "delivery date \"" + delivery + "\" is more than " + MOST_DAYS_AHEAD + " days ahead",
                    "look at the year"));
        Route route = shop.route(customer.route());
        MakingDates dates = new MakingDates(shop.calendar());
        return dates.whyNot(delivery, route, product)
                .map(why -> new Complaint(
                        why,
                        dates.firstFrom(today.plusDays(1), route, product)
                                .map(day -> "the next day it can be had is " + day)
                                .orElse("ask for another product")));
    }

    private static Complaint unknown(String kind, String word, Optional<String> near, String file) {
        return new Complaint(
                "unknown " + kind + " \"" + word + "\"",
                near.map(code -> "did you mean \"" + code + "\"?").orElse("write a code of " + file));
    }

    private static Stream<String> callings(Customer customer) {
        return Stream.concat(Stream.of(customer.code()), customer.aliases().stream());
    }

    /** A word shortened for a message, without what could break a line. */
    public static String quotable(String word) {
        String clean = word.codePoints()
                .map(c -> Character.isISOControl(c) ? ' ' : c)
                .limit(40)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        return clean.length() < word.length() ? clean + "…" : clean;
    }
}
