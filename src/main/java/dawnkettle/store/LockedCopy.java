package dawnkettle.store;

import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;

/**
 * A copy locked under a key, for a folder that others may look into: AES-256 in Galois/Counter mode (NIST SP 800-38D).
 *
 * <p>The file is the eight bytes {@code DWNKLCK1}, seven bytes drawn by lot, then pieces: four bytes with the piece's
 * length, highest first, and the piece with its tag of 16 bytes. A piece holds at most a mebibyte; its nonce is the seven
 * bytes, its number in four bytes, highest first, and a byte that is 1 for the last piece and 0 else, so that no piece can
 * be left out, moved or cut off. The first fifteen bytes are authenticated with each piece.
 */
public final class LockedCopy {
    private static final byte[] MAGIC = "DWNKLCK1".getBytes(java.nio.charset.StandardCharsets.US_ASCII);

    /** Bytes of the nonce that are drawn by lot; then of a piece; bits of a tag; bytes of a key. */
    private static final int LOT = 7;

    private static final int PIECE = 1 << 20;
    private static final int TAG_BITS = 128;
    private static final int KEY_BYTES = 32;

    private final Path file;

    public LockedCopy(Path file) {
        this.file = file;
    }

    /** @throws BadFile where the file holds no key */
    public static byte[] key(Path keyFile) {
        try {
            byte[] key = HexFormat.of().parseHex(Files.readString(keyFile).strip());
            if (key.length == KEY_BYTES) return key;
        } catch (IOException | IllegalArgumentException e) {
            // said below, without what stands there
        }
        throw new BadFile(List.of(new Problem(
                Place.of(keyFile.toString()),
                "what stands there is no key",
                "write 64 hexadecimal digits, as openssl rand -hex 32 prints them")));
    }

    /** Locks {@code open} into this file, which appears only when it is whole. */
    public void lock(Path open, byte[] key) throws IOException {
        byte[] head = Arrays.copyOf(MAGIC, MAGIC.length + LOT);
        byte[] lot = new byte[LOT];
        new SecureRandom().nextBytes(lot);
        System.arraycopy(lot, 0, head, MAGIC.length, LOT);
        Path part = file.resolveSibling(file.getFileName() + ".part");
        try (InputStream in = new BufferedInputStream(Files.newInputStream(open));
                DataOutputStream out = new DataOutputStream(Files.newOutputStream(part))) {
            out.write(head);
            byte[] piece = in.readNBytes(PIECE);
            for (int number = 0; ; number++) {
                byte[] next = in.readNBytes(PIECE);
                byte[] locked = turned(Cipher.ENCRYPT_MODE, key, head, nonce(lot, number, next.length == 0), piece);
                out.writeInt(locked.length);
                out.write(locked);
                if (next.length == 0) break;
                piece = next;
            }
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
        LedgerCopy.force(part);
        Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }

    /**
     * Opens it into a file.
     *
     * @throws BadFile where the key is another one, or a single bit of it is not as it was written
     */
    public void open(Path into, byte[] key) throws IOException {
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file)));
                DataOutputStream out = new DataOutputStream(Files.newOutputStream(into))) {
            byte[] head = in.readNBytes(MAGIC.length + LOT);
            byte[] lot = Arrays.copyOfRange(head, Math.min(MAGIC.length, head.length), MAGIC.length + LOT);
            if (!Arrays.equals(Arrays.copyOf(head, MAGIC.length), MAGIC)) throw refused();
            for (int number = 0; ; number++) {
                int length = in.readInt();
                if (length < TAG_BITS / 8 || length > PIECE + TAG_BITS / 8) throw refused();
                byte[] locked = in.readNBytes(length);
                in.mark(1);
                boolean isLast = in.read() < 0;
                if (!isLast) in.reset();
                out.write(turned(Cipher.DECRYPT_MODE, key, head, nonce(lot, number, isLast), locked));
                if (isLast) return;
            }
        } catch (EOFException | GeneralSecurityException e) {
            throw refused();
        }
    }

    private BadFile refused() {
        return new BadFile(List.of(new Problem(
                Place.of(file.toString()),
                "it does not open with this key, or is not as it was written",
                "name the key that it was locked with, or take another copy")));
    }

    private static byte[] nonce(byte[] lot, int number, boolean isLast) {
        return ByteBuffer.allocate(LOT + 5)
                .put(lot)
                .putInt(number)
                .put((byte) (isLast ? 1 : 0))
                .array();
    }

    private static byte[] turned(int mode, byte[] key, byte[] head, byte[] nonce, byte[] bytes)
            throws GeneralSecurityException {
        Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
        cipher.init(mode, new SecretKeySpec(key, "AES"), new GCMParameterSpec(TAG_BITS, nonce));
        cipher.updateAAD(head);
        return cipher.doFinal(bytes);
    }
}
