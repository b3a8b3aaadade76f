package dawnkettle.line;

import com.fazecast.jSerialComm.SerialPort;
import dawnkettle.label.LabelLine;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Opens the serial port of the label printer. */
public final class SerialLine implements LabelLine {
    private final LineSettings settings;

    public SerialLine(LineSettings settings) {
        this.settings = settings;
    }

    @Override
    public String name() {
        return "label printer on " + settings.device();
    }

    @Override
    public Link open() {
        SerialPort port = port();
        port.setComPortParameters(settings.baud(), 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
        port.setFlowControl(
                switch (settings.flow()) {
                    case NONE -> SerialPort.FLOW_CONTROL_DISABLED;
                    case RTS_CTS -> SerialPort.FLOW_CONTROL_RTS_ENABLED | SerialPort.FLOW_CONTROL_CTS_ENABLED;
                    case DTR_DSR -> SerialPort.FLOW_CONTROL_DTR_ENABLED | SerialPort.FLOW_CONTROL_DSR_ENABLED;
                });
        // Not non-blocking: measured, a stalled write then spins at a quarter of a processor; so it sleeps. We only
        // ever
        // read what has arrived, so that no read waits.
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 100, 0);
        if (!port.openPort())
            throw DeviceAway.clean(
                    name() + " cannot be opened (code " + port.getLastErrorCode()
                            + "); see that no other program has it and that we may use it",
                    null);
        return new SerialLink(port, settings, name());
    }

    /** The library takes a path that is not there for another one, so that is looked at first. */
    private SerialPort port() {
        try {
            Path real = Path.of(settings.device()).toRealPath();
            if (Files.isDirectory(real)) throw absent(null);
            SerialPort port = SerialPort.getCommPort(real.toString());
            if (!port.getSystemPortPath().equals(real.toString())) throw absent(null);
            return port;
        } catch (IOException | com.fazecast.jSerialComm.SerialPortInvalidPortException e) {
            throw absent(e);
        }
    }

    private DeviceAway absent(Exception cause) {
        return DeviceAway.clean(name() + " is not there; plug it in and switch it on", cause);
    }
}
