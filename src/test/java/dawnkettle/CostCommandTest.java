package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the cost commands answer; the invented half year is in the ledger. */
class CostCommandTest {
    @TempDir
    Path folder;

    private CopiedShop shop;
    private Path ledger;

    @BeforeEach
    void copy() throws IOException {
        shop = CopiedShop.quick(folder);
        ledger = folder.resolve("ledger.db");
    }

    private Terminal.Told run(String... words) {
        Object[] all = new Object[words.length + 5];
        all[0] = "cost";
        System.arraycopy(words, 0, all, 1, words.length);
        all[words.length + 1] = "--conf";
        all[words.length + 2] = shop.conf();
        all[words.length + 3] = "--ledger";
        all[words.length + 4] = ledger;
        return Terminal.run(all);
    }

    private void remember() {
        Main main = new Main();
        try (var open = dawnkettle.store.Ledger.open(ledger)) {
            main.loadHistory(main.configuration(shop.conf()), shop.conf(), open);
        }
    }

    @Test
    void without_a_week_there_is_nothing_to_say() {
        Terminal.Told told = run("week", "--day", "2026-12-07");
        assertThat(told.err())
                .isEqualTo("no week before 2026-12-07 has anything made in it; name a later day with --day, or record"
                        + " what was made\n");
        assertThat(told.status()).isEqualTo(2);
    }

    @Test
    void a_week_is_told_and_its_page_and_tables_are_written() throws IOException {
        remember();
        Path out = folder.resolve("week");
        Terminal.Told told = run("week", "--day", "2026-11-30", "--out", out.toString());
        assertThat(told.err()).isEmpty();
        assertThat(told.out())
                .startsWith("A kilogram cost ")
                .contains("Beans cost 17.", "Firm tofu yields ", "The customers that left most");
        assertThat(out)
                .isDirectoryContaining("glob:**/costs-2026-W48.pdf")
                .isDirectoryContaining("glob:**/costs-2026-W48.csv")
                .isDirectoryContaining("glob:**/deliveries-2026-W48.csv")
                .isDirectoryContaining("glob:**/containers-2026-W48.csv");
    }

    @Test
    void prices_are_proposed_list_by_list_with_letters_and_nothing_is_changed() throws IOException {
        remember();
        String before = Files.readString(shop.conf().resolve("prices.csv"));
        Path out = folder.resolve("letters");
        Terminal.Told told = run(
                "prices", "--day", "2026-11-30", "--beans", "+40%", "--from", "2027-01-04", "--out", out.toString());
        assertThat(told.err()).isEmpty();
        assertThat(told.out())
                .contains("Nothing is changed by this.", "Price list everyday", "Price list kitchen", "C002");
        assertThat(Files.readString(out.resolve("letter-C002.txt")))
                .contains("To Ambercote Grocery", "From Mon 4 Jan 2027", "Firm tofu 400 g: ");
        assertThat(Files.readString(out.resolve("prices-proposed.csv")))
                .startsWith("price_list,product,price,from\r\n");
        assertThat(Files.readString(shop.conf().resolve("prices.csv"))).isEqualTo(before);
    }

    @Test
    void what_is_written_wrong_is_refused_with_the_remedy() {
        remember();
        assertThat(run("prices", "--day", "2026-11-30", "--beans", "1.40EUR").err())
                .isEqualTo(
                        "--beans \"1.40EUR\" is no price of a kilogram; write it in USD alone, as 1.40, or as +40%\n");
        assertThat(run("prices", "--day", "2026-11-30", "--beans", "0").err())
                .isEqualTo("--beans \"0\" is nothing; write a price above 0, as 1.40\n");
        assertThat(run("prices", "--day", "2026-11-30", "--oil", "10").err())
                .isEqualTo("--oil \"10\" is no change in percent; write it as +40% or -5%\n");
        Terminal.Told gone = run("prices", "--day", "2026-11-30", "--wages", "-100%");
        assertThat(gone.err()).isEqualTo("--wages \"-100%\" leaves no price; write less than that, as -50%\n");
        assertThat(gone.status()).isEqualTo(2);
    }
}
