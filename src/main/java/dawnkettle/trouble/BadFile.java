package dawnkettle.trouble;

import java.util.List;
import java.util.stream.Collectors;

/** The operator wrote something wrong: every problem of every file, in the order of their places. */
public final class BadFile extends Trouble {
    private static final long serialVersionUID = 1L;

    private final transient List<Problem> problems;

    public BadFile(List<Problem> problems) {
        super(problems.stream().sorted().map(Problem::toString).collect(Collectors.joining("\n")), null);
        if (problems.isEmpty()) throw new IllegalArgumentException("a bad file has at least one problem");
        this.problems = problems.stream().sorted().toList();
    }

    public List<Problem> problems() {
        return problems;
    }
}
