package dawnkettle.export;

import dawnkettle.plan.Heading;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.plan.Heading.Mode;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Which plan it is, as the first keys of the open form. */
final class HeadingForm {
    private HeadingForm() {}

    static Row write(Row row, Heading heading) {
        ZoneId zone = heading.zone();
        row.date("productionDate", heading.productionDate()).whole("revision", heading.revision());
        heading.revisionOf().ifPresentOrElse(of -> row.whole("revisionOf", of), () -> row.nothing("revisionOf"));
        return row.instant("computedAt", heading.computedAt(), zone)
                .text("zone", zone.getId())
                .whole("seed", heading.seed())
                .text("mode", heading.mode().word())
                .list(
                        "frozen",
                        heading.frozen(),
                        one -> new Row()
                                .text("kind", one.kind().word())
                                .text("id", one.id())
                                .instant("at", one.at(), zone));
    }

    static Heading read(Fields fields) {
        OptionalInt of =
                fields.isNothing("revisionOf") ? OptionalInt.empty() : OptionalInt.of(fields.count("revisionOf"));
        return new Heading(
                fields.date("productionDate"),
                fields.count("revision"),
                of,
                fields.instant("computedAt"),
                fields.word("zone", ZoneId::of),
                fields.whole("seed"),
                fields.word("mode", HeadingForm::mode),
                fields.list("frozen", HeadingForm::frozen));
    }

    private static Frozen frozen(Fields fields) {
        return new Frozen(fields.word("kind", HeadingForm::kind), fields.text("id"), fields.instant("at"));
    }

    private static Mode mode(String word) {
        return only(Stream.of(Mode.values())
                .filter(mode -> mode.word().equals(word))
                .findFirst());
    }

    private static Frozen.Kind kind(String word) {
        return only(Stream.of(Frozen.Kind.values())
                .filter(kind -> kind.word().equals(word))
                .findFirst());
    }

    private static <T> T only(Optional<T> found) {
        return found.orElseThrow(IllegalArgumentException::new);
    }
}
