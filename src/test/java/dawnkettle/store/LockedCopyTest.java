package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.trouble.BadFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A copy under a key: opens whole or not at all. */
class LockedCopyTest {
    private static final byte[] KEY = key(1);

    @TempDir
    Path folder;

    private static byte[] key(int seed) {
        byte[] key = new byte[32];
        new Random(seed).nextBytes(key);
        return key;
    }

    private byte[] locked(byte[] bytes) throws IOException {
        Path open = Files.write(folder.resolve("open"), bytes);
        new LockedCopy(folder.resolve("locked")).lock(open, KEY);
        return Files.readAllBytes(folder.resolve("locked"));
    }

    private byte[] opened(byte[] locked, byte[] key) throws IOException {
        Files.write(folder.resolve("locked"), locked);
        new LockedCopy(folder.resolve("locked")).open(folder.resolve("again"), key);
        return Files.readAllBytes(folder.resolve("again"));
    }

    private static byte[] some(int length) {
        byte[] bytes = new byte[length];
        new Random(7).nextBytes(bytes);
        return bytes;
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 4_096, (1 << 20) - 1, 1 << 20, (1 << 20) + 1, 3 << 20})
    void what_was_locked_opens_with_the_same_key(int length) throws IOException {
        byte[] locked = locked(some(length));

        assertThat(opened(locked, KEY)).isEqualTo(some(length));
        assertThat(locked.length).isGreaterThan(length + 15);
    }

    @Test
    void it_opens_with_no_other_key() throws IOException {
        byte[] locked = locked(some(5_000));

        assertThatThrownBy(() -> opened(locked, key(2)))
                .isInstanceOf(BadFile.class)
                .hasMessageContaining("it does not open with this key, or is not as it was written");
    }

    @Test
    void no_bit_may_flip_and_no_end_be_cut_off() throws IOException {
        byte[] locked = locked(some((1 << 20) + 900));
        Random random = new Random(3);
        for (int n = 0; n < 100; n++) {
            byte[] damaged = locked.clone();
            if (n % 2 == 0) damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
            else damaged = Arrays.copyOf(damaged, random.nextInt(damaged.length));
            byte[] tried = damaged;
            assertThatThrownBy(() -> opened(tried, KEY)).isInstanceOf(BadFile.class);
        }
    }

    @Test
    void pieces_may_not_be_left_out_though_each_is_whole() throws IOException {
        byte[] locked = locked(some(2 << 20));
        int piece = 4 + (1 << 20) + 16;
        byte[] first = Arrays.copyOf(locked, 15 + piece);
        byte[] second = Arrays.copyOf(locked, 15 + piece);
        System.arraycopy(locked, 15 + piece, second, 15, piece);

        assertThatThrownBy(() -> opened(first, KEY)).isInstanceOf(BadFile.class);
        assertThatThrownBy(() -> opened(second, KEY)).isInstanceOf(BadFile.class);
    }

    @Test
    void a_key_is_64_hexadecimal_digits_and_never_said() throws IOException {
        Path file = Files.writeString(folder.resolve("key"), "ab".repeat(32) + "\n");
        assertThat(LockedCopy.key(file)).hasSize(32);

        Files.writeString(file, "a secret that is none");
        assertThatThrownBy(() -> LockedCopy.key(file))
                .hasMessage(file + ": what stands there is no key; "
                        + "write 64 hexadecimal digits, as openssl rand -hex 32 prints them");
    }
}
