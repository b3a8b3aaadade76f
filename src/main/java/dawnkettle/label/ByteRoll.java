package dawnkettle.label;

import java.util.Arrays;

/** Bytes being put one after the other. */
final class ByteRoll {
    private byte[] bytes = new byte[256];
    private int length;

    ByteRoll add(int one) {
        if (length == bytes.length) bytes = Arrays.copyOf(bytes, 2 * length);
        bytes[length++] = (byte) one;
        return this;
    }

    ByteRoll add(byte... many) {
        for (byte one : many) add(one & 0xFF);
        return this;
    }

    int length() {
        return length;
    }

    byte[] toBytes() {
        return Arrays.copyOf(bytes, length);
    }
}
