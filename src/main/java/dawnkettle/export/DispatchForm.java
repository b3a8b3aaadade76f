package dawnkettle.export;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.plan.Quality;
import dawnkettle.stock.LotCode;
import java.time.ZoneId;

/** Vans, case labels and how good the run is, as rows of the open form. */
final class DispatchForm {
    private DispatchForm() {}

    static Row write(PlannedRoute route, ZoneId zone) {
        return new Row()
                .text("route", route.route())
                .instant("departs", route.departs(), zone)
                .whole("loadMinutes", route.loadMinutes())
                .whole("weight", route.weight())
                .instant("packedBy", route.packedBy(), zone)
                .whole("lateMinutes", route.lateMinutes());
    }

    static PlannedRoute readRoute(Fields fields) {
        return new PlannedRoute(
                fields.text("route"),
                fields.instant("departs"),
                fields.count("loadMinutes"),
                fields.count("weight"),
                fields.instant("packedBy"),
                fields.count("lateMinutes"));
    }

    static Row write(PlannedLabel label) {
        return new Row()
                .text("lot", label.lot().text())
                .text("product", label.product())
                .whole("cases", label.cases())
                .wholes("partCases", label.partCases())
                .whole("packsInCase", label.packsInCase())
                .date("packDate", label.packDate())
                .date("bestBefore", label.bestBefore())
                .text("gtin", label.gtin())
                .text("elementString", label.elementString());
    }

    static PlannedLabel readLabel(Fields fields) {
        return new PlannedLabel(
                fields.word("lot", LotCode::new),
                fields.text("product"),
                fields.count("cases"),
                fields.wholes("partCases"),
                fields.count("packsInCase"),
                fields.date("packDate"),
                fields.date("bestBefore"),
                fields.findText("gtin"),
                fields.text("elementString"));
    }

    static Row write(Quality quality, ZoneId zone) {
        return new Row()
                .whole("lateMinutes", quality.lateMinutes())
                .instant("finish", quality.finish(), zone)
                .instant("lowerBoundFinish", quality.lowerBoundFinish(), zone)
                .decimal("gapPercent", quality.gapPercent())
                .whole("decodes", quality.decodes())
                .whole("decodeBudget", quality.decodeBudget())
                .flag("stoppedEarly", quality.stoppedEarly());
    }

    static Quality readQuality(Fields fields) {
        return new Quality(
                fields.count("lateMinutes"),
                fields.instant("finish"),
                fields.instant("lowerBoundFinish"),
                fields.decimal("gapPercent"),
                fields.whole("decodes"),
                fields.whole("decodeBudget"),
                fields.flag("stoppedEarly"));
    }
}
