package dawnkettle.plan;

import dawnkettle.plan.DayFloor.Span;
import dawnkettle.shop.Shop;
import dawnkettle.stock.LotCode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * What then, if something is lost on the day: for every batch, every hand and every station, who is short and what stands in.
 * Each row is a plan that was really computed again from the moment at which the loss is known.
 *
 * @param revision the plan it belongs to
 * @param rows batches in the order of the plan, then hands by the clock, then stations in the shop's order
 */
public record IfCard(LocalDate productionDate, int revision, List<Row> rows) {
    public IfCard {
        rows = List.copyOf(rows);
    }

    /** The card of {@code plan}, which was computed from {@code evening}; the same input gives the same card. */
    public static IfCard of(Shop shop, Evening evening, DayPlan plan) {
        return new WhatIf(shop, evening, plan).card();
    }

    /**
     * One loss and what it comes to.
     *
     * @param shorts packs that are short only because of it, by product, route and customer
     * @param late vans that are later because of it
     * @param help what stands in, and what to do
     */
    public record Row(Loss loss, List<Short> shorts, List<Late> late, Help help) {
        public Row {
            shorts = List.copyOf(shorts);
            late = List.copyOf(late);
        }

        /** Whether nobody is short and no van is later. */
        public boolean isHarmless() {
            return shorts.isEmpty() && late.isEmpty();
        }

        public int shortPacks() {
            return shorts.stream().mapToInt(Short::packs).sum();
        }
    }

    /**
     * What is lost.
     *
     * @param id the batch, or the station; for a hand the local time from which it is missing, as "02:30"
     * @param name in words: a batch's recipe and lot, a station's name
     * @param span while it would have been needed
     * @param knownAt when it is counted to be known: replanned from there
     */
    public record Loss(Kind kind, String id, String name, Span span, Instant knownAt) {
        /** What can be lost. */
        public enum Kind {
            BATCH,
            HAND,
            STATION
        }
    }

    /** Packs that a customer does not get, and why, in the shop's words. */
    public record Short(String product, String route, String customer, int packs, String reason) {}

    /**
     * A van that is later than planned.
     *
     * @param minutes late in all
     * @param more of these minutes, those that the loss adds
     */
    public record Late(String route, Instant departs, int minutes, int more) {}

    /**
     * What can be done.
     *
     * @param standIns lots that customers get instead, as the replan gives them
     * @param offers what else lies free for those who are short, the nearest product first
     * @param leftOut batches that the replan no longer makes, or not to their end, by the clock
     * @param extra batches that the replan makes besides
     * @param drops batches that may be left out, each with what leaving it out was computed to give, the best first
     */
    public record Help(
            List<StandIn> standIns, List<StandIn> offers, List<String> leftOut, List<Extra> extra, List<Drop> drops) {
        /** Nothing stands in, and nothing is to be done. */
        public static final Help NONE = new Help(List.of(), List.of(), List.of(), List.of(), List.of());

        public Help {
            standIns = List.copyOf(standIns);
            offers = List.copyOf(offers);
            leftOut = List.copyOf(leftOut);
            extra = List.copyOf(extra);
            drops = List.copyOf(drops);
        }
    }

    /** Another batch, and where and when it begins. */
    public record Extra(String batch, String recipe, String station, Instant start) {}

    /**
     * Packs that take the place of others.
     *
     * @param instead the product that was to be had; the same where only the lot is another
     * @param batch id of the batch they are from; empty for a lot in stock
     */
    public record StandIn(String instead, String product, int packs, LotCode lot, String batch) {
        public boolean fromStock() {
            return batch.isEmpty();
        }
    }

    /**
     * A batch that may be left out.
     *
     * @param packsShort packs short in all when it is left out
     * @param lateMinutes minutes late, summed over the vans, when it is left out
     */
    public record Drop(String batch, int packsShort, int lateMinutes) {}
}
