package dawnkettle.plan;

import dawnkettle.plan.Heading.Frozen;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** What of a plan has happened by an instant, where a tub, a batch or a van without a record is taken to be as planned. */
public final class WhatHappened {
    private WhatHappened() {}

    public static List<Frozen> by(DayPlan plan, Instant now) {
        List<Frozen> facts = new ArrayList<>();
        for (PlannedSoak soak : plan.soaks())
            if (!soak.fillAt().isAfter(now)) facts.add(new Frozen(Frozen.Kind.TUB_FILLED, soak.tub(), soak.fillAt()));
        for (PlannedBatch batch : plan.batches()) {
            Instant start = plan.operationsOf(batch.id()).get(0).start();
            if (start.isBefore(now)) facts.add(new Frozen(Frozen.Kind.BATCH_STARTED, batch.id(), start));
        }
        for (PlannedRoute route : plan.routes())
            if (!left(route).isAfter(now)) facts.add(new Frozen(Frozen.Kind.ROUTE_GONE, van(plan, route), left(route)));
        return facts;
    }

    /** A van that is late waits for its last lot. */
    private static Instant left(PlannedRoute route) {
        Instant loaded = route.packedBy().plusSeconds(60L * route.loadMinutes());
        return loaded.isAfter(route.departs()) ? loaded : route.departs();
    }

    private static String van(DayPlan plan, PlannedRoute route) {
        return Van.due(
                route.route(), route.departs().atZone(plan.heading().zone()).toLocalDate());
    }
}
