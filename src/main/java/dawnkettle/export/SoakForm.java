package dawnkettle.export;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.PlannedSoak;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** One tub of soaking beans as a row of the open form. */
final class SoakForm {
    private SoakForm() {}

    static Row write(PlannedSoak soak, ZoneId zone) {
        Row row = new Row()
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
        soak.certainty()
                .ifPresent(sure -> row.instant("readySoonestAt", sure.soonest(), zone)
                        .instant("readyLatestAt", sure.latest(), zone)
                        .whole("soakObservations", sure.observations()));
        if (!soak.lotBeans().isEmpty())
            row.wholes(
                    "beanLotGrams",
                    soak.lotBeans().stream()
                            .map(mass -> Math.toIntExact(mass.inGrams()))
                            .toList());
        return row;
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
                fields.texts("batches"),
                certainty(fields),
                lotBeans(fields));
    }

    private static List<Mass> lotBeans(Fields fields) {
        if (fields.isNothing("beanLotGrams")) return List.of();
        return fields.wholes("beanLotGrams").stream().map(Mass::grams).toList();
    }

    private static Optional<PlannedSoak.Certainty> certainty(Fields fields) {
        if (fields.isNothing("readySoonestAt")) return Optional.empty();
        return Optional.of(new PlannedSoak.Certainty(
                fields.instant("readySoonestAt"), fields.instant("readyLatestAt"), fields.count("soakObservations")));
    }
}
