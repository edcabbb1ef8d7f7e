package dev.runnel.verification.simulation;

import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** What the watch is asked to reach, one line of the score each. */
final class Goals {
    private static final double HALF = 0.5;

    /** Dry days of a clock that was not found: more than of any that was. */
    private static final double NEVER = 1e9;

    private static final Set<FaultKind> SUDDEN = EnumSet.of(
            FaultKind.VELOCITY_ZEROS,
            FaultKind.WEAK_ECHO,
            FaultKind.SIGN_FLIPS,
            FaultKind.FROZEN_DEPTH,
            FaultKind.FROZEN_VELOCITY,
            FaultKind.FROZEN_LOGGER);

    private final Tally all;
    private final Tally seen;
    private final List<Goal> goals = new ArrayList<>();

    private Goals(Tally results) {
        // A winter of more water, and what only weeks tell, have tables of their own.
        this.all = results.where(result -> result.of().cell().trait() != Trait.SEASON
                && !result.of().cell().isSmall());
        this.seen = all.where(result -> !result.of().cell().levelOnly());
    }

    static List<Goal> of(Tally all) {
        Goals goals = new Goals(all);
        goals.blockages();
        goals.falseFindings();
        goals.names();
        goals.levels();
        goals.others();
        return List.copyOf(goals.goals);
    }

    private static Predicate<CaseResult> kind(FaultKind kind) {
        return result -> result.of().cell().kind() == kind;
    }

    private static Predicate<CaseResult> rampOf(double from, double to) {
        return result -> result.of().cell().ramp() >= from && result.of().cell().ramp() <= to;
    }

    private void blockages() {
        Tally slow = seen.where(kind(FaultKind.BLOCKAGE)).where(rampOf(4, 1000));
        found("blockages of 4 d or more, +20 % depth or more: 98 % found, lower limit above 95 %", slow);
        median(
                "the same: at most 1.1 findings each",
                slow.where(CaseResult::isFound),
                slow.findingsEach(),
                slow.findingsEach() <= 1.1);
        Tally at4 = slow.where(CaseResult::isFound)
                .where(result -> Math.abs(result.of().order().scatter() - 0.04) < 1e-9);
        double shift = at4.median(CaseResult::shift);
        median("the same, at 4 % scatter: found before the ratio has moved by 0.4, median", at4, shift, shift < 0.4);
        Tally alarmed = slow.where(CaseResult::hasAlarm);
        ToDoubleFunction<CaseResult> share = result -> result.isFound() ? result.leadHours() / 24 / result.alarm() : -1;
        double lead = alarmed.median(share);
        share(
                "the same: lead of 60 % of the time from beginning to alarm (judged by the median)",
                alarmed,
                alarmed.count(result -> share.applyAsDouble(result) >= 0.6),
                ", median lead " + Text.fixed(100 * lead, 0) + " % of that time",
                lead >= 0.6);
        Tally late = alarmed.where(result -> result.alarm() >= 4);
        double hours = late.median(result -> result.isFound() ? result.leadHours() : -1);
        share(
                "the same: lead of 48 h where that time is 4 d or more (judged by the median)",
                late,
                late.count(result -> result.isFound() && result.leadHours() >= 48),
                ", median " + Text.fixed(hours, 0) + " h",
                hours >= 48);
        Tally two = seen.where(kind(FaultKind.BLOCKAGE)).where(rampOf(2, 2)).where(CaseResult::hasAlarm);
        int before = two.count(CaseResult::isFoundBeforeAlarm);
        share("blockages of 2 d: 80 % found before the alarm", two, before, "", before >= 0.8 * two.sites());
    }

    private void falseFindings() {
        for (double scatter : new double[] {0.04, 0.08}) {
            double most = scatter < 0.05 ? 0.2 : 1;
            Tally sound = seen.where(kind(FaultKind.NONE))
                    .where(result -> result.of().cell().trait() == Trait.PLAIN)
                    .where(result -> Math.abs(result.of().order().scatter() - scatter) < 1e-9);
            String text = "sound sites at " + Text.number(Math.rint(100 * scatter)) + " % scatter: fewer than "
                    + Text.number(most) + " findings a monitor-year";
            if (sound.sites() == 0) {
                goals.add(Goal.untested(text));
                continue;
            }
            double years = sound.soundYears();
            double rate = sound.falseFindings() / years;
            goals.add(Goal.of(
                    text,
                    Text.fixed(rate, 2) + " (" + limits(Limits.ofRate(sound.falseFindings(), years), 1, 2) + ") in "
                            + Text.fixed(years, 1) + " years",
                    rate < most));
        }
        Tally sound = seen.where(kind(FaultKind.NONE))
                .where(result -> result.of().cell().trait() == Trait.PLAIN);
        int any = sound.count(result -> result.before() > 0);
        share(
                "sound sites: at most one in five with any finding in a year",
                sound,
                any,
                "",
                any <= 0.2 * sound.sites());
    }

    private void names() {
        Tally found = seen.where(result ->
                        !result.of().cell().isQuiet() && result.of().cell().kind() != FaultKind.FROM_FIRST_DAY)
                .where(CaseResult::isFound);
        int end = found.count(CaseResult::isRightAtEnd);
        share("faults found: named right at the end 95 %", found, end, "", end >= 0.95 * found.sites());
        int once = found.count(CaseResult::isRightAtOnce);
        share("faults found: named right at once 80 %", found, once, "", once >= 0.8 * found.sites());
    }

    private void levels() {
        Tally level = all.where(result -> result.of().cell().levelOnly());
        Tally blocked = level.where(kind(FaultKind.BLOCKAGE))
                .where(rampOf(4, 1000))
                .where(result -> result.of().cell().severity() >= HALF);
        String text = "level only: blockages of 4 d or more, +50 % depth or more: 98 % found";
        share(text, blocked, blocked.found(), "", blocked.found() >= 0.98 * blocked.sites());
        Tally found = blocked.where(CaseResult::isFound);
        int worded = found.count(CaseResult::isRightAtEnd);
        share("the same: worded \"level up without rain\" 98 %", found, worded, "", worded >= 0.98 * found.sites());
        int causes = level.count(CaseResult::namesCause);
        share("level only: no finding names a cause", level, causes, " with a cause", causes == 0);
    }

    private void others() {
        Tally sudden = seen.where(result -> SUDDEN.contains(result.of().cell().kind()));
        int quick = sudden.count(result -> result.delay() <= 2);
        share(
                "zeros, weak echo, frozen, sign: found within 2 d (95 % of sites)",
                sudden, quick, "", quick >= 0.95 * sudden.sites());
        clock("clock of the monitor 1 h off: found in 3 dry days (judged by the median)", 1, 3);
        clock("clock of the monitor half an hour off: found in 5 dry days (judged by the median)", HALF, 5);
        Tally recurring = seen.where(kind(FaultKind.RECURRING));
        int said = recurring.count(CaseResult::isCalledRecurring);
        share("recurring: named on 90 %", recurring, said, "", said >= 0.9 * recurring.sites());
        Tally others = all.where(result -> result.of().cell().kind() != FaultKind.RECURRING
                && result.of().cell().kind() != FaultKind.REVERSE_FLOW);
        int wrongly = others.count(CaseResult::isCalledRecurring);
        share(
                "recurring: said wrongly on under 1 % of all other sites",
                others, wrongly, "", wrongly < 0.01 * others.sites());
    }

    private void clock(String text, double hours, int dryDays) {
        Tally off = seen.where(kind(FaultKind.CLOCK_OF_MONITOR))
                .where(result -> Math.abs(Math.abs(result.of().cell().severity()) - hours) < 1e-9);
        int quick = off.count(result -> result.isFound() && result.dryDays() <= dryDays);
        double median = off.median(result -> result.isFound() ? result.dryDays() : NEVER);
        // Of an even count the median is half of the two in the middle, of which one may not have been found.
        String shown =
                median >= NEVER / 2 ? ", half or more not found" : ", median " + Text.number(median) + " dry days";
        share(text, off, quick, shown, median <= dryDays);
    }

    private void found(String text, Tally cases) {
        if (cases.sites() == 0) {
            goals.add(Goal.untested(text));
            return;
        }
        boolean reached =
                cases.found() >= 0.98 * cases.sites() && cases.foundLimits().lower() > 0.95;
        share(text, cases, cases.found(), "", reached);
    }

    private void share(String text, Tally cases, int hits, String more, boolean reached) {
        if (cases.sites() == 0) {
            goals.add(Goal.untested(text));
            return;
        }
        goals.add(Goal.of(text, share(hits, cases.sites()) + more, reached));
    }

    private void median(String text, Tally cases, double value, boolean reached) {
        goals.add(
                cases.sites() == 0
                        ? Goal.untested(text)
                        : Goal.of(text, Text.fixed(value, 2) + ", " + cases.sites() + " sites", reached));
    }

    /** For example {@code 118/120 (94.1-99.5 %)}. */
    static String share(int hits, int trials) {
        return hits + "/" + trials + " (" + limits(Limits.ofShare(hits, trials), 100, 1) + " %)";
    }

    static String limits(Limits limits, double factor, int decimals) {
        return Text.fixed(factor * limits.lower(), decimals) + "-" + Text.fixed(factor * limits.upper(), decimals);
    }
}
