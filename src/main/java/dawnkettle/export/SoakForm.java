package dawnkettle.export;

import dawnkettle.measure.Celsius;
import dawnkettle.plan.PlannedSoak;
import java.time.ZoneId;

/** One tub of soaking beans as a row of the open form. */
final class SoakForm {
    private SoakForm() {}

    static Row write(PlannedSoak soak, ZoneId zone) {
        return new Row()
                .text("tub", soak.tub())
                .grams("beansGrams", soak.beans())
                .texts("beanLots", soak.beanLots())
                .grams("waterGrams", soak.water())
                .whole("waterTenthsCelsius", soak.waterTemperature().tenths())
                .whole("roomTenthsCelsius", soak.room().tenths())
                .text("source", soak.source())
                .instant("fillAt", soak.fillAt(), zone)
                .instant("readyAt", soak.readyAt(), zone)
                .instant("latestGrindAt", soak.latestGrindAt(), zone)
                .whole("equivalentMinutes", soak.equivalentMinutes())
                .texts("batches", soak.batches())
                .text("soakGroup", soak.soakGroup())
                .grams("leftOverGrams", soak.leftOver());
    }

    static PlannedSoak read(Fields fields) {
        return new PlannedSoak(
                fields.text("tub"),
                fields.text("soakGroup"),
                fields.grams("beansGrams"),
                fields.texts("beanLots"),
                fields.grams("waterGrams"),
                Celsius.tenths(fields.count("waterTenthsCelsius")),
                Celsius.tenths(fields.count("roomTenthsCelsius")),
                fields.text("source"),
                fields.instant("fillAt"),
                fields.instant("readyAt"),
                fields.instant("latestGrindAt"),
                fields.count("equivalentMinutes"),
                fields.grams("leftOverGrams"),
                fields.texts("batches"));
    }
}
