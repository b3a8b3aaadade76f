package dawnkettle.conf;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Volume;
import dawnkettle.shop.ChangeoverRule;
import dawnkettle.shop.Crew;
import dawnkettle.shop.Floor;
import dawnkettle.shop.Opening;
import dawnkettle.shop.Presence;
import dawnkettle.shop.Tub;
import dawnkettle.shop.WorkStation;
import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Reads {@code stations.toml}: the workroom, its people and its tubs. */
final class ReadStations {
    static final String FILE = "stations.toml";

    /**
     * Soaked beans need 3.0 to 3.6 L for each dry kilogram: engineering figure from soaked density 1,090 kg/m³ and 40 %
     * of voids.
     */
    private static final int LITRES_A_KILOGRAM = 3;

    private final Known known;
    private final Names stations = new Names("station", FILE);
    private final Names tubs = new Names("tub", FILE);

    ReadStations(Known known) {
        this.known = known;
    }

    Floor read(Section file) {
        List<WorkStation> works = each(file.sections("station"), this::station);
        List<Tub> all = each(file.sections("tub"), this::tub);
        List<Crew> crews = crews(file.sections("crew"));
        List<Presence> presence = each(file.sections("presence"), this::presence);
        List<ChangeoverRule> changeovers = each(file.sections("changeover"), this::changeover);
        file.noMore();
        return new Floor(works, all, crews, presence, changeovers);
    }

    /** Reads every section; one with a problem gives nothing. */
    static <T> List<T> each(List<Section> sections, Function<Section, T> reader) {
        List<T> read = new ArrayList<>();
        for (Section section : sections) {
            int before = section.problems().count();
            T value = reader.apply(section);
            section.noMore();
            if (section.problems().count() == before) read.add(value);
        }
        return read;
    }

    private WorkStation station(Section from) {
        String code = stations.declare(from.need("code", "\"VAT-1\""));
        String name = from.need("name", "\"vat 1\"").words();
        String stage = known.stages.admit(from.need("stage", "\"coagulate\""));
        String group = from.need("group", "\"vats\"").words();
        Optional<Written> places = from.find("places");
        Optional<Written> capacity = from.find("capacity_kg");
        if (places.isPresent() == capacity.isPresent())
            from.problems()
                    .add(
                            from.place(),
                            "station \"" + code + "\" says "
                                    + (places.isPresent()
                                            ? "both places and capacity_kg"
                                            : "neither places nor capacity_kg"),
                            "write how many batches it holds as places, or how much product as capacity_kg");
        return new WorkStation(
                code,
                name,
                stage,
                group,
                places.map(p -> p.whole(1, 100)).orElse(0),
                capacity.map(Written::kilograms).orElse(Mass.ZERO),
                openings(from.needList("open", "[\"02:30-15:00\"]")));
    }

    private static List<Opening> openings(List<Written> written) {
        List<Opening> openings = new ArrayList<>();
        for (Written one : written) openings.add(apart(one, one.opening(), openings));
        return openings;
    }

    private static Opening apart(Written one, Opening opening, List<Opening> before) {
        for (Opening other : before)
            if (opening.from().isBefore(other.until()) && other.from().isBefore(opening.until()))
                one.bad(opening, "overlaps another", "join the two or move one");
        return opening;
    }

    private Tub tub(Section from) {
        String code = tubs.declare(from.need("code", "\"T01\""));
        int litres = from.need("litres", "290").whole(1, 100_000);
        Written written = from.need("most_beans_kg", "90");
        Mass beans = written.kilograms();
        if (beans.times(LITRES_A_KILOGRAM).compareTo(Mass.kilograms(litres)) > 0)
            written.bad(
                    beans,
                    "is too much for " + litres + " L",
                    "allow " + LITRES_A_KILOGRAM + " L and more for each kg");
        return new Tub(
                code,
                Volume.litres(litres),
                beans,
                from.need("hours_to_room", "3.5")
                        .number(1, new BigDecimal("0.1"), BigDecimal.valueOf(100))
                        .movePointRight(1)
                        .intValueExact());
    }

    private static List<Crew> crews(List<Section> sections) {
        List<Opening> openings = new ArrayList<>();
        return each(sections, from -> {
            Written open = from.need("open", "\"02:30-06:30\"");
            Opening opening = apart(open, open.opening(), openings);
            openings.add(opening);
            return new Crew(opening, from.need("people", "6").halfHands(100));
        });
    }

    private Presence presence(Section from) {
        return new Presence(
                weekdays(from.needList("days", "[\"mon\", \"tue\"]")),
                from.need("open", "\"14:45-20:45\"").opening(),
                from.find("on_closed_days").map(Written::truth).orElse(false));
    }

    static Set<DayOfWeek> weekdays(List<Written> words) {
        Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
        for (Written word : words) days.add(word.weekday());
        return days;
    }

    private ChangeoverRule changeover(Section from) {
        String stage = known.stages.refer(from.need("stage", "\"filter\""));
        int minutes = from.need("minutes", "5").whole(0, 600);
        return new ChangeoverRule(
                stage,
                minutes,
                from.find("after_flavoured").map(m -> m.whole(0, 600)).orElse(minutes),
                from.find("after_allergen").map(m -> m.whole(0, 600)).orElse(minutes));
    }
}
