package dawnkettle.sheet;

import dawnkettle.plan.DayFloor.Span;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.IfCard;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Shop;
import dawnkettle.shop.WorkStation;
import dawnkettle.stock.LotCode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Cards of what then, made by hand: every {@code nth} loss hurts, each in another way; the others do no harm. */
final class SampleCard {
    private final Shop shop;
    private final DayPlan plan;
    private final int nth;
    private final List<IfCard.Row> rows = new ArrayList<>();

    private SampleCard(Shop shop, DayPlan plan, int nth) {
        this.shop = shop;
        this.plan = plan;
        this.nth = nth;
    }

    static IfCard of(Shop shop, DayPlan plan, int nth) {
        SampleCard card = new SampleCard(shop, plan, nth);
        plan.batches().forEach(card::batch);
        for (int hour = 2; hour < 8; hour += 2) card.hand(hour);
        shop.floor().stations().forEach(card::station);
        return new IfCard(plan.heading().productionDate(), plan.heading().revision(), card.rows);
    }

    private void batch(PlannedBatch batch) {
        List<PlannedOperation> steps = plan.operationsOf(batch.id());
        Instant from = steps.get(0).start();
        Instant until = steps.stream()
                .map(PlannedOperation::end)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        add(
                new IfCard.Loss(
                        IfCard.Loss.Kind.BATCH,
                        batch.id(),
                        shop.recipe(batch.recipe()).name() + ", " + batch.lot(),
                        new Span(from, until),
                        from.plusSeconds(45 * 60)),
                batch);
    }

    private void hand(int hour) {
        Instant from = SampleDay.at(SampleDay.DATE, hour, 30);
        String id = String.format(java.util.Locale.ROOT, "%02d:30", hour);
        add(
                new IfCard.Loss(IfCard.Loss.Kind.HAND, id, "one hand", new Span(from, from.plusSeconds(14_400)), from),
                null);
    }

    private void station(WorkStation station) {
        Instant from = SampleDay.at(SampleDay.DATE, 3, 0);
        Span span = new Span(from, from.plusSeconds(9 * 3600));
        add(new IfCard.Loss(IfCard.Loss.Kind.STATION, station.code(), station.name(), span, from), null);
    }

    private void add(IfCard.Loss loss, PlannedBatch batch) {
        int i = rows.size();
        rows.add(i % nth == 0 ? hurting(loss, i) : harmless(loss, i));
    }

    private IfCard.Row harmless(IfCard.Loss loss, int i) {
        List<IfCard.StandIn> standIns = i % 3 == 0
                ? List.of()
                : List.of(new IfCard.StandIn(
                        product(i), product(i), 6 + i, new LotCode("261203-FI02"), i % 2 == 0 ? "" : "B03"));
        return new IfCard.Row(
                loss, List.of(), List.of(), new IfCard.Help(standIns, List.of(), List.of(), List.of(), List.of()));
    }

    private IfCard.Row hurting(IfCard.Loss loss, int i) {
        List<IfCard.Short> shorts = new ArrayList<>();
        for (int k = 0; k < i % 5 + 1 && k < shop.customers().size(); k++) {
            Customer customer = shop.customers().get((i + k) % shop.customers().size());
            shorts.add(new IfCard.Short(
                    product(i + k / 3), customer.route(), customer.code(), 4 + k, "no other batch has packs to spare"));
        }
        List<IfCard.Late> late = i % 2 == 0
                ? List.of()
                : List.of(new IfCard.Late("R1", SampleDay.at(SampleDay.DATE, 12, 0), 35, 20 + i));
        IfCard.StandIn standIn = new IfCard.StandIn(product(i), product(i), 12, new LotCode("261204-FI03"), "B03");
        IfCard.StandIn stock = new IfCard.StandIn(product(i), product(i), 5, new LotCode("261203-FI01"), "");
        IfCard.StandIn offer = new IfCard.StandIn(product(i), product(i + 1), 8, new LotCode("261204-ME01"), "B05");
        return new IfCard.Row(
                loss,
                shorts,
                late,
                new IfCard.Help(
                        List.of(standIn, stock),
                        i % 3 == 0 ? List.of(offer) : List.of(),
                        i % 3 == 1 ? List.of("B07", "B08", "B09", "B10", "B11") : List.of(),
                        i % 5 == 0 ? List.of(new IfCard.Extra("B99", "FIRM", "COOK-2", loss.knownAt())) : List.of(),
                        i % 4 == 0 ? List.of(new IfCard.Drop("B12", 9, 0)) : List.of()));
    }

    private String product(int i) {
        return shop.products().get(i % shop.products().size()).code();
    }
}
