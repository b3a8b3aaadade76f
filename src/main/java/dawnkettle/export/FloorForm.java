package dawnkettle.export;

import dawnkettle.measure.Volume;
import dawnkettle.plan.DayFloor;
import dawnkettle.plan.DayFloor.DayChangeover;
import dawnkettle.plan.DayFloor.DayHands;
import dawnkettle.plan.DayFloor.DayStation;
import dawnkettle.plan.DayFloor.Span;
import dawnkettle.plan.Disruption;
import dawnkettle.plan.Disruption.FewerHands;
import dawnkettle.plan.Disruption.StationDown;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Tub;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.ZoneId;
import java.util.List;

/** The workroom of the day and what happens in it, as rows of the open form. */
final class FloorForm {
    private final ZoneId zone;

    FloorForm(ZoneId zone) {
        this.zone = zone;
    }

    static Row write(Tub tub) {
        Row row = new Row().text("tub", tub.code());
        BigDecimal litres = tub.volume().inLitres(3, RoundingMode.UNNECESSARY).stripTrailingZeros();
        if (litres.scale() > 0) row.decimal("litres", litres);
        else row.whole("litres", litres.longValueExact());
        return row.grams("mostBeansGrams", tub.mostBeans()).whole("hoursToRoomTenths", tub.hoursToRoomTenths());
    }

    Row write(Span span) {
        return new Row().instant("from", span.from(), zone).instant("until", span.until(), zone);
    }

    Row write(DayStation station) {
        Row row = new Row().text("station", station.station()).text("stage", station.stage());
        if (station.places() > 0) row.whole("places", station.places());
        else row.whole("capacityGrams", station.capacityGrams());
        return row.list("windows", station.windows(), this::write);
    }

    Row write(DayHands hands) {
        return write(hands.span()).people("people", hands.halfHands());
    }

    static Row write(DayChangeover changeover) {
        return new Row()
                .text("station", changeover.station())
                .text("fromRecipe", changeover.fromRecipe())
                .text("toRecipe", changeover.toRecipe())
                .whole("minutes", changeover.minutes());
    }

    Row write(PlannedOperation operation) {
        return new Row()
                .text("batch", operation.batch())
                .whole("seq", operation.seq())
                .text("stage", operation.stage())
                .text("station", operation.station())
                .whole("place", operation.place())
                .instant("start", operation.start(), zone)
                .instant("end", operation.end(), zone)
                .people("hands", operation.halfHands())
                .grams("occupiesGrams", operation.occupies());
    }

    /** Written only where somebody is away or something is down. */
    void missing(Row row, Disruption missing) {
        if (!missing.hands().isEmpty()) row.list("away", missing.hands(), this::write);
        if (!missing.stations().isEmpty()) row.list("down", missing.stations(), this::write);
    }

    private Row write(FewerHands fewer) {
        return write(fewer.span()).people("people", fewer.halfHands());
    }

    private Row write(StationDown down) {
        return new Row()
                .text("station", down.station())
                .instant("from", down.span().from(), zone)
                .instant("until", down.span().until(), zone);
    }

    private static Disruption readMissing(Fields plan) {
        return new Disruption(
                List.of(),
                plan.isNothing("away")
                        ? List.of()
                        : plan.list("away", one -> new FewerHands(readSpan(one), one.halves("people"))),
                plan.isNothing("down")
                        ? List.of()
                        : plan.list("down", one -> new StationDown(one.text("station"), readSpan(one))));
    }

    static DayFloor read(Fields plan, Shop shop) {
        return new DayFloor(
                plan.list("recipes", recipe -> RecipeForm.read(recipe, shop)),
                plan.list("tubs", FloorForm::readTub),
                plan.list("presence", FloorForm::readSpan),
                plan.list("stations", FloorForm::readStation),
                plan.list("hands", hands -> new DayHands(readSpan(hands), hands.halves("people"))),
                plan.list("changeovers", FloorForm::readChangeover),
                readMissing(plan));
    }

    private static Tub readTub(Fields fields) {
        return new Tub(
                fields.text("tub"),
                Volume.millilitres(fields.decimal("litres")
                        .movePointRight(3)
                        .setScale(0, RoundingMode.HALF_UP)
                        .longValue()),
                fields.grams("mostBeansGrams"),
                fields.count("hoursToRoomTenths"));
    }

    private static Span readSpan(Fields fields) {
        return new Span(fields.instant("from"), fields.instant("until"));
    }

    private static DayStation readStation(Fields fields) {
        return new DayStation(
                fields.text("station"),
                fields.text("stage"),
                fields.isNothing("places") ? 0 : fields.count("places"),
                fields.isNothing("capacityGrams") ? 0 : fields.whole("capacityGrams"),
                fields.list("windows", FloorForm::readSpan));
    }

    private static DayChangeover readChangeover(Fields fields) {
        return new DayChangeover(
                fields.text("station"), fields.text("fromRecipe"), fields.text("toRecipe"), fields.count("minutes"));
    }

    static PlannedOperation readOperation(Fields fields) {
        return new PlannedOperation(
                fields.text("batch"),
                fields.count("seq"),
                fields.text("stage"),
                fields.text("station"),
                fields.count("place"),
                fields.instant("start"),
                fields.instant("end"),
                fields.halves("hands"),
                fields.grams("occupiesGrams"));
    }
}
