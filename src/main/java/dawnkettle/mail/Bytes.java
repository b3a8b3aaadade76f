package dawnkettle.mail;

import java.util.Arrays;

/** Bytes of a picture or a file that nobody can change any more. */
public final class Bytes {
    private final byte[] bytes;

    private Bytes(byte[] bytes) {
        this.bytes = bytes;
    }

    public static Bytes of(byte[] bytes) {
        return new Bytes(bytes.clone());
    }

    public byte[] toArray() {
        return bytes.clone();
    }

    public int size() {
        return bytes.length;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Bytes that && Arrays.equals(bytes, that.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return bytes.length + " bytes";
    }
}
