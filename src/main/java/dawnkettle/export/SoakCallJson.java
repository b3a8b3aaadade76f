package dawnkettle.export;

import dawnkettle.plan.SoakCall;
import dawnkettle.plan.SoakCall.GroupMass;
import java.time.ZoneId;

/** The open form of a soak call: its tubs are rows like those of {@code soak[]} in a plan. */
public final class SoakCallJson {
    public static final String SCHEMA = "dawnkettle-soak-call/1";

    private static final String FILE = "soak-call.json";

    private SoakCallJson() {}

    public static String write(SoakCall call, ZoneId zone) {
        return PrettyJson.of(new Row()
                .text("schema", SCHEMA)
                .date("productionDate", call.productionDate())
                .instant("decidedAt", call.decidedAt(), zone)
                .text("zone", zone.getId())
                .list("tubs", call.tubs(), soak -> SoakForm.write(soak, zone))
                .list(
                        "groups",
                        call.groups(),
                        group -> new Row().text("soakGroup", group.soakGroup()).grams("beansGrams", group.beans()))
                .texts("notes", call.notes())
                .node());
    }

    /** @throws dawnkettle.trouble.BadFile where the text is no soak call */
    public static SoakCall read(String text) {
        Fields call = Fields.of(FILE, text);
        if (!call.text("schema").equals(SCHEMA))
            throw call.bad("schema", "\"" + call.text("schema") + "\" is not read here", "write \"" + SCHEMA + "\"");
        return new SoakCall(
                call.date("productionDate"),
                call.instant("decidedAt"),
                call.list("tubs", SoakForm::read),
                call.list("groups", group -> new GroupMass(group.text("soakGroup"), group.grams("beansGrams"))),
                call.texts("notes"));
    }
}
