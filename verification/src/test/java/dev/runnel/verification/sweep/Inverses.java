package dev.runnel.verification.sweep;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.CriticalFlow;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.flow.NoSolutionException;
import dev.runnel.hydraulics.flow.Resistance;
import dev.runnel.hydraulics.flow.SectionFlow;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.BroadCrestedWeir;
import dev.runnel.hydraulics.structure.CipollettiWeir;
import dev.runnel.hydraulics.structure.CoefficientWeir;
import dev.runnel.hydraulics.structure.CrumpWeir;
import dev.runnel.hydraulics.structure.HeadDischarge;
import dev.runnel.hydraulics.structure.KhafagiFlume;
import dev.runnel.hydraulics.structure.Orifice;
import dev.runnel.hydraulics.structure.ParshallFlume;
import dev.runnel.hydraulics.structure.RectangularWeir;
import dev.runnel.hydraulics.structure.RehbockWeir;
import dev.runnel.hydraulics.structure.VNotchWeir;
import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.Exponential;
import dev.runnel.rainfall.distribution.GeneralizedLogistic;
import dev.runnel.rainfall.distribution.GeneralizedNormal;
import dev.runnel.rainfall.distribution.GeneralizedPareto;
import dev.runnel.rainfall.distribution.Gev;
import dev.runnel.rainfall.distribution.Gumbel;
import dev.runnel.rainfall.distribution.Kappa;
import dev.runnel.rainfall.distribution.LogNormal;
import dev.runnel.rainfall.distribution.LogPearsonIII;
import dev.runnel.rainfall.distribution.Normal;
import dev.runnel.rainfall.distribution.PearsonIII;
import dev.runnel.verification.sweep.Question.Answer;
import dev.runnel.verification.sweep.Question.Refused;
import java.util.List;
import java.util.function.Function;

/** An inverse is asked for what its function just gave; the function at its answer must give the same again. */
final class Inverses {
    /** What the documentation promises of a discharge that is put back. */
    private static final double PROMISED = 1e-12;

    /** No figure is promised: some hundred times the rounding of the function itself; chosen here. */
    private static final double NOT_PROMISED = 1e-10;

    /** A thousandth of the bound of a quantile; chosen here. */
    private static final double ROUNDINGS = 1e-14;

    private Inverses() {}

    static List<Question> all() {
        return List.of(
                normalDepth("circle, Manning: normal depth", 1, Sections::circle, Inverses::manning),
                normalDepth("circle, Colebrook-White: normal depth", 0.2, Sections::circle, Inverses::colebrook),
                normalDepth("any section, Manning: normal depth", 0.1, Sections::any, Inverses::manning),
                normalDepth("any section, Colebrook-White: normal depth", 0.05, Sections::any, Inverses::colebrook),
                new Question("closed section: gradient for a full discharge", PROMISED, 0.2, Inverses::gradient),
                new Question("any section: critical depth", PROMISED, 0.2, Inverses::criticalDepth),
                new Question("any section: depth for an area", PROMISED, 1, Inverses::depthForArea),
                new Question("any section: alternate depth", NOT_PROMISED, 0.05, Inverses::alternateDepth),
                new Question("open section: conjugate depth", NOT_PROMISED, 0.05, Inverses::conjugateDepth),
                new Question("weirs, flumes and orifices: head for a discharge", PROMISED, 0.5, Inverses::head),
                quantile("Gumbel, exponential, normal: quantile", 1, Inverses::plain),
                quantile("shaped distributions: quantile", 1, Inverses::shaped),
                quantile("kappa: quantile", 1, Inverses::kappa),
                quantile("Pearson III and its logarithm: quantile", 0.05, Inverses::pearson));
    }

    private static Resistance manning(Draw draw) {
        return Manning.of(draw.decades(0.007, 0.1));
    }

    private static Resistance colebrook(Draw draw) {
        return ColebrookWhite.ofRoughness(draw.decades(1e-6, 5e-3)).withViscosity(draw.decades(7e-7, 1.8e-6));
    }

    private static Question normalDepth(
            String name, double share, Function<Draw, CrossSection> section, Function<Draw, Resistance> law) {
        return new Question(name, PROMISED, share, draw -> {
            CrossSection drawn = section.apply(draw);
            Conduit conduit = Conduit.of(drawn, Gradient.of(draw.decades(1e-5, 0.5)), law.apply(draw));
            double discharge = conduit.discharge(Sections.depth(draw, drawn));
            double depth = conduit.normalDepth(discharge);
            return Answer.of(relative(conduit.discharge(depth), discharge), conduit, discharge, depth);
        });
    }

    private static Answer gradient(Draw draw) {
        CrossSection section = Sections.closed(draw);
        Gradient gradient = Gradient.of(draw.decades(1e-5, 0.5));
        Conduit conduit = Conduit.of(section, gradient, draw.heads() ? manning(draw) : colebrook(draw));
        double full = conduit.fullBore().discharge();
        double found = conduit.gradientFor(full).value();
        Conduit again = conduit.withGradient(Gradient.of(found));
        return Answer.of(relative(again.fullBore().discharge(), full), conduit, full, found);
    }

    private static Answer criticalDepth(Draw draw) {
        CrossSection section = Sections.any(draw);
        CriticalFlow flow = CriticalFlow.of(section);
        double discharge = flow.discharge(Math.min(Sections.depth(draw, section), 0.9999 * section.height()));
        double depth = flow.depth(discharge);
        return Answer.of(relative(flow.discharge(depth), discharge), section, discharge, depth);
    }

    private static Answer depthForArea(Draw draw) {
        CrossSection section = Sections.any(draw);
        double area = section.area(Sections.depth(draw, section));
        double depth = section.depthForArea(area);
        return Answer.of(relative(section.area(depth), area), section, area, depth);
    }

    private static Answer alternateDepth(Draw draw) {
        CrossSection section = Sections.any(draw);
        double depth = Sections.depth(draw, section);
        SectionFlow flow = SectionFlow.of(
                section, CriticalFlow.of(section).discharge(0.9 * Math.min(section.height(), 5)) * draw.share());
        double energy = flow.specificEnergy(depth);
        double other;
        try {
            other = flow.alternateDepth(depth);
        } catch (NoSolutionException e) {
            throw new Refused(e);
        }
        return Answer.of(relative(flow.specificEnergy(other), energy), flow, depth, other);
    }

    private static Answer conjugateDepth(Draw draw) {
        CrossSection section = Sections.open(draw);
        double depth = Sections.depth(draw, section);
        SectionFlow flow = SectionFlow.of(section, CriticalFlow.of(section).discharge(2) * draw.share());
        double momentum = flow.momentum(depth);
        double other = flow.conjugateDepth(depth);
        return Answer.of(relative(flow.momentum(other), momentum), flow, depth, other);
    }

    private static Answer head(Draw draw) {
        HeadDischarge structure = structure(draw);
        double discharge;
        double head = draw.decades(0.001, 3);
        double found;
        try {
            discharge = structure.discharge(head);
            found = structure.head(discharge);
        } catch (IllegalArgumentException e) {
            // A head outside the limits of the law, which each law states.
            throw new Refused(e);
        }
        return Answer.of(relative(structure.discharge(found), discharge), structure, discharge, found);
    }

    private static HeadDischarge structure(Draw draw) {
        double crest = draw.decades(0.1, 5);
        ApproachChannel channel =
                ApproachChannel.ofWidth(crest * draw.between(1.3, 6)).withCrestHeight(draw.decades(0.1, 2));
        ApproachChannel full = ApproachChannel.ofWidth(crest).withCrestHeight(draw.decades(0.1, 2));
        return switch (draw.below(10)) {
            case 0 -> RectangularWeir.contracted(crest, channel);
            case 1 -> RectangularWeir.fullWidth(full);
            case 2 -> RehbockWeir.of(full);
            case 3 -> VNotchWeir.ofAngle(draw.between(20, 100), channel);
            case 4 -> CipollettiWeir.ofCrestLength(crest, channel);
            case 5 -> CrumpWeir.of(full);
            case 6 -> BroadCrestedWeir.roundNosed(draw.decades(0.5, 5), full);
            case 7 -> ParshallFlume.ofFeet(1 + draw.below(8));
            case 8 -> KhafagiFlume.ofThroat(draw.between(0.12, 1));
            default -> draw.heads() ? CoefficientWeir.rectangular(crest) : Orifice.circular(draw.decades(0.02, 1));
        };
    }

    private static Question quantile(String name, double share, Function<Draw, Distribution> distribution) {
        return new Question(name, 1e-11, share, draw -> {
            Distribution drawn = distribution.apply(draw);
            double tail = draw.decades(1e-9, 0.5);
            boolean upper = draw.heads();
            double x = upper ? drawn.quantileOfExceedance(tail) : drawn.quantile(tail);
            double back = upper ? drawn.exceedance(x) : drawn.cdf(x);
            double spread = Math.max(Math.abs(x), drawn.quantile(0.75) - drawn.quantile(0.25));
            // Where the density is steep, no quantile can be better than its roundings: of place, scale and logarithm.
            double step = ROUNDINGS * spread;
            double below = upper ? drawn.exceedance(x + step) : drawn.cdf(x - step);
            double above = upper ? drawn.exceedance(x - step) : drawn.cdf(x + step);
            if (below <= tail && tail <= above) {
                return Answer.of(0, drawn, upper, tail, x);
            }
            // The error as a share of the probability, or of the variate where that is less.
            double ofVariate = Math.abs(back - tail) / (drawn.density(x) * spread);
            double ofProbability = Math.abs(back - tail) / tail;
            return Answer.of(ofVariate < ofProbability ? ofVariate : ofProbability, drawn, upper, tail, x);
        });
    }

    private static Distribution plain(Draw draw) {
        double location = draw.between(-10, 100);
        double scale = draw.decades(0.01, 50);
        return switch (draw.below(4)) {
            case 0 -> Gumbel.of(location, scale);
            case 1 -> Exponential.of(location, scale);
            case 2 -> LogNormal.of(draw.between(-2, 6), draw.decades(0.01, 2));
            default -> Normal.of(location, scale);
        };
    }

    private static double shape(Draw draw) {
        double size = draw.heads() ? draw.decades(1e-12, 1e-2) : draw.between(0.01, 0.9);
        return draw.heads() ? size : -size;
    }

    private static Distribution shaped(Draw draw) {
        double location = draw.between(-10, 100);
        double scale = draw.decades(0.01, 50);
        return switch (draw.below(4)) {
            case 0 -> Gev.of(location, scale, shape(draw));
            case 1 -> GeneralizedLogistic.of(location, scale, shape(draw));
            case 2 -> GeneralizedNormal.of(location, scale, shape(draw));
            default -> GeneralizedPareto.of(location, scale, shape(draw));
        };
    }

    private static Distribution kappa(Draw draw) {
        return Kappa.of(draw.between(-10, 100), draw.decades(0.01, 50), shape(draw), shape(draw));
    }

    private static Distribution pearson(Draw draw) {
        double skew = (draw.heads() ? 1 : -1) * draw.decades(1e-6, 5);
        return draw.heads()
                ? PearsonIII.of(draw.between(-10, 100), draw.decades(0.01, 50), skew)
                : LogPearsonIII.of(draw.between(0, 3), draw.decades(0.01, 0.5), skew);
    }

    private static double relative(double found, double expected) {
        return found == expected ? 0 : Math.abs(found - expected) / Math.abs(expected);
    }
}
