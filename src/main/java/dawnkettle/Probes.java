package dawnkettle;

import dawnkettle.conf.Configuration;
import dawnkettle.label.AskPrinter;
import dawnkettle.label.PrinterProfile;
import dawnkettle.line.SerialLine;
import dawnkettle.night.Probe;
import dawnkettle.paper.PrintQueues;
import dawnkettle.post.ImapMailbox;
import dawnkettle.post.MimeForm;
import dawnkettle.post.SmtpPost;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.watch.WatchCall;
import java.util.ArrayList;
import java.util.List;

/** What the evening self-test asks of the devices and accounts that {@code conf/} names; what it does not name is not asked. */
record Probes(Configuration conf, PrinterProfile profile) {
    List<Probe> all() {
        List<Probe> all = new ArrayList<>();
        if (conf.paper().reachesPaper())
            all.add(new Probe(
                    "office printer",
                    "Every sheet lies as a file in the tray folder as well.",
                    "Look at the printer tonight: power, paper, cable.",
                    () -> new PrintQueues(conf.paper(), null).answers()));
        if (!conf.labels().line().device().isEmpty())
            all.add(new Probe(
                    "label printer",
                    "No label is printed twice by itself.",
                    "Look at the label printer tonight: power, labels, ribbon, cover, cable.",
                    () -> new AskPrinter(profile, new SerialLine(conf.labels().line())).answer()));
        if (conf.post().host().isPresent())
            all.add(new Probe(
                    "mail account",
                    "Sheets and labels need no mail.",
                    "Look at the network and the mail account.",
                    () -> new SmtpPost(
                                    conf.post(),
                                    new MimeForm(
                                            conf.post().from(),
                                            conf.shop().house().zone()))
                            .login()));
        conf.orderMail()
                .ifPresent(choice -> all.add(new Probe(
                        "order mailbox",
                        "Orders that wait there are read when it answers again.",
                        "Look at the network and the account of the order mailbox.",
                        () -> new ImapMailbox(choice.box()).login())));
        conf.watch()
                .ifPresent(watch -> all.add(new Probe(
                        "watch outside",
                        "The night itself does not need it.",
                        "Look at the network and at [watch].",
                        () -> {
                            try (WatchCall call = new WatchCall(watch)) {
                                String went = call.callNow();
                                if (went.equals("answered")) return went;
                                throw DeviceAway.clean("who watches from outside " + went, null);
                            }
                        })));
        return all;
    }
}
