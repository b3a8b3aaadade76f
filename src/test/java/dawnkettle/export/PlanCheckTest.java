package dawnkettle.export;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.plan.AnyEvening;
import dawnkettle.plan.AnyShop;
import dawnkettle.plan.PlanDay;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The checker finds nothing in sound plans, and each planted fault by the name of the rule it breaks. */
class PlanCheckTest {
    private static final Set<String> SOUND = Set.copyOf(PlanCheck.broken(MillraceDay.TEXT));

    @Test
    void the_plan_of_the_demonstration_shop_breaks_no_rule() {
        assertThat(PlanCheck.broken(MillraceDay.TEXT)).isEmpty();
    }

    @Test
    void the_plan_of_a_cold_day_with_a_soak_call_breaks_no_rule() {
        assertThat(PlanCheck.broken(PlanJson.write(MillraceDay.coldPlan(), MillraceDay.SHOP)))
                .isEmpty();
    }

    @Test
    void plans_of_shops_that_never_were_break_no_rule() {
        for (long seed = 1; seed <= 40; seed++) {
            Shop shop = AnyShop.of(seed);
            String text = PlanJson.write(PlanDay.of(shop, AnyEvening.of(shop, seed, seed % 8 == 0 ? 20 : 0)), shop);
            assertThat(PlanCheck.broken(text)).as("shop %d", seed).isEmpty();
        }
    }

    @TestFactory
    Stream<DynamicTest> a_planted_fault_is_found_by_the_name_of_its_rule() {
        return PlantedFaults.all().entrySet().stream()
                .map(fault -> DynamicTest.dynamicTest(fault.getKey(), () -> {
                    Planted plan = new Planted(MillraceDay.TEXT);
                    fault.getValue().accept(plan);
                    List<String> found = plan.broken().stream()
                            .filter(broken -> !SOUND.contains(broken))
                            .toList();
                    assertThat(found).anyMatch(broken -> broken.startsWith(fault.getKey() + ": "));
                }));
    }

    @Test
    void no_rule_goes_without_a_planted_fault() throws IOException {
        Set<String> words = Set.of("no-search", "orders-only", "tub-filled", "batch-started", "lot-labelled");
        assertThat(rules(file -> !file.endsWith("RevisionRules.java")).stream()
                        .filter(name -> !words.contains(name))
                        .collect(Collectors.toSet()))
                .isEqualTo(PlantedFaults.all().keySet());
        Set<String> changes = new TreeSet<>(RevisionCheckTest.changes().keySet());
        changes.addAll(LostBatchCheckTest.faultsOfRevisions());
        assertThat(rules(file -> file.endsWith("RevisionRules.java")))
                .as(
                        "%d rules of a plan and these of a revision",
                        PlantedFaults.all().size())
                .filteredOn(name ->
                        !Set.of("batch-started", "batch-lost", "route-gone").contains(name))
                .containsExactlyInAnyOrderElementsOf(changes);
    }

    private static Set<String> rules(java.util.function.Predicate<Path> of) throws IOException {
        Set<String> rules = new TreeSet<>();
        Pattern rule = Pattern.compile("\"([a-z]+(?:-[a-z]+)+)\",");
        try (Stream<Path> sources = Files.list(Path.of("src/test/java/dawnkettle/export"))) {
            for (Path source : sources.filter(file -> file.toString().endsWith("Rules.java"))
                    .filter(of)
                    .toList())
                rule.matcher(Files.readString(source)).results().forEach(found -> rules.add(found.group(1)));
        }
        return rules;
    }

    @Test
    void the_checker_shares_no_code_with_what_it_checks() throws IOException {
        Pattern ours = Pattern.compile(
                "import (static )?dawnkettle\\.(?!export\\.PlanFile)|\\b(PlanJson|PrettyJson|Row|Fields|[A-Z][a-z]+Form)\\b");
        try (Stream<Path> sources = Files.list(Path.of("src/test/java/dawnkettle/export"))) {
            for (Path source : sources.filter(
                            file -> file.toString().matches(".*(Rules|PlanFile|Faults|PlanCheck)\\.java"))
                    .filter(file -> !file.endsWith("PlantedFaults.java"))
                    .toList())
                assertThat(ours.matcher(Files.readString(source)).results().map(MatchResult::group))
                        .as("%s", source)
                        .isEmpty();
        }
    }
}
