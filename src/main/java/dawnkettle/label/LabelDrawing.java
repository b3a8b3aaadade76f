package dawnkettle.label;

import dawnkettle.trouble.Problem;
import java.util.List;

/** Where labels are drawn: the night asks, the drawing edge answers. */
public interface LabelDrawing {
    /**
     * The picture as it is read, not turned.
     *
     * @throws dawnkettle.trouble.BadFile where something does not fit, with the millimetres it needs
     */
    Dots draw(Design design, LabelText text);

    /** What keeps {@code text} from being drawn; empty where all fits. */
    List<Problem> check(Design design, LabelText text);
}
