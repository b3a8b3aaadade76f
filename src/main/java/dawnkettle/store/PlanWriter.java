package dawnkettle.store;

import dawnkettle.measure.Mass;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedSoak;
import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;

/** Writes a plan's rows: what stock, trace and the conservation laws ask of it. */
final class PlanWriter {
    private final Sql sql;
    private final DayPlan plan;
    private final LocalDate day;
    private final int revision;

    PlanWriter(Sql sql, DayPlan plan) {
        this.sql = sql;
        this.plan = plan;
        this.day = plan.heading().productionDate();
        this.revision = plan.heading().revision();
    }

    void write(String json) {
        var before = plan.heading().revisionOf();
        sql.write(
                "INSERT INTO plan (production_date, revision, revision_of, computed_at, mode, json) VALUES (?, ?, ?, ?, ?, ?)",
                day,
                revision,
                before.isPresent() ? before.getAsInt() : null,
                plan.heading().computedAt(),
                plan.heading().mode().word(),
                json);
        plan.orders().forEach(this::order);
        for (int i = 0; i < plan.soaks().size(); i++) tub(i + 1, plan.soaks().get(i));
        plan.batches().forEach(this::batch);
        plan.batches().forEach(this::feeds);
        plan.labels().forEach(this::label);
        plan.allocation().forEach(this::allocation);
    }

    private void order(PlannedOrder order) {
        sql.write(
                """
                INSERT INTO plan_order (production_date, revision, order_number, line, customer, product,
                                        delivery_date, packs, planned_packs, reason, late)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""",
                day,
                revision,
                order.line().order(),
                order.line().line(),
                order.line().customer(),
                order.line().product(),
                order.line().deliveryDate(),
                order.line().packs(),
                order.plannedPacks(),
                order.reason(),
                order.line().late());
    }

    private void tub(int place, PlannedSoak tub) {
        sql.write(
                """
                INSERT INTO plan_tub (production_date, revision, place, tub, soak_group, beans_mg, left_over_mg,
                                      bean_lots, fill_at)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)""",
                day,
                revision,
                place,
                tub.tub(),
                tub.soakGroup(),
                tub.beans(),
                tub.leftOver(),
                String.join("\n", tub.beanLots()),
                tub.fillAt());
    }

    private void batch(PlannedBatch batch) {
        sql.write(
                """
                INSERT INTO plan_batch (production_date, revision, lot, batch, recipe, beans_mg, expected_mg,
                                        dose_material, dose_mg, material_lots, pack_date)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""",
                day,
                revision,
                batch.lot(),
                batch.id(),
                batch.recipe(),
                batch.beans(),
                batch.expected(),
                batch.coagulant().map(PlannedBatch.Dose::material),
                batch.coagulant().map(PlannedBatch.Dose::mass),
                String.join("\n", batch.materialLots()),
                batch.packDate());
        Map<String, Mass> tubs = new TreeMap<>();
        batch.soaks().forEach(from -> tubs.merge(from.tub(), from.beans(), Mass::plus));
        tubs.forEach((tub, beans) -> sql.write(
                "INSERT INTO plan_batch_tub (production_date, revision, lot, tub, beans_mg) VALUES (?, ?, ?, ?, ?)",
                day,
                revision,
                batch.lot(),
                tub,
                beans));
        batch.packs().forEach(filled -> packs(batch, filled));
    }

    private void packs(PlannedBatch batch, PlannedBatch.Filled filled) {
        sql.write(
                """
                INSERT INTO plan_pack (production_date, revision, lot, product, packs, cases, loose_packs)
                VALUES (?, ?, ?, ?, ?, ?, ?)""", day, revision, batch.lot(), filled.product(), filled.packs(), filled.cases(), filled.loosePacks());
    }

    private void feeds(PlannedBatch batch) {
        for (PlannedBatch.Feed feed : batch.feeds())
            sql.write(
                    "INSERT INTO plan_feed (production_date, revision, lot, into_lot, mass_mg) VALUES (?, ?, ?, ?, ?)",
                    day,
                    revision,
                    batch.lot(),
                    plan.batch(feed.batch()).lot(),
                    feed.mass());
    }

    private void label(PlannedLabel label) {
        sql.write(
                """
                INSERT INTO plan_label (production_date, revision, lot, product, cases, part_cases, packs, best_before)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?)""",
                day,
                revision,
                label.lot(),
                label.product(),
                label.cases(),
                label.partCases().size(),
                label.packs(),
                label.bestBefore());
    }

    private void allocation(Allocation allocation) {
        sql.write(
                """
                INSERT INTO plan_allocation (production_date, revision, order_number, line, lot, route, customer,
                                             product, packs, from_stock, delivery_date)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""",
                day,
                revision,
                allocation.order(),
                allocation.line(),
                allocation.lot(),
                allocation.route(),
                allocation.customer(),
                allocation.product(),
                allocation.packs(),
                allocation.fromStock(),
                allocation.deliveryDate());
    }
}
