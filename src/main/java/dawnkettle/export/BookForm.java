package dawnkettle.export;

import dawnkettle.book.BookLine;
import dawnkettle.book.OrderLine.Source;
import dawnkettle.book.OrderNumber;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DemandLine;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.Shortage;
import dawnkettle.shop.Shop;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.util.Locale;

/** What was ordered, what was needed for it, and which lot goes to whom, as rows of the open form. */
final class BookForm {
    private static final String FROM_BATCH = "batch";
    private static final String FROM_STOCK = "stock";

    private BookForm() {}

    static Row write(PlannedOrder order) {
        BookLine line = order.line();
        return new Row()
                .text("order", line.order().text())
                .whole("line", line.line())
                .text("customer", line.customer())
                .text("product", line.product())
                .whole("packs", line.packs())
                .date("deliveryDate", line.deliveryDate())
                .text("state", order.state())
                .whole("plannedPacks", order.plannedPacks())
                .text("reason", order.reason())
                .text("route", line.route())
                .date("makingDate", line.makingDate())
                .text("source", line.source().name().toLowerCase(Locale.ROOT))
                .flag("late", line.late());
    }

    static PlannedOrder readOrder(Fields fields) {
        BookLine line = new BookLine(
                fields.word("order", OrderNumber::new),
                fields.count("line"),
                fields.text("customer"),
                fields.text("route"),
                fields.text("product"),
                fields.count("packs"),
                fields.date("deliveryDate"),
                fields.date("makingDate"),
                fields.word("source", word -> Source.valueOf(word.toUpperCase(Locale.ROOT))),
                fields.flag("late"));
        return new PlannedOrder(line, fields.count("plannedPacks"), fields.text("reason"));
    }

    static Row write(DemandLine line) {
        return new Row()
                .text("product", line.product())
                .date("deliveryDate", line.deliveryDate())
                .whole("firmPacks", line.firmPacks())
                .whole("standingPacks", line.standingPacks())
                .whole("allowancePacks", line.allowancePacks())
                .whole("fromStockPacks", line.fromStockPacks())
                .whole("declinedPacks", line.declinedPacks())
                .whole("toMakePacks", line.toMakePacks())
                .grams("massGrams", line.mass());
    }

    static DemandLine readDemand(Fields fields) {
        return new DemandLine(
                fields.text("product"),
                fields.date("deliveryDate"),
                fields.count("firmPacks"),
                fields.count("standingPacks"),
                fields.count("allowancePacks"),
                fields.count("fromStockPacks"),
                fields.count("declinedPacks"),
                fields.count("toMakePacks"),
                fields.grams("massGrams"));
    }

    static Row write(StockLot lot) {
        return new Row()
                .text("lot", lot.lot().text())
                .text("product", lot.product())
                .whole("packs", lot.packs())
                .date("bestBefore", lot.bestBefore())
                .date("packDate", lot.packDate())
                .flag("expected", lot.expected());
    }

    static StockLot readStock(Fields fields) {
        return new StockLot(
                fields.word("lot", LotCode::new),
                fields.text("product"),
                fields.count("packs"),
                fields.date("packDate"),
                fields.date("bestBefore"),
                fields.flag("expected"));
    }

    static Row write(Allocation one, Shop shop) {
        return new Row()
                .text("order", one.order().text())
                .whole("line", one.line())
                .text("route", one.route())
                .text("customer", one.customer())
                .text("product", one.product())
                .whole("packs", one.packs())
                .text("lot", one.lot().text())
                .text("source", one.fromStock() ? FROM_STOCK : FROM_BATCH)
                .date("deliveryDate", one.deliveryDate())
                .whole("leastDaysLeft", shop.product(one.product()).keeping().leastDaysLeft())
                .whole("daysLeft", one.daysLeft());
    }

    static Allocation readAllocation(Fields fields) {
        return new Allocation(
                fields.word("order", OrderNumber::new),
                fields.count("line"),
                fields.text("route"),
                fields.text("customer"),
                fields.text("product"),
                fields.count("packs"),
                fields.word("lot", LotCode::new),
                fields.word("source", BookForm::isStock),
                fields.date("deliveryDate"),
                fields.count("daysLeft"));
    }

    private static boolean isStock(String word) {
        if (!word.equals(FROM_STOCK) && !word.equals(FROM_BATCH)) throw new IllegalArgumentException(word);
        return word.equals(FROM_STOCK);
    }

    static Row write(Shortage shortage) {
        return new Row()
                .text("product", shortage.product())
                .whole("packs", shortage.packs())
                .text("reason", shortage.reason());
    }

    static Shortage readShortage(Fields fields) {
        return new Shortage(fields.text("product"), fields.count("packs"), fields.text("reason"));
    }
}
