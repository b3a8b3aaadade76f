package dawnkettle.stock;

import dawnkettle.stock.Web.Batch;
import dawnkettle.stock.Web.Feed;
import dawnkettle.stock.Web.Handed;
import dawnkettle.stock.Web.Source;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * One question to the web of lots, answered both ways: what it was made of, and where all of it went.
 *
 * @param subject what was asked for, in words
 * @param boughtLot the bought lot that was asked for; empty where another thing was
 * @param upstream the batches asked for with all that they were made from
 * @param downstream the batches asked for with all that was made from them
 * @param handed who got packs of any of those, or gets them
 */
public record Recall(
        String subject,
        Optional<String> boughtLot,
        Set<LotCode> upstream,
        Set<LotCode> downstream,
        List<Handed> handed) {
    private static final Comparator<Handed> BY_VAN = Comparator.comparing(Handed::day)
            .thenComparing(Handed::route)
            .thenComparing(Handed::customer)
            .thenComparing(Handed::product)
            .thenComparing(Handed::lot)
            .thenComparing(Handed::order)
            .thenComparing(Handed::line);

    public Recall {
        upstream = new TreeSet<>(upstream);
        downstream = new TreeSet<>(downstream);
        handed = handed.stream().sorted(BY_VAN).toList();
    }

    /** Of a batch's lot: what it was made of, and all that it went into. */
    public static Recall ofBatch(Web web, LotCode lot) {
        Set<LotCode> made = web.downstream(List.of(lot));
        return new Recall("lot " + lot, Optional.empty(), web.upstream(List.of(lot)), made, handed(web, made));
    }

    /** Of a supplier's lot: every batch that holds any of it. */
    public static Recall ofBought(Web web, String lot) {
        Set<LotCode> made = web.madeWith(lot);
        return new Recall("bought lot " + lot, Optional.of(lot), made, made, handed(web, made));
    }

    /** Of what a customer got on a day: which lots, and who else got any of them. */
    public static Recall ofCustomer(Web web, String customer, LocalDate day) {
        List<LotCode> lots =
                web.handedTo(customer, day).stream().map(Handed::lot).distinct().toList();
        return new Recall(
                "customer " + customer + " on " + day,
                Optional.empty(),
                web.upstream(lots),
                new TreeSet<>(lots),
                handed(web, lots));
    }

    private static List<Handed> handed(Web web, Collection<LotCode> lots) {
        return lots.stream().flatMap(lot -> web.handedOf(lot).stream()).toList();
    }

    public List<Batch> batches(Web web) {
        return downstream.stream().flatMap(lot -> web.find(lot).stream()).toList();
    }

    /** Bought lots that the batches hold, directly or through what they were made from. */
    public List<Source> sources(Web web) {
        return upstream.stream()
                .flatMap(lot -> web.sourcesOf(lot).stream())
                .filter(source -> boughtLot.isEmpty() || boughtLot.get().equals(source.lot()))
                .toList();
    }

    /** Batches that went into others, as far as this question touches them. */
    public List<Feed> feeds(Web web) {
        Set<LotCode> all = new TreeSet<>(upstream);
        all.addAll(downstream);
        return all.stream()
                .flatMap(lot -> web.childrenOf(lot).stream())
                .filter(feed -> all.contains(feed.into()))
                .toList();
    }
}
