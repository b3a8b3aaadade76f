package dawnkettle.conf;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The demonstration shop that ships in {@code conf/}. */
class MillraceTest {
    private final Configuration millrace = ReadConfiguration.from(Path.of("conf"));

    @Test
    void the_demonstration_shop_is_whole() {
        var shop = millrace.shop();
        assertThat(shop.customers()).hasSize(150);
        assertThat(shop.products()).hasSize(16);
        assertThat(shop.recipes()).hasSize(8);
        assertThat(shop.routes()).hasSize(8);
        assertThat(millrace.standing()).hasSizeGreaterThan(900);
    }
}
