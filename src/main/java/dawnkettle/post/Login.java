package dawnkettle.post;

import dawnkettle.trouble.DeviceAway;
import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.MessagingException;
import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** Tries an account of a mail server, and leaves again without having sent or read anything. */
final class Login {
    private final String subject;
    private final Wires wires;

    /** @param subject what does not answer, as a message begins */
    Login(String subject, Wires wires) {
        this.subject = subject;
        this.wires = wires;
    }

    /** What a mail library does to get in and out again. */
    interface Visit {
        void inAndOut() throws MessagingException;
    }

    /** @throws DeviceAway clean, where it does not let us in within {@code patience} */
    String tried(Visit visit, Duration patience) {
        Callable<Boolean> trying = () -> {
            visit.inAndOut();
            return true;
        };
        FutureTask<Boolean> task = new FutureTask<>(trying);
        Thread thread = new Thread(task, "mail login");
        thread.setDaemon(true);
        thread.start();
        try {
            task.get(patience.toMillis(), TimeUnit.MILLISECONDS);
            return "lets us in";
        } catch (ExecutionException e) {
            if (e.getCause() instanceof AuthenticationFailedException)
                throw away("refused the account; look at the user and the password file", e.getCause());
            throw away("does not answer as a mail server does; see that it runs and is reached", e.getCause());
        } catch (TimeoutException e) {
            throw away("took too long to answer; see that it runs and is reached", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw away("was left while it was asked", e);
        } finally {
            wires.cut();
        }
    }

    private DeviceAway away(String why, Throwable cause) {
        return DeviceAway.clean(subject + " " + why, cause);
    }
}
