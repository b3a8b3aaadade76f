package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.export.MillraceDay;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.Shortage;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PlanTalkTest {
    private static final Words SPANISH = Words.of(List.of("es"));

    @Test
    void a_reason_is_said_in_the_language_of_the_sheet() {
        assertThat(PlanTalk.say("the day has room for 3 batches of Firm tofu, not for more", SPANISH))
                .isEqualTo("el día tiene lugar para 3 cocciones de Firm tofu, no más");
        assertThat(PlanTalk.say("the day has room for 3 batches of Firm tofu, not for more", Words.of(List.of("ja"))))
                .isEqualTo("この日に入る Firm tofu は 3 バッチまで");
    }

    @Test
    void in_two_languages_both_say_it() {
        assertThat(PlanTalk.say("van HILL has gone", Words.of(List.of("en", "es"))))
                .isEqualTo("van HILL has gone" + Words.SECOND + "la furgoneta HILL ya salió");
    }

    @Test
    void what_has_no_words_in_other_languages_stays_as_it_is() {
        assertThat(PlanTalk.say("Way out, a later first grind: at 05:00, no van late.", SPANISH))
                .isEqualTo("Way out, a later first grind: at 05:00, no van late.");
    }

    @Test
    void english_says_what_the_plan_says() {
        String sentence =
                "Tub T01: 4.5 kg of soaked beans are left over. Drain, chill to 5 °C or below and use within the"
                        + " day, or throw away.";
        assertThat(PlanTalk.say(sentence, Words.of(List.of("en")))).isEqualTo(sentence);
    }

    /** A warning or a reason that the planner words anew must be worded anew in the files as well. */
    @Test
    void every_warning_and_every_reason_of_the_demonstration_day_has_its_words() {
        for (int room : List.of(3, 12, 25)) {
            DayPlan plan = PlanDay.of(MillraceDay.SHOP, MillraceDay.evening(room));
            Stream<String> reasons = Stream.concat(
                    plan.shortages().stream().map(Shortage::reason),
                    plan.orders().stream().map(PlannedOrder::reason).filter(reason -> !reason.isEmpty()));
            assertThat(Stream.concat(plan.warnings().stream(), reasons).distinct())
                    .as("at " + room + " °C")
                    .allMatch(PlanTalk::knows);
        }
    }
}
