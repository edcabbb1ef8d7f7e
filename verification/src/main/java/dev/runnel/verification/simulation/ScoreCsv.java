package dev.runnel.verification.simulation;

import dev.runnel.internal.CellText;
import dev.runnel.internal.Text;
import java.util.List;

/** The score as comma-separated values, a line a site and a line a finding. */
final class ScoreCsv {
    private ScoreCsv() {}

    /** Every case with its truth and what came of it; times in days from the start of the record. */
    static String cases(List<CaseResult> results) {
        StringBuilder text =
                new StringBuilder("seed,generator,fault,severity,ramp_d,level_only,trait,scatter,start,days,"
                        + "begin_d,end_d,learned,refused,findings_before,findings_after,delay_d,since_off_d,alarm_d,lead_h,shift,dry_days,"
                        + "right_at_once,right_at_end,recurring\n");
        for (CaseResult result : results) {
            SiteOrder order = result.of().order();
            Cell cell = result.of().cell();
            line(
                    text,
                    Long.toString(order.seed()),
                    order.make().toString(),
                    quoted(cell.kind().toString()),
                    number(cell.severity()),
                    number(cell.ramp()),
                    Boolean.toString(cell.levelOnly()),
                    order.trait().toString(),
                    number(order.scatter()),
                    Simulator.grid(order).start().toString(),
                    Integer.toString(order.days()),
                    number(order.fault().begin()),
                    number(order.fault().end()),
                    Boolean.toString(result.heard().learned()),
                    Integer.toString(result.heard().refused()),
                    Integer.toString(result.before()),
                    Integer.toString(result.after()),
                    number(result.delay()),
                    number(result.sinceOff()),
                    number(result.alarm()),
                    number(result.leadHours()),
                    number(result.shift()),
                    Integer.toString(result.dryDays()),
                    Boolean.toString(result.isRightAtOnce()),
                    Boolean.toString(result.isRightAtEnd()),
                    Boolean.toString(result.isCalledRecurring()));
        }
        return text.toString();
    }

    /** Every finding, with its words. */
    static String findings(List<CaseResult> results) {
        StringBuilder text = new StringBuilder(
                "seed,fault,severity,level_only,fault_begins,told,since,closed,at_once,at_end," + "recurring,text\n");
        for (CaseResult result : results) {
            SiteOrder order = result.of().order();
            String begins = order.fault().isNone()
                    ? ""
                    : Simulator.grid(order)
                            .start()
                            .plusSeconds(Math.round(order.fault().begin() * 86400))
                            .toString();
            for (Said said : result.heard().said()) {
                line(
                        text,
                        Long.toString(order.seed()),
                        quoted(result.of().cell().kind().toString()),
                        number(result.of().cell().severity()),
                        Boolean.toString(result.of().cell().levelOnly()),
                        begins,
                        said.told().toString(),
                        said.since().toString(),
                        Boolean.toString(said.closed()),
                        names(said.atOnce()),
                        names(said.atEnd()),
                        Boolean.toString(said.recurring()),
                        quoted(said.text().replace('\n', ';')));
            }
        }
        return text.toString();
    }

    private static String names(List<Called> names) {
        return quoted(String.join(" or ", names.stream().map(Called::toString).toList()));
    }

    private static String number(double value) {
        return Double.isFinite(value) ? Text.significant(value, 6) : "";
    }

    private static String quoted(String text) {
        return '"' + CellText.written(text).replace("\"", "\"\"") + '"';
    }

    private static void line(StringBuilder text, String... cells) {
        text.append(String.join(",", cells)).append('\n');
    }
}
