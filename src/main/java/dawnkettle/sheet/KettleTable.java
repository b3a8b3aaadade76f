package dawnkettle.sheet;

import dawnkettle.shop.Recipe;
import java.util.List;

/** About how much goes in and how many kettles that is, a row a recipe. */
final class KettleTable {
    private final Desk desk;
    private final Word count;

    /** @param count how kettles are said: their number and what each takes at most */
    KettleTable(Desk desk, Word count) {
        this.desk = desk;
        this.count = count;
    }

    Table of(List<Given> given) {
        List<Row> rows = new FallbackKettles(given, desk.shop())
                .needs().stream().map(this::kettle).toList();
        return new Table(
                        List.of(
                                new Table.Column(desk.say(Word.RUN_RECIPE), 70),
                                new Table.Column(desk.say(Word.FALLBACK_BEANS), 60),
                                new Table.Column(desk.say(Word.FALLBACK_KETTLES), 60)),
                        5.6,
                        rows.isEmpty() ? List.of() : List.of(Table.Section.plain(rows)))
                .dense();
    }

    private Row kettle(FallbackKettles.Need need) {
        Recipe recipe = desk.shop().recipe(need.recipe());
        Measures measures = desk.measures();
        return Row.of(
                Cell.text(recipe.name(), Lettering.bold(10.5)),
                Cell.text(measures.mass(need.input()), Lettering.bold(12)),
                Cell.text(
                        desk.say(
                                count,
                                need.kettles(),
                                measures.mass(recipe.kettle().most())),
                        Lettering.plain(10.5)));
    }
}
