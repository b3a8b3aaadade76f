package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Product;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Which product some words mean: the only one that they fit, or the customer's usual one where there is exactly one. */
final class FindProduct {
    private final OrderReading context;

    FindProduct(OrderReading context) {
        this.context = context;
    }

    /** Empty where the words fit none, or several. */
    Optional<Product> of(List<Sense> words) {
        Set<String> codes = values(words, Kind.CODE);
        Set<String> kinds = values(words, Kind.KIND);
        if (codes.size() > 1 || kinds.size() > 1) return Optional.empty();
        List<Product> fitting = graded(
                context.products().stream()
                        .filter(product -> fits(product, words))
                        .toList(),
                words);
        boolean named = !kinds.isEmpty() || !codes.isEmpty();
        if (!named && values(words, Kind.FORM).isEmpty()) return Optional.empty();
        if (fitting.size() == 1) return only(fitting, words);
        if (!named && fitting.stream().anyMatch(product -> product.packing().pack() == Pack.BUCKET))
            return Optional.empty();
        return only(fitting.stream().filter(this::isUsual).toList(), words);
    }

    /** "Small" and "big" where two are sold, or where the customer's usual ones decide. */
    private List<Product> graded(List<Product> fitting, List<Sense> words) {
        Set<String> grades = values(words, Kind.GRADE);
        if (grades.isEmpty() || fitting.size() < 2) return grades.size() > 1 ? List.of() : fitting;
        boolean small = grades.equals(Set.of("small"));
        List<Product> sorted = fitting.stream()
                .sorted(Comparator.comparingLong(product -> product.net().milligrams()))
                .toList();
        Product least = sorted.get(0);
        if (sorted.size() == 2) return List.of(small ? least : sorted.get(1));
        List<Product> usual = sorted.stream().filter(this::isUsual).toList();
        if (usual.isEmpty() || grades.size() > 1) return List.of();
        Product last = usual.get(usual.size() - 1);
        if (small) return usual.contains(least) ? List.of(least) : List.of();
        boolean greater = usual.size() > 1 || sorted.indexOf(last) == 1 && !isPlain(last);
        return last != least && greater ? List.of(last) : List.of();
    }

    /** Whether it is what the bare word of its kind means. */
    private boolean isPlain(Product product) {
        return context.products().stream()
                        .filter(other -> other.recipe().equals(product.recipe()))
                        .filter(other ->
                                other.packing().pack() == product.packing().pack())
                        .filter(other -> name(other).startsWith(product.recipe()))
                        .mapToInt(other -> other.name().length())
                        .min()
                        .orElse(0)
                == product.name().length();
    }

    private Optional<Product> only(List<Product> fitting, List<Sense> words) {
        return fitting.size() == 1 && !mayBeAnother(fitting.get(0), words)
                ? Optional.of(fitting.get(0))
                : Optional.empty();
    }

    /** A word that names a container can also be said loosely of what the customer usually takes. */
    private boolean mayBeAnother(Product found, List<Sense> words) {
        boolean loose = values(words, Kind.FORM).equals(Set.of("tray"));
        boolean half = says(words, Kind.UNIT, "block") && name(found).contains("half block");
        if (half) return !values(words, Kind.FORM).contains("half block");
        return loose
                && !isUsual(found)
                && context.products().stream()
                        .anyMatch(p -> isUsual(p) && p.recipe().equals(found.recipe()));
    }

    /** Whether the words can mean something that the customer usually takes. */
    boolean isUsual(List<Sense> words) {
        return of(words).map(this::isUsual).orElse(false);
    }

    /** Whether words that name a kind or a code can be about a product. */
    boolean mayBe(String code, List<Sense> words) {
        List<Sense> naming = words.stream()
                .filter(word -> word.is(Kind.KIND, Kind.CODE, Kind.FORM, Kind.SIZE))
                .toList();
        boolean named = naming.stream().anyMatch(word -> word.is(Kind.KIND, Kind.CODE));
        return named
                && context.products().stream()
                        .anyMatch(product -> product.code().equals(code)
                                && naming.stream()
                                        .anyMatch(word -> word.is(Kind.KIND, Kind.CODE) && fits(product, word)));
    }

    private boolean isUsual(Product product) {
        return context.usual().containsKey(product.code());
    }

    private static boolean fits(Product product, List<Sense> words) {
        return words.stream().allMatch(word -> fits(product, word));
    }

    private static boolean fits(Product product, Sense word) {
        Pack pack = product.packing().pack();
        if (word.is(Kind.CODE)) return product.code().equals(word.value());
        if (word.is(Kind.KIND)) return product.recipe().equals(word.value());
        if (word.is(Kind.SIZE)) return sizeFits(product, word.value());
        if (word.is(Kind.FORM))
            return pack.name().toLowerCase(Locale.ROOT).equals(word.value())
                    || name(product).contains(word.value());
        if (word.is(Kind.UNIT) && word.value().equals("block")) return pack == Pack.BLOCK;
        if (word.is(Kind.UNIT) && word.value().equals("bottle")) return pack == Pack.BOTTLE;
        return true;
    }

    private static boolean sizeFits(Product product, String size) {
        String own = Figures.size(product);
        return own.equals(size) || own.replaceAll("[a-z]+", "").equals(size);
    }

    /** Whether something of the kind is sold in that many grams or millilitres. */
    boolean isSize(String figure, List<Sense> words) {
        return context.products().stream().anyMatch(product -> fits(product, words) && sizeFits(product, figure));
    }

    private static String name(Product product) {
        return product.name().toLowerCase(Locale.ROOT);
    }

    private static boolean says(List<Sense> words, Kind kind, String value) {
        return values(words, kind).contains(value);
    }

    private static Set<String> values(List<Sense> words, Kind kind) {
        return words.stream().filter(word -> word.is(kind)).map(Sense::value).collect(Collectors.toSet());
    }
}
