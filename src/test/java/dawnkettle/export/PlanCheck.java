package dawnkettle.export;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;

/**
 * Holds a day's plan against every rule it must keep, from its open form alone, minute by minute. It shares no code with what
 * computes plans, so that a mistake there is not repeated here.
 */
public final class PlanCheck {
    private PlanCheck() {}

    /** Rules that the plan breaks, as {@code rule-by-name: where and how}; empty for a sound plan. */
    public static List<String> broken(JsonNode plan) {
        Faults faults = new Faults();
        PlanFile file = new PlanFile(plan);
        new HeadingRules(file, faults).check();
        new BookRules(file, faults).check();
        new LotRules(file, faults).check();
        new LabelRules(file, faults).check();
        new MassRules(file, faults).check();
        new SoakRules(file, faults).check();
        new StepRules(file, faults).check();
        new RoomRules(file, faults).check();
        new VanRules(file, faults).check();
        return faults.found();
    }

    public static List<String> broken(String plan) {
        return broken(parsed(plan));
    }

    /** Facts that had happened before a revision and that it changed all the same. */
    public static List<String> revisionBroken(JsonNode before, JsonNode after) {
        Faults faults = new Faults();
        new RevisionRules(new PlanFile(before), new PlanFile(after), faults).check();
        return faults.found();
    }

    public static List<String> revisionBroken(String before, String after) {
        return revisionBroken(parsed(before), parsed(after));
    }

    private static JsonNode parsed(String plan) {
        try {
            return new ObjectMapper().readTree(plan);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("no JSON", e);
        }
    }
}
