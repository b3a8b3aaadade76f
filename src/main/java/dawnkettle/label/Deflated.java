package dawnkettle.label;

import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.zip.Deflater;

/** Rows of dots deflated (RFC 1950) and written in the 64 characters of RFC 4648, on one line, with a checksum of that. */
final class Deflated {
    private static final int POLYNOMIAL = 0x1021;

    private Deflated() {}

    static byte[] text(List<byte[]> rows) {
        ByteRoll plain = new ByteRoll();
        rows.forEach(plain::add);
        return Base64.getEncoder().encode(deflated(plain.toBytes()));
    }

    /** The most thorough level: the line is slower than any processor. */
    private static byte[] deflated(byte[] plain) {
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
        try {
            deflater.setInput(plain);
            deflater.finish();
            ByteRoll out = new ByteRoll();
            byte[] piece = new byte[4_096];
            while (!deflater.finished()) out.add(Arrays.copyOf(piece, deflater.deflate(piece)));
            return out.toBytes();
        } finally {
            deflater.end();
        }
    }

    /**
     * CRC-16 with the polynomial of the CCITT, from nought, highest bit first; of "123456789" it is 31C3, the check value
     * under which it is catalogued (from memory).
     */
    static int checksum(byte[] text) {
        int crc = 0;
        for (byte one : text) {
            crc ^= (one & 0xFF) << 8;
            for (int bit = 0; bit < 8; bit++) crc = (crc & 0x8000) != 0 ? crc << 1 ^ POLYNOMIAL : crc << 1;
        }
        return crc & 0xFFFF;
    }
}
