package dawnkettle.stock;

import dawnkettle.book.Admission;
import dawnkettle.book.Nearest;
import dawnkettle.measure.Mass;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import dawnkettle.shop.Tub;
import dawnkettle.stock.KnownLots.Bought;
import dawnkettle.stock.KnownLots.Made;
import dawnkettle.stock.KnownLots.Numbered;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The words of records about keeping: tubs, waste, containers, vans, holds, and what takes an earlier record back. */
final class KeepingWords {
    static final List<String> KINDS = List.of(
            "soaked",
            "soak",
            "packed",
            "waste",
            "used",
            "destroyed",
            "containers",
            "loaded",
            "hold",
            "release",
            "found",
            "cancel",
            "price",
            "hours",
            "away",
            "down",
            "up");

    private final FactWords words;
    private final Desk desk;
    private final Admission admission;
    private final LotWords lots;
    private final Instant at;

    KeepingWords(FactWords words, Desk desk, LotWords lots, Instant at) {
        this.words = words;
        this.desk = desk;
        this.admission = desk.admission();
        this.lots = lots;
        this.at = at;
    }

    Optional<Fact> fact(String kind) {
        return switch (kind) {
            case "soaked" -> soaked();
            case "soak" -> soakSeen();
            case "packed" -> packed();
            case "waste" -> wasted();
            case "used" -> usedMaterial();
            case "destroyed" -> destroyed();
            case "containers" -> containers();
            case "loaded" -> loaded();
            case "hold", "release" -> new HoldWords(words, desk, lots).fact(kind);
            case "price", "hours" -> new OfficeWords(words, desk).fact(kind);
            case "away", "down", "up" -> new RoomWords(words, desk, at).fact(kind);
            case "found" -> found();
            default -> cancelled();
        };
    }

    private Optional<Fact> soaked() {
        words.expect(4, 5, "record soaked TUB LOT KG [PRODUCTION-DAY]");
        Optional<String> tub = tub(1);
        Optional<Bought> lot = desk.lots().findBought(words.at(2));
        if (lot.isEmpty())
            words.complain(
                    2,
                    "no lot " + words.quoted(2) + " ever came in",
                    Nearest.to(
                                    words.at(2),
                                    desk.lots().bought().stream()
                                            .map(Bought::lot)
                                            .toList())
                            .map(near -> "did you mean \"" + near + "\"?")
                            .orElse("write it down first: receive MATERIAL LOT QUANTITY PRICE"));
        Optional<Mass> beans = words.kilograms(3);
        Optional<LocalDate> day = words.size() > 4
                ? day(4)
                : Optional.of(desk.shop().calendar().next(LocalDate.ofInstant(at, desk.zone())));
        return tub.isPresent() && lot.isPresent() && beans.isPresent() && day.isPresent()
                ? Optional.of(new Fact.Soaked(day.get(), tub.get(), lot.get().lot(), beans.get()))
                : Optional.empty();
    }

    private Optional<LocalDate> day(int place) {
        Optional<LocalDate> day = admission.findDay(words.at(place));
        if (day.isEmpty())
            words.complain(
                    place, "date " + words.quoted(place) + " is not a day", "write year-month-day, as " + desk.today());
        return day;
    }

    private Optional<String> tub(int place) {
        List<String> codes = desk.shop().floor().tubs().stream().map(Tub::code).toList();
        Optional<String> tub =
                codes.stream().filter(words.at(place)::equalsIgnoreCase).findFirst();
        if (tub.isEmpty())
            words.complain(
                    place,
                    "there is no tub " + words.quoted(place),
                    Nearest.to(words.at(place), codes)
                            .map(near -> "did you mean \"" + near + "\"?")
                            .orElse("write one of " + String.join(", ", codes)));
        return tub;
    }

    /** Of the beans that were filled into the tub last before the look. */
    private Optional<Fact> soakSeen() {
        words.expect(3, 4, "record soak TUB ready, or: record soak TUB not ready");
        Optional<String> tub = tub(1);
        String seen = words.rest(2).toLowerCase(Locale.ROOT);
        if (!seen.equals("ready") && !seen.equals("not ready"))
            words.complain(
                    2, "\"" + Admission.quotable(seen) + "\" is neither ready nor not ready", "write one of them");
        Optional<KnownLots.FilledTub> filled = desk.lots().past().tubs().stream()
                .filter(one -> tub.filter(one.tub()::equals).isPresent()
                        && !one.filledAt().isAfter(at))
                .findFirst();
        if (tub.isPresent() && filled.isEmpty())
            words.complain(
                    1,
                    "tub " + words.quoted(1) + " was not filled before " + desk.local(at),
                    "look at the tub's number, or give the time with --at");
        return filled.map(one -> new Fact.SoakSeen(one.productionDate(), one.tub(), seen.equals("ready")));
    }

    private Optional<Fact> packed() {
        words.expect(4, 4, "record packed LOT PRODUCT PACKS");
        return lots.filled(1).map(some -> new Fact.Packed(some.lot(), some.product(), some.packs()));
    }

    private Optional<Fact> wasted() {
        words.expect(4, Integer.MAX_VALUE, "record waste LOT KG WHY");
        Optional<Made> lot = lots.lot(1);
        Optional<Mass> mass = words.kilograms(2);
        if (lot.isPresent()
                && mass.isPresent()
                && mass.get().compareTo(lot.get().making().expected().times(2)) > 0)
            words.complain(
                    2,
                    "waste " + words.quoted(2) + " is more than the batch can have given",
                    "write kilograms; if all of it is lost write: record lost LOT WHY");
        Optional<String> why = words.text(3, "reason");
        return lot.isPresent() && mass.isPresent() && why.isPresent()
                ? Optional.of(new Fact.Wasted(lot.get().lot(), mass.get(), why.get()))
                : Optional.empty();
    }

    private Optional<Fact> usedMaterial() {
        return some("record used MATERIAL LOT QUANTITY WHY")
                .map(some -> new Fact.UsedMaterial(some.material, some.lot, some.quantity, some.why));
    }

    Optional<Fact> lostMaterial(String form) {
        return some(form).map(some -> new Fact.LostMaterial(some.material, some.lot, some.quantity, some.why));
    }

    /** Some of a bought lot, and why. */
    private record SomeMaterial(String material, String lot, Quantity quantity, String why) {}

    private Optional<SomeMaterial> some(String form) {
        words.expect(5, Integer.MAX_VALUE, form);
        Optional<Material> material = admission.findMaterial(words.at(1));
        if (material.isEmpty()) words.complain(1, admission.unknownMaterial(words.at(1)));
        if (material.isEmpty()) return Optional.empty();
        Optional<Bought> lot = lots.bought(2, material.get());
        Optional<Quantity> quantity = words.quantity(3, material.get().unit());
        Optional<String> why = words.text(4, "reason");
        if (lot.isEmpty() || quantity.isEmpty() || why.isEmpty()) return Optional.empty();
        if (quantity.get().smallest() > lot.get().received().smallest())
            words.complain(
                    3,
                    "quantity " + words.quoted(3) + " is more than all that came in of the lot",
                    "receive the rest first, or look at the number");
        return Optional.of(new SomeMaterial(material.get().code(), lot.get().lot(), quantity.get(), why.get()));
    }

    private Optional<Fact> destroyed() {
        words.expect(5, Integer.MAX_VALUE, "record destroyed LOT PRODUCT PACKS WHY");
        Optional<LotWords.Some> some = lots.filled(1);
        Optional<String> why = words.text(4, "reason");
        return some.isPresent() && why.isPresent()
                ? Optional.of(new Fact.Destroyed(
                        some.get().lot(), some.get().product(), some.get().packs(), why.get()))
                : Optional.empty();
    }

    private Optional<Fact> containers() {
        words.expect(5, Integer.MAX_VALUE, "record containers CUSTOMER PRODUCT out|back|count COUNT [WHY]");
        Optional<Customer> customer = admission.findCustomer(words.at(1));
        if (customer.isEmpty()) words.complain(1, admission.unknownCustomer(words.at(1)));
        Optional<Product> product = admission.findProduct(words.at(2));
        if (product.isEmpty()) words.complain(2, admission.unknownProduct(words.at(2)));
        if (product.filter(one -> one.packing().deposit().minor() == 0).isPresent())
            words.complain(2, words.quoted(2) + " has no containers that come back", "name a product with a deposit");
        String way = words.at(3).toLowerCase(Locale.ROOT);
        if (!List.of("out", "back", "count").contains(way))
            words.complain(3, words.quoted(3) + " is no way of a container", "write out, back or count");
        Optional<Integer> count = words.whole(4, "count", way.equals("count") ? 0 : 1, Admission.MOST_PACKS);
        if (customer.isEmpty() || product.isEmpty() || count.isEmpty()) return Optional.empty();
        String who = customer.get().code();
        String what = product.get().code();
        if (way.equals("back"))
            return Optional.of(new Fact.Returned(who, what, Fact.Returned.What.CONTAINERS, count.get(), words.rest(5)));
        Fact.Containers.Way kind = way.equals("out") ? Fact.Containers.Way.OUT : Fact.Containers.Way.COUNTED;
        return Optional.of(new Fact.Containers(who, what, kind, count.get(), words.rest(5)));
    }

    private Optional<Fact> loaded() {
        words.expect(2, 3, "record loaded ROUTE [DAY]");
        List<String> codes = desk.shop().routes().stream().map(Route::code).toList();
        Optional<String> route =
                codes.stream().filter(words.at(1)::equalsIgnoreCase).findFirst();
        if (route.isEmpty())
            words.complain(
                    1,
                    "there is no route " + words.quoted(1),
                    Nearest.to(words.at(1), codes)
                            .map(near -> "did you mean \"" + near + "\"?")
                            .orElse("write one of " + String.join(", ", codes)));
        Optional<LocalDate> day = words.size() > 2 ? day(2) : Optional.of(LocalDate.ofInstant(at, desk.zone()));
        if (day.filter(one -> one.isAfter(desk.today())).isPresent())
            words.complain(2, "date " + words.quoted(2) + " is in the future", "record it when the van is loaded");
        return route.isPresent() && day.isPresent()
                ? Optional.of(new Fact.Loaded(route.get(), day.get()))
                : Optional.empty();
    }

    /** Takes back the record that wrote a lot off. */
    private Optional<Fact> found() {
        words.expect(3, Integer.MAX_VALUE, "record found LOT WHY");
        Optional<Made> lot = lots.lot(1);
        Optional<Long> loss = lot.map(Made::lot).map(desk.lots().past().losses()::get);
        if (lot.isPresent() && loss.isEmpty())
            words.complain(1, "lot " + words.quoted(1) + " was not recorded as lost", "there is nothing to take back");
        Optional<String> why = words.text(2, "reason");
        return loss.isPresent() && why.isPresent()
                ? Optional.of(new Fact.Cancelled(loss.get(), why.get()))
                : Optional.empty();
    }

    private Optional<Fact> cancelled() {
        words.expect(3, Integer.MAX_VALUE, "record cancel NUMBER WHY");
        Optional<Numbered> numbered = desk.lots().past().numbered();
        Optional<String> why = words.text(2, "reason");
        if (numbered.isEmpty())
            words.complain(1, "there is no record " + words.quoted(1), "write the number that was told with it");
        else if (!numbered.get().counts())
            words.complain(1, "record " + words.quoted(1) + " was cancelled before", "there is nothing to take back");
        else refuseWhatStays(numbered.get().recorded().fact());
        return numbered.isPresent() && why.isPresent()
                ? Optional.of(new Fact.Cancelled(numbered.get().number(), why.get()))
                : Optional.empty();
    }

    private void refuseWhatStays(Fact fact) {
        if (fact instanceof Fact.Cancelled)
            words.complain(
                    1, "record " + words.quoted(1) + " cancels another", "write what it cancelled once more instead");
        if (fact instanceof Fact.Held held)
            words.complain(
                    1,
                    "record " + words.quoted(1) + " holds lot \"" + held.lot() + "\"",
                    "only a named person lets it go: record release " + held.lot() + " by NAME WHY");
        if (fact instanceof Fact.HeldBought held)
            words.complain(
                    1,
                    "record " + words.quoted(1) + " holds the supplier's lot \"" + held.lot() + "\"",
                    "only a named person lets it go: record release " + held.lot() + " by NAME WHY");
        if (fact instanceof Fact.ReleasedBought released)
            words.complain(
                    1,
                    "record " + words.quoted(1) + " releases the supplier's lot \"" + released.lot() + "\"",
                    "hold it again: record hold " + released.lot() + " WHY");
        if (fact instanceof Fact.Released released)
            words.complain(
                    1,
                    "record " + words.quoted(1) + " releases lot \"" + released.lot() + "\"",
                    "hold it again: record hold " + released.lot() + " WHY");
    }
}
