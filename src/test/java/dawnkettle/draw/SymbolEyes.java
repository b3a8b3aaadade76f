package dawnkettle.draw;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.Result;
import com.google.zxing.ResultMetadataType;
import com.google.zxing.common.HybridBinarizer;
import dawnkettle.label.Dots;
import java.util.List;
import java.util.Map;

/** Reads symbols with a library that did not draw them. */
final class SymbolEyes {
    private SymbolEyes() {}

    /** The data as a scanner sends it, its symbology identifier at its head. */
    static String read(Dots dots, BarcodeFormat format) throws NotFoundException {
        Result result = new MultiFormatReader()
                .decode(
                        new BinaryBitmap(new HybridBinarizer(new DotSource(dots))),
                        Map.of(
                                DecodeHintType.ASSUME_GS1, true,
                                DecodeHintType.TRY_HARDER, true,
                                DecodeHintType.POSSIBLE_FORMATS, List.of(format)));
        String symbology = (String) result.getResultMetadata().get(ResultMetadataType.SYMBOLOGY_IDENTIFIER);
        String text = result.getText();
        // The linear reader puts the identifier before the text, the other a group separator.
        if (text.startsWith("]C1")) text = text.substring(3);
        if (text.startsWith("\u001D")) text = text.substring(1);
        return symbology + text;
    }

    /** Dots as grey values, enlarged where they are few, as any camera sees them. */
    private static final class DotSource extends LuminanceSource {
        private final Dots dots;

        DotSource(Dots dots) {
            super(dots.width(), dots.height());
            this.dots = dots;
        }

        @Override
        public byte[] getRow(int y, byte[] row) {
            byte[] grey = row == null || row.length < getWidth() ? new byte[getWidth()] : row;
            for (int x = 0; x < getWidth(); x++) grey[x] = (byte) (dots.isBlack(x, y) ? 0 : 0xFF);
            return grey;
        }

        @Override
        public byte[] getMatrix() {
            byte[] grey = new byte[getWidth() * getHeight()];
            for (int y = 0; y < getHeight(); y++)
                for (int x = 0; x < getWidth(); x++) grey[y * getWidth() + x] = (byte) (dots.isBlack(x, y) ? 0 : 0xFF);
            return grey;
        }
    }
}
