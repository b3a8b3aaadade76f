package dawnkettle.store;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** The laws that must hold of a production day, each a query over the ledger. */
final class Conservation {
    /** Stands for rows {@code p} of the day's plan that is in force. */
    private static final String IN_FORCE =
            "(p.production_date, p.revision) IN (SELECT * FROM plan_in_force WHERE production_date = ?1)";

    private final Sql sql;
    private final LocalDate day;
    private final List<String> broken = new ArrayList<>();

    Conservation(Sql sql, LocalDate day) {
        this.sql = sql;
        this.day = day;
    }

    List<String> broken() {
        closedLines();
        orderedIsPlannedAndDeclined();
        plannedIsAllocated();
        packsAreLabelled();
        labelsAreCases();
        labelledLotsHaveParents();
        beansInTubsAreBeansInBatches();
        stepsAreDoneOnce();
        return broken;
    }

    private void closedLines() {
        look(row -> "the close says " + row.number("a") + " packs, its lines add up to " + row.number("b"), """
                SELECT pack_count AS a, (SELECT coalesce(sum(packs), 0) FROM book_close_line AS l
                                         WHERE l.production_date = c.production_date) AS b
                FROM book_close AS c WHERE production_date = ?1 AND a <> b""");
        look(row -> line(row) + " was closed in the book and is not in the plan", """
                SELECT l.order_number, l.line FROM book_close_line AS l
                WHERE l.production_date = ?1 AND EXISTS (SELECT 1 FROM plan WHERE production_date = ?1)
                  AND NOT EXISTS (SELECT 1 FROM plan_order AS p
                                  WHERE {in force} AND p.order_number = l.order_number AND p.line = l.line)
                  AND coalesce((SELECT a.packs FROM amendment AS a
                                WHERE a.order_number = l.order_number AND a.line = l.line
                                ORDER BY a.seq DESC LIMIT 1), l.packs) > 0""");
        look(row -> line(row) + " is in the plan, but was neither closed nor late", """
                SELECT p.order_number, p.line FROM plan_order AS p
                WHERE {in force} AND p.late = 0 AND EXISTS (SELECT 1 FROM book_close WHERE production_date = ?1)
                  AND NOT EXISTS (SELECT 1 FROM book_close_line AS l
                                  WHERE l.order_number = p.order_number AND l.line = p.line)""");
    }

    private void orderedIsPlannedAndDeclined() {
        look(
                row -> line(row) + " was closed with " + row.number("a") + " packs and is planned as " + row.number("b")
                        + " without a late change",
                """
                SELECT p.order_number, p.line, l.packs AS a, p.packs AS b
                FROM plan_order AS p JOIN book_close_line AS l USING (order_number, line)
                WHERE {in force} AND l.packs <> p.packs AND p.late = 0""");
        look(row -> line(row) + " has " + row.number("a") + " packs declined without a reason", """
                SELECT p.order_number, p.line, p.packs - p.planned_packs AS a FROM plan_order AS p
                WHERE {in force} AND p.planned_packs < p.packs AND p.reason = ''""");
    }

    private void plannedIsAllocated() {
        look(row -> line(row) + " is planned with " + row.number("a") + " packs and gets " + row.number("b"), """
                SELECT p.order_number, p.line, p.planned_packs AS a,
                       (SELECT coalesce(sum(x.packs), 0) FROM plan_allocation AS x
                        WHERE x.production_date = p.production_date AND x.revision = p.revision
                          AND x.order_number = p.order_number AND x.line = p.line) AS b
                FROM plan_order AS p WHERE {in force} AND a <> b""");
        look(
                row -> "lot " + row.text("lot") + " fills " + row.number("a") + " packs of \"" + row.text("product")
                        + "\" and " + row.number("b") + " are given away",
                """
                SELECT p.lot, p.product, p.packs AS a,
                       (SELECT coalesce(sum(x.packs), 0)
                        FROM plan_allocation AS x JOIN plan_in_force USING (production_date, revision)
                        WHERE x.lot = p.lot AND x.product = p.product) AS b
                FROM plan_pack AS p WHERE {in force} AND b > a""");
        look(
                row -> line(row) + " gets \"" + row.text("product") + "\" of lot " + row.text("lot")
                        + ", which the plan does not make",
                """
                SELECT p.order_number, p.line, p.product, p.lot FROM plan_allocation AS p
                WHERE {in force} AND p.from_stock = 0
                  AND NOT EXISTS (SELECT 1 FROM plan_pack AS x
                                  WHERE x.production_date = p.production_date AND x.revision = p.revision
                                    AND x.lot = p.lot AND x.product = p.product)""");
    }

    private void packsAreLabelled() {
        look(
                row -> "lot " + row.text("lot") + " has " + row.number("a") + " packs of \"" + row.text("product")
                        + "\" and labels for " + row.number("b"),
                """
                SELECT p.lot, p.product, p.packs AS a,
                       (SELECT coalesce(sum(l.packs), 0) FROM plan_label AS l
                        WHERE l.production_date = p.production_date AND l.revision = p.revision
                          AND l.lot = p.lot AND l.product = p.product) AS b
                FROM plan_pack AS p WHERE {in force} AND a <> b""");
        look(
                row -> "lot " + row.text("lot") + " has " + row.number("a") + " whole cases of \"" + row.text("product")
                        + "\" and labels for " + row.number("b"),
                """
                SELECT p.lot, p.product, p.cases AS a, l.cases AS b
                FROM plan_pack AS p JOIN plan_label AS l USING (production_date, revision, lot, product)
                WHERE {in force} AND a <> b""");
    }

    /** Labels that came out are the cases planned, once the run of labels is done, and never more than those. */
    private void labelsAreCases() {
        look(
                row -> "lot " + row.text("lot") + " needs " + row.number("a") + " labels of \"" + row.text("product")
                        + "\" and " + row.number("b") + " came out",
                """
                SELECT p.lot, p.product, p.cases + p.part_cases AS a,
                       (SELECT coalesce(sum(g.to_number - g.from_number + 1), 0) FROM label_group AS g
                        WHERE g.lot = p.lot AND g.product = p.product AND g.outcome = 'confirmed') AS b
                FROM plan_label AS p
                WHERE {in force}
                  AND (b > a OR b < a AND EXISTS (SELECT 1 FROM effect AS e
                                                  WHERE e.kind = 'label' AND e.state = 'done'
                                                    AND e.key = 'label/' || p.lot || '/' || p.product))""");
    }

    /** A lot that came from nowhere could not be traced. */
    private void labelledLotsHaveParents() {
        look(row -> "lot " + row.text("lot") + " is labelled and made of nothing", """
                SELECT DISTINCT p.lot FROM plan_label AS p
                WHERE {in force}
                  AND NOT EXISTS (SELECT 1 FROM plan_batch_tub AS t WHERE t.production_date = p.production_date
                                                                      AND t.revision = p.revision AND t.lot = p.lot)
                  AND NOT EXISTS (SELECT 1 FROM plan_feed AS f WHERE f.production_date = p.production_date
                                                                 AND f.revision = p.revision AND f.into_lot = p.lot)""");
    }

    private void beansInTubsAreBeansInBatches() {
        look(
                row -> "tub " + row.text("tub") + " holds " + row.mass("a") + " of beans for batches that take "
                        + row.mass("b"),
                """
                SELECT p.tub, sum(p.beans_mg - p.left_over_mg) AS a,
                       (SELECT coalesce(sum(x.beans_mg), 0) FROM plan_batch_tub AS x
                        WHERE x.production_date = p.production_date AND x.revision = p.revision AND x.tub = p.tub) AS b
                FROM plan_tub AS p WHERE {in force} GROUP BY p.tub HAVING a <> b""");
        look(
                row -> "lot " + row.text("lot") + " takes " + row.mass("a") + " of beans and its tubs give "
                        + row.mass("b"),
                """
                SELECT p.lot, p.beans_mg AS a,
                       (SELECT coalesce(sum(x.beans_mg), 0) FROM plan_batch_tub AS x
                        WHERE x.production_date = p.production_date AND x.revision = p.revision AND x.lot = p.lot) AS b
                FROM plan_batch AS p WHERE {in force} AND a <> b""");
    }

    private void stepsAreDoneOnce() {
        look(row -> "step " + row.text("step") + " was done " + row.number("a") + " times", """
                SELECT step, revision, count(*) AS a FROM step_event
                WHERE business_date = ?1 AND state = 'done' GROUP BY step, revision HAVING a > 1""");
        look(
                row -> "step " + row.text("step") + " stands as " + row.text("state") + " and its history as "
                        + row.text("last"),
                """
                SELECT s.step, s.state, (SELECT e.state FROM step_event AS e
                    WHERE e.step = s.step AND e.business_date = s.business_date AND e.revision = s.revision
                    ORDER BY seq DESC LIMIT 1) AS last
                FROM step AS s WHERE s.business_date = ?1 AND last IS NOT s.state""");
    }

    private void look(Row.Reader<String> sentence, String query) {
        broken.addAll(sql.list(sentence, query.replace("{in force}", IN_FORCE), day));
    }

    private static String line(Row row) throws SQLException {
        return "order " + row.text("order_number") + " line " + row.number("line");
    }
}
