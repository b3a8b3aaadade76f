package dawnkettle.sheet;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakLaw;
import dawnkettle.shop.Material;
import dawnkettle.shop.Tub;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;

/** What a soak sheet says besides its tubs: sacks, the room, what to do when it is warmer or colder, how to lift. */
final class SoakNotes {
    /** How far off the room may well be overnight, in degrees Celsius (common practice, no source). */
    private static final int DRIFT = 3;

    /** Energies between which published soak tables of the trade lie: Kubota 1979, and a trade table ({@code SoakLaw}). */
    private static final double FASTEST_JOULES = 29_000;

    private static final double SLOWEST_JOULES = 38_000;

    /** Less doubt than this, in minutes, is not worth a line. */
    private static final int LEAST_DOUBT = 10;

    /** Load constant of the NIOSH lifting equation, 23 kg or 51 lb (ccohs.ca). */
    private static final Mass LOAD_CONSTANT = Mass.kilograms(23);

    private final Desk desk;
    private final Map<Course, SoakLaw.Course> courses = new HashMap<>();
    private final List<String> remarks;

    SoakNotes(Desk desk, List<String> remarks) {
        this.desk = desk;
        this.remarks = PlanTalk.say(remarks, desk.words());
    }

    List<String> remarks() {
        return remarks;
    }

    /** Whole sacks and what is weighed on top, where the shop buys its beans in one size of sack. */
    String sacks(PlannedSoak tub) {
        Optional<Mass> sack = sack(tub);
        if (sack.isEmpty()) return "";
        long whole = tub.beans().dividedBy(sack.get());
        Mass rest = tub.beans().minus(sack.get().times(whole));
        if (whole == 0) return "";
        String sacks = whole == 1 ? desk.first(Word.SOAK_ONE_SACK) : desk.first(Word.SOAK_SACKS, whole);
        return rest.isZero()
                ? sacks
                : desk.first(Word.SOAK_SACKS_AND, sacks, desk.measures().mass(rest));
    }

    /** What stands below the tubs. */
    List<Block> below(List<PlannedSoak> tubs) {
        List<String> room = new ArrayList<>();
        room.add(desk.say(
                Word.SOAK_TOTAL,
                tubs.size(),
                desk.measures()
                        .mass(Mass.sum(tubs.stream().map(PlannedSoak::beans).toList()))));
        room.add(desk.say(
                Word.SOAK_ROOM,
                desk.measures().temperature(tubs.get(0).room()),
                tubs.get(0).source()));
        room.addAll(drift(tubs));
        room.addAll(sure(tubs));
        for (PlannedSoak tub : tubs)
            if (!tub.leftOver().isZero())
                room.add(desk.say(Word.SOAK_LEFT_OVER, desk.measures().mass(tub.leftOver()), tub.tub()));
        room.addAll(remarks);
        List<String> care = List.of(
                desk.say(Word.SOAK_CHECK), desk.say(Word.SOAK_SLIPS), desk.say(Word.SOAK_TOO_WARM), lifting(tubs));
        return List.of(
                new Block.Panel(desk.say(Word.SOAK_DRIFT_TITLE), room, false),
                new Block.Panel(desk.say(Word.CAUTION), care, true));
    }

    private List<String> drift(List<PlannedSoak> tubs) {
        int sooner = Math.max(
                most(tubs, -DRIFT, SoakLaw.Course::readyMinutes), most(tubs, -DRIFT, SoakLaw.Course::latestMinutes));
        int later = most(tubs, DRIFT, SoakLaw.Course::readyMinutes);
        if (sooner == 0 && later == 0) return List.of();
        return List.of(desk.say(Word.SOAK_WARMER, hours(sooner)), desk.say(Word.SOAK_COLDER, hours(later)));
    }

    /** How far published figures disagree over these tubs; nothing where that is too little to be said. */
    private List<String> sure(List<PlannedSoak> tubs) {
        int most = 0;
        for (PlannedSoak soak : tubs) {
            Optional<Tub> tub = tub(soak.tub());
            if (tub.isEmpty()) continue;
            int slow = with(SLOWEST_JOULES)
                    .course(soak.waterTemperature(), soak.room(), tub.get())
                    .readyMinutes();
            int fast = with(FASTEST_JOULES)
                    .course(soak.waterTemperature(), soak.room(), tub.get())
                    .readyMinutes();
            most = Math.max(most, Math.abs(slow - fast));
        }
        return most < LEAST_DOUBT ? List.of() : List.of(desk.say(Word.SOAK_SURE, hours(most)));
    }

    private static SoakLaw with(double joules) {
        SoakLaw law = SoakLaw.DEFAULT;
        return new SoakLaw(law.equilibrium(), law.rateHours(), joules, law.target());
    }

    /** The most by which {@code minutes} moves over the tubs when the room is colder (or, below 0, warmer). */
    private int most(List<PlannedSoak> tubs, int colderBy, ToIntFunction<SoakLaw.Course> minutes) {
        int most = 0;
        for (PlannedSoak soak : tubs) {
            Optional<Tub> tub = tub(soak.tub());
            if (tub.isEmpty()) continue;
            int planned = minutes.applyAsInt(course(soak, tub.get(), 0));
            int moved = minutes.applyAsInt(course(soak, tub.get(), colderBy));
            most = Math.max(most, Math.abs(moved - planned));
        }
        return most;
    }

    /** Minute by minute over a night, so that each is followed once only. */
    private SoakLaw.Course course(PlannedSoak soak, Tub tub, int colderBy) {
        Celsius room = Celsius.tenths(soak.room().tenths() - 10 * colderBy);
        return courses.computeIfAbsent(
                new Course(soak.waterTemperature(), room, tub),
                asked -> SoakLaw.DEFAULT.course(soak.waterTemperature(), room, tub));
    }

    private record Course(Celsius water, Celsius room, Tub tub) {}

    private Optional<Tub> tub(String code) {
        return desk.shop().floor().tubs().stream()
                .filter(tub -> tub.code().equals(code))
                .findFirst();
    }

    /** To the next ten minutes: the law is not better than that. */
    private String hours(int minutes) {
        int rounded = (minutes + 5) / 10 * 10;
        if (rounded < 60) return desk.say(Word.MINUTES, rounded);
        return rounded % 60 == 0
                ? desk.say(Word.HOURS, rounded / 60)
                : desk.say(Word.HOURS_MINUTES, rounded / 60, rounded % 60);
    }

    /** Names the heaviest sack that is too heavy for one. */
    private String lifting(List<PlannedSoak> tubs) {
        return tubs.stream()
                .flatMap(tub -> sack(tub).stream())
                .max(Mass::compareTo)
                .filter(sack -> sack.compareTo(LOAD_CONSTANT) > 0)
                .map(sack -> desk.say(Word.SOAK_LIFT, desk.measures().mass(sack)))
                .orElse(desk.say(Word.SOAK_LIFT_PLAIN));
    }

    /** The sack in which the tub's beans are bought; empty where there are several sizes. */
    private Optional<Mass> sack(PlannedSoak tub) {
        List<Integer> sizes = desk.shop().materials().stream()
                .filter(material -> material.kind() == Material.Kind.BEANS)
                .filter(material -> material.soakGroup().equals(tub.soakGroup()))
                .map(Material::packSize)
                .distinct()
                .toList();
        return sizes.size() == 1 ? Optional.of(Mass.kilograms(sizes.get(0))) : Optional.empty();
    }
}
