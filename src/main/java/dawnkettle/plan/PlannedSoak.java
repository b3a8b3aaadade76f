package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * One tub of soaking beans.
 *
 * @param soakGroup what recipes may be ground from it
 * @param beanLots lots of beans in it, one or at most two
 * @param waterTemperature at filling
 * @param room temperature of the room that was counted with
 * @param source where the room's temperature came from, in words
 * @param fillAt when it is filled
 * @param readyAt when the soak has reached its target
 * @param latestGrindAt after which the beans are over-soaked
 * @param equivalentMinutes from filling to the first grind, as minutes at 20 °C
 * @param leftOver soaked beans that no batch takes: drained and chilled, or lost
 * @param batches ids of the batches ground from it, in the order of grinding
 * @param certainty how sure {@code readyAt} is; empty where nobody knows any more
 * @param lotBeans dry beans of each lot in it, in the order of the lots; empty of one lot, and where it is not known
 */
public record PlannedSoak(
        String tub,
        String soakGroup,
        Mass beans,
        List<String> beanLots,
        Mass water,
        Celsius waterTemperature,
        Celsius room,
        String source,
        Instant fillAt,
        Instant readyAt,
        Instant latestGrindAt,
        int equivalentMinutes,
        Mass leftOver,
        List<String> batches,
        Optional<Certainty> certainty,
        List<Mass> lotBeans) {
    public PlannedSoak {
        beanLots = List.copyOf(beanLots);
        lotBeans = List.copyOf(lotBeans);
        batches = List.copyOf(batches);
    }

    /** One of which it is not known how sure it is. */
    public PlannedSoak(
            String tub,
            String soakGroup,
            Mass beans,
            List<String> beanLots,
            Mass water,
            Celsius waterTemperature,
            Celsius room,
            String source,
            Instant fillAt,
            Instant readyAt,
            Instant latestGrindAt,
            int equivalentMinutes,
            Mass leftOver,
            List<String> batches) {
        this(
                tub,
                soakGroup,
                beans,
                beanLots,
                water,
                waterTemperature,
                room,
                source,
                fillAt,
                readyAt,
                latestGrindAt,
                equivalentMinutes,
                leftOver,
                batches,
                Optional.empty(),
                List.of());
    }

    /**
     * In four nights of five the beans are ready between these.
     *
     * @param observations how often somebody of this shop looked and wrote it down
     */
    public record Certainty(Instant soonest, Instant latest, int observations) {}
}
