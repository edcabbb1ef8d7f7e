/**
 * Statistics of extremes: distributions, L-moments, fits, goodness of fit, plotting positions and limits of confidence. It
 * knows no rain: a sample is an array of numbers in any unit.
 *
 * <p>Every distribution answers in both tails without losing digits: {@code F} is the probability of non-exceedance,
 * {@code p = 1 - F} that of exceedance, and a return period of {@code T} years among annual maxima is {@code T = 1/p}.
 * Ask for {@link dev.runnel.rainfall.distribution.Distribution#returnLevel(double)} rather than for
 * {@code quantile(1 - 1/T)}: the subtraction would cost the digits that a rare event needs.
 *
 * <p>Parameters follow Hosking and Wallis (1997), Regional Frequency Analysis, Cambridge University Press, appendix:
 * location &xi;, scale &alpha;, shape k. A positive k bounds the upper tail, a negative one makes it heavy. Other books
 * write the shape with the opposite sign.
 *
 * <p>What this is not: a statement about a changing climate. A fit says what the sample says; a trend in it breaks it.
 */
@NullMarked
package dev.runnel.rainfall.distribution;

import org.jspecify.annotations.NullMarked;
